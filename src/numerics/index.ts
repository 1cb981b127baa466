/** Special functions, distributions, intervals, roots, quadrature and seeded random streams; knows no bee. */
export { type BetaShape, beta } from "./beta.ts";
export { type BetaBinomialDesign, betaBinomial } from "./beta-binomial.ts";
export { type BetaQuantileRequest, betaQuantile, betaUpperQuantile } from "./beta-quantile.ts";
export { type BinomialDesign, binomial } from "./binomial.ts";
export { type CholeskyFactor, cholesky } from "./cholesky.ts";
export { log1pMinus, type SaddlePart, saddleTerm } from "./deviance.ts";
export type { ContinuousDistribution, DiscreteDistribution, Support } from "./distribution.ts";
export {
  type BetaShapes,
  drawBeta,
  drawBinomial,
  drawGamma,
  drawIndex,
  drawLogGamma,
  drawNormal,
  drawPoisson,
} from "./draws.ts";
export {
  type EffectiveCounts,
  effectiveClopperPearsonInterval,
  effectiveWilsonInterval,
} from "./effective-intervals.ts";
export { erf, erfc, scaledErfc } from "./error-function.ts";
export { differenceFromShare, type Exact, twoProduct, twoSum } from "./exact-arithmetic.ts";
export { chiSquare, type GammaShape, gamma } from "./gamma.ts";
export { type GammaQuantileRequest, gammaQuantile, gammaUpperQuantile } from "./gamma-quantile.ts";
export { gaussHermiteRule } from "./gauss-hermite.ts";
export { betaRule, gaussRule, type Recurrence } from "./gauss-rule.ts";
export { type HypergeometricDesign, hypergeometric } from "./hypergeometric.ts";
export {
  type BetaPoint,
  logBetaFront,
  logBetaWidth,
  logRegularizedBeta,
  logRegularizedBetaUpper,
  regularizedBeta,
  regularizedBetaUpper,
} from "./incomplete-beta.ts";
export {
  logGammaFront,
  logRegularizedGammaP,
  logRegularizedGammaQ,
  regularizedGammaP,
  regularizedGammaQ,
} from "./incomplete-gamma.ts";
export { blakerAcceptability, blakerInterval } from "./interval-blaker.ts";
export { intervalCoverage } from "./interval-coverage.ts";
export {
  clopperPearsonInterval,
  type Interval,
  jeffreysInterval,
  type ProportionData,
  wilsonInterval,
} from "./intervals.ts";
export { agrestiCoullInterval, type CutInterval, wilsonCorrectedInterval } from "./intervals-approximate.ts";
export { likelihoodRatioInterval, midPInterval } from "./intervals-by-root.ts";
export {
  logBeta,
  logChoose,
  logFactorial,
  logGamma,
  logGammaOnePlus,
  logGammaStep,
  stirlingError,
} from "./log-gamma.ts";
export {
  logNormalCdf,
  normalCdf,
  normalPdf,
  normalQuantile,
  normalQuantileRatios,
  normalSf,
  normalUpperQuantile,
} from "./normal.ts";
export { type NormalShape, normal } from "./normal-distribution.ts";
export { type Counter, type Key, philox } from "./philox.ts";
export { poisson } from "./poisson.ts";
export {
  gaussLegendre,
  gaussLegendreRule,
  type Integral,
  type Integrand,
  integral,
  type QuadratureRule,
} from "./quadrature.ts";
export { type RandomStream, randomStream, type StreamName } from "./random-stream.ts";
export { sumRatios } from "./ratio-sum.ts";
export { type RootSearch, root } from "./root.ts";
export { studentT } from "./student-t.ts";
export { logSumExp, sum } from "./sum.ts";
export { trigamma } from "./trigamma.ts";
