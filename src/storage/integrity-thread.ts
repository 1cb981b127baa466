/** A thread that lets SQLite go through a file of its own: the check of tables and indexes, beside the walk over the entries. */
import { parentPort, workerData } from "node:worker_threads";
import SQLite from "better-sqlite3";
import { codeOf } from "./engine.ts";

/** What the thread answers: what SQLite finds wrong, or what stopped it. */
export type IntegrityAnswer = { readonly wrong: readonly string[] } | { readonly broke: string; readonly code: string };

const mostLines = 20;

function answer(file: string): IntegrityAnswer {
  let driver: SQLite.Database | null = null;
  try {
    driver = new SQLite(file, { readonly: true, fileMustExist: true });
    const lines = driver.pragma(`integrity_check(${mostLines})`) as readonly { readonly integrity_check: string }[];
    return { wrong: lines.map((line) => line.integrity_check).filter((line) => line !== "ok") };
  } catch (trouble) {
    return { broke: trouble instanceof Error ? trouble.message : String(trouble), code: codeOf(trouble) };
  } finally {
    driver?.close();
  }
}

parentPort?.postMessage(answer((workerData as { readonly file: string }).file));
