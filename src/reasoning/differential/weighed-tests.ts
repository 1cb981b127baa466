/** Which tests can be weighed here, and by which model; the others have no figures to weigh them by. */
import { type ConditionId, type FindingGroup, type TestId, tests } from "../../knowledge/index.ts";
import { specificityAboutOne, sporeRates } from "./judgements.ts";

/** A test whose result is a finding with known sensitivity and specificity. */
export interface FoundTest {
  readonly model: "found";
  readonly sensitivity: number;
  readonly specificity: number;
  /** Finding group it shares, when it sees what a finding sees. */
  readonly group: FindingGroup | null;
}

/** How a test is weighed. */
export type TestModel =
  | { readonly model: "tracheal-count" }
  /** `recovery`: share of the mites brought down, where the laboratory has not measured its own. */
  | { readonly model: "varroa-count"; readonly recovery: number }
  | { readonly model: "spores" }
  | FoundTest;

/** The middle of a figure or span of the knowledge; the known end where the other is open. */
function known(id: TestId, which: "sensitivity" | "specificity"): number | null {
  const figure = tests[id][which];
  if (figure === null) return null;
  if (figure.kind === "figure") return figure.value;
  const ends = [figure.low, figure.high].filter((end) => end !== null);
  return ends.length === 0 ? null : ends.reduce((sum, end) => sum + end, 0) / ends.length;
}

const found = (id: TestId, group: FindingGroup | null = null): FoundTest => ({
  model: "found",
  sensitivity: known(id, "sensitivity") ?? 0,
  specificity: known(id, "specificity") ?? specificityAboutOne,
  group,
});

/** Tests that are weighed. The rest are kept and said to have no figures. */
export const weighedTests: Readonly<Partial<Record<TestId, TestModel>>> = {
  "tracheal-dissection": { model: "tracheal-count" },
  "thoracic-disc": { model: "tracheal-count" },
  "varroa-wash": { model: "varroa-count", recovery: known("varroa-wash", "sensitivity") ?? 1 },
  "sugar-roll": { model: "varroa-count", recovery: known("sugar-roll", "sensitivity") ?? 1 },
  "spore-count": { model: "spores" },
  "gut-pull": found("gut-pull"),
  // The matchstick test looks at what the finding "ropy thread" looks at.
  "rope-test": found("rope-test", "brood_afb"),
  "afb-strip": found("afb-strip"),
  "efb-strip": found("efb-strip"),
  "tubule-squash": found("tubule-squash"),
  "bump-test": found("bump-test"),
};

/** A finding of the network that stands for a test's result. */
export interface TestFinding {
  readonly id: string;
  readonly test: TestId;
  readonly healthy: number;
  readonly rate: number;
  readonly conditions: readonly ConditionId[];
  readonly group: string | null;
}

/** The findings that stand for test results, in a fixed order. */
export const testFindings: readonly TestFinding[] = (Object.keys(weighedTests) as TestId[]).flatMap(
  (test): readonly TestFinding[] => {
    const model = weighedTests[test];
    const { conditions } = tests[test];
    if (model?.model === "found") {
      const { sensitivity, specificity, group } = model;
      return [{ id: test, test, healthy: 1 - specificity, rate: sensitivity, conditions, group }];
    }
    if (model?.model === "spores") {
      const { any, overLine } = sporeRates;
      return [
        { id: "spores-any", test, healthy: any.healthy, rate: any.clinical, conditions, group: null },
        { id: "spores-over-line", test, healthy: overLine.healthy, rate: overLine.clinical, conditions, group: null },
      ];
    }
    return [];
  },
);
