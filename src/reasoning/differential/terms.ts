/** Evidence written as a signed sum of products over conditions: the form in which all sets can be summed exactly. */
import type { NetworkEvidence } from "./network.ts";
import type { Parameters } from "./parameters.ts";

/** One group of findings as a signed sum: choose one option a group, multiply, and add up over all choices. */
export interface Level {
  readonly group: number;
  readonly options: number;
  /** Sign times the leak's part, one per option. */
  readonly coefficient: Float64Array;
  /** Part of each condition when present; entry `option * conditions + condition`. */
  readonly factor: Float64Array;
}

/** Evidence ready to be summed. */
export interface Terms {
  /** Part of every choice: the leak of groups in which everything looked for was absent. */
  readonly constant: number;
  /** Odds of each condition, times what tests, circumstances and those absent findings say of it. */
  readonly odds: Float64Array;
  readonly levels: readonly Level[];
}

/** What was looked for in one group. */
export interface GroupEvidence {
  readonly group: number;
  readonly present: readonly number[];
  /** Absent, and no condition makes it rarer. */
  readonly absent: readonly number[];
  /** Absent, and some condition makes it rarer. */
  readonly absentSuppressed: readonly number[];
}

/** The evidence by group, groups without a looked-for finding left out. */
export function byGroup(parameters: Parameters, evidence: NetworkEvidence): readonly GroupEvidence[] {
  const groups = new Map<number, { present: number[]; absent: number[]; absentSuppressed: number[] }>();
  const of = (finding: number) => {
    const group = parameters.groupOf[finding] ?? 0;
    const known = groups.get(group) ?? { present: [], absent: [], absentSuppressed: [] };
    groups.set(group, known);
    return known;
  };
  for (const finding of evidence.present) of(finding).present.push(finding);
  for (const finding of evidence.absent) {
    of(finding)[isSuppressed(parameters, finding) ? "absentSuppressed" : "absent"].push(finding);
  }
  return [...groups].map(([group, found]) => ({ group, ...found }));
}

/** Whether any condition makes the finding rarer. */
export function isSuppressed({ conditions, keep }: Parameters, finding: number): boolean {
  for (let at = finding * conditions; at < (finding + 1) * conditions; at++) if ((keep[at] ?? 1) < 1) return true;
  return false;
}

/**
 * Evidence as levels of options.
 *
 * With K the product of the suppressing factors and N the probability that nothing causes the finding, a finding is
 * present with probability K − KN, absent with N where nothing suppresses it, else with 1 − K + KN. N of several
 * findings of a group, and K, are products over the present conditions, so each choice is one product.
 */
export function termsOf(parameters: Parameters, evidence: NetworkEvidence): Terms {
  const { conditions } = parameters;
  const odds = parameters.odds.map((each, condition) => each * (evidence.oddsFactor[condition] ?? 1));
  let constant = 1;
  const levels: Level[] = [];
  for (const found of byGroup(parameters, evidence)) {
    const level = levelOf(parameters, found);
    if (level.options > 1) levels.push(level);
    else {
      constant *= level.coefficient[0] ?? 1;
      for (let condition = 0; condition < conditions; condition++) {
        odds[condition] = (odds[condition] ?? 0) * (level.factor[condition] ?? 1);
      }
    }
  }
  // The longest level last: the innermost loop then runs longest and set-up is paid least often.
  return { constant, odds, levels: levels.sort((a, b) => a.options - b.options) };
}

/** The options of one group. */
export function levelOf(parameters: Parameters, found: GroupEvidence): Level {
  const { conditions } = parameters;
  const options = 2 ** found.present.length * 3 ** found.absentSuppressed.length;
  const coefficient = new Float64Array(options);
  const factor = new Float64Array(options * conditions).fill(1);
  for (let option = 0; option < options; option++) {
    let rest = option;
    let sign = 1;
    const uncaused = [...found.absent];
    const kept = [...found.present];
    for (const finding of found.present) {
      if (rest % 2 === 1) {
        sign = -sign;
        uncaused.push(finding);
      }
      rest = Math.floor(rest / 2);
    }
    for (const finding of found.absentSuppressed) {
      const choice = rest % 3;
      if (choice === 1) sign = -sign;
      if (choice === 2) uncaused.push(finding);
      if (choice !== 0) kept.push(finding);
      rest = Math.floor(rest / 3);
    }
    coefficient[option] = sign * healthyUncaused(parameters, found.group, uncaused);
    multiplyUncaused(
      parameters,
      found.group,
      uncaused,
      factor.subarray(option * conditions, (option + 1) * conditions),
    );
    for (const finding of kept) {
      for (let condition = 0; condition < conditions; condition++) {
        const at = option * conditions + condition;
        factor[at] = (factor[at] ?? 1) * (parameters.keep[finding * conditions + condition] ?? 1);
      }
    }
  }
  return { group: found.group, options, coefficient, factor };
}

/** Probability that the leak brings none of these findings of a group. */
export function healthyUncaused(parameters: Parameters, group: number, findings: readonly number[]): number {
  const gate = parameters.healthyGate[group] ?? 1;
  let product = 1;
  for (const finding of findings) product *= 1 - (parameters.healthy[finding] ?? 0) / gate;
  return 1 - gate + gate * product;
}

/** Multiplies each entry by the probability that the condition brings none of these findings of a group. */
function multiplyUncaused(
  { conditions, gate, link }: Parameters,
  group: number,
  findings: readonly number[],
  into: Float64Array,
): void {
  for (let condition = 0; condition < conditions; condition++) {
    const touch = gate[group * conditions + condition] ?? 1;
    let product = 1;
    for (const finding of findings) product *= 1 - (link[finding * conditions + condition] ?? 0) / touch;
    into[condition] = (into[condition] ?? 1) * (1 - touch + touch * product);
  }
}
