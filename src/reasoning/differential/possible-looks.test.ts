/** What could not be looked at, what contradicts itself, and what must be reported before a normal state is named. */
import { describe, expect, it } from "vitest";
import { type DifferentialInput, differential } from "./index.ts";

const answered = (input: DifferentialInput) => {
  const result = differential(input);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result;
};
const codes = (input: DifferentialInput) => answered(input).problems.map(({ code, slots }) => [code, slots]);

describe("without brood", () => {
  const broodless: DifferentialInput = { season: "spring", findings: { no_brood_in_season: "present" } };
  const idle: DifferentialInput = {
    season: "spring",
    findings: { no_brood_in_season: "present", spotty_brood: "absent", ropy_thread: "absent" },
  };

  it("[DX37] what could not be seen changes nothing to the last bit, and is told", () => {
    expect(answered(idle).value).toEqual(answered(broodless).value);
    expect(codes(idle)).toContainEqual(["absent-without-brood", { findings: "spotty_brood, ropy_thread" }]);
    expect(codes(broodless)).toEqual([]);
  });

  it("[DX37] what stays in the cells when brood has gone is looked at all the same", () => {
    const scale: DifferentialInput = { ...broodless, findings: { ...broodless.findings, hard_flat_scale: "absent" } };
    expect(answered(scale).value.conditions).not.toEqual(answered(broodless).value.conditions);
    expect(codes(scale)).toEqual([]);
  });
});

describe("what contradicts itself", () => {
  it.each([
    ["normal_eggs_and_queen", "queen_not_found_no_eggs"],
    ["normal_eggs_and_queen", "no_brood_in_season"],
    ["twisted_discoloured_larva", "no_brood_in_season"],
  ] as const)("[DX38] %s beside %s is told and both are counted", (finding, other) => {
    const both: DifferentialInput = { season: "spring", findings: { [finding]: "present", [other]: "present" } };
    expect(codes(both)).toContainEqual(["findings-contradict", { finding, other }]);
    const one: DifferentialInput = { season: "spring", findings: { [other]: "present" } };
    expect(answered(both).value.conditions).not.toEqual(answered(one).value.conditions);
  });

  it("[DX38] a dead colony that trembles did so while it lived", () => {
    const findings = { trembling: "present", dead_pile_floor: "present" } as const;
    expect(codes({ season: "winter", colony: { state: "dead" }, findings })).toEqual([
      ["seen-while-alive", { finding: "trembling" }],
    ]);
    expect(codes({ season: "winter", findings })).toEqual([]);
  });
});

describe("what must be reported", () => {
  const chilled = { revive_on_warming: "present", crawlers: "present", worn_wings: "present" } as const;

  it("[DX36] a normal state is named by itself, and not beside beetles that must be reported", () => {
    const alone = answered({ season: "spring", findings: chilled }).value;
    expect(alone.verdict).toMatchObject({ kind: "leading", group: "normal" });
    const beside = answered({ season: "spring", findings: { ...chilled, beetles_or_spined_larvae: "present" } }).value;
    expect(beside.groups[0]).toMatchObject({ id: "normal" });
    expect(beside.mustNotMiss.map(({ report }) => report)).toEqual([true]);
    expect(beside.verdict).toEqual({ kind: "cannot-tell", because: "report-first" });
  });
});
