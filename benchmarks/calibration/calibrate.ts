/** Prints whether the differential's ranges and probabilities can be taken at their word, on cases drawn from it. */
import { type Coverage, coverageOf, type Reliability, reliabilityOf, worthSaying } from "./figures.ts";
import { signsLooked } from "./looks.ts";
import { type Drawing, type Saying, simulated } from "./simulated.ts";

/** A way the cases are drawn. */
export interface Scenario {
  readonly name: string;
  /** Limits are held only where the cases are drawn as the differential supposes. */
  readonly isHeld: boolean;
  readonly drawing: Pick<Drawing, "dependence" | "wrongGrades">;
}

/** Ways the cases are drawn. */
export const scenarios: readonly Scenario[] = [
  { name: "drawn as supposed", isHeld: true, drawing: { dependence: null, wrongGrades: 0 } },
  // At 0.85 a second finding of a group adds half as many bits as at 0.7.
  { name: "groups tied twice as strongly", isHeld: false, drawing: { dependence: 0.85, wrongGrades: 0 } },
  { name: "one grade in ten wrong", isHeld: false, drawing: { dependence: null, wrongGrades: 0.1 } },
];

/** What the full run must keep to. */
export const limits = {
  covered: { from: 0.88, to: 0.92 },
  /** By weight over all bins, and in every bin that holds `sayings` or more. */
  error: 0.02,
  sayings: 200,
} as const;

/** Runs all scenarios; true when the limits are kept. */
export function calibrate(cases: number): boolean {
  return scenarios.map((scenario) => report(scenario, cases)).every((isKept) => isKept);
}

/** Runs one scenario and prints what it found; true when its limits are kept or it has none. */
export function report({ name, isHeld, drawing }: Scenario, cases: number): boolean {
  const all = simulated({ cases, seed: 1763, signs: signsLooked, draws: 400, ...drawing });
  console.log(`\n${name}: ${cases} cases, ${signsLooked} signs looked at in each`);
  const single = all.flatMap((each) => each.filter(({ isGroup }) => !isGroup));
  const groups = all.flatMap((each) => each.filter(({ isGroup }) => isGroup));
  const worth = single.filter(({ stated }) => stated >= worthSaying);
  const first = all.map((each) => likeliest(each.filter(({ isGroup }) => !isGroup)));
  const coverages = [
    printed("90 % ranges, every condition", coverageOf(single)),
    printed(`90 % ranges, conditions at ${worthSaying} or more`, coverageOf(worth)),
    printed("90 % ranges, the likeliest condition", coverageOf(first)),
    printed("90 % ranges, groups", coverageOf(groups)),
  ];
  const errors = [
    told("stated probability, every condition", reliabilityOf(single)),
    told(`stated probability, conditions at ${worthSaying} or more`, reliabilityOf(worth)),
    told("stated probability, groups", reliabilityOf(groups)),
    told(`mean over the draws, conditions at ${worthSaying} or more`, reliabilityOf(worth.map(asMean))),
  ];
  if (!isHeld) return true;
  const isCovered = coverages.every(({ covered }) => covered >= limits.covered.from && covered <= limits.covered.to);
  const isReliable = errors.every(
    ({ error, bins }) =>
      error <= limits.error &&
      bins.every(({ n, stated, underDrawn }) => n < limits.sayings || Math.abs(underDrawn - stated) <= limits.error),
  );
  console.log(`limits ${isCovered && isReliable ? "kept" : "MISSED"}`);
  return isCovered && isReliable;
}

const likeliest = (sayings: readonly Saying[]): Saying =>
  sayings.reduce((best, each) => (each.stated > best.stated ? each : best));

/** The mean over the draws in place of what is stated. */
const asMean = (saying: Saying): Saying => ({ ...saying, stated: saying.mean });

const per100 = (share: number): string => (100 * share).toFixed(1);

function printed(what: string, coverage: Coverage): Coverage {
  const { n, covered, below, above } = coverage;
  console.log(`  ${what}: ${per100(covered)} % of ${n} hold it, ${per100(below)} lie below, ${per100(above)} above`);
  return coverage;
}

function told(what: string, reliability: Reliability): Reliability {
  const { n, error, errorToOutcomes, bins } = reliability;
  console.log(`  ${what}: ${error.toFixed(4)} off by weight (${errorToOutcomes.toFixed(4)} by what held), n ${n}`);
  for (const bin of bins.filter((each) => each.n > 0)) {
    const gap = bin.underDrawn - bin.stated;
    console.log(
      `    stated ${bin.stated.toFixed(3)}  under drawn grades ${bin.underDrawn.toFixed(3)}  held ${bin.held.toFixed(3)}  gap ${gap.toFixed(3)}  n ${bin.n}`,
    );
  }
  return reliability;
}
