/** The sample planned for the question asked: which bees from where, how many, from which colonies, and why. */
import { type CautionId, type Citation, cautionsFor, defaultOf, samplingFacts } from "../../knowledge/index.ts";
import { answered, blocked, ensure, type Problem, type Result, type Season } from "../../units/index.ts";
import { detectionSampleSize } from "./detection-sample-size.ts";
import { marginSampleSize, wilsonHalfWidth } from "./margin-sample-size.ts";
import { type CouldMiss, missedCurve } from "./missed-curve.ts";
import { samplingProblem } from "./problems.ts";
import { type PlanReason, planReason } from "./reasons.ts";

/** S super or under the inner cover, E honey and pollen edge, B open brood, F entrance, D dead. */
export type BodyOfBees = "S" | "E" | "B" | "F" | "D";

/** Questions that need other bees than the dissection for tracheal mites. */
export type OtherQuestion = "varroa" | "nosema" | "virus" | "poisoning";

export interface SampleRequest {
  /** detect: is there any; estimate: what share; recheck: did it change. */
  readonly purpose: "detect" | "estimate" | "recheck";
  readonly season: Season;
  readonly colonies: readonly { readonly id: string; readonly code: string }[];
  /** Ids of those that are dead. */
  readonly deadColonies?: readonly string[];
  readonly coloniesInApiary: number;
  readonly designPrevalence: number;
  readonly confidence: number;
  readonly sensitivity: number;
  readonly preservative: "ethanol-70" | "frozen" | "fresh" | "dry";
  readonly supersOn: boolean;
  /** Days since patties or another treatment were on; 0 while they are; null when there were none. */
  readonly oilPattiesOrTreatmentDaysAgo: number | null;
  /** What else the same vial is meant to answer. */
  readonly alsoAsked?: readonly OtherQuestion[];
  /** Half the length of the interval wanted, for an estimate. */
  readonly margin?: number;
  /** Where the earlier sample came from, for a recheck. */
  readonly earlierFrom?: BodyOfBees;
  /** Share of bees expected to be unreadable; a judged tenth when not given. */
  readonly spareShare?: number;
}

export interface SamplePlan {
  readonly purpose: SampleRequest["purpose"];
  /** Readable bees wanted from each colony. */
  readonly beesPerColony: number;
  /** Bees to take in all, spare bees included. */
  readonly totalBees: number;
  readonly from: BodyOfBees;
  /** More bees to take from each colony, for those that cannot be read. */
  readonly spareBees: number;
  /** Ids of the colonies, in the order given. */
  readonly colonies: readonly string[];
  readonly couldMiss: readonly CouldMiss[];
  /** Half the length of the interval to expect if the design prevalence is what is found; level = confidence. */
  readonly expectedHalfWidth: number;
  readonly reasons: readonly PlanReason[];
  readonly cautions: readonly CautionId[];
}

/** Share of unreadable bees allowed for when nobody says: judgement, no source. */
export const judgedSpareShare = 0.1;
/** A strong colony in full season; common practice, no source. More than this is no sample of one colony. */
export const beesOfAColony = 50_000;
/** Beyond this nobody opens the bees one by one, and a small colony misses them. Judgement. */
const manyToOpen = 1000;

/**
 * Plans a sample for tracheal mites.
 *
 * Detect: the size of `detectionSampleSize`, old bees from the top. Estimate: the size of `marginSampleSize` when a
 * margin is given, else the larger of the detection size and the handbook's 50, from the comb edge where ages mix.
 * Recheck: as many as the detection size, at least 50, from where the earlier bees came. A summer sample, earlier
 * treatment, untested colonies and a vial with two questions are warned of, each with what it weakens.
 *
 * @returns SamplePlan, or `no-colony-chosen`, `colony-chosen-twice`, `colonies-exceed-apiary`, `more-bees-than-a-colony`
 * @throws DomainError for a design outside its range
 * @source COLOSS BEEBOOK, tracheal mite methods, 3.2; Pirk et al. 2013, section 2.2; each reason cites its own
 *
 * @example
 * planSample({ purpose: "detect", season: "winter", colonies: [{ id: "c1", code: "A-1" }], coloniesInApiary: 1, designPrevalence: 0.05, confidence: 0.95, sensitivity: 1, preservative: "frozen", supersOn: false, oilPattiesOrTreatmentDaysAgo: null }).value.totalBees  // → 66
 */
export function planSample(request: SampleRequest): Result<SamplePlan> {
  const { purpose, colonies, designPrevalence, confidence, sensitivity, spareShare = judgedSpareShare } = request;
  ensure(spareShare >= 0 && spareShare < 1, "spareShare", spareShare, "in [0, 1)");
  const trouble = coloniesProblem(request);
  if (trouble) return blocked(trouble);

  const size = sizeFor(request);
  if (size.bees > beesOfAColony)
    return blocked(samplingProblem("more-bees-than-a-colony", "blocked", "designPrevalence", { bees: size.bees }));
  const place = placeFor(request);
  const beesPerColony = size.bees;
  const spareBees = Math.ceil(beesPerColony / (1 - spareShare) - 1e-9) - beesPerColony;
  const prevalences = [...new Set([0.01, 0.02, 0.05, 0.1, 0.2, designPrevalence])].sort((p, q) => p - q);
  return answered(
    {
      purpose,
      beesPerColony,
      totalBees: (beesPerColony + spareBees) * colonies.length,
      from: place.from,
      spareBees,
      colonies: colonies.map(({ id }) => id),
      couldMiss: missedCurve({ bees: beesPerColony, sensitivity, prevalences }),
      expectedHalfWidth: wilsonHalfWidth({
        bees: beesPerColony,
        expectedPrevalence: designPrevalence,
        level: confidence,
      }),
      reasons: [
        size.reason,
        place.reason,
        ...(place.from === "D" ? [] : [planReason("SD14", "find-queen-first", {}, cited("queen"))]),
        ...seasonReasons(request.season),
        planReason("SD17", "spare-bees", { spareBees, spareShare }, judged(request)),
        keepingReason(request.preservative),
      ],
      cautions: [
        ...cautionsFor("field-visit"),
        ...(request.preservative === "ethanol-70" ? cautionsFor("collection-in-alcohol") : []),
      ],
    },
    warnings(request, beesPerColony, spareBees, spareShare),
  );
}

const cited = (fact: keyof typeof samplingFacts): Citation => samplingFacts[fact].citations[0];

const judged = ({ spareShare }: SampleRequest): Citation => ({
  source: null,
  at: spareShare === undefined ? "one bee in ten unreadable" : "share given by the user",
  read: "judgement",
});

function coloniesProblem({ colonies, coloniesInApiary }: SampleRequest): Problem | null {
  ensure(
    Number.isInteger(coloniesInApiary) && coloniesInApiary >= 1,
    "coloniesInApiary",
    coloniesInApiary,
    "1 or more",
  );
  if (colonies.length === 0) return samplingProblem("no-colony-chosen", "blocked", "colonies", { coloniesInApiary });
  const twice = colonies.find(({ id }, i) => colonies.findIndex((other) => other.id === id) !== i);
  if (twice) return samplingProblem("colony-chosen-twice", "blocked", "colonies", { colony: twice.code });
  if (colonies.length <= coloniesInApiary) return null;
  const slots = { chosen: colonies.length, coloniesInApiary };
  return samplingProblem("colonies-exceed-apiary", "blocked", "colonies", slots);
}

function sizeFor(request: SampleRequest): { readonly bees: number; readonly reason: PlanReason } {
  const { purpose, designPrevalence, confidence, sensitivity, margin } = request;
  const forDetection = detectionSampleSize({ designPrevalence, confidence, sensitivity });
  const handbook = defaultOf(samplingFacts["bees-per-colony"].figure);
  if (purpose === "estimate" && margin !== undefined) {
    const bees = marginSampleSize({ expectedPrevalence: designPrevalence, margin, level: confidence });
    const slots = { bees, margin, level: confidence, expectedPrevalence: designPrevalence };
    const source: Citation = { source: "pirk-2013", at: "2.2.3 (the interval)", read: "seen" };
    return { bees, reason: planReason("SD13", "size-for-margin", slots, source) };
  }
  const bees = purpose === "detect" ? forDetection : Math.max(forDetection, handbook);
  if (bees > forDetection) {
    const slots = { bees, forDetection };
    return { bees, reason: planReason("SD13", "size-of-handbook", slots, cited("bees-per-colony")) };
  }
  const slots = { bees, designPrevalence, confidence, sensitivity };
  return { bees, reason: planReason("SD1", "size-for-detection", slots, cited("n-for-five-percent")) };
}

function placeFor(request: SampleRequest): { readonly from: BodyOfBees; readonly reason: PlanReason } {
  const { purpose, supersOn, earlierFrom } = request;
  if (deadOf(request).length === request.colonies.length)
    return { from: "D", reason: planReason("SD23", "freshest-of-the-dead", {}, cited("keeping-at-once")) };
  if (purpose === "recheck") {
    const from = earlierFrom ?? "E";
    return { from, reason: planReason("SD14", "same-place-as-before", { from }, cited("where-estimate")) };
  }
  if (purpose === "estimate") {
    return { from: "E", reason: planReason("SD14", "mixed-ages-from-comb-edge", {}, cited("where-estimate")) };
  }
  const code = supersOn ? "old-bees-from-super" : "old-bees-under-inner-cover";
  return { from: "S", reason: planReason("SD14", code, {}, cited("where-presence")) };
}

/** Codes of the chosen colonies that are dead. */
const deadOf = ({ colonies, deadColonies = [] }: SampleRequest): readonly string[] =>
  colonies.filter(({ id }) => deadColonies.includes(id)).map(({ code }) => code);

function seasonReasons(season: Season): readonly PlanReason[] {
  const winter = cited("season-winter");
  if (season === "winter" || season === "spring")
    return [planReason("SD15", "season-favours-detection", { season }, winter)];
  if (season === "summer")
    return [
      planReason("SD15", "summer-dilutes", { season }, winter),
      planReason("SD14", "drones-if-any", {}, cited("drones")),
    ];
  return [planReason("SD15", "season-views-differ", { season }, cited("season-autumn-view"))];
}

function keepingReason(preservative: SampleRequest["preservative"]): PlanReason {
  if (preservative === "ethanol-70") return planReason("SD18", "keep-in-ethanol", {}, cited("keeping-at-once"));
  const code = preservative === "dry" ? "dry-bees-rot" : "fresh-opens-better";
  return planReason(
    "SD18",
    code,
    { preservative },
    preservative === "dry" ? cited("keeping-at-once") : cited("keeping"),
  );
}

function warnings(request: SampleRequest, beesPerColony: number, spareBees: number, spareShare: number): Problem[] {
  const { colonies, coloniesInApiary, season, oilPattiesOrTreatmentDaysAgo: daysAgo, alsoAsked = [] } = request;
  ensure(daysAgo === null || daysAgo >= 0, "oilPattiesOrTreatmentDaysAgo", daysAgo, "0 or more");
  const problems: Problem[] = [];
  if (colonies.length < coloniesInApiary) {
    const chosen = colonies.length;
    const slots = { chosen, coloniesInApiary, missedIfOne: 1 - chosen / coloniesInApiary };
    problems.push(samplingProblem("some-colonies-untested", "noted", "colonies", slots));
  }
  if (beesPerColony > manyToOpen)
    problems.push(samplingProblem("many-bees-to-open", "warned", "designPrevalence", { bees: beesPerColony }));
  if (season === "summer") {
    problems.push(samplingProblem("summer-zero-is-weak", "warned", "season", { beesPerColony }));
  }
  if (daysAgo !== null) {
    problems.push(samplingProblem("treated-before", "warned", "oilPattiesOrTreatmentDaysAgo", { daysAgo }));
  }
  const dead = deadOf(request);
  if (dead.length > 0) {
    const code = dead.length === colonies.length ? "dead-colony-sampled" : "dead-among-chosen";
    problems.push(samplingProblem(code, "warned", "colonies", { colonies: dead.join(", ") }));
  }
  for (const question of alsoAsked) {
    const slots = { question, takes: otherBees[question] };
    problems.push(samplingProblem("one-vial-two-questions", "warned", "alsoAsked", slots));
  }
  if (request.spareShare === undefined) {
    problems.push(samplingProblem("spare-share-judged", "noted", "spareShare", { spareShare, spareBees }));
  }
  return problems;
}

/** Which bees the other questions need: keys for the sentence. */
const otherBees: Readonly<Record<OtherQuestion, string>> = {
  varroa: "open-brood",
  nosema: "foragers",
  virus: "with-and-without-signs-apart",
  poisoning: "freshly-dead-frozen",
};
