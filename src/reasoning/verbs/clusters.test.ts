/** Several colonies, asked: figures of other programs come out, and what cannot be said is a notice, not a zero. */
import { expect, it } from "vitest";
import { answerTo, objected } from "../../../tests/answer-to.ts";
import golden from "../../../tests/golden/bennett-1991-clusters.json" with { type: "json" };
import { keptCase } from "../../../tests/reference/kept.ts";
import { colonies } from "./colonies.ts";
import { coloniesNeeded } from "./colonies-needed.ts";
import type { AnswerOf } from "./verb.ts";

interface Counts {
  readonly x: readonly number[];
  readonly n: readonly number[];
}
type Figures = Readonly<Record<string, number>>;

const rows = ({ x, n }: Counts) => x.map((positive, index) => ({ positive, examined: n[index] }));

it("seed germination on 21 plates (Crowder 1978) comes out as two other programs have it", () => {
  const kept = (kind: string) => keptCase<Counts, Figures>("overdispersion", `orobanche_${kind}`);
  const [fit, likeness, shares] = ["betabinomial_fit", "icc_anova", "cluster_prevalence_ci"].map(kept);
  if (!fit || !likeness || !shares) throw new Error("cases missing");
  const answer = answerTo(colonies, { colonies: rows(fit.input) });
  const near = (got: number | null | undefined, wanted: number | undefined, relative: number) => {
    if (got == null || wanted === undefined) throw new Error("no figure");
    expect(Math.abs(got - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted));
  };
  // The tolerances are those that the kept cases state: 1e-4 for a fit, 1e-8 for quantiles, 1e-10 for closed formulas.
  near(answer.fitted?.mean.value, fit.expected.mu, 1e-4);
  near(answer.fitted?.mean.low, fit.expected.mu_profile_lo, 1e-4);
  near(answer.fitted?.mean.high, fit.expected.mu_profile_hi, 1e-4);
  near(answer.fitted?.meanByLogit.low, fit.expected.mu_wald_logit_lo, 1e-4);
  near(answer.intraclass?.byLikelihood, fit.expected.rho, 1e-4);
  near(answer.noSpread?.likelihoodRatio, fit.expected.lr_overdispersion, 1e-4);
  near(answer.noSpread?.pValue, fit.expected.p_half_chi2, 1e-3); // far in the tail, where 1e-4 of the ratio is more
  near(answer.intraclass?.byVariance, likeness.expected.icc_anova, 1e-10);
  near(answer.intraclass?.byFleissCuzick, likeness.expected.icc_fleiss_cuzick, 1e-10);
  near(answer.designEffect?.byMeanBees, likeness.expected.deff_mean, 1e-10);
  near(answer.designEffect?.effectiveBees, likeness.expected.n_eff, 1e-10);
  near(answer.designEffect?.byRatio, shares.expected.deff, 1e-8);
  const by = (method: string) => answer.intervals.find((each) => each.method === method);
  near(by("ratio-logit-t")?.low, shares.expected.logit_t_lo, 1e-8);
  near(by("korn-graubard")?.high, shares.expected.korn_graubard_hi, 1e-8);
  near(by("wilson-effective")?.low, shares.expected.wilson_neff_lo, 1e-8);
  near(by("ratio-t")?.high, shares.expected.wald_t_hi, 1e-8);
  near(answer.meanColony?.low, shares.expected.colony_mean_t_lo, 1e-8);
  expect(answer.each).toHaveLength(21);
});

it("no more than chance: the fit is the binomial and said to be, without a spread", () => {
  const reply = colonies.ask({ colonies: rows({ x: [5, 5, 4], n: [20, 20, 20] }) });
  expect(objected(reply)).toEqual(["colonies-no-more-than-chance at colonies: warned"]);
  if (reply.kind !== "answered") throw new Error("no answer");
  expect(reply.value).toMatchObject({ fit: { a: null, b: null, logitIntraclass: null }, rule: "BE155" });
  expect(reply.value).toHaveProperty("fitted.mean.value", 14 / 60);
});

it("none found in any colony: exact upper limits of colonies and of bees, by another rule", () => {
  const reply = colonies.ask({ colonies: rows({ x: [0, 0, 0, 0], n: [20, 20, 0, 10] }) });
  expect(objected(reply)).toEqual(["all-colonies-clear at colonies: unknown"]);
  if (reply.kind !== "answered") throw new Error("no answer");
  // 1 − 0.025^(1/3) and 1 − 0.025^(1/50): three colonies had bees read
  expect(reply.value).toMatchObject({ rule: "BE157", colonies: 3, intervals: [], meanColony: null });
  const { none } = reply.value as AnswerOf<typeof colonies>;
  expect(none?.colonies.high).toBeCloseTo(1 - 0.025 ** (1 / 3), 12);
  expect(none?.bees.high).toBeCloseTo(1 - 0.025 ** (1 / 50), 12);
});

it("one colony is refused, and a line with more mites than bees is named", () => {
  expect(colonies.ask({ colonies: rows({ x: [3], n: [20] }) })).toMatchObject({
    kind: "unfit",
    problems: [{ code: "too-few-colonies", field: "colonies" }],
  });
  expect(colonies.ask({ colonies: rows({ x: [3, 21], n: [20, 20] }) })).toMatchObject({
    kind: "unfit",
    problems: [{ code: "positives-exceed-examined", field: "colonies[1].positive", given: 21 }],
  });
});

it("17 clusters for 20 in 100 within 5, as printed by Bennett and others 1991", () => {
  const { expectedPrevalence, margin, intraclass, beesPerColony, level } = golden;
  const answer = answerTo(coloniesNeeded, {
    ...{ expectedPrevalence, margin, intraclass, beesPerColony, level },
    otherBees: [20, 1],
  });
  expect(answer.colonies).toBe(golden.colonies);
  expect(answer.bees).toBe(17 * 20);
  expect(answer.designEffect).toBeCloseTo(1.38, 12);
  // one bee from each is a simple sample: 246 bees of 246 colonies
  expect(answer.others).toEqual([
    { beesPerColony: 20, colonies: 17, bees: 340 },
    { beesPerColony: 1, colonies: 246, bees: 246 },
  ]);
  expect(coloniesNeeded.ask({ expectedPrevalence, margin: 0, intraclass, beesPerColony })).toMatchObject({
    kind: "unfit",
    problems: [{ field: "margin" }],
  });
});
