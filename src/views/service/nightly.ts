/** The forecast of all open cases, once a night: planned from the records as they stand, reckoned chunk by chunk. */
import {
  type ChunkQueue,
  demonstration,
  type NightStanding,
  type Records,
  type ServerStore,
} from "../../storage/server.ts";
import { type Forecasting, type NightChunk, nightChunks, reckonNightChunk } from "../model/index.ts";

/** A night that was planned, and its chunks that are still to be reckoned. */
export interface PlannedNight extends NightStanding {
  readonly left: readonly number[];
}

/** Plans the night of an instant from the records of a programme, unless it was planned before. */
export async function planNight(store: ServerStore, at: Date): Promise<PlannedNight> {
  const night = at.toISOString().slice(0, 10);
  const newest = await store.nights.newest();
  if (newest !== null && newest.night >= night) return store.nights.plan(newest, [], []);
  // What comes in between the two is in the states and not in the position: told as standing a little earlier.
  const { cursor: position } = await store.pull(Number.MAX_SAFE_INTEGER, 1);
  const chunks = nightChunks(await store.states(), night);
  return store.nights.plan(
    { night, stoodAt: at.toISOString(), position },
    chunks.map((chunk) => ({ number: chunk.number, text: JSON.stringify(chunk) })),
    chunks.flatMap(({ colonies }) => colonies.map(({ caseId, colony }) => ({ root: caseId, colony }))),
  );
}

/** Reckons a chunk and keeps what it found; one that is done, or was dropped, is left alone. False when it was stopped. */
export async function reckonChunk(
  store: ServerStore,
  { night, number }: { readonly night: string; readonly number: number },
  forecast: Forecasting,
): Promise<boolean> {
  const kept = await store.nights.chunk(night, number);
  if (kept === null) return true;
  const found = await reckonNightChunk(JSON.parse(kept.text) as NightChunk, night, forecast);
  if (found === null) return false;
  await store.nights.done(
    night,
    number,
    found.map((each) => ({ root: each.caseId, colony: each.colony, text: JSON.stringify(each) })),
  );
  return true;
}

/** Programmes that have forecasts: all but the invented one, which stands on a day of its own. */
const programmesIn = async (records: Records): Promise<readonly string[]> =>
  (await records.programmes()).filter((programme) => programme !== demonstration);

export async function withStore<T>(
  records: Records,
  programme: string,
  work: (store: ServerStore) => Promise<T>,
): Promise<T> {
  const store = await records.open(programme);
  try {
    return await work(store);
  } finally {
    await store.close();
  }
}

export interface NightTold {
  readonly programme: string;
  readonly night: string;
  /** Chunks that this call reckoned, or handed to the queue. */
  readonly chunks: number;
}

/** Plans the night of every programme and reckons it here, or hands its chunks to the queue. Ends early when stopped. */
export async function runNight(
  {
    records,
    queue,
    forecast,
  }: { readonly records: Records; readonly queue: ChunkQueue | null; readonly forecast: Forecasting },
  at: Date,
): Promise<readonly NightTold[]> {
  const told: NightTold[] = [];
  for (const programme of await programmesIn(records)) {
    const { night, stoodAt, left } = await withStore(records, programme, async (store) => {
      const planned = await planNight(store, at);
      if (queue === null)
        for (const number of planned.left) if (!(await reckonChunk(store, { ...planned, number }, forecast))) break;
      return planned;
    });
    if (queue !== null) await queue.put(left.map((number) => ({ programme, night, stoodAt, number })));
    told.push({ programme, night, chunks: left.length });
  }
  return told;
}

/** Takes chunks of the queue until it is closed. */
export const workNights = (records: Records, queue: ChunkQueue, forecast: Forecasting): Promise<void> =>
  queue.work((job) =>
    withStore(records, job.programme, async (store) => {
      if (!(await reckonChunk(store, job, forecast))) throw new Error("stopped on the way");
    }),
  );

/** Nights begin at two o'clock UTC: most have finished recording by then. Judgement. */
const nightHour = 2;
const lookMilliseconds = 10 * 60 * 1000;

export interface NightSchedule {
  readonly records: Records;
  /** Null: this process reckons. */
  readonly queue: ChunkQueue | null;
  readonly forecast: Forecasting;
  readonly now: () => Date;
  readonly say: (text: string) => void;
}

/** Looks now and every ten minutes whether a night is due, until `stop`; a look that breaks is told and the next one comes. */
export function forecastByTheClock({ now, say, ...how }: NightSchedule, stop: AbortSignal): void {
  let running = false;
  const look = async () => {
    if (running || stop.aborted || now().getUTCHours() < nightHour) return;
    running = true;
    try {
      await runNight(how, now());
    } catch (error) {
      if (!stop.aborted) say(`The forecast of the night failed: ${(error as Error).message}`);
    } finally {
      running = false;
    }
  };
  const timer = setInterval(() => void look(), lookMilliseconds);
  timer.unref();
  stop.addEventListener("abort", () => clearInterval(timer));
  void look();
}
