/** A thread in which SQLite goes through a large file: the check of tables and indexes, beside the walk over the entries. */
import { parentPort, workerData } from "node:worker_threads";
import { integrityHere } from "./integrity.ts";

/** What the thread answers: what SQLite finds wrong, or what stopped it. */
export type IntegrityAnswer =
  | { readonly wrong: readonly string[] }
  | { readonly broke: string; readonly code: unknown };

function answer(file: string): IntegrityAnswer {
  try {
    return { wrong: integrityHere(file) };
  } catch (trouble) {
    const { message, code } = trouble as { readonly message?: string; readonly code?: unknown };
    return { broke: message ?? String(trouble), code };
  }
}

parentPort?.postMessage(answer((workerData as { readonly file: string }).file));
