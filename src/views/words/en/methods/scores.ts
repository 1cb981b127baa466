/** Sentences of `scores`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some, whole } from "../numbers.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

export const scores = {
  asks: "Can stated chances be believed?",
  under: "What was said beforehand, of any cause or any forecast, against what came true.",
  fields: {
    cases: {
      label: "Chance stated, and whether it came true",
      hint: "One statement a line: the chance from 0 to 1, then 1 when it came true and 0 when not. For example 0.8 1.",
    },
    bins: { label: "Bins" },
    level: { label: "Certainty of the range of each bin, of 100", per: 100 },
  },
  says: ({ cases, cameTrue, brier, brierSkill, areaUnderCurve, slope }) => {
    const skill =
      brierSkill === null
        ? ""
        : brierSkill > 0
          ? ` That is ${hundred(brierSkill)} in 100 better than always saying the overall share.`
          : " Always saying the overall share would have done as well or better.";
    const area =
      areaUnderCurve === null
        ? ""
        : ` A case that came true had been given more than one that did not ${hundred(areaUnderCurve)} times in 100.`;
    const bold =
      slope === null
        ? ""
        : ` The slope of the logit is ${figure(slope)}; 1 is as it came, below 1 too bold, above 1 too timid.`;
    return `**Brier score ${figure(brier)}** over ${some(cases, "statement", "statements")}, of which ${whole(cameTrue)} came true.${skill}${area}${bold}`;
  },
  picture: "What was said and what was seen",
  pictureUnder: "Each bin with its exact range. On the line, so many came true as were said.",
  said: "Stated, in 100",
  seen: "Came true, in 100",
  bin: "bin",
  perfect: "said as it came",
  label: (bins: Answers["scores"]["bins"]) =>
    bins
      .map(
        ({ meanStated, observed, low, high }) =>
          `said ${hundred(meanStated)}, came true ${hundred(observed)} in 100, ${hundred(low)} to ${hundred(high)}`,
      )
      .join("; "),
} satisfies MethodWords<Answers["scores"]> & Record<string, unknown>;
