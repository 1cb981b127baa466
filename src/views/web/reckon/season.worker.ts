/** Compares choices of a season away from the page's own thread; each is told as soon as it is reckoned. */
import { dynamics } from "../../../reasoning/index.ts";
import type { SeasonAnswer, SeasonQuestion } from "./season-messages.ts";

/** Days between the mornings of a picture: nearer ones could not be told apart on it. */
const mornings = 3;

/** What was made for the colony asked about last: a moved flag makes one course anew, not all. */
const kept = new Map<string, unknown>();
/** Courses beyond which all are made anew: some megabytes each. */
const mostKept = 20;

function recall<Made>(key: string, make: () => Made): Made {
  if (!kept.has(key)) {
    if (kept.size >= mostKept) kept.clear();
    kept.set(key, make());
  }
  return kept.get(key) as Made;
}

self.onmessage = ({ data: { number, question } }: MessageEvent<SeasonQuestion>) => {
  const send = (answer: SeasonAnswer): void => self.postMessage(answer);
  let told = 0;
  const answer = dynamics.compareChoices(
    question,
    { every: mornings },
    {
      recall,
      past: (past) => send({ number, kind: "past", past }),
      choice: (outcome) => send({ number, kind: "choice", outcome }),
      progress: (share) => {
        if (share - told < 0.02) return;
        told = share;
        send({ number, kind: "progress", share });
      },
    },
  );
  send(
    answer.ok
      ? {
          ...{ number, kind: "done", settling: answer.value.settling },
          ...{ learnt: answer.value.learnt, problems: answer.problems },
        }
      : { number, kind: "unfit", problems: answer.problems },
  );
};
