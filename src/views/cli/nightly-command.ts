/** `skepsis forecast-nightly`: forecasts of all open cases, as `skepsis serve` makes them at night. */
import { type Casebook, coloniesOf, settled } from "../../casebook/index.ts";
import { problemLine } from "../../reasoning/index.ts";
import type { ChunkQueue, Records } from "../../storage/server.ts";
import type { NightMissed } from "../model/index.ts";
import { problemSentence, seasonWords } from "../words/index.ts";
import type { Given } from "./arguments.ts";
import type { Command, ExitStatus } from "./command.ts";
import { handHelp } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { inStore, onRecords } from "./records.ts";

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
        "beside the records, are shown on the page Season, and can be dropped and made anew. A colony that\n" +
        "cannot be reckoned is told with its reason, and the exit status is then 1.\n" +
        "SKEPSIS_NIGHTLY=1 lets skepsis serve do it at night.\n",
    ),
  run,
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const { programmes, failed } = await onRecords("", io, (records) => night(records, io));
  const isWhole = failed.length === 0 && programmes.every(({ missed, left }) => missed.length + left === 0);
  if (given.json) io.out(`${JSON.stringify({ programmes: programmes.map(inJson), failed })}\n`);
  else if (programmes.length + failed.length === 0) io.out("There are no records to forecast from.\n");
  else for (const each of programmes) io.out(inWords(each));
  return isWhole ? 0 : 1;
}

type Told = Awaited<ReturnType<typeof night>>["programmes"][number];

const inJson = ({ missed, ...rest }: Told) => ({
  ...rest,
  missed: missed.map(({ problems, ...of }) => ({
    ...of,
    problems: problems.map((each) => problemLine(each, problemSentence)),
  })),
});

const colonies = (number: number): string => `${number} ${number === 1 ? "colony" : "colonies"}`;

function inWords({ programme, night: day, colonies: forecast, missed, left }: Told): string {
  return [
    `${programme}, night of ${day}: ${colonies(forecast)} forecast.\n`,
    ...missed.map(
      ({ name, problems }) =>
        `Not forecast, ${name}: ${problems.map((each) => problemSentence(each) ?? each.code).join(" ")}\n`,
    ),
    left > 0 ? `${colonies(left)} not forecast: reckoning them broke. The next night tries again.\n` : "",
  ].join("");
}

/** Plans, reckons and waits until nothing is left; tells what is kept then. */
async function night(records: Records, io: Io) {
  const { nightOutcome, openSeasonThreads, runNight, usefulThreads, workNights } = await import("../service/index.ts");
  const queue = await queueOf(io);
  const threads = openSeasonThreads(usefulThreads());
  const say = (text: string): void => io.err(`${text}\n`);
  try {
    const ran = await runNight({ records, queue, forecast: threads.forecast, say }, io.now());
    if (queue !== null) {
      await workNights(records, queue, threads.forecast);
      while ((await queue.left()) > 0) await new Promise((resolve) => setTimeout(resolve, lookMilliseconds));
    }
    const programmes = ran.programmes.map(({ programme, night: day }) =>
      inStore(records, programme, async (store) => {
        const { missed, ...rest } = await nightOutcome(store, day);
        const named = missed.length === 0 ? [] : namedIn(await store.states(), missed);
        return { programme, night: day, ...rest, missed: named };
      }),
    );
    return { programmes: await Promise.all(programmes), failed: ran.failed };
  } finally {
    await queue?.close();
    await threads.close();
  }
}

/** Colonies as people call them. */
const namedIn = (casebook: Casebook, missed: readonly NightMissed[]) =>
  missed.map((each) => {
    const found = coloniesOf(casebook, each.caseId).find(({ id }) => id === each.colony);
    const record = settled(casebook.cases[each.caseId]?.record);
    return {
      ...each,
      name: seasonWords.colonyOf({ colony: found?.code ?? each.colony, case: record?.code ?? each.caseId }),
    };
  });

const lookMilliseconds = 500;

/** The queue of the database that is set; null where records lie in files. */
export async function queueOf(io: Io): Promise<ChunkQueue | null> {
  const database = io.env.SKEPSIS_DATABASE;
  if (!database) return null;
  const { openChunkQueue } = await import("../../storage/server.ts");
  return openChunkQueue(database, { say: (text) => io.err(`${text}\n`) });
}
