/** `skepsis forecast-nightly`: forecasts of all open cases, as `skepsis serve` makes them at night. */
import type { ChunkQueue, Records } from "../../storage/server.ts";
import type { Given } from "./arguments.ts";
import type { Command, ExitStatus } from "./command.ts";
import { handHelp } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { onRecords } from "./records.ts";

export const nightlyCommand: Command = {
  name: "forecast-nightly",
  summary: "Forecast the season of every counted colony of the open cases.",
  operand: null,
  flags: [],
  help: () =>
    handHelp(
      "forecast-nightly: forecast the season of every counted colony of the open cases.",
      [],
      "Once a day for each programme: what was reckoned today is not reckoned again. On PostgreSQL any\n" +
        "number of processes may run it at once, each takes chunks until none is left. The forecasts lie\n" +
        "beside the records, are shown on the page Season, and can be dropped and made anew.\n" +
        "SKEPSIS_NIGHTLY=1 lets skepsis serve do it at night.\n",
    ),
  run,
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const told = await onRecords("", io, (records) => night(records, io));
  if (given.json) io.out(`${JSON.stringify({ programmes: told })}\n`);
  else if (told.length === 0) io.out("There are no records to forecast from.\n");
  else
    for (const { programme, night: day, colonies } of told)
      io.out(`${programme}, night of ${day}: ${colonies} ${colonies === 1 ? "colony" : "colonies"} forecast.\n`);
  return 0;
}

/** Plans, reckons and waits until nothing is left; counts what is kept then. */
async function night(records: Records, io: Io) {
  const { openSeasonThreads, runNight, usefulThreads, workNights } = await import("../service/index.ts");
  const queue = await queueOf(io);
  const threads = openSeasonThreads(usefulThreads());
  const how = { records, queue, forecast: threads.forecast };
  try {
    const told = await runNight(how, io.now());
    if (queue !== null) {
      await workNights(records, queue, threads.forecast);
      while ((await queue.left()) > 0) await new Promise((resolve) => setTimeout(resolve, lookMilliseconds));
    }
    return await Promise.all(
      told.map(async ({ programme, night: day }) => {
        const store = await records.open(programme);
        const kept = await store.nights.forecasts().finally(() => store.close());
        return { programme, night: day, colonies: kept.filter((each) => each.night === day).length };
      }),
    );
  } finally {
    await queue?.close();
    await threads.close();
  }
}

const lookMilliseconds = 500;

/** The queue of the database that is set; null where records lie in files. */
export async function queueOf(io: Io): Promise<ChunkQueue | null> {
  const database = io.env.SKEPSIS_DATABASE;
  if (!database) return null;
  const { openChunkQueue } = await import("../../storage/server.ts");
  return openChunkQueue(database, { say: (text) => io.err(`${text}\n`) });
}
