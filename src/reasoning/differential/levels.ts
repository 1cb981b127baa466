/** What counts say of the level of an agent: none, background, clinical. Only the clinical level explains signs. */
import type { ConditionId, TestId } from "../../knowledge/index.ts";
import { betaBinomial, binomial, logFactorial, logGamma } from "../../numerics/index.ts";
import { type Problem, problem, type Season, seasonOf } from "../../units/index.ts";
import type { ReadCase, TestInput } from "./input.ts";
import { controlWeakensDays, fewBees, trachealShare, varroaLoad, weakSample } from "./judgements.ts";
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
  const share = inSummer ? trachealShare.clinicalInSummer : trachealShare.clinical;
  const none = binomial({ n: examined, p: trachealShare.mistaken }).pmf(positive);
  const at = (shape: { readonly a: number; readonly b: number }) =>
    betaBinomial({ n: examined, ...shape }).pmf(positive);
  return {
    condition: "tracheal_mites",
    tests: namesOf(tests),
    likelihood:
      examined === 0
        ? unknown
        : weakened({ none, background: at(trachealShare.background), clinical: at(share) }, weakness.chance),
    seen: positive > 0,
  };
}

function varroaReading(read: ReadCase, all: readonly TestInput[], problems: Problem[]): LevelReading {
  const tests = all.filter((test) => modelOf(test)?.model === "varroa-count");
  const mites = tests.reduce((sum, test) => sum + (test.mites ?? 0), 0);
  const bees = tests.reduce((sum, test) => sum + (test.bees ?? 0), 0);
  // Hundreds of bees, each counted by the share of its mites that came down.
  const washed = tests.reduce((sum, test) => sum + ((test.bees ?? 0) * recoveryOf(test)) / 100, 0);
  const weakness = weaknessOf(read, tests, ["dead", "control"]);
  if (tests.length > 0 && mites < 3 * washed) noteWeakness("varroa_pms", tests, bees, weakness, problems);
  const { strayPerHundred, background, clinical } = varroaLoad;
  const none = Math.exp(-washed * strayPerHundred + mites * Math.log(washed * strayPerHundred) - logFactorial(mites));
  const likelihood = {
    none,
    background: gammaPoisson(mites, background.shape, background.mean * washed),
    clinical: gammaPoisson(mites, clinical.shape, clinical.mean * washed),
  };
  return {
    condition: "varroa_pms",
    tests: namesOf(tests),
    likelihood: bees === 0 ? unknown : weakened(likelihood, weakness.chance),
    seen: mites > 0,
  };
}

const unknown: LevelLikelihood = { none: 1, background: 1, clinical: 1 };

function recoveryOf(test: TestInput): number {
  const model = modelOf(test);
  return test.recovery ?? (model?.model === "varroa-count" ? model.recovery : 1);
}

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
