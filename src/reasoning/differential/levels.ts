/** What counts say of the level of an agent: none, background, clinical. Only the clinical level explains signs. */
import { type ConditionId, levels, type TestId } from "../../knowledge/index.ts";
import type { Problem } from "../../units/index.ts";
import { type LevelLikelihood, trachealCount, varroaCount } from "./count-levels.ts";
import type { ReadCase, TestInput } from "./input.ts";
import { fewBees, foundByLevel, honeyCombMites } from "./judgements.ts";
import type { PooledCount } from "./shared-load.ts";
import { seasonOfTest, type Weakness, weakAnswer, weaknessOf } from "./weakness.ts";
import { weighedTests } from "./weighed-tests.ts";

/** All counts of one agent. */
export interface LevelReading {
  readonly condition: ConditionId;
  /** The tests it comes from; empty when nothing was counted. */
  readonly tests: readonly TestId[];
  readonly likelihood: LevelLikelihood;
  /** True when the agent itself was seen. */
  readonly seen: boolean;
}

/** Levels of the two agents that are counted, from all tests. */
export function levelReadings(read: ReadCase, problems: Problem[]): readonly LevelReading[] {
  return [trachealReading(read, problems), varroaReading(read, problems)];
}

const modelOf = ({ test }: TestInput) => weighedTests[test as TestId];
const namesOf = (tests: readonly TestInput[]) => [...new Set(tests.map(({ test }) => test as TestId))];

/**
 * Samples of one colony that are equally weak are added up and weighed once. Unlike samples share the colony's load, in
 * summer and in the rest of the year each; tests that do not count come on top.
 */
function trachealReading(read: ReadCase, problems: Problem[]): LevelReading {
  const tests = read.tests.filter((test) => modelOf(test)?.model === "tracheal-count");
  const pools = poolsOf(read, tests);
  const positive = sumOf(tests, "positive");
  if (positive === 0) problems.push(...weakCount(read, "tracheal_mites", pools, "examined"));
  const found = read.tests.filter((test) => modelOf(test)?.model === "tracheal-found");
  return {
    condition: "tracheal_mites",
    tests: namesOf([...tests, ...found]),
    likelihood: [
      ...[false, true].map((summer) => {
        const counts = pools.filter(({ inSummer }) => inSummer === summer).map(trachealPool);
        return trachealCount(counts, summer);
      }),
      ...foundLevels("tracheal_mites", read, found, problems),
    ].reduce(together, unknown),
    seen: positive > 0,
  };
}

/** Samples that are equally weak, and taken in summer or not. */
interface Pool {
  readonly tests: readonly TestInput[];
  readonly weakness: Weakness;
  readonly inSummer: boolean;
}

/** The strongest pool first. */
function poolsOf(read: ReadCase, tests: readonly TestInput[]): readonly Pool[] {
  const pools = new Map<string, { tests: TestInput[]; weakness: Weakness; inSummer: boolean }>();
  for (const test of tests) {
    const weakness = weaknessOf(read, [test]);
    const inSummer = seasonOfTest(read, test) === "summer";
    const key = `${weakness.reasons.join(" ")} ${weakness.chance} ${inSummer}`;
    const pool = pools.get(key) ?? { tests: [], weakness, inSummer };
    pool.tests.push(test);
    pools.set(key, pool);
  }
  return [...pools.values()].sort((a, b) => a.weakness.chance - b.weakness.chance);
}

const sumOf = (tests: readonly TestInput[], field: "positive" | "examined" | "mites" | "bees"): number =>
  tests.reduce((sum, test) => sum + (test[field] ?? 0), 0);

const together = (one: LevelLikelihood, other: LevelLikelihood): LevelLikelihood => ({
  none: one.none * other.none,
  background: one.background * other.background,
  clinical: one.clinical * other.clinical,
});

/**
 * Probability at each level of what a test that does not count has found. Such a test sees that the agent is there, not
 * how much of it: found moves the level up to background and hardly beyond.
 */
function foundLevel(read: ReadCase, test: TestInput): LevelLikelihood {
  const rates = foundByLevel[levelKey(test)];
  if (isFound(test)) return rates;
  return foundOrNot(weakened(rates, chanceOf(read, test)))[1];
}

/** Probability of "found" and of "none found" at each level. */
const foundOrNot = (found: LevelLikelihood): readonly [LevelLikelihood, LevelLikelihood] => [
  found,
  { none: 1 - found.none, background: 1 - found.background, clinical: 1 - found.clinical },
];

function levelKey({ test, sequenced }: TestInput): keyof typeof foundByLevel {
  if (test === "pooled-pcr") return sequenced === true ? "pooled-pcr-sequenced" : "pooled-pcr";
  return test === "tracheal-flotation" ? test : "uncap-brood";
}

/** Found what bears on a level: in opened brood only where varroa is what was found. */
const isFound = ({ test, result, which }: TestInput): boolean =>
  result === "found" && (test !== "uncap-brood" || which?.includes("varroa_pms") === true);

/** One answer for each test that does not count, however often it was made: found prevails, else the strongest sample. */
function foundLevels(
  condition: ConditionId,
  read: ReadCase,
  made: readonly TestInput[],
  problems: Problem[],
): readonly LevelLikelihood[] {
  return namesOf(made).map((id) => {
    const own = made.filter(({ test }) => test === id);
    const best = own.find(isFound) ?? own.toSorted((a, b) => chanceOf(read, a) - chanceOf(read, b))[0];
    if (best === undefined) return unknown;
    if (!isFound(best))
      problems.push(
        ...weakAnswer(read, { condition, test: best, bees: null, reasons: weaknessOf(read, [best]).reasons }),
      );
    return foundLevel(read, best);
  });
}

const chanceOf = (read: ReadCase, test: TestInput): number => weaknessOf(read, [test]).chance;

const trachealPool = ({ tests, weakness: { chance } }: Pool): PooledCount => ({
  count: sumOf(tests, "positive"),
  size: sumOf(tests, "examined"),
  chance,
});

function varroaReading(read: ReadCase, problems: Problem[]): LevelReading {
  const tests = read.tests.filter((test) => modelOf(test)?.model === "varroa-count");
  const pools = poolsOf(read, tests);
  const mites = sumOf(tests, "mites");
  if (mites < varroaBackground * hundredsOf(tests)) problems.push(...weakCount(read, "varroa_pms", pools, "bees"));
  const opened = read.tests.filter(({ test }) => test === "uncap-brood");
  return {
    condition: "varroa_pms",
    tests: namesOf([...tests, ...opened]),
    likelihood: [
      ...[false, true].map((summer) =>
        varroaCount(pools.filter(({ inSummer }) => inSummer === summer).map(varroaPool)),
      ),
      ...foundLevels("varroa_pms", read, opened, problems),
    ].reduce(together, unknown),
    seen: mites > 0 || opened.some(isFound),
  };
}

/** Hundreds of bees washed, as bees of the brood nest that lose all their mites. */
const hundredsOf = (tests: readonly TestInput[]): number =>
  tests.reduce((sum, test) => sum + countedBees(test), 0) / 100;

const varroaBackground = levels.varroa_pms.backgroundBelow;

const varroaPool = ({ tests, weakness: { chance } }: Pool): PooledCount => ({
  count: sumOf(tests, "mites"),
  size: hundredsOf(tests),
  chance,
});

/** Bees that a count would take, where the test's record gives no number: judgement. */
const usualBees = { "tracheal-count": 50, "varroa-count": 300 } as const;
/** Counts above this many mites are put together: they all say clinical. */
const mostMites = 120;

/** Every result a test could have in this case, with its probability at each level; none for tests without a level. */
export function possibleLevels(read: ReadCase, test: TestId): readonly LevelLikelihood[] {
  const model = weighedTests[test];
  const planned: TestInput = { test };
  const { chance } = weaknessOf(read, [planned]);
  if (model?.model === "tracheal-count") {
    const n = usualBees["tracheal-count"];
    return Array.from({ length: n + 1 }, (_, count) =>
      trachealCount([{ count, size: n, chance }], read.season === "summer"),
    );
  }
  if (model?.model === "varroa-count" && model.recovery !== null) {
    const hundreds = (usualBees["varroa-count"] / 100) * model.recovery;
    const counts = Array.from({ length: mostMites }, (_, count) => varroaCount([{ count, size: hundreds, chance }]));
    const rest = (level: keyof LevelLikelihood) => Math.max(0, 1 - counts.reduce((sum, each) => sum + each[level], 0));
    return [...counts, { none: rest("none"), background: rest("background"), clinical: rest("clinical") }];
  }
  if (model?.model === "tracheal-found") return foundOrNot(weakened(foundByLevel[levelKey(planned)], chance));
  return [];
}

/** The count that stands at this place among the results of `possibleLevels`; null for a test that does not count. */
export function possibleCount(test: TestId, count: number): (TestInput & { readonly test: TestId }) | null {
  const model = weighedTests[test]?.model;
  if (model === "tracheal-count") return { test, positive: count, examined: usualBees[model] };
  return model === "varroa-count" ? { test, mites: count, bees: usualBees[model] } : null;
}

const unknown: LevelLikelihood = { none: 1, background: 1, clinical: 1 };

/** Bees of a wash, each counted by the share of a brood-nest bee's mites that comes down from it. */
export const countedBees = (test: TestInput): number => (test.bees ?? 0) * recoveryOf(test) * shareByPlace(test);

function recoveryOf(test: TestInput): number {
  const model = modelOf(test);
  return test.recovery ?? (model?.model === "varroa-count" ? (model.recovery ?? 1) : 1);
}

const shareByPlace = ({ takenFrom }: TestInput): number =>
  takenFrom === "S" || takenFrom === "E" ? honeyCombMites : 1;

/** With this chance the sample shows what a colony without the agent shows, whatever the level. */
function weakened({ none, background, clinical }: LevelLikelihood, chance: number): LevelLikelihood {
  const mixed = (likelihood: number) => (1 - chance) * likelihood + chance * none;
  return { none, background: mixed(background), clinical: mixed(clinical) };
}

/** What makes a count that shows little a weak answer: the circumstances of its best sample, or few bees in it. */
function weakCount(
  read: ReadCase,
  condition: ConditionId,
  [best]: readonly Pool[],
  field: "examined" | "bees",
): readonly Problem[] {
  const [test] = best?.tests ?? [];
  if (best === undefined || test === undefined) return [];
  const bees = sumOf(best.tests, field);
  const reasons = [...best.weakness.reasons, ...(bees < fewBees ? ["few-bees"] : [])];
  return weakAnswer(read, { condition, test, bees, reasons });
}
