/** Asks the worker that reads tables, once. */
import type { AnswerTo, TableQuestion } from "./messages.ts";

/** The answer; rejected when the worker breaks. */
export const askTable = <Kind extends TableQuestion["kind"]>(
  question: Extract<TableQuestion, { readonly kind: Kind }>,
): Promise<AnswerTo[Kind]> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./table.worker.ts", import.meta.url), { type: "module" });
    worker.onmessage = ({ data }: MessageEvent<AnswerTo[Kind]>) => {
      worker.terminate();
      resolve(data);
    };
    worker.onerror = (event) => {
      worker.terminate();
      reject(new Error(event.message));
    };
    worker.postMessage(question);
  });
