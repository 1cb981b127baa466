/** What counts, samples, efficacy and choices can be in trouble with: what it means, what to do. */
import { inHundred, some, whole } from "../numbers.ts";
import type { Slots } from "./index.ts";

const n = (slots: Slots, name: string): number => Number(slots[name] ?? 0);
const oneDigit = (value: number): string => String(Number(value.toFixed(1)));
const chance = (value: number): string => (value < 0.001 ? "less than 1 in 1,000" : `${inHundred(value)} in 100`);

const otherQuestions: Readonly<Record<string, string>> = {
  varroa: "varroa mites",
  nosema: "nosema spores",
  virus: "viruses",
  poisoning: "residues of poison",
};

const otherBees: Readonly<Record<string, string>> = {
  "open-brood": "bees from combs with open brood",
  foragers: "old foragers",
  "with-and-without-signs-apart": "bees with signs and bees without, apart",
  "freshly-dead-frozen": "freshly dead bees, frozen at once",
};

export const countProblems = {
  "positives-exceed-examined": (slots: Slots) =>
    `${slots.positive} bees with mites cannot come from ${slots.examined} bees. Check both counts.`,
  "nothing-examined": () => "No bee was examined, so nothing can be said. Expected: at least 1 bee.",
  "stopped-early": () =>
    "The reading stopped because of what was found: the range is that of a stopped sample, so take it with care.",
  "no-mites-counted": (slots: Slots) => `No mites were counted on ${some(n(slots, "bees"), "bee", "bees")}.`,
  "too-few-to-estimate": (slots: Slots) =>
    `${some(n(slots, "bees"), "bee has", "bees have")} no mean with a range. Expected: at least 2.`,
  "sides-do-not-add-up": (slots: Slots) =>
    `Left ${slots.left} and right ${slots.right} do not add up to ${slots.infested} bees with mites and ${slots.both} on both sides. Look at the bees again.`,
  "both-sides-far-exceed": (slots: Slots) =>
    `${whole(n(slots, "both"))} bees have mites on both sides; chance gives about ${oneDigit(n(slots, "expected"))}. Old and young bees may be mixed, or the second side was looked at harder.`,
  "left-and-right-differ": (slots: Slots) =>
    `Left ${slots.left}, right ${slots.right}: chance gives such a difference ${chance(n(slots, "pValue"))} times. Mites do not choose a side, so check how the two sides are read.`,
  "interval-spans-bands": (slots: Slots) =>
    `The range, ${whole(n(slots, "lowPercent"))} to ${whole(n(slots, "highPercent"))} in 100, reaches over more than one class, so the class is not settled.`,
  "sources-disagree": (slots: Slots) =>
    `The sources disagree: ${some(n(slots, "over"), "line lies", "lines lie")} below all of the range, ${whole(n(slots, "under"))} above it.`,
  "bands-out-of-season": () => "The lines come from autumn and winter; in spring and summer they only guide.",
  "readers-disagree": (slots: Slots) =>
    `Two readings of the same bees differ, ${slots.first} and ${slots.second} with mites, beyond chance. Let a third reader read them blind before anyone acts on it.`,
  "bands-disagree": () => "The sources disagree about what this number means.",
  "season-changes-meaning": () => "The season changes what this number means.",
  "recovery-not-given": () =>
    "The wash leaves some mites on the bees; how many is not known here, so nothing is added.",
  "one-wash-one-vial": () => "One wash speaks for one vial; colonies of one yard vary far more.",
  "table-has-empty-margin": () => "One of the groups is empty, so the two cannot be compared.",
  "half-added-to-cells": () => "One count is 0: half a bee was added to each to get a range.",
  "chi-square-thin": () => "The counts are small; take the exact test.",

  "confidence-out-of-reach": (slots: Slots) =>
    `Even all ${slots.population} examined would find it only ${inHundred(n(slots, "reachable"))} times in 100. Ask for less certainty, or use a better test.`,
  "infested-exceed-population": (slots: Slots) =>
    `${slots.infested} cannot be infested of ${slots.population}. Check both numbers.`,
  "nothing-to-detect": () => "With none infested there is nothing to find. Expected: at least 1.",
  "examined-exceed-population": (slots: Slots) =>
    `${slots.examined} cannot be examined of ${slots.population}. Check both numbers.`,
  "zero-rules-nothing-out": () => "So few bees that none found rules nothing out.",
  "no-colony-chosen": () => "No colony is chosen. Choose at least one.",
  "colonies-exceed-apiary": (slots: Slots) =>
    `${slots.chosen} colonies are chosen, but only ${slots.coloniesInApiary} stand here. Check both.`,
  "colony-chosen-twice": (slots: Slots) => `${slots.colony} is chosen twice.`,
  "more-bees-than-a-colony": (slots: Slots) =>
    `${whole(n(slots, "bees"))} bees are more than a strong colony holds (some 50,000: common practice, no source). No sample of one colony can promise this. Ask for a larger share, or give the number of bees there are.`,
  "many-bees-to-open": (slots: Slots) =>
    `${whole(n(slots, "bees"))} bees of one colony are more than anybody opens one by one (judgement). Ask for a larger share, or sample more colonies.`,
  "some-colonies-untested": (slots: Slots) =>
    `Only ${slots.chosen} of ${slots.coloniesInApiary} colonies are sampled; this speaks for them alone.`,
  "summer-zero-is-weak": () =>
    "In summer young bees thin the mites out: none found is then a weak answer. Look again in winter or early spring.",
  "treated-before": (slots: Slots) =>
    n(slots, "daysAgo") === 0
      ? "A treatment was on when the bees were taken: none found is then a weak answer."
      : `A treatment ended ${some(n(slots, "daysAgo"), "day", "days")} before: none found is then a weak answer.`,
  "too-few-for-design": (slots: Slots) =>
    `If ${inHundred(n(slots, "designPrevalence"))} in every 100 bees had mites, ${some(n(slots, "examined"), "bee", "bees")} would miss them ${inHundred(n(slots, "missed"))} times in 100.`,
  "dead-colony-sampled": (slots: Slots) =>
    `Dead: ${slots.colonies}. Mites leave dead bees and the tubes decay, so none found says little; dead bees carry mites more often, so the share is no estimate of the colony.`,
  "dead-among-chosen": (slots: Slots) =>
    `Dead among the chosen: ${slots.colonies}. Plan the dead colonies by themselves; this plan takes its bees from living ones.`,
  "test-no-better-than-chance": (slots: Slots) =>
    `A test that finds ${slots.sensitivity} and clears ${slots.specificity} says no more than a coin. Expected: the two sum to more than 1.`,
  "one-vial-two-questions": (slots: Slots) =>
    `One vial cannot answer both: the test for ${otherQuestions[String(slots.question)] ?? slots.question} takes ${otherBees[String(slots.takes)] ?? slots.takes}. Take a second vial.`,
  "spare-share-judged": (slots: Slots) =>
    `${slots.spareBees} spare bees allow for bees that cannot be read; how many is a judgement.`,

  "no-comparator": () =>
    "No untreated colony was counted before and after, so this cannot say what the treatment did: only what was before and after.",
  "infested-exceed-examined": (slots: Slots) =>
    `${slots.infested} bees with mites cannot come from ${slots.examined}. Check the counts.`,
  "group-not-examined": () => "One of the counts has no bees. Expected: at least 1 bee in each.",
  "efficacy-undefined": (slots: Slots) =>
    String(slots.group).endsWith("before")
      ? "None was found before, so a fall cannot be reckoned."
      : "None was found in the untreated group, so a reduction cannot be reckoned.",
  "half-added-for-limits": () => "None was found after: half a bee was added to get a range.",
  "negative-efficacy": () => "The treated colonies did worse than the untreated ones.",
  "dead-mites-still-counted": (slots: Slots) =>
    `Dead mites stay in the trunks and count as mites. ${some(n(slots, "daysAfter"), "day", "days")} after the treatment some of these may be dead.`,
  "overdispersion-not-given": () => "Counts of mites vary more than chance alone; the range is too narrow.",

  "loss-curve-empty": () => "The curve of winter losses holds no point.",
  "loss-curve-disordered": (slots: Slots) => `Point ${slots.point} of the curve of winter losses is out of order.`,
  "loss-curve-falls": (slots: Slots) =>
    `Point ${slots.point} of the curve of winter losses falls, or lies outside 0 to 1.`,
  "loss-curve-judged": () =>
    "How winter losses rise with the share of infested bees is a judgement: no measured curve was found.",
  "loss-readings-disagree": (slots: Slots) =>
    `The literature does not agree, and it matters here: a cold reading says ${actSays(slots.cold)}, a mild one ${actSays(slots.mild)}.`,
  "testing-never-best": () => "At these prices testing first is never the least loss.",
  "decision-withheld": () =>
    "The sample came with limits, so no choice is named from it. Sample again, or ask for the choice all the same.",
};

function actSays(action: string | number | undefined): string {
  return action === "act-now" ? "act now" : action === "test-first" ? "test first" : "wait";
}
