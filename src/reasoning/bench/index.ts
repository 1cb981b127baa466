/** Bench: from bees as read to counts, shares, loads and checks on the reading. */
export * from "./abundance-prevalence.ts";
export {
  type Agreement,
  type AgreementIndices,
  type AgreementTable,
  agreement,
  type KappaEstimate,
  type KappaWeights,
} from "./agreement.ts";
export * from "./agreement-ac1.ts";
export * from "./beta-binomial-fit.ts";
export * from "./beta-binomial-likelihood.ts";
export * from "./cluster-prevalence.ts";
export * from "./colony-counts.ts";
export * from "./compare-readings.ts";
export * from "./count-regression.ts";
export * from "./expected-counts.ts";
export { type FisherTest, fisherTest, fisherTests, type TwoByTwo } from "./fisher-test.ts";
export * from "./fit-counts.ts";
export * from "./imperfect-pools.ts";
export * from "./intraclass-correlation.ts";
export * from "./mcnemar.ts";
export * from "./mite-load.ts";
export { type CountsOfMean, negativeBinomialLogLikelihood, poissonLogLikelihood } from "./negative-binomial.ts";
export { type PoolGroup, poolTotals } from "./pool-likelihood.ts";
export {
  equalPoolLimits,
  type PooledLimits,
  type PooledRequest,
  type PoolShareMethod,
  pooledLikelihoodLimits,
  pooledScoreLimits,
  pooledSkewScoreLimits,
} from "./pooled-limits.ts";
export {
  burrowsPrevalence,
  oneSize,
  type PooledCorrections,
  type PooledPrevalence,
  pooledCorrections,
  pooledPrevalence,
} from "./pooled-prevalence.ts";
export * from "./prevalence.ts";
export * from "./problems.ts";
export * from "./reading.ts";
export * from "./sides.ts";
export * from "./tally.ts";
export {
  type Corrected,
  correctedShare,
  type TestErrors,
  type TruePrevalence,
  truePrevalence,
} from "./true-prevalence.ts";
export * from "./true-prevalence-estimated.ts";
export * from "./true-prevalence-posterior.ts";
export * from "./two-by-two.ts";
export * from "./wash.ts";
