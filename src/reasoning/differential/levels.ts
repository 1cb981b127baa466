/** What counts say of the level of an agent: none, background, clinical. Only the clinical level explains signs. */
import { type ConditionId, levels, type TestId } from "../../knowledge/index.ts";
import { betaBinomial, binomial, logFactorial, logGamma } from "../../numerics/index.ts";
import { type Problem, problem, type Season, seasonOf } from "../../units/index.ts";
import type { ReadCase, TestInput } from "./input.ts";
import { controlWeakensDays, fewBees, honeyCombMites, trachealShare, varroaLoad, weakSample } from "./judgements.ts";
import { weighedTests } from "./weighed-tests.ts";

/** Probability of a count at each level. */
export interface LevelLikelihood {
  readonly none: number;
  readonly background: number;
  readonly clinical: number;
}

/** All counts of one agent. */
export interface LevelReading {
  readonly condition: ConditionId;
  /** The tests it comes from; empty when nothing was counted. */
  readonly tests: readonly TestId[];
  readonly likelihood: LevelLikelihood;
  /** True when the agent itself was seen. */
  readonly seen: boolean;
}

/** Levels of the two agents that are counted, from all tests but those left out. */
export function levelReadings(
  read: ReadCase,
  problems: Problem[],
  without: TestId | null = null,
): readonly LevelReading[] {
  const tests = read.tests.filter(({ test }) => test !== without);
  return [trachealReading(read, tests, problems), varroaReading(read, tests, problems)];
}

const modelOf = ({ test }: TestInput) => weighedTests[test as TestId];
const namesOf = (tests: readonly TestInput[]) => [...new Set(tests.map(({ test }) => test as TestId))];

/** Samples of one colony share its level, so they are added up and weighed once. */
function trachealReading(read: ReadCase, all: readonly TestInput[], problems: Problem[]): LevelReading {
  const tests = all.filter((test) => modelOf(test)?.model === "tracheal-count");
  const positive = tests.reduce((sum, test) => sum + (test.positive ?? 0), 0);
  const examined = tests.reduce((sum, test) => sum + (test.examined ?? 0), 0);
  const weakness = weaknessOf(read, tests, ["summer", "dead", "control"]);
  if (tests.length > 0 && positive === 0) noteWeakness("tracheal_mites", tests, examined, weakness, problems);
  const inSummer = tests.length > 0 && tests.every((test) => seasonOfTest(read, test) === "summer");
  return {
    condition: "tracheal_mites",
    tests: namesOf(tests),
    likelihood: examined === 0 ? unknown : weakened(trachealCount(positive, examined, inSummer), weakness.chance),
    seen: positive > 0,
  };
}

/** Probability of so many bees with mites among those examined, at each level. */
function trachealCount(positive: number, examined: number, inSummer: boolean): LevelLikelihood {
  const at = (shape: { readonly a: number; readonly b: number }) =>
    betaBinomial({ n: examined, ...shape }).pmf(positive);
  return {
    none: binomial({ n: examined, p: trachealShare.mistaken }).pmf(positive),
    background: at(trachealShare.background),
    clinical: at(inSummer ? trachealShare.clinicalInSummer : trachealShare.clinical),
  };
}

function varroaReading(read: ReadCase, all: readonly TestInput[], problems: Problem[]): LevelReading {
  const tests = all.filter((test) => modelOf(test)?.model === "varroa-count");
  const mites = tests.reduce((sum, test) => sum + (test.mites ?? 0), 0);
  const bees = tests.reduce((sum, test) => sum + (test.bees ?? 0), 0);
  const washed = tests.reduce((sum, test) => sum + countedBees(test), 0) / 100;
  const weakness = weaknessOf(read, tests, ["dead", "control"]);
  if (tests.length > 0 && mites < varroaBackground * washed)
    noteWeakness("varroa_pms", tests, bees, weakness, problems);
  return {
    condition: "varroa_pms",
    tests: namesOf(tests),
    likelihood: bees === 0 ? unknown : weakened(varroaCount(mites, washed), weakness.chance),
    seen: mites > 0,
  };
}

const varroaBackground = levels.varroa_pms.backgroundBelow;

/** Probability of so many mites from so many hundred bees, at each level. */
function varroaCount(mites: number, hundreds: number): LevelLikelihood {
  const { strayPerHundred, background, clinical } = varroaLoad;
  const stray = hundreds * strayPerHundred;
  return {
    none: Math.exp(-stray + mites * Math.log(stray) - logFactorial(mites)),
    background: gammaPoisson(mites, background.shape, background.mean * hundreds),
    clinical: gammaPoisson(mites, clinical.shape, clinical.mean * hundreds),
  };
}

/** Bees that a count would take, where the test's record gives no number: judgement. */
const usualBees = { "tracheal-count": 50, "varroa-count": 300 } as const;
/** Counts above this many mites are put together: they all say clinical. */
const mostMites = 120;

/** Every result a count could have in this case, with its probability at each level; none for tests that do not count. */
export function possibleCounts(read: ReadCase, test: TestId): readonly LevelLikelihood[] {
  const model = weighedTests[test];
  const planned: TestInput = { test };
  if (model?.model === "tracheal-count") {
    const n = usualBees["tracheal-count"];
    const { chance } = weaknessOf(read, [planned], ["summer", "dead", "control"]);
    return Array.from({ length: n + 1 }, (_, positive) =>
      weakened(trachealCount(positive, n, read.season === "summer"), chance),
    );
  }
  if (model?.model === "varroa-count") {
    const { chance } = weaknessOf(read, [planned], ["dead", "control"]);
    const hundreds = (usualBees["varroa-count"] / 100) * model.recovery;
    const counts = Array.from({ length: mostMites }, (_, mites) => weakened(varroaCount(mites, hundreds), chance));
    const rest = (level: keyof LevelLikelihood) => Math.max(0, 1 - counts.reduce((sum, each) => sum + each[level], 0));
    return [...counts, { none: rest("none"), background: rest("background"), clinical: rest("clinical") }];
  }
  return [];
}

const unknown: LevelLikelihood = { none: 1, background: 1, clinical: 1 };

/** Bees of a wash, each counted by the share of a brood-nest bee's mites that comes down from it. */
export const countedBees = (test: TestInput): number => (test.bees ?? 0) * recoveryOf(test) * shareByPlace(test);

function recoveryOf(test: TestInput): number {
  const model = modelOf(test);
  return test.recovery ?? (model?.model === "varroa-count" ? model.recovery : 1);
}

const shareByPlace = ({ takenFrom }: TestInput): number =>
  takenFrom === "S" || takenFrom === "E" ? honeyCombMites : 1;

/** Probability of a count whose mean varies as a gamma variable from colony to colony. */
function gammaPoisson(count: number, shape: number, mean: number): number {
  const log = logGamma(count + shape) - logGamma(shape) - logFactorial(count);
  return Math.exp(log + shape * Math.log(shape / (shape + mean)) + count * Math.log(mean / (shape + mean)));
}

/** With this chance the sample shows what a colony without the agent shows, whatever the level. */
function weakened({ none, background, clinical }: LevelLikelihood, chance: number): LevelLikelihood {
  const mixed = (likelihood: number) => (1 - chance) * likelihood + chance * none;
  return { none, background: mixed(background), clinical: mixed(clinical) };
}

interface Weakness {
  readonly chance: number;
  readonly reasons: readonly string[];
}

type Weakener = "summer" | "dead" | "control";

/** The strongest sample decides: one good sample is not made weak by a bad one beside it. */
function weaknessOf(read: ReadCase, tests: readonly TestInput[], counted: readonly Weakener[]): Weakness {
  const each = tests.map((test): Weakness => {
    const applies: Readonly<Record<Weakener, boolean>> = {
      summer: seasonOfTest(read, test) === "summer",
      dead: !(test.aliveWhenTaken ?? (read.colonyState !== "dead" && test.takenFrom !== "D")),
      control: test.daysSinceControl !== undefined && test.daysSinceControl <= controlWeakensDays,
    };
    const reasons = counted.filter((reason) => applies[reason]);
    const shares = { summer: weakSample.summer, dead: weakSample.deadWhenTaken, control: weakSample.afterControl };
    return { reasons, chance: 1 - reasons.reduce((product, reason) => product * (1 - shares[reason]), 1) };
  });
  return each.reduce((best, next) => (next.chance < best.chance ? next : best), each[0] ?? { chance: 0, reasons: [] });
}

/** Season of the test's own day where it can be told, else of the case. */
function seasonOfTest(read: ReadCase, test: TestInput): Season {
  return test.date !== undefined && read.latitude !== null ? seasonOf(test.date, read.latitude) : read.season;
}

function noteWeakness(
  condition: ConditionId,
  tests: readonly TestInput[],
  bees: number,
  { reasons }: Weakness,
  problems: Problem[],
): void {
  const all = [...reasons, ...(bees < fewBees ? ["few-bees"] : [])];
  if (all.length === 0) return;
  problems.push(
    problem("weak-answer", "warned", null, {
      slots: { condition, test: tests[0]?.test ?? "", bees, reasons: all.join(" ") },
    }),
  );
}
