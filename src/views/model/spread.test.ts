/** "Only one colony" and "most colonies" of an apiary, from the answers on record. */
import { describe, expect, it } from "vitest";
import { colony, following, opened, see, today } from "../../../tests/case-story.ts";
import { wholeApiary } from "../../casebook/index.ts";
import { colonyStateDraft } from "./index.ts";
import { spreadOf } from "./spread.ts";

type Look = readonly [number, "crawlers" | "k_wing", "present" | "absent", string?];

const start = opened();
const { casebook: empty } = following(start);

/** What is said of a colony by its number, or of the whole apiary of five. */
const spread = (of: number | "apiary", ...looks: readonly Look[]) => {
  const { casebook, state } = following(
    start,
    ...looks.map(([number, ...look]) => see(start.caseId, colony(empty, number), ...look)),
  );
  return spreadOf(casebook, state, of === "apiary" ? wholeApiary : colony(empty, of));
};

const others = [2, 3, 4, 5] as const;

describe("how many colonies are struck", () => {
  it("only one: where every other was looked at for its sign and shows none", () => {
    const one: Look = [1, "crawlers", "present"];
    const well = others.map((number): Look => [number, "crawlers", "absent"]);
    for (const of of [1, "apiary"] as const) {
      expect(spread(of, one, ...well)).toEqual({ single_colony: "present" });
      expect(spread(of, one, ...well.slice(1))).toEqual({});
    }
    expect(spread(2, one, ...well)).toEqual({});
    const otherSign = others.map((number): Look => [number, "k_wing", "absent"]);
    expect(spread(1, one, ...otherSign)).toEqual({});
  });

  it("most: where half or more show one and the same sign, the others looked at or not", () => {
    const three = [1, 2, 3].map((number): Look => [number, "crawlers", "present"]);
    for (const of of [1, 3, "apiary"] as const) expect(spread(of, ...three)).toEqual({ most_colonies: "present" });
    expect(spread(1, ...three.slice(1))).toEqual({});
    expect(spread(4, ...three)).toEqual({});
    expect(spread(1, ...three.slice(0, 2))).toEqual({});
  });

  it("signs of different trouble do not add up", () => {
    const looks: readonly Look[] = [
      [1, "crawlers", "present"],
      [2, "crawlers", "present"],
      [3, "k_wing", "present"],
    ];
    for (const of of [1, 3, "apiary"] as const) expect(spread(of, ...looks)).toEqual({});
  });

  it("a dead neighbour, one looked at long ago, and a second one in trouble are not well", () => {
    const one: Look = [1, "crawlers", "present"];
    const well = (on = today) => others.map((number): Look => [number, "crawlers", "absent", on]);
    expect(spread(1, one, ...well("2026-01-31"))).toEqual({ single_colony: "present" });
    expect(spread(1, one, ...well("2025-04-02"))).toEqual({});
    expect(spread("apiary", one, ...well(), [2, "k_wing", "present"])).toEqual({});
    const dead: Parameters<typeof following>[1] = (casebook) =>
      others.map((number) =>
        colonyStateDraft(casebook.cases[start.caseId] as never, colony(empty, number), { state: "dead", on: today }),
      );
    const { casebook, state } = following(
      start,
      ...[one, ...well()].map(([number, ...look]) => see(start.caseId, colony(empty, number), ...look)),
      dead,
    );
    expect(spreadOf(casebook, state, colony(empty, 1))).toEqual({});
  });

  it("what was answered for a day after a death does not count", () => {
    const dead: Parameters<typeof following>[1] = (casebook) =>
      [2, 3].map((number) =>
        colonyStateDraft(casebook.cases[start.caseId] as never, colony(empty, number), {
          ...{ state: "dead", on: today, diedOn: "2026-02-20" },
        }),
      );
    const looks = [1, 2, 3].map((number) => see(start.caseId, colony(empty, number), "crawlers", "present"));
    const { casebook, state } = following(start, ...looks, dead);
    expect(spreadOf(casebook, state, colony(empty, 1))).toEqual({});
  });

  it("at the same time is within 30 days", () => {
    const looks = (on: string): readonly Look[] => [
      [1, "crawlers", "present", "2026-01-31"],
      [2, "crawlers", "present", "2026-01-31"],
      [3, "crawlers", "present", on],
    ];
    expect(spread("apiary", ...looks("2026-03-02"))).toEqual({ most_colonies: "present" });
    expect(spread("apiary", ...looks("2026-03-03"))).toEqual({});
  });
});
