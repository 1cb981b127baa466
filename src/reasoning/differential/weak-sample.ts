/** What a sample that says less was, and what its test asks for: the two sides of each weakness. */
import type { TestId } from "../../knowledge/index.ts";
import type { ReadCase, TestInput } from "./input.ts";
import { controlWeakensDays, fewBees, residueHalfLife } from "./judgements.ts";
import { weighedTests } from "./weighed-tests.ts";
import { words } from "./wrong-value.ts";

/** A sample with what is known of it. */
export interface WeakSample {
  readonly test: TestInput;
  readonly season: ReadCase["season"];
  /** Bees in all samples like it; null where they are not counted. */
  readonly bees: number | null;
}

type Side = string | ((sample: WeakSample) => string);

const seasons: readonly ReadCase["season"][] = ["winter", "spring", "summer", "autumn"];
const places = ["S", "E", "B", "F", "D"] as const;
const modelOf = ({ test }: WeakSample) => weighedTests[test.test as TestId];

/** For each reason what was given and what is expected. */
const sides: Readonly<Record<string, { readonly given: Side; readonly expected: Side }>> = {
  summer: { given: "summer", expected: "winter, spring or autumn" },
  "dead-when-taken": { given: "bees dead when taken", expected: "bees alive when taken" },
  "after-control": {
    given: ({ test }) => `${test.daysSinceControl} days after a control`,
    expected: `more than ${controlWeakensDays} days after a control`,
  },
  "out-of-season": {
    given: ({ season }) => season,
    expected: (sample) => {
      const model = modelOf(sample);
      const weak = model?.model === "found" ? model.weakSeasons : [];
      return words(seasons.filter((each) => !weak.includes(each)));
    },
  },
  "wrong-bees": {
    given: ({ test }) => `bees taken from ${test.takenFrom}`,
    expected: (sample) =>
      `bees taken from ${words(places.filter((each) => modelOf(sample)?.wrongPlaces?.includes(each) !== true))}`,
  },
  "kept-dry": { given: "kept dry", expected: "kept fresh, frozen or in alcohol" },
  late: {
    given: ({ test }) => `frozen after ${test.daysUntilFrozen} days`,
    expected: `frozen within ${residueHalfLife.sureDays} day`,
  },
  "freezing-unsaid": {
    given: "days until frozen not given",
    expected: `frozen within ${residueHalfLife.sureDays} day`,
  },
  "few-bees": { given: ({ bees }) => `${bees} bees`, expected: `${fewBees} bees or more` },
};

/** Both sides of every reason, in the order of the reasons. */
export function sidesOf(
  reasons: readonly string[],
  sample: WeakSample,
): { readonly given: string; readonly expected: string } {
  const own = reasons.flatMap((reason) => sides[reason] ?? []);
  const said = (side: "given" | "expected") =>
    own.map((each) => (typeof each[side] === "string" ? each[side] : each[side](sample))).join("; ");
  return { given: said("given"), expected: said("expected") };
}
