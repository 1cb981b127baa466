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

/** Opens the store, does the work, and closes it whatever happens. */
export async function withStore<T>(place: Place, work: (store: ServerStore) => Promise<T>): Promise<T> {
  const { openServerStore } = await import("../../storage/server.ts");
  mkdirSync(path.dirname(place.file), { recursive: true });
  const store = await openServerStore(place);
  try {
    return await work(store);
  } finally {
    await store.close();
  }
}
