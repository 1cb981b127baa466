/** Checks a journal, here or in a saved copy, away from the page's own thread. One question a worker. */
import { checkChains, checkCopy } from "../../model/index.ts";
import type { JournalAnswer, JournalQuestion } from "./journal-messages.ts";

self.onmessage = ({ data }: MessageEvent<JournalQuestion>) => {
  const answer: JournalAnswer =
    data.kind === "here"
      ? { kind: "here", check: checkChains(data.entries, data.onlyWhole) }
      : { kind: "copy", copy: checkCopy(data.text, data.entries, data.programme) };
  self.postMessage(answer);
};
