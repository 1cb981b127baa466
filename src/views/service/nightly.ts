/** The forecast of all open cases, once a night: planned from the records as they stand, reckoned chunk by chunk. */
import {
  type ChunkJob,
  type ChunkName,
  type ChunkQueue,
  demonstration,
  type NightStanding,
  type Records,
  type ServerStore,
} from "../../storage/server.ts";
import {
  type Forecasting,
  isForecast,
  type NightChunk,
  type NightFound,
  type NightMissed,
  nightChunks,
  reckonNightChunk,
} from "../model/index.ts";

/** A night that was planned, and its chunks that are still to be reckoned. */
export interface PlannedNight extends NightStanding {
  readonly left: readonly number[];
}

/** Plans the night of an instant from the records of a programme, unless it was planned before. */
export async function planNight(store: ServerStore, at: Date): Promise<PlannedNight> {
  const night = at.toISOString().slice(0, 10);
  for (;;) {
    const newest = await store.nights.newest();
    const planned =
      newest !== null && newest.night >= night
        ? await store.nights.plan(newest, [], [])
        : await planFrom(store, night, at);
    // Null: something was erased between the reading and the keeping, and the records are read anew.
    if (planned !== null) return planned;
  }
}

async function planFrom(store: ServerStore, night: string, at: Date): Promise<PlannedNight | null> {
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
export async function reckonChunk(store: ServerStore, name: ChunkName, forecast: Forecasting): Promise<boolean> {
  const text = await store.nights.chunk(name);
  if (text === null) return true;
  const found = await reckonNightChunk(JSON.parse(text) as NightChunk, name.night, forecast);
  if (found === null) return false;
  await store.nights.done(
    name,
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

/** A night of one programme: how many chunks this call reckoned, or handed to the queue. */
export interface NightTold {
  readonly programme: string;
  readonly night: string;
  readonly chunks: number;
}

export interface NightHow {
  readonly records: Records;
  /** Null: this process reckons. */
  readonly queue: ChunkQueue | null;
  readonly forecast: Forecasting;
  /** Hears of what broke: one chunk or one programme holds up no other. */
  readonly say: (text: string) => void;
}

/** What became of a night: programmes that were planned, and those that could not be. */
export interface NightRun {
  readonly programmes: readonly NightTold[];
  readonly failed: readonly string[];
}

/** Plans the night of every programme and reckons it here, or hands its chunks to the queue. Ends early when stopped. */
export async function runNight({ records, queue, forecast, say }: NightHow, at: Date): Promise<NightRun> {
  const programmes: NightTold[] = [];
  const failed: string[] = [];
  for (const programme of await programmesIn(records))
    try {
      const { night, stoodAt, left } = await withStore(records, programme, (store) => planNight(store, at));
      const jobs = left.map((number) => ({ programme, night, stoodAt, number }));
      const chunks = queue === null ? await reckonHere(records, jobs, { forecast, say }) : jobs.length;
      await queue?.put(jobs);
      programmes.push({ programme, night, chunks });
    } catch (trouble) {
      say(`The forecast of the night failed for ${programme}: ${(trouble as Error).message}`);
      failed.push(programme);
    }
  return { programmes, failed };
}

/** Reckons chunks of a programme one after the other; one that breaks is told, and left for the next look. */
async function reckonHere(
  records: Records,
  jobs: readonly ChunkJob[],
  { forecast, say }: Pick<NightHow, "forecast" | "say">,
): Promise<number> {
  const [first] = jobs;
  if (first === undefined) return 0;
  return withStore(records, first.programme, async (store) => {
    let done = 0;
    for (const job of jobs)
      try {
        if (!(await reckonChunk(store, job, forecast))) break;
        done += 1;
      } catch (trouble) {
        const { number, night, programme } = job;
        say(`Chunk ${number} of the night of ${night}, ${programme}, broke: ${(trouble as Error).message}`);
      }
    return done;
  });
}

/** How a night stands now. */
export interface NightOutcome {
  readonly colonies: number;
  /** Colonies that cannot be reckoned from what is on record. */
  readonly missed: readonly NightMissed[];
  /** Colonies in chunks that are not done: what was to reckon them broke, or has not come to it. */
  readonly left: number;
}

export async function nightOutcome(store: ServerStore, night: string): Promise<NightOutcome> {
  const kept = (await store.nights.forecasts()).filter((each) => each.night === night);
  const found = kept.map(({ text }) => JSON.parse(text) as NightFound);
  const missed = found.flatMap((each) => (isForecast(each) ? [] : [each]));
  const newest = await store.nights.newest();
  const plan = newest === null || newest.night !== night ? null : await store.nights.plan(newest, [], []);
  const { left: numbers, ...standing } = plan ?? { left: [], night, stoodAt: "" };
  const texts = await Promise.all(numbers.map((number) => store.nights.chunk({ ...standing, number })));
  const left = texts.map((text) => (text === null ? 0 : (JSON.parse(text) as NightChunk).colonies.length));
  return { colonies: found.length - missed.length, missed, left: left.reduce((sum, each) => sum + each, 0) };
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

export interface NightSchedule extends NightHow {
  readonly now: () => Date;
}

/** Looks now and every ten minutes whether a night is due, until `stop`; a look that breaks is told and the next one comes. */
export function forecastByTheClock({ now, ...how }: NightSchedule, stop: AbortSignal): void {
  let running = false;
  const say = (text: string): void => {
    if (!stop.aborted) how.say(text);
  };
  const look = async () => {
    if (running || stop.aborted || now().getUTCHours() < nightHour) return;
    running = true;
    try {
      await runNight({ ...how, say }, now());
    } catch (error) {
      say(`The forecast of the night failed: ${(error as Error).message}`);
    } finally {
      running = false;
    }
  };
  const timer = setInterval(() => void look(), lookMilliseconds);
  timer.unref();
  stop.addEventListener("abort", () => clearInterval(timer));
  void look();
}
