/** The records of a programme, from its file in the data folder. */
import { existsSync, mkdirSync } from "node:fs";
import path from "node:path";
import type { ServerStore } from "../../storage/server.ts";
import { type Problem, problem } from "../../units/index.ts";
import type { Io } from "./io.ts";
import { dataFolder } from "./project.ts";

export interface Place {
  readonly programme: string;
  readonly file: string;
}

/** Where the records of a programme lie; the file may not be there yet. */
export const placeOf = (programme: string, io: Io): Place => ({
  programme,
  file: path.join(dataFolder(io), `${programme}.sqlite`),
});

/** Whether anything was ever kept there. */
export const isThere = ({ file }: Place): boolean => existsSync(file);

/** The problem of a programme without records. */
export const noRecords = ({ programme, file }: Place): Problem =>
  problem("no-records", "blocked", "--programme", {
    given: programme,
    expected: `a programme with records; there is no ${file}`,
  });

/** The records are there and cannot be used: not a bug of ours, so it is told in words. */
export class RecordsUnusable extends Error {
  override name = "RecordsUnusable";
  readonly problem: Problem;
  constructor({ file }: Place, reason: string) {
    super(reason);
    this.problem = problem("input-unreadable", "blocked", "SKEPSIS_DATA", {
      given: file,
      expected: `records that can be opened (${reason})`,
    });
  }
}

/**
 * Opens the store, does the work, and closes it whatever happens.
 * @throws RecordsUnusable when the file or its folder cannot be opened or read, or is another programme's
 */
export async function withStore<T>(place: Place, work: (store: ServerStore) => Promise<T>): Promise<T> {
  const { openServerStore, OtherProgramme } = await import("../../storage/server.ts");
  try {
    mkdirSync(path.dirname(place.file), { recursive: true, mode: 0o700 }); // for this account alone
    const store = await openServerStore(place);
    try {
      return await work(store);
    } finally {
      await store.close();
    }
  } catch (error) {
    const { code } = error as { readonly code?: unknown };
    if (error instanceof OtherProgramme || error instanceof SyntaxError || typeof code === "string")
      throw new RecordsUnusable(place, typeof code === "string" ? code : (error as Error).message);
    throw error;
  }
}
