/** The form of the vignettes and the range of themes they cover. Nothing is asked of the differential here. */
import { describe, expect, it } from "vitest";
import { conditionIds } from "../../../src/knowledge/index.ts";
import { verbNamed } from "../../../src/reasoning/index.ts";
import { type Expectation, type Vignette, vignettes } from "./vignettes.ts";

/** Conditions that an expectation names. */
function named(expectation: Expectation): readonly string[] {
  if (expectation.kind === "leads") return expectation.oneOf;
  return expectation.kind === "in-first" ? expectation.all : [];
}

const faultsOf = (check: (vignette: Vignette) => boolean): readonly string[] =>
  vignettes.filter((vignette) => !check(vignette)).map((vignette) => vignette.id);

describe("the form of a vignette", () => {
  it("has an id of its own in kebab-case", () => {
    expect(faultsOf(({ id }) => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(id))).toEqual([]);
    expect(new Set(vignettes.map(({ id }) => id)).size).toBe(vignettes.length);
  });

  it("is told in at most forty words, as a case or a description", () => {
    expect(faultsOf(({ story }) => story.length > 0 && story.split(/\s+/).length <= 40)).toEqual([]);
    expect(faultsOf(({ form }) => form === "case" || form === "description")).toEqual([]);
  });

  it("names its source, the place in it, and how it was read", () => {
    expect(
      faultsOf(
        ({ source }) =>
          source.title !== "" &&
          source.where !== "" &&
          (source.year === null || (source.year > 1900 && source.year <= 2026)) &&
          (source.read === "memory" || (source.read === "read" && /^https?:\/\//.test(source.address ?? ""))),
      ),
    ).toEqual([]);
  });

  it("can be asked of the differential: the schema takes the input as it stands", () => {
    const { input } = verbNamed("differential") ?? {};
    expect(input).toBeDefined();
    const refused = vignettes.flatMap((vignette) => {
      const read = input?.safeParse(vignette.input);
      return read?.success ? [] : [`${vignette.id}: ${read?.error.message}`];
    });
    expect(refused).toEqual([]);
  });

  it("tells a season, or a day with a latitude", () => {
    expect(
      faultsOf(({ input }) => "season" in input !== "date" in input && "date" in input === "latitude" in input),
    ).toEqual([]);
  });

  it("names known conditions only, and expects nothing that its text does not name", () => {
    const known = new Set<string>(conditionIds);
    expect(
      faultsOf(({ truth, expect: expected, notices }) =>
        [...truth, ...named(expected), ...notices].every((id) => known.has(id)),
      ),
    ).toEqual([]);
    expect(
      faultsOf(({ truth, expect: expected }) => {
        if (expected.kind === "cannot-tell") return true;
        if (expected.kind === "leads") return expected.oneOf.some((id) => truth.includes(id));
        return expected.within >= expected.all.length && expected.all.every((id) => truth.includes(id));
      }),
    ).toEqual([]);
  });

  it("says in its notes what is remembered, and why nobody can tell", () => {
    const isTold = ({ source, expect: expected }: Vignette) => source.read === "read" && expected.kind !== "cannot-tell";
    expect(faultsOf((vignette) => isTold(vignette) || vignette.notes.length > 0)).toEqual([]);
  });
});

describe("the range of the vignettes", () => {
  const having = (check: (vignette: Vignette) => boolean): number => vignettes.filter(check).length;
  const ofTruth = (id: string) => having(({ truth }) => truth.includes(id));

  it("holds at least 26 cases, most of them read", () => {
    expect(vignettes.length).toBeGreaterThanOrEqual(26);
    expect(having(({ source }) => source.read === "read")).toBeGreaterThan(vignettes.length / 2);
  });

  it.each([
    ["tracheal_mites"],
    ["varroa_pms"],
    ["nosema_apis"],
    ["nosema_ceranae"],
    ["chronic_paralysis"],
    ["american_foulbrood"],
    ["european_foulbrood"],
    ["chalkbrood"],
    ["sacbrood"],
    ["starvation"],
    ["small_late_colony"],
    ["queenless"],
    ["laying_workers"],
    ["drone_layer"],
    ["failing_queen"],
    ["acute_poisoning"],
    ["plant_toxicity"],
    ["robbing"],
    ["wax_moth"],
    ["mouse_disturbance"],
    ["winter_damp"],
    ["drone_eviction"],
    ["orientation_flight"],
    ["chilled_or_old_foragers"],
    ["spring_turnover_normal"],
    ["small_hive_beetle"],
  ])("covers %s", (id) => {
    expect(ofTruth(id)).toBeGreaterThan(0);
  });

  it("covers opened bees by count, and K-wings with crawlers that nobody opened", () => {
    const counted = having(({ input }) => (input.tests ?? []).some((test) => (test.examined ?? 0) > 0));
    expect(counted).toBeGreaterThanOrEqual(2);
    const unopened = having(
      ({ input, expect: expected }) =>
        expected.kind === "cannot-tell" &&
        input.findings.k_wing === "present" &&
        input.findings.crawlers === "present" &&
        input.tests === undefined,
    );
    expect(unopened).toBeGreaterThan(0);
  });

  it("covers dead colonies, mixed causes, and cases in which nobody can tell", () => {
    expect(having(({ input }) => input.colony.state === "dead")).toBeGreaterThanOrEqual(4);
    const mixed = having(({ truth, expect: expected }) => truth.length > 1 && expected.kind === "in-first");
    expect(mixed).toBeGreaterThanOrEqual(4);
    expect(having(({ expect: expected }) => expected.kind === "cannot-tell")).toBeGreaterThanOrEqual(5);
  });
});
