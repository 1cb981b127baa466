/** Sentences of question 3: looks, tests, and the plan of a sample. */
import type { sampling } from "../../../reasoning/index.ts";
import { capital, inHundred, list, lower, some, whole } from "./numbers.ts";

type Slots<Code extends keyof sampling.PlanReasons> = sampling.PlanReasons[Code];

/** Why a plan is as it is: a sentence for every code. */
export type ReasonWords = { readonly [Code in keyof sampling.PlanReasons]: (slots: Slots<Code>) => string };

const reasons: ReasonWords = {
  "size-for-detection": (slots) =>
    `${whole(slots.bees)} bees show at least one with mites ${inHundred(slots.confidence)} times in 100, if ${inHundred(slots.designPrevalence)} bees in 100 have them and the bench finds ${inHundred(slots.sensitivity)} in 100 of those.`,
  "size-of-handbook": (slots) =>
    `The handbook asks for ${whole(slots.bees)} bees; ${whole(slots.forDetection)} would do to find any at all.`,
  "size-for-margin": (slots) =>
    `${whole(slots.bees)} bees bring the range to ${inHundred(slots.margin)} in 100 either way, if about ${inHundred(slots.expectedPrevalence)} in 100 have mites.`,
  "old-bees-from-super": () => "Old bees carry most mites: take them from the super.",
  "old-bees-under-inner-cover": () => "Old bees carry most mites: take them from under the inner cover.",
  "freshest-of-the-dead": () =>
    "The colony is dead: take the freshest of its dead bees, where the cluster was. Bees dead for an unknown time are refused.",
  "mixed-ages-from-comb-edge": () => "For a share, bees of all ages count: take them from the honey and pollen edge.",
  "same-place-as-before": () => "Take them where the earlier bees came from, or the two counts cannot be compared.",
  "find-queen-first": () => "Find the queen first, so that she does not go into the vial.",
  "drones-if-any": () => "In summer look at drones too, if there are any.",
  "season-favours-detection": (slots) => `${capital(slots.season)} bees are old: a good time to find mites.`,
  "summer-dilutes": () => "In summer many bees are young, so that mites are harder to find.",
  "season-views-differ": () => "Sources differ on this season: some prefer winter and early spring, one the autumn.",
  "spare-bees": (slots) =>
    `${some(slots.spareBees, "bee", "bees")} more from each colony, for those that cannot be read (${inHundred(slots.spareShare)} in 100).`,
  "keep-in-ethanol": () => "70 % alcohol keeps them; cover the bees, close the vial.",
  "fresh-opens-better": () => "Frozen or fresh bees open better than bees from alcohol.",
  "dry-bees-rot": () => "Dry bees rot: use alcohol or a freezer at once.",
};

export const tell = {
  reasons,
  nothingYet: "**Nothing to choose from yet.** The looks and tests follow from what was seen.",
  stopped:
    "**Stop and report comes first.** No look, test or sample is advised until the authority has spoken and the finding or red flag is settled.",
  reckoning: "Reckoning what would tell",
  refused: "**What is on record cannot be reckoned with.** Question 2 says why.",
  answer: (slots: { readonly look: string | null; readonly test: string | null }) =>
    slots.look && slots.test
      ? `**Next look: ${lower(slots.look)}.** Next test: ${lower(slots.test)}.`
      : slots.look
        ? `**Next look: ${lower(slots.look)}.**`
        : slots.test
          ? `**Next test: ${lower(slots.test)}.**`
          : "**No open look or test is worth its effort now.**",
  under:
    "Effort: its minutes, ten more for any step, and what its money is worth in minutes. Bits: how much the answer is expected to tell apart. A bit halves the doubt. Minutes are judged, not timed.",
  orderBy: "In the order of",
  orders: {
    tells: "what it tells for its effort",
    spares: "what loss it spares for its effort",
    soonest: "how soon the result is in",
  },
  ofColony: (slots: { readonly colony: string | null }) =>
    slots.colony === null ? "For the whole apiary, since no colony is on record." : `For ${slots.colony}.`,
  looksHead: "Looks, free",
  testsHead: "Tests",
  bits: "bits",
  amount: (slots: { readonly bits: number }) => slots.bits.toFixed(slots.bits < 0.095 ? 2 : 1),
  minutes: (slots: { readonly minutes: number }) => `${whole(slots.minutes)} min`,
  checks: "checks what was reported",
  days: (slots: { readonly low: number; readonly high: number }) =>
    slots.high === 0
      ? "answer the same day"
      : slots.low === 0
        ? `answer within ${some(slots.high, "day", "days")}`
        : slots.low === slots.high
          ? `answer in ${some(slots.low, "day", "days")}`
          : `answer in ${whole(slots.low)} to ${some(slots.high, "day", "days")}`,
  cost: { 1: "nearly free", 2: "own bench", 3: "laboratory", 4: "specialised laboratory" },
  detail: (slots: { readonly parts: readonly string[] }) => slots.parts.join("; "),
  toYard: "To yard list",
  toKit: "To kit",
  onYard: "On the yard list",
  inKit: "In the kit",
  dropIt: "Take off",
  markDone: "Done",
  done: "done",
  more: (slots: { readonly count: number }) => `Show ${whole(slots.count)} more`,
  fewer: "Show fewer",
  needs: "What it needs",
  none: "None that would tell more.",
  specimen: (slots: { readonly text: string }) => slots.text,
  visitHead: "One visit",
  visitUnder: "What overlaps is counted once; of signs that go together one is taken.",
  visit: (slots: { readonly steps: number; readonly minutes: number; readonly bits: number }) =>
    `**${some(slots.steps, "look", "looks")} in ${whole(slots.minutes)} minutes** tell ${slots.bits.toFixed(1)} bits together.`,
  visitStep: (slots: { readonly minutes: number; readonly bits: number }) =>
    `${whole(slots.minutes)} min; so far ${slots.bits.toFixed(2)} bits`,
  plan: {
    head: "Plan a sample for tracheal mites",
    hint: "One vial, one question, one colony. The number follows from the question.",
    purpose: "The question",
    purposes: {
      detect: "Are there any mites?",
      estimate: "How many bees have them?",
      recheck: "Did it change since the last sample?",
    },
    colonies: "Colonies to sample",
    design: "Must not be missed",
    designHint: "Smallest share of bees with mites that must show.",
    confidence: "Sure of it",
    sensitivity: "The bench finds",
    sensitivityHint: "Of bees that have mites. 100: nothing is corrected for missed ones.",
    inHundred: "in 100",
    preservative: "Kept",
    preservatives: {
      "ethanol-70": "in 70 % alcohol",
      frozen: "frozen",
      fresh: "fresh, alive",
      dry: "dry",
    },
    from: {
      S: "super or inner cover",
      E: "honey and pollen edge",
      B: "open brood",
      F: "entrance",
      D: "dead bees",
    },
    laboratory: "Laboratory",
    laboratoryHint: "Leave empty for your own bench.",
    takes: (slots: {
      readonly bees: number;
      readonly spare: number;
      readonly from: string;
      readonly colonies: number;
    }) =>
      `**Take ${whole(slots.bees + slots.spare)} bees** from the ${slots.from} of ${slots.colonies === 1 ? "the colony" : `each of ${whole(slots.colonies)} colonies`}: ${whole(slots.bees)} to read, ${whole(slots.spare)} to spare.`,
    couldMiss: (slots: { readonly bees: number; readonly prevalence: number; readonly missed: number }) =>
      `If ${inHundred(slots.prevalence)} bees in 100 have mites, ${whole(slots.bees)} bees show none ${inHundred(slots.missed)} times in 100.`,
    rule: (slots: { readonly rule: string; readonly source: string }) => `${slots.rule}; ${slots.source}`,
    why: "Why this plan",
    cautions: "Cautions",
    assumed: "Mind",
    submit: (slots: { readonly vials: number }) => `Label ${some(slots.vials, "vial", "vials")}`,
    labelled: "Labelled vials",
    noVials: "No specimens yet. Plan a sample and label its vials.",
    vialStates: {
      "to-arrive": "not here yet",
      held: "not here yet; another vial carries this code",
      waits: "here, waits to be read",
      reading: "being read",
      read: "read and locked",
      rejected: "not accepted",
    },
    takeBack: "Take back",
    takeBackNote:
      "A label can be taken back until its vial is received. Tear up the printed one: its code may be given again.",
    place: "Take them from",
    asAdvised: (slots: { readonly from: string }) => `${slots.from} (as the plan advises)`,
    elsewhere: (slots: { readonly advised: string; readonly chosen: string }) =>
      `The plan advises ${slots.advised}; you take them from ${slots.chosen}. The count speaks of those bees, and compares only with samples from the same place.`,
    awaited: (slots: { readonly codes: readonly string[] }) =>
      slots.codes.length === 1
        ? `**1 vial is labelled** for these colonies and not here yet: ${slots.codes[0]}.`
        : `**${whole(slots.codes.length)} vials are labelled** for these colonies and not here yet: ${list(slots.codes)}.`,
    more: "Label more",
    askMore: (slots: { readonly vials: number }) =>
      `Label ${some(slots.vials, "further vial", "further vials")}? Each colony then gets one more.`,
    yesMore: (slots: { readonly vials: number }) => `Yes, label ${whole(slots.vials)} more`,
    noMore: "No, leave it",
    toBench: "Bench",
    chooseColony: "Choose at least one colony.",
  },
};
