/** What sequential reading, several colonies, rounds of a region, maps and trends can be in trouble with. */
import { inHundred, some, whole } from "../numbers.ts";
import type { Slots } from "./index.ts";

const n = (slots: Slots, name: string): number => Number(slots[name] ?? 0);
const share = (slots: Slots, name: string): string => `${inHundred(n(slots, name))} in 100`;

/** With enough digits to tell it from the error it was held against. */
const closely = (slots: Slots, name: string): string => `${Number((100 * n(slots, name)).toPrecision(4))} in 100`;

export const regionProblems = {
  "sequential-prevalences-disordered": (slots: Slots) =>
    `The share to call high, ${share(slots, "highPrevalence")}, does not lie above the share to call low, ${share(slots, "lowPrevalence")}. Check both.`,
  "sequential-errors-too-large": (slots: Slots) =>
    `The two chances of error, ${share(slots, "alpha")} and ${share(slots, "beta")}, leave nothing to decide by. Expected: less than 100 in 100 together.`,
  "sequential-bees-disordered": (slots: Slots) =>
    `At least ${slots.minBees} bees and at most ${slots.maxBees} cannot both hold. Check both counts.`,
  "sequential-bands-disordered": (slots: Slots) =>
    `The shares that part moderate from severe, ${share(slots, "upperLow")} and ${share(slots, "upperHigh")}, do not lie above those that part light from moderate, ${share(slots, "lowerLow")} and ${share(slots, "lowerHigh")}. Check all four.`,
  "not-a-stop-of-the-plan": (slots: Slots) =>
    `By its lines the plan would not have stopped at ${slots.positive} of ${slots.examined} bees. Check the counts, or read on.`,
  "sequential-plan-needs-more-bees": (slots: Slots) =>
    `No plan of at most ${some(n(slots, "maxBees"), "bee", "bees")} keeps its errors at ${share(slots, "alpha")} and ${share(slots, "beta")}. The best errs in ${closely(slots, "reachedAlpha")} and ${closely(slots, "reachedBeta")}. Allow ${slots.neededBees} bees, or larger errors.`,
  "sequential-plan-out-of-reach": (slots: Slots) =>
    `No plan of at most ${some(n(slots, "maxBees"), "bee", "bees")} keeps its errors at ${share(slots, "alpha")} and ${share(slots, "beta")}. The best errs in ${closely(slots, "reachedAlpha")} and ${closely(slots, "reachedBeta")}. Even ${slots.searched} bees are not known to do. Set the two shares farther apart, or allow larger errors.`,
  "reading-not-stopped": (slots: Slots) =>
    `After ${slots.positive} of ${some(n(slots, "examined"), "bee", "bees")} the plan reads on, so no range can be given yet that keeps its level.`,
  "read-on-unplanned": (slots: Slots) =>
    `${some(n(slots, "readOn"), "bee was", "bees were")} read past the stop, and no number had been set beforehand. The limits at the stop hold; those of all ${slots.examined} bees may hold too rarely.`,
  "read-other-than-planned": (slots: Slots) =>
    `${some(n(slots, "setBeforehand"), "bee was", "bees were")} to be read whatever was found, and ${slots.examined} were. The limits at the stop hold; those of all bees may hold too rarely.`,
  "past-stop-counts-disagree": (slots: Slots) =>
    `All ${slots.allExamined} bees with ${slots.allPositive} infested cannot hold the ${slots.examined} with ${slots.positive} at the stop. Check all four counts.`,
  "too-few-colonies": (slots: Slots) =>
    `${some(n(slots, "colonies"), "colony with bees read tells", "colonies with bees read tell")} nothing of how colonies differ. Expected: at least 2.`,
  "all-colonies-clear": (slots: Slots) =>
    `None found in ${some(n(slots, "examined"), "bee", "bees")} of all colonies, so nothing can be said of how colonies differ. The upper limit for none found still holds.`,
  "all-colonies-full": (slots: Slots) =>
    `All ${slots.examined} bees of all colonies had mites, so nothing can be said of how colonies differ.`,
  "colonies-no-more-than-chance": (slots: Slots) =>
    `The ${slots.colonies} colonies differ no more than chance gives, so their ${slots.examined} bees are taken as one sample. That does not prove the colonies alike: few colonies seldom show a difference.`,
  "colonies-all-or-none": (slots: Slots) =>
    `In each of the ${slots.colonies} colonies all bees have mites or none has. Count colonies, not their ${slots.examined} bees.`,
  "one-bee-a-colony": (slots: Slots) =>
    `Each of the ${slots.colonies} colonies gave one bee, so bees of one colony cannot be compared. Expected: at least 2 bees from some.`,
  "colonies-all-alike": (slots: Slots) =>
    `All ${slots.colonies} colonies have the same share, ${share(slots, "share")}, so a range made from their differences would have no width. Take the bees as one sample.`,
  "zero-contradicts-certainty": (slots: Slots) =>
    `Before round ${slots.round} the region counted as surely infested and the round as sure to find it, yet none was found. One of the two is wrong.`,
  "shares-not-whole": (slots: Slots) =>
    `The shares of the groups add up to ${share(slots, "total")}. Expected: 100 in 100.`,
  "infested-share-above-one": (slots: Slots) =>
    `The risk of group ${slots.stratum} would make ${share(slots, "share")} of it infested. Use a smaller risk or a smaller design prevalence.`,
  "more-infested-than-places": (slots: Slots) =>
    `${slots.infested} infested cannot be among ${slots.places}. Check both counts.`,
  "more-tested-than-places": (slots: Slots) =>
    `${slots.tested} tested cannot be among ${slots.places}. Check both counts.`,
  "nothing-tested": () => "Nothing was tested, so nothing can be said. Expected: at least 1.",
  "parts-taken-as-independent": (slots: Slots) =>
    `The ${some(n(slots, "parts"), "result is", "results are")} taken as independent of each other. Where they are not, the figure is too high.`,
  "target-out-of-reach": (slots: Slots) =>
    `Testing all there is to test reaches ${share(slots, "reachable")}, not ${share(slots, "target")}. Raise the caps or lower the target.`,
  "search-too-wide": (slots: Slots) =>
    `The cheapest choice over ${slots.strata} groups was not found in reasonable time. Use fewer groups.`,
  "too-few-areas": (slots: Slots) =>
    `${some(n(slots, "areas"), "area", "areas")} cannot be compared. Expected: at least 2.`,
  "area-without-population": (slots: Slots) =>
    `Area ${slots.area} has no population, so it has no rate. Leave it out or fill it in.`,
  "nothing-counted": (slots: Slots) =>
    `None found in any of the ${slots.areas} areas, so there is no rate to draw towards a mean.`,
  "neighbour-unknown": (slots: Slots) =>
    `Area ${slots.area} names a neighbor, ${slots.neighbour}, that is not in the list. Check the list of neighbors.`,
  "areas-no-more-than-chance": (slots: Slots) =>
    `The ${slots.areas} areas differ no more than chance gives. One rate for all is the best guess.`,
  "fit-did-not-settle": (slots: Slots) =>
    `The calculation did not settle in ${whole(n(slots, "rounds"))} rounds, so it gives no answer. Use fewer groups or more data.`,
  "trend-not-defined": (slots: Slots) =>
    `${slots.positive} of ${slots.examined} were positive in all groups together, so no trend can show.`,
  "scores-all-alike": (slots: Slots) => `All groups have the same score, ${slots.score}. Expected: at least 2 scores.`,
  "too-few-groups": (slots: Slots) =>
    `${some(n(slots, "groups"), "group", "groups")} cannot be compared. Expected: at least 2.`,
  "covariates-separate": (slots: Slots) =>
    `Some value of column ${slots.covariate} goes with all or with none, so its effect has no limit. Join groups, or leave the column out.`,
  "covariates-redundant": (slots: Slots) => `The ${slots.covariates} columns say the same thing twice. Leave one out.`,
  "one-unit-a-group": (slots: Slots) =>
    `Each of the ${slots.groups} groups gave one unit, so units of one group cannot be compared. Expected: at least 2 from some.`,
  "groups-no-more-than-chance": (slots: Slots) =>
    `The ${slots.groups} groups differ no more than chance gives, so the shares are compared as if there were no groups. That does not prove the groups alike: few groups seldom show a difference.`,
  "groups-all-or-none": (slots: Slots) =>
    `In each of the ${slots.groups} groups all are positive or none is. Count groups instead.`,
};
