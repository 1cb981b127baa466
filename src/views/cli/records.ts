/** The records of a programme, from the database or the data folder that the settings name. */
import type { Records, RecordsSetting, ServerStore } from "../../storage/server.ts";
import { answered, blocked, type Problem, problem, type Result } from "../../units/index.ts";
import type { Io } from "./io.ts";
import { dataFolder } from "./project.ts";

/** The records are there and cannot be used: not a bug of ours, so it is told in words. */
export class RecordsUnusable extends Error {
  override name = "RecordsUnusable";
  readonly problem: Problem;
  constructor(reason: Problem) {
    super(reason.code);
    this.problem = reason;
  }
}

type Work<T> = (store: ServerStore) => Promise<T>;

/**
 * Opens the store of a programme, made when it is not there, does the work, and closes it whatever happens.
 * @throws RecordsUnusable when it cannot be opened or read, or is another programme's
 */
export const withStore = <T>(programme: string, io: Io, work: Work<T>): Promise<T> =>
  onRecords(programme, io, (records) => inStore(records, programme, work));

/**
 * The same for a programme that has records; blocked, and nothing made, when it has none.
 * @throws RecordsUnusable when they cannot be opened or read, or are another programme's
 */
export const withRecords = <T>(programme: string, io: Io, work: Work<T>): Promise<Result<T>> =>
  onRecords(programme, io, async (records) =>
    (await records.has(programme))
      ? answered(await inStore(records, programme, work))
      : blocked(noRecords(programme, records.placeOf(programme))),
  );

/**
 * Programmes that have records.
 * @throws RecordsUnusable when they cannot be looked at
 */
export const programmesOf = (io: Io): Promise<readonly string[]> =>
  onRecords("", io, (records) => records.programmes());

/** Where the environment says that records are kept. */
export const recordsSetting = (io: Io): RecordsSetting => ({
  database: io.env.SKEPSIS_DATABASE,
  databaseTls: io.env.SKEPSIS_DATABASE_TLS,
  folder: dataFolder(io),
});

const noRecords = (programme: string, place: string): Problem =>
  problem("no-records", "blocked", "--programme", {
    given: programme,
    expected: `a programme with records; there is no ${place}`,
  });

/** Opens the store of a programme among records that are open, does the work, and closes it whatever happens. */
export async function inStore<T>(records: Records, programme: string, work: Work<T>): Promise<T> {
  const store = await records.open(programme);
  try {
    return await work(store);
  } finally {
    await store.close();
  }
}

/**
 * Work with all the records.
 * @throws RecordsUnusable when they cannot be used
 */
export async function onRecords<T>(programme: string, io: Io, work: (records: Records) => Promise<T>): Promise<T> {
  const { recordsBy, OtherProgramme, StoreTrouble } = await import("../../storage/server.ts");
  const setting = recordsSetting(io);
  const by = recordsBy(setting);
  if (!by.ok) throw unusable(by.problems);
  try {
    return await work(by.value);
  } catch (error) {
    if (error instanceof StoreTrouble) throw unusable([{ ...error.problem, given: by.value.placeOf(programme) }]);
    const { code } = error as { readonly code?: unknown };
    const isTheirs = error instanceof OtherProgramme || error instanceof SyntaxError || typeof code === "string";
    if (!isTheirs) throw error;
    const reason = typeof code === "string" ? code : (error as Error).message;
    throw unusable([
      problem("input-unreadable", "blocked", setting.database ? "SKEPSIS_DATABASE" : "SKEPSIS_DATA", {
        given: by.value.placeOf(programme),
        expected: `records that can be opened (${reason})`,
      }),
    ]);
  } finally {
    await by.value.close();
  }
}

const unusable = ([first]: readonly Problem[]): RecordsUnusable =>
  new RecordsUnusable(first ?? problem("records-unavailable", "blocked", null, { slots: { reason: "" } }));
