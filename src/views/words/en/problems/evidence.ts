/** What is said of a programme's changes of the evidence, and of its own experience. */
import type { Slots } from "./index.ts";

export const evidenceProblems = {
  "evidence-id-missing": ({ place, id }: Slots) =>
    `The change of “${place}” speaks of ${id}, which is not there. Add it first; ids of your own begin with own_. The change was left out.`,
  "evidence-rate-out-of-range": ({ place, rate }: Slots) =>
    `The change of “${place}” says ${rate}; a share lies between 0 and 1, without the ends. The change was left out.`,
  "evidence-source-missing": ({ place, source }: Slots) =>
    `The change of “${place}” cites ${source}, which is no source on record. Add the source first. The change was left out.`,
  "evidence-rates-missing": ({ place, id }: Slots) =>
    `The change of “${place}” adds ${id} without a share for each season. It was left out.`,
  "evidence-count-out-of-range": ({ place, outOf }: Slots) =>
    `The change of “${place}” rests on ${outOf} colonies; that must be a number above 0. The change was left out.`,
  "evidence-too-many-own": ({ place, most }: Slots) =>
    `The change of “${place}” is one too many: a programme may add ${most}. It was left out.`,
  "evidence-in-conflict": ({ place, changes }: Slots) =>
    `${changes} changes of “${place}” stand side by side, so none counts. Withdraw all but one.`,
  "settings-in-conflict": () =>
    "Two settings of the reasoning stand side by side, so none counts. Withdraw all but one.",
};
