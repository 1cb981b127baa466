/** Draws of everything judged: grades, prior odds, carriage. Each number of a draw is fixed by seed, draw and name. */
import { conditionIds, type FindingId } from "../../knowledge/index.ts";
import { philox } from "../../numerics/index.ts";
import type { CaseModel, CaseNumbers } from "./case-model.ts";
import { spread } from "./judgements.ts";
import { signIds } from "./network-for.ts";
import { curvePoints, shareAt, shareCurve } from "./share-curve.ts";

/** What a draw has to fill in; reckoned once for all draws of a case. */
export interface DrawPlan {
  readonly seed: number;
  /** Stated numbers of all kinds, one kind after the other in the order of `kinds`. */
  readonly stated: Float64Array;
  /** Where each kind begins, and where the last one ends. */
  readonly starts: readonly number[];
  /** For each drawn number: its name, sorted, so that neighbours share a block of random words. */
  readonly names: Int32Array;
  /** Where it stands among the stated numbers. */
  readonly places: Int32Array;
  /** Where the curve of a share begins among `curves`; −1 for what is drawn as a factor. */
  readonly curveStarts: Int32Array;
  readonly curves: Float64Array;
  /** Of what is drawn as a factor: log of the stated number, and standard deviation of the log. */
  readonly centres: Float64Array;
  readonly spreads: Float64Array;
}

const kinds = ["odds", "healthy", "rates", "circumstanceRates", "circumstanceHealthy", "carriage"] as const;

/**
 * Names of drawn numbers: conditions first, then a block of rows for each sign, circumstance and test, each kind from a
 * base of its own, so that a further test changes no draw of a sign.
 */
const rows = 64;
const findingBase = 1;
const circumstanceBase = 80;
const testBase = 1000;
const carriageName = 2 ** 20;

/**
 * The plan: grades are beta shares with the stated one as their mean, prior odds and carriage normal in logs. Only
 * pairs with a looked-for finding are drawn; the others stay as stated, since they bear only on how findings of a group
 * go together. A pair that is stated to have no influence is not in the network and has none in any draw.
 * `originalFinding` names the findings of the whole network, so that a number keeps its name whatever was looked for.
 */
export function drawPlan(model: CaseModel, stated: CaseNumbers, originalFinding: readonly number[]): DrawPlan {
  const { network, circumstances, present, absent } = model;
  const looked = new Set([...present, ...absent]);
  const starts = [0];
  for (const kind of kinds) starts.push((starts.at(-1) ?? 0) + stated[kind].length);
  const entries: { name: number; place: number; value: number; isShare: boolean; sd: number }[] = [];
  const add = (kind: (typeof kinds)[number], at: number, name: number, sd: number) => {
    const isShare = kind !== "odds" && kind !== "carriage";
    entries.push({ name, place: (starts[kinds.indexOf(kind)] ?? 0) + at, value: stated[kind][at] ?? 0, isShare, sd });
  };
  // The healthy rate has the name after the last published condition; a programme's own conditions come after it.
  const row = (finding: number, condition: number) =>
    (findingBase + finding) * rows + condition + (condition < conditionIds.length ? 0 : 1);
  const healthyRow = (finding: number) => (findingBase + finding) * rows + conditionIds.length;
  const named = (finding: number) => {
    const original = originalFinding[finding] ?? 0;
    return original < signIds.length ? original : testBase + original;
  };
  const circumstance = (id: FindingId) => circumstanceBase + model.evidence.findingIds.indexOf(id);
  for (const [at, condition] of network.conditions.entries()) {
    add("odds", at, at, condition.spread ?? spread.priorOdds);
  }
  for (const finding of looked) {
    add("healthy", finding, healthyRow(named(finding)), network.findings[finding]?.spread ?? spread.grade);
  }
  for (const [at, { condition, finding, spread: sd = spread.grade }] of network.pairs.entries()) {
    if (looked.has(finding)) add("rates", at, row(named(finding), condition), sd);
  }
  for (const [at, pair] of circumstances.entries()) {
    const { condition, finding, spread: sd = spread.grade, healthySpread = spread.grade } = pair;
    add("circumstanceRates", at, row(circumstance(finding), condition), sd);
    // One name for all pairs of a circumstance: its healthy rate is one number.
    add("circumstanceHealthy", at, healthyRow(circumstance(finding)), healthySpread);
  }
  for (const at of stated.carriage.keys()) add("carriage", at, carriageName + at, spread.carriage);
  entries.sort((a, b) => a.name - b.name);
  const curves = new Map<Float64Array, number>();
  const curveStarts = entries.map(({ value, isShare, sd }) => {
    if (!isShare) return -1;
    const curve = shareCurve(value, sd);
    const start = curves.get(curve) ?? curves.size * curvePoints;
    curves.set(curve, start);
    return start;
  });
  return {
    seed: model.read.seed,
    stated: Float64Array.from(kinds.flatMap((kind) => [...stated[kind]])),
    starts,
    names: Int32Array.from(entries, ({ name }) => name),
    places: Int32Array.from(entries, ({ place }) => place),
    curveStarts: Int32Array.from(curveStarts),
    curves: Float64Array.from([...curves.keys()].flatMap((curve) => [...curve])),
    centres: Float64Array.from(entries, ({ value, isShare }) => (isShare ? 0 : Math.log(value))),
    spreads: Float64Array.from(entries, ({ sd }) => sd),
  };
}

/** Draw number `draw`, 0 or more. */
export function drawn(plan: DrawPlan, draw: number): CaseNumbers {
  const { seed, stated, starts, names, places, curveStarts, curves, centres, spreads } = plan;
  const numbers = stated.slice();
  const normals = new Float64Array(4);
  let block = -1;
  for (let index = 0; index < names.length; index++) {
    const name = names[index] as number;
    if (name >> 2 !== block) {
      block = name >> 2;
      fillNormals(normals, block, draw, seed);
    }
    const z = normals[name & 3] as number;
    const from = curveStarts[index] as number;
    numbers[places[index] as number] =
      from < 0 ? Math.exp((centres[index] as number) + (spreads[index] as number) * z) : shareAt(curves, from, z);
  }
  const kind = (at: number) => numbers.subarray(starts[at], starts[at + 1]);
  return {
    odds: kind(0),
    healthy: kind(1),
    rates: kind(2),
    circumstanceRates: kind(3),
    circumstanceHealthy: kind(4),
    carriage: kind(5),
  };
}

/** Four standard normal numbers from one block of random words, two by two. @source Box & Muller 1958 */
function fillNormals(into: Float64Array, block: number, draw: number, seed: number): void {
  const words = philox([block, draw, 0, 0], [seed >>> 0, Math.floor(seed / 2 ** 32)]);
  for (let pair = 0; pair < 4; pair += 2) {
    const radius = Math.sqrt(-2 * Math.log(((words[pair] as number) + 0.5) / 2 ** 32));
    const angle = (2 * Math.PI * (words[pair + 1] as number)) / 2 ** 32;
    into[pair] = radius * Math.cos(angle);
    into[pair + 1] = radius * Math.sin(angle);
  }
}
