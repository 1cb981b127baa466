/** Asks all cases of a programme anew: what closed ones showed, or what a change would do. One question a worker. */
import { experienceTold, taughtBy, trialOf } from "../../model/index.ts";
import type { ProgrammeAnswer, ProgrammeQuestion } from "./programme-messages.ts";

self.onmessage = ({ data }: MessageEvent<ProgrammeQuestion>) => send(answerTo(data));

const send = (answer: ProgrammeAnswer): void => self.postMessage(answer);

function answerTo(asked: ProgrammeQuestion): ProgrammeAnswer {
  if (asked.kind === "taught") return { kind: "taught", taught: taughtBy(asked.casebook) };
  if (asked.kind === "experience") return { kind: "experience", told: experienceTold(asked.casebook) };
  const outcome = trialOf(asked.casebook, asked.trial, (share) => send({ kind: "progress", share }));
  return { kind: "trial", outcome };
}
