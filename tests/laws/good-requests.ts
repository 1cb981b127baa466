/** One answerable request for each statistical function of the façade: where bad inputs are made from. Own numbers. */
import { bench, decision, differential, efficacy, sampling, surveillance } from "../../src/reasoning/index.ts";
import type { Result } from "../../src/units/index.ts";
import type { GoodRequest } from "./changed-inputs.ts";

const of = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems.map(({ code }) => code).join(", "));
  return result.value;
};

const good = <Args extends readonly unknown[]>(call: (...args: Args) => unknown, ...args: Args): GoodRequest => ({
  call: call as GoodRequest["call"],
  args,
});

const test = { sensitivity: 0.9, specificity: 0.95 };
const colonies = [
  { positive: 1, examined: 20 },
  { positive: 9, examined: 20 },
  { positive: 4, examined: 25 },
];
const groups = [
  { size: 7, pools: 24, positive: 3 },
  { size: 3, pools: 10, positive: 1 },
];
const equalGroups = [{ size: 7, pools: 24, positive: 3 }];
const trials = {
  apparent: { share: 0.2, of: 200 },
  sensitivity: { share: 0.9, of: 50 },
  specificity: { share: 0.97, of: 100 },
  level: 0.95,
};
const first = { infested: 12, examined: 50 };
const second = { infested: 30, examined: 60 };
const pair = { first, second, level: 0.95 };
const looks = { treated: { before: second, after: first }, control: { before: first, after: second }, level: 0.95 };
const table = { a: 7, b: 8, c: 12, d: 3 };
const readers = [
  [19, 10],
  [6, 56],
];
const pairs = { before: [12, 30, 7, 22], after: [3, 12, 9, 5] };
const mites = [0, 0, 3, 1, 0, 9, 2, 14];
const regression = { counts: mites, design: mites.map((_, i) => [1, Number(i > 3)]), offset: mites.map(() => 0) };
const fit = of(bench.fitCountRegression(regression));
const simple = of(bench.fitCountRegression({ counts: mites, design: mites.map(() => [1]) }));
const sequential = { lowPrevalence: 0.05, highPrevalence: 0.2, alpha: 0.1, beta: 0.1 };
const design = { ...sequential, maxBees: 50, minBees: 2, batch: 1 };
const plan = of(sampling.sequentialPlan(design));
const threeWay = { lower: sequential, upper: { ...sequential, lowPrevalence: 0.3, highPrevalence: 0.5 }, maxBees: 40 };
const threeWayPlan = of(sampling.threeWayPlan(threeWay));
const finite = { population: 100, infested: 5, sensitivity: 0.9 };
const survey = { population: 150, infested: 15, ...test };
const yard = { colonies: 120, colonyPrevalence: 0.05, beePrevalence: 0.1, sensitivity: 0.9, confidence: 0.95 };
const stakes = { benefit: 100, harm: 10, ...test, testCost: 1 };
const strata = [
  { relativeRisk: 3, share: 0.25 },
  { relativeRisk: 1, share: 0.75 },
];
const areas = [
  { cases: 9, population: 60 },
  { cases: 1, population: 50 },
  { cases: 12, population: 70 },
];
const neighbours = [[1], [0, 2], [1]];
const network = {
  prior: [0.15, 0.3],
  link: [
    [0.35, 0.5],
    [0.15, 0.05],
  ],
  leak: [0.02, 0.01],
  evidence: new Map([[0, true]]),
};

/** One argument, or some members, are what another function made. */
const withUnread = (request: GoodRequest, ...unread: readonly string[]): GoodRequest => ({ ...request, unread });

/** By folder and exported name. */
export const goodRequests: Readonly<Record<string, Readonly<Record<string, GoodRequest>>>> = {
  sampling: {
    costedTwoStages: good(sampling.costedTwoStages, { ...yard, costPerColony: 40, costPerBee: 1.2, mostBees: 40 }),
    dorfmanTests: good(sampling.dorfmanTests, { prevalence: 0.05, size: 5 }),
    smallestFixedPlan: good(sampling.smallestFixedPlan, sequential),
    leastBees: good(sampling.leastBees, sequential),
    leastFactor: good(sampling.leastFactor, sequential, 20),
    cannonRoeSize: good(sampling.cannonRoeSize, { population: 100, infested: 5, confidence: 0.95 }),
    cannonRoeLimitOfZero: good(sampling.cannonRoeLimitOfZero, { population: 60, examined: 20, level: 0.95 }),
    macDiarmidSize: good(sampling.macDiarmidSize, { ...finite, confidence: 0.95 }),
    shortcutSizes: good(sampling.shortcutSizes, { ...finite, confidence: 0.95 }),
    coloniesForPrecision: good(sampling.coloniesForPrecision, {
      expectedPrevalence: 0.2,
      margin: 0.05,
      intraclass: 0.02,
      beesPerColony: 20,
      level: 0.95,
    }),
    detectionProbability: good(sampling.detectionProbability, { bees: 50, designPrevalence: 0.02, sensitivity: 0.5 }),
    detectionSampleSize: good(sampling.detectionSampleSize, {
      designPrevalence: 0.05,
      confidence: 0.95,
      sensitivity: 0.8,
    }),
    unroundedDetectionSize: good(sampling.unroundedDetectionSize, {
      designPrevalence: 0.05,
      confidence: 0.95,
      sensitivity: 0.8,
    }),
    finiteDetectionProbability: good(sampling.finiteDetectionProbability, { ...finite, examined: 40 }),
    finiteDetectionSampleSize: good(sampling.finiteDetectionSampleSize, { ...finite, confidence: 0.95 }),
    finiteDetectionDesign: good(sampling.finiteDetectionDesign, { ...finite, confidence: 0.95 }),
    finiteUpperLimitOfZero: good(sampling.finiteUpperLimitOfZero, {
      population: 60,
      examined: 20,
      level: 0.95,
      sensitivity: 0.9,
    }),
    mostDetectable: good(sampling.mostDetectable, finite),
    limitsOfZero: good(sampling.limitsOfZero, { examined: 30, level: 0.95 }),
    upperLimitOfZero: good(sampling.upperLimitOfZero, { examined: 30, level: 0.95, sides: "one", sensitivity: 0.9 }),
    zeroFound: good(sampling.zeroFound, {
      examined: 60,
      level: 0.95,
      sensitivity: 1,
      season: "winter",
      treatmentDaysAgo: 35,
      designPrevalence: 0.05,
    }),
    marginSampleSize: good(sampling.marginSampleSize, { expectedPrevalence: 0.2, margin: 0.1, level: 0.95 }),
    wilsonHalfWidth: good(sampling.wilsonHalfWidth, { bees: 50, expectedPrevalence: 0.1, level: 0.95 }),
    missedCurve: good(sampling.missedCurve, { bees: 30, sensitivity: 0.9, prevalences: [0.05, 0.1] }),
    finiteMissedCurve: good(sampling.finiteMissedCurve, {
      population: 100,
      examined: 40,
      sensitivity: 0.9,
      prevalences: [0.05, 0.1],
    }),
    dorfmanPools: good(sampling.dorfmanPools, { prevalence: 0.01, largest: 50 }),
    poolsToDetect: good(sampling.poolsToDetect, { size: 5, prevalence: 0.01, sensitivity: 0.9, confidence: 0.95 }),
    poolDilution: good(sampling.poolDilution, {
      prevalence: 0.02,
      signal: 20,
      confidence: 0.95,
      costPerPool: 12,
      costPerBee: 0.25,
      largest: 40,
    }),
    surveyChances: good(sampling.surveyChances, { ...survey, examined: 30, callInfestedFrom: 2 }),
    smallestSurvey: good(sampling.smallestSurvey, {
      ...survey,
      population: 50,
      missAllowed: 0.2,
      falseAlarmAllowed: 0.2,
      searchUpTo: 50,
    }),
    twoStageDesign: good(sampling.twoStageDesign, { ...yard, beesPerColony: 30 }),
    cheapestTwoStage: good(sampling.cheapestTwoStage, { ...yard, costPerColony: 40, costPerBee: 1.2, mostBees: 60 }),
    sequentialLines: good(sampling.sequentialLines, sequential),
    sequentialPlan: good(sampling.sequentialPlan, design),
    sequentialCharacteristics: withUnread(good(sampling.sequentialCharacteristics, plan, [0.05, 0.1]), "0"),
    waldCurve: good(sampling.waldCurve, sequential, [1, 0.5]),
    fixedPlanLow: good(sampling.fixedPlanLow, { bees: 50, most: 4, prevalences: [0.1] }),
    threeWayPlan: good(sampling.threeWayPlan, threeWay),
    threeWayCharacteristics: withUnread(good(sampling.threeWayCharacteristics, threeWayPlan, [0.2]), "0"),
    stoppedSampleEstimate: withUnread(
      good(sampling.stoppedSampleEstimate, plan, { examined: 23, positive: 4, level: 0.95 }),
      "0",
    ),
    // Few bees and shares far apart: a search is made for every change.
    fewestBeesPlan: good(sampling.fewestBeesPlan, {
      lowPrevalence: 0.1,
      highPrevalence: 0.6,
      alpha: 0.2,
      beta: 0.2,
      maxBees: 12,
      minBees: 2,
      batch: 1,
    }),
    pastStopEstimate: withUnread(
      good(sampling.pastStopEstimate, plan, {
        atStop: { examined: 23, positive: 4 },
        all: { examined: 50, positive: 6 },
        setBeforehand: 50,
        level: 0.95,
      }),
      "0",
    ),
    stoppedCoverage: withUnread(good(sampling.stoppedCoverage, plan, { prevalences: [0.2], level: 0.95 }), "0"),
  },
  bench: {
    expectedCounts: good(bench.expectedCounts, { mean: 1, k: 1, bees: 100, last: 2 }),
    prevalence: good(bench.prevalence, { positive: 17, examined: 50, level: 0.95 }),
    abundance: good(bench.abundance, { mitesPerBee: mites, level: 0.95 }),
    intensity: good(bench.intensity, { mitesPerBee: mites, level: 0.95 }),
    abundanceOfPrevalence: good(bench.abundanceOfPrevalence, { prevalence: 0.3, k: 0.5 }),
    prevalenceOfAbundance: good(bench.prevalenceOfAbundance, { mean: 0.5, k: 0.3 }),
    agreement: good(bench.agreement, { table: readers, level: 0.95 }),
    agreementAc1: good(bench.agreementAc1, { table: readers, level: 0.95 }),
    association: good(bench.association, table, 0.95),
    fisherTest: good(bench.fisherTest, table),
    fisherTests: good(bench.fisherTests, { first: 9, second: 7, withOutcome: 10 }),
    betaBinomialFit: good(bench.betaBinomialFit, colonies, { level: 0.95 }),
    clusterPrevalence: good(bench.clusterPrevalence, colonies, { level: 0.95 }),
    intraclassCorrelation: good(bench.intraclassCorrelation, colonies),
    readColonies: good(bench.readColonies, colonies),
    compareReadings: good(bench.compareReadings, {
      first: { positive: 3, examined: 50 },
      second: { positive: 14, examined: 50 },
      border: 0.1,
    }),
    mcnemarExact: good(bench.mcnemarExact, 1, 9),
    mcnemarTest: good(bench.mcnemarTest, 1, 9),
    correctedShare: good(bench.correctedShare, { apparent: 0.18, ...test }),
    truePrevalence: good(bench.truePrevalence, { positive: 45, examined: 150, ...test, level: 0.95 }),
    deltaPrevalence: good(bench.deltaPrevalence, trials),
    langReiczigelPrevalence: good(bench.langReiczigelPrevalence, trials),
    shareOf: good(bench.shareOf, 45, 50),
    prevalencePosterior: good(bench.prevalencePosterior, {
      positive: 9,
      examined: 50,
      prevalence: { a: 1, b: 9 },
      sensitivity: { a: 18, b: 2 },
      specificity: { a: 98, b: 2 },
      level: 0.95,
      thresholds: [0.1],
      work: { nodes: 6, points: 40 },
    }),
    pooledPrevalence: good(bench.pooledPrevalence, groups),
    pooledCorrections: good(bench.pooledCorrections, groups),
    burrowsPrevalence: good(bench.burrowsPrevalence, equalGroups),
    equalPoolLimits: good(bench.equalPoolLimits, { groups: equalGroups, level: 0.95, method: "blaker" }),
    pooledLikelihoodLimits: good(bench.pooledLikelihoodLimits, { groups, level: 0.95 }),
    pooledScoreLimits: good(bench.pooledScoreLimits, { groups, level: 0.95 }),
    pooledSkewScoreLimits: good(bench.pooledSkewScoreLimits, { groups, level: 0.95 }),
    imperfectPools: good(bench.imperfectPools, { size: 10, pools: 20, positive: 4, ...test, level: 0.95 }),
    fitCounts: good(bench.fitCounts, { counts: [0, 1, 2, 3, 7], bees: [70, 38, 17, 10, 3] }),
    fitCountRegression: good(bench.fitCountRegression, regression),
    rateRatios: withUnread(good(bench.rateRatios, fit, 0.95), "0"),
    compareCountFits: withUnread(
      good(bench.compareCountFits, fit, simple),
      "coefficients",
      "standardErrors",
      "theta",
      "logLikelihoodPoisson",
    ),
    infestedFromSides: good(bench.infestedFromSides, { left: 2144, right: 2138, bothShare: 0.58 }),
    oneSideReading: good(bench.oneSideReading, 0.36),
    sidesCheck: good(bench.sidesCheck, { left: 30, right: 28, both: 20, infested: 38, examined: 100 }),
    washEstimate: good(bench.washEstimate, { mites: 9, bees: 300, recovery: 0.9, level: 0.95 }),
  },
  efficacy: {
    abbott: good(efficacy.abbott, { treated: first, control: second, level: 0.95 }),
    apparentFall: good(efficacy.apparentFall, { before: second, after: first }, 0.95),
    hendersonTilton: good(efficacy.hendersonTilton, { kind: "shares", ...looks }),
    changeRatio: good(efficacy.changeRatio, {
      kind: "counts",
      treated: { before: { mites: 300, effort: 2 }, after: { mites: 15, effort: 2 } },
      control: { before: { mites: 250, effort: 1 }, after: { mites: 300, effort: 1 } },
      overdispersion: 2,
      level: 0.95,
    }),
    treatmentOutcome: good(efficacy.treatmentOutcome, { ...looks, scored: "living-mites", daysAfter: 28 }),
    katzRatio: good(efficacy.katzRatio, pair),
    koopmanRatio: good(efficacy.koopmanRatio, pair),
    twoSidedQuantile: good(efficacy.twoSidedQuantile, 0.95),
    schneiderOrelli: good(efficacy.schneiderOrelli, { treatedDead: 0.88, controlDead: 0.2 }),
    sunShepard: good(efficacy.sunShepard, { treatedDead: 0.9, controlChange: 0.2 }),
    shareDifference: good(efficacy.shareDifference, { ...pair, method: "miettinen-nurminen" }),
    shareWithout: good(efficacy.shareWithout, first),
    sharesOfTable: good(efficacy.sharesOfTable, table),
    barnardTest: good(efficacy.barnardTest, {
      first: { infested: 3, examined: 9 },
      second: { infested: 6, examined: 8 },
      tieSlack: 1e-10,
    }),
    boschlooTest: good(efficacy.boschlooTest, {
      first: { infested: 3, examined: 9 },
      second: { infested: 6, examined: 8 },
    }),
    signTest: good(efficacy.signTest, pairs),
    signFlipTest: good(efficacy.signFlipTest, pairs),
    wilcoxonTest: good(efficacy.wilcoxonTest, pairs),
    groupSize: good(efficacy.groupSize, { firstShare: 0.6, secondShare: 0.4, alpha: 0.05, power: 0.8 }),
    clustersPerGroup: good(efficacy.clustersPerGroup, { individuals: 82, perCluster: 10, icc: 0.1 }),
    fisherPower: good(efficacy.fisherPower, {
      firstShare: 0.3,
      secondShare: 0.05,
      firstSize: 12,
      secondSize: 10,
      alpha: 0.05,
    }),
  },
  decision: {
    beliefFromCounts: good(decision.beliefFromCounts, { positive: 3, examined: 50 }),
    treatmentThreshold: good(decision.treatmentThreshold, { benefit: 100, harm: 10 }),
    testThresholds: good(decision.testThresholds, stakes),
    expectedUtilities: good(decision.expectedUtilities, { ...stakes, probability: 0.2 }),
    valueOfKnowingState: good(decision.valueOfKnowingState, {
      chances: [0.5, 0.3, 0.2],
      utilities: [
        [0, -80, -150],
        [-20, -25, -60],
      ],
    }),
    valueOfSampling: good(decision.valueOfSampling, {
      belief: { a: 2, b: 18 },
      lossAtFull: 300,
      actCost: 45,
      sizes: [5, 20],
      costPerBee: 0.02,
      fixedCost: 0.2,
      ...test,
    }),
    compareActions: good(decision.compareActions, {
      belief: { a: 2, b: 18 },
      prices: { colonyValue: 300, actCost: 45, testCost: 1, residualShare: 0.1 },
      test: { bees: 3, ...test },
      winterLossByPrevalence: [
        { prevalence: 0, loss: 0.1 },
        { prevalence: 1, loss: 0.9 },
      ],
    }),
  },
  surveillance: {
    adjustedRisks: good(surveillance.adjustedRisks, strata),
    allocateByRisk: good(surveillance.allocateByRisk, {
      designPrevalence: 0.1,
      sensitivity: 0.9,
      target: 0.9,
      strata: strata.map((each, i) => ({ ...each, cost: 2 - i, cap: 400 })),
    }),
    representativeUnits: good(surveillance.representativeUnits, {
      designPrevalence: 0.1,
      sensitivity: 0.9,
      target: 0.9,
    }),
    scenarioTree: good(surveillance.scenarioTree, {
      clusterPrevalence: 0.02,
      unitPrevalence: 0.1,
      strata,
      clusters: [{ stratum: 0, units: 30, sensitivity: 0.9 }],
    }),
    twoStageFinite: good(surveillance.twoStageFinite, { clusters: 10, infested: 2, sensitivities: [0.9, 0.5] }),
    freedomSeries: good(surveillance.freedomSeries, {
      priorFree: 0.5,
      sensitivities: [0.5, 0.4],
      introduction: 0.01,
      priorAt: "first-round",
    }),
    freedomEquilibrium: good(surveillance.freedomEquilibrium, { sensitivity: 0.6, introduction: 0.02 }),
    sensitivityForTarget: good(surveillance.sensitivityForTarget, {
      priorFree: 0.75,
      introduction: 0.01,
      target: 0.95,
    }),
    marshallGlobal: good(surveillance.marshallGlobal, areas),
    marshallLocal: good(
      surveillance.marshallLocal,
      areas.map((area, i) => ({ ...area, neighbours: neighbours[i] as number[] })),
    ),
    claytonKaldor: good(
      surveillance.claytonKaldor,
      areas.map(({ cases }, i) => ({ cases, expected: 3 + i })),
    ),
    trendTest: good(surveillance.trendTest, [
      { positive: 12, examined: 200, score: 0 },
      { positive: 18, examined: 210, score: 1 },
    ]),
    logisticRandomIntercept: good(
      surveillance.logisticRandomIntercept,
      colonies.map((each, i) => ({ ...each, group: `colony ${i}`, covariates: [1] })),
      { nodes: 130, level: 0.95 },
    ),
  },
  differential: {
    noisyOr: good(differential.noisyOr, network),
    quickscore: good(differential.quickscore, network),
    singleFault: good(differential.singleFault, {
      prior: [0.5, 0.5],
      rates: [[0.9], [0.3]],
      evidence: new Map([[0, true]]),
    }),
    calibration: good(differential.calibration, {
      stated: [0.2, 0.8, 0.6, 0.4],
      outcomes: [false, true, true, true],
      bins: 5,
      level: 0.95,
    }),
    rankingScores: good(differential.rankingScores, {
      stated: [
        [0.7, 0.3],
        [0.4, 0.6],
      ],
      held: [0, 0],
    }),
    startCounts: good(differential.startCounts, 0.35, 0.5),
    countsSpread: good(differential.countsSpread, { present: 1, looked: 3 }),
  },
};
