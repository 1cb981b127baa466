/** Which tests can be weighed here, and by which model; the others have no figures to weigh them by. */
import { type ConditionId, type FindingGroup, type TestId, tellsApart, tests } from "../../knowledge/index.ts";
import type { Season } from "../../units/index.ts";
import type { TestInput } from "./input.ts";
import { foundRates, harmfulDoseRates, specificityAboutOne, sporeRates } from "./judgements.ts";

/** What can make "none found" say less. */
export type Weakener =
  | "summer"
  | "dead-when-taken"
  | "after-control"
  | "out-of-season"
  | "late"
  | "wrong-bees"
  | "kept-dry";

type Rates = Readonly<Partial<Record<ConditionId, number>>>;

/** A test whose result is a finding: found or not, of one thing or of several. */
export interface FoundTest {
  readonly model: "found";
  /** Probability that it finds each cause. */
  readonly rates: Rates;
  /** Probability that it finds something where the cause does no harm: for all alike, or for each cause. */
  readonly healthy: number | Rates;
  /** Finding group it shares, when it sees what a finding sees. */
  readonly group: FindingGroup | null;
  readonly weakenedBy: readonly Weakener[];
  readonly weakSeasons: readonly Season[];
  readonly wrongPlaces?: never;
}

/** How a test is weighed. */
export type TestModel = (
  | { readonly model: "tracheal-count" }
  /** Found or not, on the level of tracheal mites. */
  | { readonly model: "tracheal-found" }
  /** `recovery`: share of the mites brought down, where the laboratory has not measured its own; null: it must. */
  | { readonly model: "varroa-count"; readonly recovery: number | null }
  | { readonly model: "spores" }
) & {
  readonly weakenedBy: readonly Weakener[];
  /** Places whose bees are not those the test asks for. */
  readonly wrongPlaces?: readonly TestInput["takenFrom"][];
};

/** The middle of a figure or span of the knowledge; the known end where the other is open. */
function known(id: TestId, which: "sensitivity" | "specificity"): number | null {
  const figure = tests[id][which];
  if (figure === null) return null;
  if (figure.kind === "figure") return figure.value;
  const ends = [figure.low, figure.high].filter((end) => end !== null);
  return ends.length === 0 ? null : ends.reduce((sum, end) => sum + end, 0) / ends.length;
}

type Circumstances = Partial<Pick<FoundTest, "group" | "weakenedBy" | "weakSeasons">>;

const found = (rates: Rates, healthy: FoundTest["healthy"], more: Circumstances): FoundTest => ({
  model: "found",
  rates,
  healthy,
  group: null,
  weakenedBy: more.weakSeasons ? ["out-of-season"] : [],
  weakSeasons: [],
  ...more,
});

/** By the test's own figures, the same for each of its conditions. */
const byRecord = (id: TestId, more: Circumstances = {}): FoundTest =>
  found(
    Object.fromEntries(tests[id].conditions.map((condition) => [condition, known(id, "sensitivity") ?? 0])),
    1 - (known(id, "specificity") ?? specificityAboutOne),
    more,
  );

/** By judged figures. */
const byJudgement = (id: keyof typeof foundRates, more: Circumstances = {}): FoundTest =>
  found(foundRates[id].rates, foundRates[id].healthy, more);

const broodless: readonly Season[] = ["winter"];

/** Varroa sits on the young bees of the brood nest: foragers at the entrance are not the bees that a count asks for. */
const varroaWeakness = {
  weakenedBy: ["dead-when-taken", "after-control", "wrong-bees"],
  wrongPlaces: ["F"],
} as const;

/** Tests that are weighed. The rest are kept and said to have no figures. */
export const weighedTests: Readonly<Partial<Record<TestId, FoundTest | TestModel>>> = {
  "tracheal-dissection": { model: "tracheal-count", weakenedBy: ["summer", "dead-when-taken", "after-control"] },
  "thoracic-disc": { model: "tracheal-count", weakenedBy: ["summer", "dead-when-taken", "after-control"] },
  "pooled-pcr": { model: "tracheal-found", weakenedBy: ["summer", "dead-when-taken", "after-control", "kept-dry"] },
  "tracheal-flotation": { model: "tracheal-found", weakenedBy: ["summer", "dead-when-taken", "after-control"] },
  "varroa-wash": {
    model: "varroa-count",
    recovery: known("varroa-wash", "sensitivity"),
    ...varroaWeakness,
  },
  "sugar-roll": {
    model: "varroa-count",
    recovery: known("sugar-roll", "sensitivity"),
    ...varroaWeakness,
  },
  "co2-roll": { model: "varroa-count", recovery: null, ...varroaWeakness },
  "uncap-brood": byJudgement("uncap-brood", { weakenedBy: ["out-of-season", "after-control"], weakSeasons: broodless }),
  "bump-test": byRecord("bump-test", { weakenedBy: ["out-of-season", "after-control"], weakSeasons: broodless }),
  // Spores are counted in older bees, of the entrance or the outer combs, kept fresh, frozen or in alcohol.
  "spore-count": { model: "spores", weakenedBy: ["wrong-bees", "kept-dry"], wrongPlaces: ["B"] },
  "gut-pull": byRecord("gut-pull"),
  "species-pcr": byJudgement("species-pcr", { weakenedBy: ["kept-dry"] }),
  "tubule-squash": byRecord("tubule-squash", { weakSeasons: ["summer", "autumn", "winter"] }),
  // The matchstick test looks at what the finding "ropy thread" looks at.
  "rope-test": byRecord("rope-test", { group: "brood_afb" }),
  "milk-test": byJudgement("milk-test"),
  "afb-strip": byRecord("afb-strip"),
  "efb-strip": byRecord("efb-strip"),
  "smear-microscopy": byJudgement("smear-microscopy"),
  "culture-pcr": byJudgement("culture-pcr"),
  "virus-panel": byJudgement("virus-panel"),
  "residue-screen": byJudgement("residue-screen", { weakenedBy: ["late"] }),
  "test-frame": byJudgement("test-frame", { weakSeasons: broodless }),
  "emergence-hold": byJudgement("emergence-hold", { weakSeasons: ["spring"] }),
};

/** The group of findings that a test shares, since it sees what a finding sees; null for most. */
export const groupOfTest = (id: TestId): FindingGroup | null => {
  const model = weighedTests[id];
  return model?.model === "found" ? model.group : null;
};

/** A finding of the network that stands for a test's result. */
export interface TestFinding {
  readonly id: string;
  readonly test: TestId;
  /** The one thing it is about, where the result names what was found; null: anything the test finds. */
  readonly which: ConditionId | null;
  readonly healthy: number;
  readonly rates: Rates;
  readonly group: string | null;
}

/** The finding "at a dose that harms". */
export const harmfulDose = "residue-screen:harmful-dose";

/** The findings that stand for test results, in a fixed order. */
export const testFindings: readonly TestFinding[] = (Object.keys(weighedTests) as TestId[]).flatMap(
  (test): readonly TestFinding[] => {
    const model = weighedTests[test];
    if (model?.model === "found") return findingsOf(test, model);
    if (model?.model === "spores") {
      const { any, overLine } = sporeRates;
      const alike = (rate: number): Rates => Object.fromEntries(tests[test].conditions.map((id) => [id, rate]));
      const shared = { test, which: null, group: null };
      return [
        { ...shared, id: "spores-any", healthy: any.healthy, rates: alike(any.clinical) },
        { ...shared, id: "spores-over-line", healthy: overLine.healthy, rates: alike(overLine.clinical) },
      ];
    }
    return [];
  },
);

/** Anything found; then, where the result names it, each thing by itself; a harmful dose beside any residue. */
function findingsOf(test: TestId, { rates, healthy, group }: FoundTest): readonly TestFinding[] {
  const healthyOf = (id: ConditionId) => (typeof healthy === "number" ? healthy : (healthy[id] ?? 0));
  const all = Object.keys(rates) as ConditionId[];
  const none = typeof healthy === "number" ? 1 - healthy : all.reduce((rest, id) => rest * (1 - healthyOf(id)), 1);
  const any: TestFinding = { id: test, test, which: null, healthy: 1 - none, rates, group };
  const each = tellsApart(test).flatMap((id): readonly TestFinding[] => {
    const rate = rates[id];
    if (rate === undefined) return [];
    return [{ id: `${test}:${id}`, test, which: id, healthy: healthyOf(id), rates: { [id]: rate }, group }];
  });
  const dose: readonly TestFinding[] =
    test === "residue-screen" ? [{ id: harmfulDose, test, which: null, group: null, ...harmfulDoseRates }] : [];
  return [any, ...each, ...dose];
}
