/** What is said of a programme's changes of the evidence, and of its own experience. */
import { capital, list, some } from "../numbers.ts";
import type { Slots } from "./index.ts";

/** Names with semicolons between, or ids with commas, as a list. */
const names = (text: string | number | undefined): string => {
  const all = String(text);
  return list(all.split(all.includes(";") ? "; " : ", "));
};

export const evidenceProblems = {
  "open-above-leading": () =>
    "A cause would be named before another one counts as open. Expected: no higher than what a cause is named above.",
  "name-taken": (slots: Slots) =>
    `“${slots.given}” has that name already. Choose it in the list, or give another name.`,
  "citation-names-no-source": () =>
    "What was read, or is told from memory, has a source: choose it, or add it first. Without one it is judgement, common practice or reckoned.",
  "evidence-id-missing": ({ place, id }: Slots) =>
    `The change of “${place}” speaks of ${id}, which is not there. Add it first; ids of your own begin with own_. The change was left out.`,
  "evidence-rate-out-of-range": ({ place, rate }: Slots) =>
    `The change of “${place}” says ${rate}; a share lies between 0 and 1 and is never certain. The change was left out.`,
  "evidence-source-missing": ({ place, source }: Slots) =>
    `The change of “${place}” cites ${source}, which is no source on record. Add the source first. The change was left out.`,
  "evidence-rates-missing": ({ place, id }: Slots) =>
    `The change of “${place}” adds ${id} without a share for each season. It was left out.`,
  "evidence-count-out-of-range": ({ place, outOf }: Slots) =>
    `The change of “${place}” rests on ${outOf} colonies; that must be a whole number, with enough colonies for the share. The change was left out.`,
  "evidence-kind-fixed": ({ place, kind }: Slots) =>
    `The change of “${place}” makes something else of a ${kind}. Add a finding of your own instead. The change was left out.`,
  "evidence-too-many-own": ({ place, most }: Slots) =>
    `The change of “${place}” is one too many: a programme may add ${most}. It was left out.`,
  "evidence-in-conflict": ({ place, changes }: Slots) =>
    `${changes} changes of “${place}” stand side by side, so none counts. Withdraw all but one.`,
  "evidence-without-effect": (slots: Slots) =>
    `${slots.finding} no longer tells anything of ${names(slots.conditions)} in ${names(slots.seasons)}: a well colony shows it as often.`,
  "evidence-without-pairs": ({ id }: Slots) =>
    `${id} has no frequency with any finding. It stands at its prior, whatever is seen.`,
  "evidence-said-twice": ({ place, other }: Slots) =>
    `The share of “${place}” is also set by the change of “${other}”. The first one holds.`,
  "case-without-cause": (slots: Slots) =>
    `The case ${slots.case} was closed without a confirmed cause, so nothing is learnt from it.`,
  "cause-not-confirmed": (slots: Slots) =>
    `The case ${slots.case} names ${slots.cause}, which nothing confirms: no result of a test able to, no laboratory, no person. Nothing is learnt from it.`,
  "cause-unknown": (slots: Slots) =>
    `The case ${slots.case} names ${slots.cause}, which is not in the evidence in use. Nothing is learnt from it.`,
  "closing-in-conflict": (slots: Slots) =>
    `The case ${slots.case} was closed twice, with different words, so neither counts and nothing is learnt from it. Withdraw one closing.`,
  "case-unreadable": (slots: Slots) =>
    `The record of the case ${slots.case} cannot be put to the differential (${slots.why}), so it is left out.`,
  "nothing-before-result": (slots: Slots) =>
    `Nothing was on record of the case ${slots.case} before the result that confirmed its cause, so no answer can be scored.`,
  "confirmed-not-random": (slots: Slots) =>
    `Priors are learnt from ${some(Number(slots.cases), "confirmed case", "confirmed cases")}. Confirmed cases are no random sample of those referred: what is easy to confirm is over-represented.`,
  "healthy-from-failing": (slots: Slots) =>
    `Healthy rates of ${some(Number(slots.findings), "finding", "findings")} are learnt from colonies that failed of something else. Such colonies show more than well ones, so the rates may be too high.`,
  "too-few-scored": (slots: Slots) =>
    `${capital(some(Number(slots.cases), "case", "cases"))} can be scored; a score needs ${slots.needed}.`,
  "too-few-looked": (slots: Slots) =>
    `Not enough cases: ${slots.finding} was looked for in ${some(Number(slots.looked), "case", "cases")} of ${some(Number(slots.years), "year", "years")} and seen in ${slots.present}; a trend needs ${slots.needed} in ${slots.neededYears}, with ${slots.neededOfEither} that have it and ${slots.neededOfEither} that do not.`,
  "settings-in-conflict": () =>
    "Two settings of the reasoning stand side by side, so none counts. Withdraw all but one.",
};
