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

/** The options of one group, built up finding by finding. */
export function levelOf(parameters: Parameters, found: GroupEvidence): Level {
  const { conditions } = parameters;
  const options = 2 ** found.present.length * 3 ** found.absentSuppressed.length;
  const partial: Partial = {
    sign: new Float64Array(options),
    healthy: new Float64Array(options),
    uncaused: new Float64Array(options * conditions),
    kept: new Float64Array(options * conditions),
  };
  partial.sign[0] = 1;
  partial.healthy[0] = 1;
  partial.uncaused.fill(1, 0, conditions);
  partial.kept.fill(1, 0, conditions);
  for (const finding of found.absent) copyOption(parameters, partial, finding, { from: 0, to: 0, isUncaused: true });
  let made = 1;
  for (const finding of found.present) {
    for (let from = 0; from < made; from++) {
      copyOption(parameters, partial, finding, { from, to: made + from, isUncaused: true, isKept: true, sign: -1 });
      copyOption(parameters, partial, finding, { from, to: from, isKept: true });
    }
    made *= 2;
  }
  for (const finding of found.absentSuppressed) {
    for (let from = 0; from < made; from++) {
      copyOption(parameters, partial, finding, { from, to: made + from, isKept: true, sign: -1 });
      copyOption(parameters, partial, finding, { from, to: 2 * made + from, isUncaused: true, isKept: true });
    }
    made *= 3;
  }
  return finished(parameters, found.group, partial);
}

/** Options in the making: per option a sign and the leak's product, per option and condition two products. */
interface Partial {
  readonly sign: Float64Array;
  /** Product over the findings that must not be caused, given that the leak touches the group. */
  readonly healthy: Float64Array;
  /** The same for each condition. */
  readonly uncaused: Float64Array;
  /** Product of the suppressing factors. */
  readonly kept: Float64Array;
}

interface Copy {
  readonly from: number;
  readonly to: number;
  readonly isUncaused?: boolean;
  readonly isKept?: boolean;
  readonly sign?: number;
}

/** Option `to` becomes option `from`, with one more finding that must not be caused, that may be suppressed, or both. */
function copyOption(parameters: Parameters, partial: Partial, finding: number, copy: Copy): void {
  const { conditions, groupOf, gate, healthyGate, link, keep } = parameters;
  const { from, to, isUncaused = false, isKept = false, sign = 1 } = copy;
  const group = groupOf[finding] as number;
  const { healthy, uncaused, kept } = partial;
  partial.sign[to] = sign * (partial.sign[from] as number);
  const rate = (parameters.healthy[finding] as number) / (healthyGate[group] as number);
  healthy[to] = (healthy[from] as number) * (isUncaused ? 1 - rate : 1);
  const [source, target, row, open] = [from * conditions, to * conditions, finding * conditions, group * conditions];
  for (let condition = 0; condition < conditions; condition++) {
    const brings = isUncaused ? (link[row + condition] as number) / (gate[open + condition] as number) : 0;
    uncaused[target + condition] = (uncaused[source + condition] as number) * (1 - brings);
    kept[target + condition] = (kept[source + condition] as number) * (isKept ? (keep[row + condition] as number) : 1);
  }
}

/** A condition that does not touch the group brings nothing; one that does, spares each finding by itself. */
function finished({ conditions, gate, healthyGate }: Parameters, group: number, partial: Partial): Level {
  const { sign, healthy, uncaused, kept } = partial;
  const open = healthyGate[group] as number;
  const coefficient = sign.map((each, option) => each * (1 - open + open * (healthy[option] as number)));
  const factor = kept; // reused: each entry is read once, then overwritten
  for (let option = 0; option < sign.length; option++) {
    for (let condition = 0; condition < conditions; condition++) {
      const at = option * conditions + condition;
      const touch = gate[group * conditions + condition] as number;
      factor[at] = (kept[at] as number) * (1 - touch + touch * (uncaused[at] as number));
    }
  }
  return { group, options: sign.length, coefficient, factor };
}
