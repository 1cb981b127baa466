import { describe, expect, it } from "vitest";
import { DomainError } from "../units/index.ts";
import * as numerics from "./index.ts";

const { NaN: nan } = Number;
const stream = () => numerics.randomStream({ seed: 1, stream: 1 });

/** What is out of range, and the parameter that must be named. */
const refused: readonly (readonly [name: string, parameter: string, call: () => unknown])[] = [
  ["logGamma of 0", "x", () => numerics.logGamma(0)],
  ["logGamma of NaN", "x", () => numerics.logGamma(nan)],
  ["logBeta", "b", () => numerics.logBeta(1, -1)],
  ["logGammaStep", "step", () => numerics.logGammaStep(1, nan)],
  ["logChoose", "k", () => numerics.logChoose(3, 4)],
  ["logFactorial", "n", () => numerics.logFactorial(2.5)],
  ["stirlingError", "x", () => numerics.stirlingError(-1)],
  ["erf", "x", () => numerics.erf(nan)],
  ["erfc", "x", () => numerics.erfc(nan)],
  ["scaledErfc", "x", () => numerics.scaledErfc(-1)],
  ["normalPdf", "z", () => numerics.normalPdf(nan)],
  ["normalCdf", "z", () => numerics.normalCdf(nan)],
  ["normalSf", "z", () => numerics.normalSf(nan)],
  ["logNormalCdf", "z", () => numerics.logNormalCdf(nan)],
  ["normalQuantile", "p", () => numerics.normalQuantile(1.1)],
  ["normalUpperQuantile", "p", () => numerics.normalUpperQuantile(nan)],
  ["regularizedBeta", "x", () => numerics.regularizedBeta(1.1, 1, 1)],
  ["regularizedBetaUpper", "a", () => numerics.regularizedBetaUpper(0.5, 0, 1)],
  ["logRegularizedBeta", "b", () => numerics.logRegularizedBeta(0.5, 1, Infinity)],
  ["logRegularizedBetaUpper", "x", () => numerics.logRegularizedBetaUpper(nan, 1, 1)],
  ["regularizedGammaP", "a", () => numerics.regularizedGammaP(-1, 1)],
  ["regularizedGammaQ", "x", () => numerics.regularizedGammaQ(1, nan)],
  ["betaQuantile", "p", () => numerics.betaQuantile({ p: -0.1, a: 1, b: 1 })],
  ["betaUpperQuantile", "a", () => numerics.betaUpperQuantile({ p: 0.1, a: 0, b: 1 })],
  ["gammaQuantile", "p", () => numerics.gammaQuantile({ p: nan, a: 1 })],
  ["gammaUpperQuantile", "a", () => numerics.gammaUpperQuantile({ p: 0.5, a: nan })],
  ["binomial", "n", () => numerics.binomial({ n: 1.5, p: 0.5 })],
  ["binomial share", "p", () => numerics.binomial({ n: 1, p: 1.5 })],
  ["binomial cdf", "x", () => numerics.binomial({ n: 3, p: 0.5 }).cdf(nan)],
  ["binomial pmf", "k", () => numerics.binomial({ n: 3, p: 0.5 }).pmf(nan)],
  ["binomial quantile", "p", () => numerics.binomial({ n: 3, p: 0.5 }).quantile(nan)],
  ["hypergeometric", "marked", () => numerics.hypergeometric({ population: 3, marked: 4, drawn: 1 })],
  ["hypergeometric draws", "drawn", () => numerics.hypergeometric({ population: 3, marked: 1, drawn: 4 })],
  ["betaBinomial", "a", () => numerics.betaBinomial({ n: 3, a: 0, b: 1 })],
  ["poisson", "mean", () => numerics.poisson({ mean: -1 })],
  ["beta", "b", () => numerics.beta({ a: 1, b: nan })],
  ["beta pdf", "x", () => numerics.beta({ a: 1, b: 1 }).pdf(nan)],
  ["gamma", "rate", () => numerics.gamma({ shape: 1, rate: 0 })],
  ["gamma pdf", "x", () => numerics.gamma({ shape: 1, rate: 1 }).pdf(nan)],
  ["chiSquare", "df", () => numerics.chiSquare({ df: 0 })],
  ["studentT", "df", () => numerics.studentT({ df: 0 })],
  ["studentT sf", "x", () => numerics.studentT({ df: 1 }).sf(nan)],
  ["studentT pdf", "x", () => numerics.studentT({ df: 1 }).pdf(nan)],
  ["normal", "sd", () => numerics.normal({ mean: 0, sd: 0 })],
  ["normal cdf", "x", () => numerics.normal({ mean: 0, sd: 1 }).cdf(nan)],
  ["wilsonInterval", "x", () => numerics.wilsonInterval({ x: 3, n: 2, level: 0.95 })],
  ["clopperPearsonInterval", "n", () => numerics.clopperPearsonInterval({ x: 0, n: 0, level: 0.95 })],
  ["jeffreysInterval", "level", () => numerics.jeffreysInterval({ x: 0, n: 1, level: 1 })],
  ["half a bee", "x", () => numerics.wilsonInterval({ x: 0.5, n: 2, level: 0.95 })],
  ["randomStream", "seed", () => numerics.randomStream({ seed: -1, stream: 0 })],
  ["randomStream number", "stream", () => numerics.randomStream({ seed: 1, stream: 0.5 })],
  ["drawIndex", "count", () => numerics.drawIndex(stream(), 0)],
  ["drawGamma", "shape", () => numerics.drawGamma(stream(), 0)],
  ["drawBinomial", "p", () => numerics.drawBinomial(stream(), { n: 3, p: nan })],
  ["drawPoisson", "mean", () => numerics.drawPoisson(stream(), nan)],
  ["root", "low", () => numerics.root({ f: (x) => x, low: 1, high: 1 })],
  ["integral", "low", () => numerics.integral({ f: (x) => x, low: 0, high: Infinity })],
  ["gaussLegendreRule", "points", () => numerics.gaussLegendreRule(0)],
];

describe("parameters out of range", () => {
  it.each(refused)("[NU8] %s: %s is named", (_, parameter, call) => {
    expect(call).toThrow(DomainError);
    expect(call).toThrow(new RegExp(`^${parameter} must be `));
  });

  it("[NU8] the ends of each range are answered, never by NaN", () => {
    const answers = [
      numerics.regularizedBeta(0, 2, 3),
      numerics.regularizedBetaUpper(1, 2, 3),
      numerics.logRegularizedBeta(0, 2, 3),
      numerics.regularizedGammaP(2, 0),
      numerics.regularizedGammaQ(2, Infinity),
      numerics.normalCdf(-Infinity),
      numerics.normalSf(-Infinity),
      numerics.normalPdf(Infinity),
      numerics.logNormalCdf(-Infinity),
      numerics.erf(Infinity),
      numerics.erfc(-Infinity),
      numerics.scaledErfc(Infinity),
      numerics.normalQuantile(0),
      numerics.normalQuantile(1),
      numerics.betaQuantile({ p: 0, a: 1, b: 1 }),
      numerics.betaUpperQuantile({ p: 1, a: 1, b: 1 }),
      numerics.gammaUpperQuantile({ p: 0, a: 1 }),
      numerics.binomial({ n: 0, p: 0.5 }).pmf(0),
      numerics.binomial({ n: 5, p: 0 }).pmf(0),
      numerics.binomial({ n: 5, p: 0 }).cdf(0),
      numerics.binomial({ n: 5, p: 1 }).sf(4),
      numerics.binomial({ n: 5, p: 1 }).pmf(3),
      numerics.hypergeometric({ population: 0, marked: 0, drawn: 0 }).pmf(0),
      numerics.hypergeometric({ population: 5, marked: 5, drawn: 3 }).pmf(3),
      numerics.hypergeometric({ population: 5, marked: 0, drawn: 3 }).cdf(0),
      numerics.hypergeometric({ population: 5, marked: 2, drawn: 5 }).pmf(2),
      numerics.betaBinomial({ n: 0, a: 1, b: 1 }).pmf(0),
      numerics.betaBinomial({ n: 1, a: 1e-300, b: 1 }).pmf(1),
      numerics.poisson({ mean: 0 }).pmf(0),
      numerics.poisson({ mean: 0 }).cdf(0),
      numerics.poisson({ mean: 3 }).quantile(1),
      numerics.beta({ a: 1, b: 2 }).pdf(0),
      numerics.beta({ a: 0.5, b: 1 }).pdf(0),
      numerics.gamma({ shape: 1, rate: 2 }).pdf(0),
      numerics.gamma({ shape: 1, rate: 2 }).pdf(Infinity),
      numerics.studentT({ df: 3 }).sf(0),
      numerics.studentT({ df: 3 }).cdf(-Infinity),
      numerics.studentT({ df: 3 }).pdf(1e200),
      numerics.studentT({ df: 3 }).pdf(Infinity),
      numerics.studentT({ df: 1e-3 }).quantile(0.999),
      numerics.normal({ mean: 0, sd: 1 }).quantile(0),
      numerics.normal({ mean: 0, sd: 1 }).pdf(Infinity),
    ];
    expect(answers.filter(Number.isNaN)).toEqual([]);
    expect(answers.every((answer) => typeof answer === "number")).toBe(true);
  });
});
