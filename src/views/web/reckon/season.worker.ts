/** Compares choices of a season away from the page's own thread; each is told as soon as it is reckoned. */
import { dynamics } from "../../../reasoning/index.ts";
import type { SeasonAnswer, SeasonQuestion } from "./season-messages.ts";
import { seasonPool } from "./season-pool.ts";

/** Days between the mornings of a picture: nearer ones could not be told apart on it. */
const mornings = 3;

/** Courses of the colony asked about last: a moved flag makes one anew, not all. */
const courses = new Map<string, unknown>();
/** Courses beyond which all are made anew: some megabytes each. */
const mostKept = 20;
const kept: dynamics.Kept = {
  get: (key) => courses.get(key),
  set: (key, made) => {
    if (courses.size >= mostKept) courses.clear();
    courses.set(key, made);
  },
};

let pool: dynamics.Threads | null = null;
let newest = 0;
let last: Promise<void> = Promise.resolve();

self.onmessage = ({ data }: MessageEvent<SeasonQuestion>) => {
  newest = data.number;
  const { number, question, cores } = data;
  // Workers take the next question when they are done with the pieces in their hands.
  if (question !== null) last = last.then(() => reckon(number, question, cores));
};

async function reckon(number: number, question: dynamics.ChoicesQuestion, cores: number | undefined): Promise<void> {
  if (number !== newest) return;
  pool ??= seasonPool(cores);
  const send = (answer: SeasonAnswer): void => self.postMessage(answer);
  let told = 0;
  try {
    const answer = await dynamics.compareInThreads(question, { every: mornings }, pool, {
      kept,
      past: (past) => send({ number, kind: "past", past }),
      choice: (outcome) => send({ number, kind: "choice", outcome }),
      tell: (share) => {
        if (share - told < 0.02) return;
        told = share;
        send({ number, kind: "progress", share });
      },
      isStopped: () => number !== newest,
    });
    if (answer === null) return;
    if (!answer.ok) return send({ number, kind: "unfit", problems: answer.problems });
    const { settling, learnt } = answer.value;
    send({ number, kind: "done", settling, learnt, problems: answer.problems });
  } catch {
    send({ number, kind: "broke" });
  }
}
