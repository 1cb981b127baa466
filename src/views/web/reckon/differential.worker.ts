/** The reckoner: answers a differential twice, at once with few draws and then with all, away from the page's own thread. */
import { differential } from "../../../reasoning/index.ts";
import type { Question, Reply } from "./messages.ts";

/** Few enough to answer at once; the ranges are then rough. */
const quickDraws = 40;
const fullDraws = 400;

let newest = 0;

self.onmessage = (event: MessageEvent<Question>) => {
  const { number, input } = event.data;
  newest = number;
  send(number, input, quickDraws);
  // Between the two, a newer question may come in; this one is then not worth its draws.
  setTimeout(() => {
    if (number === newest) send(number, input, fullDraws);
  }, 0);
};

function send(number: number, input: Question["input"], draws: number): void {
  const result = differential.differential({ ...input, draws });
  const reply: Reply = { number, result, draws, isFinal: draws === fullDraws };
  self.postMessage(reply);
}
