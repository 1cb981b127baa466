/** Ranks the causes of several colonies, one after the other, away from the page's own thread. */
import { differential } from "../../../reasoning/index.ts";
import { evidenceOfQuestion } from "./evidence-of-question.ts";
import type { Ranked, RankQuestion } from "./rank-messages.ts";

self.onmessage = ({ data }: MessageEvent<RankQuestion>) => {
  const evidence = evidenceOfQuestion(data.own);
  const ranked: Ranked = {
    number: data.number,
    answers: data.inputs.map((input) => {
      const result = differential.differential(input, evidence);
      return result.ok ? result.value : null;
    }),
  };
  self.postMessage(ranked);
};
