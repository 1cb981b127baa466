/** What SQLite itself finds wrong in a file: in its tables, its indexes, and in how they lie in it. */
import { statSync } from "node:fs";
import { Worker } from "node:worker_threads";
import SQLite from "better-sqlite3";
import type { IntegrityAnswer } from "./integrity-thread.ts";
import { threadFile } from "./thread-file.ts";

const mostLines = 20;
/** A file smaller than this is looked through before a thread would have started. */
const smallBytes = 32 * 1024 * 1024;

/** What SQLite finds wrong; for a large file in a thread, since it takes as long as reading all entries. */
export const integrityOf = async (file: string): Promise<readonly string[]> =>
  statSync(file).size < smallBytes ? integrityHere(file) : integrityInThread(file);

/**
 * On a connection of its own, in this thread.
 * @throws an error of SQLite where the file cannot be read as a database
 */
export function integrityHere(file: string): readonly string[] {
  const driver = new SQLite(file, { readonly: true, fileMustExist: true });
  try {
    const lines = driver.pragma(`integrity_check(${mostLines})`) as readonly { readonly integrity_check: string }[];
    return lines.map((line) => line.integrity_check).filter((line) => line !== "ok");
  } finally {
    driver.close();
  }
}

/** The same in a thread; it throws what the thread threw. */
export function integrityInThread(file: string): Promise<readonly string[]> {
  return new Promise((resolve, reject) => {
    const thread = new Worker(threadFile("integrity-thread", import.meta.url), { workerData: { file } });
    thread.once("error", reject);
    thread.once("message", (answer: IntegrityAnswer) => {
      if ("wrong" in answer) resolve(answer.wrong);
      else reject(Object.assign(new Error(answer.broke), { code: answer.code }));
    });
    thread.once("exit", (code) => reject(new Error(`the thread of the check ended with ${code}`)));
  });
}
