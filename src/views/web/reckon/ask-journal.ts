/** Asks the worker that checks journals, once. */
import type { JournalAnswer, JournalQuestion } from "./journal-messages.ts";

type AnswerTo<Question extends JournalQuestion> = Extract<JournalAnswer, { readonly kind: Question["kind"] }>;

/** The answer; rejected when the worker breaks. */
export const askJournal = <Question extends JournalQuestion>(question: Question): Promise<AnswerTo<Question>> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./journal.worker.ts", import.meta.url), { type: "module" });
    worker.onmessage = ({ data }: MessageEvent<AnswerTo<Question>>) => {
      worker.terminate();
      resolve(data);
    };
    worker.onerror = (event) => {
      worker.terminate();
      reject(new Error(event.message));
    };
    worker.postMessage(question);
  });
