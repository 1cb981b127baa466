/** What makes a test's "none found" say less, and how much less. */
import { type TestId, tests } from "../../knowledge/index.ts";
import { type Problem, problem, type Season, seasonOf } from "../../units/index.ts";
import type { ReadCase, TestInput } from "./input.ts";
import { controlWeakensDays, residueHalfLife, weakSample } from "./judgements.ts";
import { sidesOf } from "./weak-sample.ts";
import { type Weakener, weighedTests } from "./weighed-tests.ts";

/** With `chance` the sample shows what a colony without the agent shows, whatever is there; `reasons` say why. */
export interface Weakness {
  readonly chance: number;
  readonly reasons: readonly string[];
}

/** The strongest sample decides: one good sample is not made weak by a bad one beside it. */
export function weaknessOf(read: ReadCase, made: readonly TestInput[]): Weakness {
  const [first = { chance: 0, reasons: [] }, ...rest] = made.map((test) => weaknessOfOne(read, test));
  return rest.reduce((best, next) => (next.chance < best.chance ? next : best), first);
}

function weaknessOfOne(read: ReadCase, test: TestInput): Weakness {
  const model = weighedTests[test.test as TestId];
  const season = seasonOfTest(read, test);
  const applies: Readonly<Record<Exclude<Weakener, "late">, boolean>> = {
    summer: season === "summer",
    "dead-when-taken": !(test.aliveWhenTaken ?? (read.colonyState !== "dead" && test.takenFrom !== "D")),
    "after-control": test.daysSinceControl !== undefined && test.daysSinceControl <= controlWeakensDays,
    "out-of-season": model?.model === "found" && model.weakSeasons.includes(season),
    "wrong-bees": test.takenFrom !== undefined && model?.wrongPlaces?.includes(test.takenFrom) === true,
    "kept-dry": test.kept === "dry",
  };
  const counted = model?.weakenedBy ?? [];
  const chances = counted.flatMap((reason): readonly { reason: string; chance: number }[] => {
    if (reason === "late") return lateness(test);
    return applies[reason] ? [{ reason, chance: weakSample[reason] }] : [];
  });
  return {
    reasons: chances.map(({ reason }) => reason),
    chance: 1 - chances.reduce((product, { chance }) => product * (1 - chance), 1),
  };
}

/** Poison that has gone before the bees came into the freezer. */
function lateness({ daysUntilFrozen }: TestInput): readonly { reason: string; chance: number }[] {
  const { sureDays, halvedEvery, unsaidDays } = residueHalfLife;
  const chance = 1 - 0.5 ** (Math.max(0, (daysUntilFrozen ?? unsaidDays) - sureDays) / halvedEvery);
  return chance > 0 ? [{ reason: daysUntilFrozen === undefined ? "freezing-unsaid" : "late", chance }] : [];
}

/** Season of the test's own day where it can be told, else of the case. */
export function seasonOfTest(read: ReadCase, test: TestInput): Season {
  return test.date !== undefined && read.latitude !== null ? seasonOf(test.date, read.latitude) : read.season;
}

/** How much less each found-or-not test says in this case: as it was made, or would be. */
export function testWeaknesses(read: ReadCase): Readonly<Partial<Record<TestId, number>>> {
  const ids = (Object.keys(weighedTests) as TestId[]).filter(isFinding);
  return Object.fromEntries(
    ids.map((id) => {
      const made = read.tests.filter(({ test }) => test === id);
      // What was found was found, however weak the sample.
      if (made.some(hasFound)) return [id, 0];
      return [id, weaknessOf(read, made.length > 0 ? made : [{ test: id }]).chance];
    }),
  );
}

/** Whether its result stands as a finding: found or not, or spores or none. */
const isFinding = (id: TestId): boolean => ["found", "spores"].includes(weighedTests[id]?.model ?? "");

const hasFound = ({ result, sporesMillionsPerBee = 0 }: TestInput): boolean =>
  result === "found" || sporesMillionsPerBee > 0;

/** Says of each found-or-not test that found nothing what makes its answer weak: of its strongest sample. */
export function noteWeakFinds(read: ReadCase, problems: Problem[]): void {
  const ids = [...new Set(read.tests.map(({ test }) => test as TestId))];
  for (const id of ids) {
    const made = read.tests.filter(({ test }) => test === id);
    if (!isFinding(id) || made.some(hasFound)) continue;
    const weak = made.map((test) => ({ test, weakness: weaknessOfOne(read, test) }));
    const [best] = weak.sort((one, other) => one.weakness.chance - other.weakness.chance);
    if (best === undefined) continue;
    const { test, weakness } = best;
    const condition = tests[id].conditions[0] ?? "";
    problems.push(...weakAnswer(read, { condition, test, bees: null, reasons: weakness.reasons }));
  }
}

/** Tells what makes the answer of a test weak, at the sample that decides; nothing where nothing does. */
export function weakAnswer(
  read: ReadCase,
  {
    condition,
    test,
    bees,
    reasons,
  }: {
    readonly condition: string;
    readonly test: TestInput;
    readonly bees: number | null;
    readonly reasons: readonly string[];
  },
): readonly Problem[] {
  if (reasons.length === 0) return [];
  const at = read.testsAt[read.tests.indexOf(test)];
  return [
    problem("weak-answer", "warned", at === undefined ? "tests" : `tests[${at}]`, {
      ...sidesOf(reasons, { test, bees, season: seasonOfTest(read, test) }),
      slots: { condition, test: test.test, ...(bees === null ? {} : { bees }), reasons: reasons.join(" ") },
    }),
  ];
}
