/** The reckoner: answers a differential twice, at once with few draws and then with all, away from the page's own thread. */
import { differential, nextStep } from "../../../reasoning/index.ts";
import { evidenceOfQuestion } from "./evidence-of-question.ts";
import type { Question, Reply } from "./messages.ts";

/** Few enough to answer at once; the ranges are then rough. */
const quickDraws = 40;
/** Each dot is 1 in 20. */
const dotsInAll = 20;

let newest = 0;

self.onmessage = (event: MessageEvent<Question>) => {
  const { number, input, own, fullDraws, compare } = event.data;
  newest = number;
  send({ number, input, own, compare, draws: quickDraws, isFinal: false });
  // Between the two, a newer question may come in; this one is then not worth its draws.
  setTimeout(() => {
    if (number === newest) send({ number, input, own, compare, draws: fullDraws, isFinal: true });
  }, 0);
};

function send({
  number,
  input,
  own,
  draws,
  isFinal,
  compare,
}: Omit<Question, "fullDraws"> & Pick<Reply, "draws" | "isFinal">): void {
  const evidence = evidenceOfQuestion(own);
  const drawn = { ...input, draws };
  const result = differential.differential(drawn, evidence);
  const points = isFinal ? differential.quantiles(drawn, dotsInAll, evidence) : null;
  const steps = isFinal ? nextStep.nextSteps(input, result.ok ? result.value.verdict : null, evidence) : null;
  const [one, other] = compare ?? (result.ok ? result.value.conditions.slice(0, 2).map(({ id }) => id) : []);
  const compared = one && other && one !== other ? differential.compareCauses(input, one, other, evidence) : null;
  const reply: Reply = {
    number,
    result,
    dots: points?.ok ? points.value : null,
    steps: steps?.ok ? steps.value : null,
    comparison: compared?.ok ? compared.value : null,
    draws,
    isFinal,
  };
  self.postMessage(reply);
}
