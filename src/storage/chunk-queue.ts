/** Chunks of long work on PostgreSQL: any number of processes take them, and one of a process that died goes to another. */
import { createHash } from "node:crypto";
import type { ChunkName } from "./nights.ts";

/** Names a chunk; what it is reckoned from lies with its programme. */
export interface ChunkJob extends ChunkName {
  readonly programme: string;
}

export interface ChunkQueue {
  /** Hands chunks in; one that was handed in before is not again, done or not. */
  readonly put: (jobs: readonly ChunkJob[]) => Promise<void>;
  /** Takes one chunk after the other until it is closed. A handler that throws gives its chunk back. */
  readonly work: (handle: (job: ChunkJob) => Promise<void>) => Promise<void>;
  /** Chunks that wait or are being worked on. */
  readonly left: () => Promise<number>;
  readonly close: () => Promise<void>;
}

/** Beside the schemas of the programmes, which all begin otherwise. */
const schema = "jobs_of_skepsis";
const queue = "season-chunks";

export interface ChunkQueueSettings {
  /** Hears of trouble that passes, such as a database that is away for a while, and of chunks that are given back. */
  readonly say: (text: string) => void;
  /** A process that is silent for so long has died: its chunk goes to another. 10 or more. */
  readonly heartbeatSeconds?: number;
  /** How often it is looked for such processes. */
  readonly lookSeconds?: number;
}

/** Opens the queue, made when it is not there: the user of the database must be allowed to make schemas. */
export async function openChunkQueue(
  address: string,
  { say, heartbeatSeconds = 30, lookSeconds = 30 }: ChunkQueueSettings,
): Promise<ChunkQueue> {
  // Loaded where it is needed: most commands know no queue.
  const { PgBoss } = await import("pg-boss");
  const boss = new PgBoss({
    ...{ connectionString: address, schema, application_name: "skepsis", max: 3 },
    // Nothing is planned by the queue's own clock, and nothing is told to others.
    ...{ schedule: false, openTelemetry: { enabled: false }, monitorVacuum: false },
    ...{ superviseIntervalSeconds: lookSeconds, monitorIntervalSeconds: lookSeconds },
  });
  boss.on("error", (error) => say(`The queue of forecasts: ${error.message}`));
  await boss.start();
  await boss.createQueue(queue, {
    ...{ heartbeatSeconds, expireInSeconds: 900, retryLimit: 5, retryDelay: 1 },
    // A chunk's name is remembered for two days, so that a night is reckoned once.
    ...{ retentionSeconds: 86_400, deleteAfterSeconds: 2 * 86_400 },
  });
  return {
    put: async (jobs) => {
      if (jobs.length > 0)
        await boss.insert(
          queue,
          jobs.map((data) => ({ id: idOf(data), data })),
        );
    },
    work: async (handle) => {
      await boss.work<ChunkJob>(queue, { batchSize: 1, pollingIntervalSeconds: 2 }, async ([job]) => {
        if (job === undefined) return;
        const { programme, night, number } = job.data;
        try {
          await handle(job.data);
        } catch (error) {
          say(`Chunk ${number} of the night of ${night}, ${programme}, is given back: ${(error as Error).message}`);
          throw error;
        }
      });
    },
    left: async () => {
      const text = `select count(*)::int as left from ${schema}.job where name = $1 and state in ('created', 'retry', 'active')`;
      const { rows } = await boss.getDb().executeSql(text, [queue]);
      return Number(rows[0]?.left ?? 0);
    },
    // What is not done in time is given back: others, or the next start, take it.
    close: () => boss.stop({ graceful: true, timeout: 5_000 }),
  };
}

/** The same chunk of the same plan has the same id. */
function idOf({ programme, night, stoodAt, number }: ChunkJob): string {
  const hash = createHash("sha256").update(`${programme}\n${night}\n${stoodAt}\n${number}`).digest("hex");
  const parts = [
    hash.slice(0, 8),
    hash.slice(8, 12),
    `8${hash.slice(13, 16)}`,
    `8${hash.slice(17, 20)}`,
    hash.slice(20, 32),
  ];
  return parts.join("-");
}
