/** The bare network of the method, for networks of one's own: posteriors, likeliest states, and what to look at next. */
import { answered, blocked, ensure, problem, type Result } from "../../units/index.ts";
import { bestSets, byProbability } from "./best-first.ts";
import { expand } from "./expansion.ts";
import { findingsOnly, type Network, type NetworkEvidence } from "./network.ts";
import { type Parameters, parametersOf } from "./parameters.ts";
import { bearableError, tablesLimit } from "./posterior.ts";
import { sharesOfSets } from "./sets-posterior.ts";
import { termsOf } from "./terms.ts";
import { unionTables } from "./union-tables.ts";

/** A network of independent conditions and findings. */
export interface NoisyOrNetwork {
  /** Prior probability of each condition, 0 < p < 1. */
  readonly prior: readonly number[];
  /** Probability that a condition brings a finding above the leak: one row per condition, one entry per finding. */
  readonly link: readonly (readonly number[])[];
  /** Probability of each finding with no condition. */
  readonly leak: readonly number[];
  /** Findings looked for, by index: true when present. */
  readonly evidence: ReadonlyMap<number, boolean>;
}

/** Posterior of each condition, and the probability of the evidence. */
export interface NoisyOrPosterior {
  readonly evidenceProbability: number;
  readonly posterior: readonly number[];
}

/**
 * Posterior by the signed sum over subsets of the present findings: exact over all sets of conditions.
 *
 * Unlikely evidence makes the signed sum cancel. What is lost is measured; where it is too much the tables, in which
 * nothing cancels, take its place up to sixteen present findings, and beyond that no answer is given.
 *
 * @returns NoisyOrPosterior; or `evidence-contradicts-model`, `signed-sum-cancels`
 * @throws DomainError when a probability lies outside its range
 * @source Heckerman 1989 (abstract seen)
 * @example
 * quickscore({ prior: [0.2], link: [[0.5]], leak: [0], evidence: new Map([[0, true]]) }).value.evidenceProbability  // → 0.1
 * quickscore({ prior: [0.2], link: [[0]], leak: [0], evidence: new Map([[0, true]]) }).problems[0].code  // → evidence-contradicts-model
 */
export function quickscore(given: NoisyOrNetwork): Result<NoisyOrPosterior> {
  const { parameters, evidence, norm } = asNetwork(given);
  const signed = expand(parameters, termsOf(parameters, evidence));
  const fits = evidence.present.length <= tablesLimit;
  const sums = signed.relativeError <= bearableError || !fits ? signed : unionTables(parameters, evidence);
  if (!(sums.total > 0) || sums.relativeError >= 1) return contradiction(given);
  if (sums.relativeError > bearableError) {
    const slots = { error: sums.relativeError, findings: evidence.present.length };
    return blocked(problem("signed-sum-cancels", "blocked", "evidence", { slots }));
  }
  return answered({
    evidenceProbability: sums.total / norm,
    posterior: [...sums.withCondition].map((each) => each / sums.total),
  });
}

/** What no state of the network could bring. */
const contradiction = ({ evidence }: NoisyOrNetwork): Result<never> =>
  blocked(problem("evidence-contradicts-model", "blocked", "evidence", { slots: { findings: evidence.size } }));

/** A finding that was not looked for: how likely it is, and what it would tell. */
export interface FindingOutlook {
  readonly finding: number;
  readonly probability: number;
  /** Expected information on the joint state, in bits. */
  readonly jointBits: number;
  /** Expected fall of the sum of the conditions' own entropies, in bits: another convention, which may rank otherwise. */
  readonly marginalBits: number;
}

/** Everything about a small network. */
export interface NoisyOrAnswer extends NoisyOrPosterior {
  /** Entropy of the joint state, in bits. */
  readonly entropyBits: number;
  readonly noCondition: number;
  /** Likeliest states first: which conditions are present, and how probable. */
  readonly states: readonly { readonly present: readonly number[]; readonly probability: number }[];
  readonly outlook: readonly FindingOutlook[];
}

/** Conditions up to which every state is listed. */
const mostConditions = 14;

/**
 * Posterior, entropy, states and outlook of a network of at most fourteen conditions, every state listed.
 *
 * @returns NoisyOrAnswer, or `evidence-contradicts-model`
 * @throws DomainError with more conditions, or when a probability lies outside its range
 * @source Pearl 1988; Shwe and others 1991 (quick medical reference network)
 * @example
 * noisyOr({ prior: [0.5], link: [[0]], leak: [0.2], evidence: new Map() }).value.outlook[0].jointBits  // → 0
 */
export function noisyOr(given: NoisyOrNetwork): Result<NoisyOrAnswer> {
  const n = given.prior.length;
  ensure(n <= mostConditions, "prior", n, `at most ${mostConditions} conditions`);
  const { parameters, evidence, norm } = asNetwork(given);
  const order = byProbability(parameters.odds);
  const sets = bestSets(parameters, evidence, order, { sets: 2 ** n, weight: Number.POSITIVE_INFINITY });
  if (!(sets.total > 0)) return contradiction(given);
  const share = sets.weight.map((each) => each / sets.total);
  const members = (set: number): number[] => {
    const found: number[] = [];
    for (let each = set; each > 0; each = sets.parent[each] as number) found.push(sets.added[each] as number);
    return found.sort((a, b) => a - b);
  };
  const listed = [...share.keys()].map((set) => ({ present: members(set), probability: share[set] as number }));
  const marginals = (weights: Float64Array) => sharesOfSets(weights, sets, n, []).condition;
  const posterior = marginals(share);
  const open = [...given.leak.keys()].filter((finding) => !given.evidence.has(finding));
  return answered({
    evidenceProbability: sets.total / norm,
    posterior: [...posterior],
    entropyBits: entropy(share),
    noCondition: share[0] as number,
    states: listed.sort((a, b) => b.probability - a.probability),
    outlook: open.map((finding) => {
      const absent = Float64Array.from(listed, () => 0);
      for (const set of share.keys()) absent[set] = absentGiven(given, members(set), finding) * (share[set] as number);
      const present = share.map((each, set) => each - (absent[set] as number));
      const [no, yes] = [total(absent), total(present)];
      const after = (of: (weights: Float64Array) => number) =>
        (yes > 0 ? yes * of(present) : 0) + (no > 0 ? no * of(absent) : 0);
      const single = (weights: Float64Array) => marginals(weights).reduce((sum, each) => sum + binaryEntropy(each), 0);
      return {
        finding,
        probability: yes,
        jointBits: fall(entropy(share) - after((weights) => entropy(weights.map((each) => each / total(weights))))),
        marginalBits: fall(single(share) - after(single)),
      };
    }),
  });
}

function asNetwork({ prior, link, leak, evidence }: NoisyOrNetwork): {
  parameters: Parameters;
  evidence: NetworkEvidence;
  norm: number;
} {
  for (const p of prior) ensure(p > 0 && p < 1, "prior", p, "between 0 and 1");
  for (const p of leak) ensure(p >= 0 && p < 1, "leak", p, "from 0 to below 1");
  for (const p of link.flat()) ensure(p >= 0 && p <= 1, "link", p, "from 0 to 1");
  const network: Network = {
    conditions: prior.map((p, index) => ({ id: String(index), odds: p / (1 - p), rollUp: null })),
    findings: leak.map((healthy, index) => ({ id: String(index), healthy, group: null })),
    pairs: link.flatMap((row, condition) =>
      row.map((each, finding) => ({
        condition,
        finding,
        rate: 1 - (1 - (leak[finding] ?? 0)) * (1 - each),
        suppresses: false,
      })),
    ),
    blocks: [],
    nothingWrong: null,
    dependence: 0,
  };
  const looked = (state: boolean) =>
    [...evidence].filter(([, present]) => present === state).map(([finding]) => finding);
  return {
    parameters: parametersOf(network),
    evidence: findingsOnly(network, looked(true), looked(false)),
    norm: prior.reduce((product, p) => product / (1 - p), 1),
  };
}

const absentGiven = ({ link, leak }: NoisyOrNetwork, present: readonly number[], finding: number): number =>
  present.reduce((product, condition) => product * (1 - (link[condition]?.[finding] ?? 0)), 1 - (leak[finding] ?? 0));

/** No result raises the entropy that is expected after it: a fall below 0 by rounding is 0. */
const fall = (bits: number): number => (bits < 0 && bits > -1e-12 ? 0 : bits);

const total = (weights: Float64Array): number => weights.reduce((sum, each) => sum + each, 0);
const plogp = (p: number): number => (p > 0 ? -p * Math.log2(p) : 0);
const entropy = (share: Float64Array): number => share.reduce((sum, each) => sum + plogp(each), 0);
const binaryEntropy = (p: number): number => plogp(p) + plogp(1 - p);
