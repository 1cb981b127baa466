/** The forecast of a night on PostgreSQL: chunks go to any number of processes, and one of a killed process to another. */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { demonstrationAsMain } from "../../../tests/journals/demonstration-as-main.ts";
import { ask, newDatabase, server } from "../../../tests/postgres/database.ts";
import { dynamics } from "../../reasoning/index.ts";
import { inFolder, openChunkQueue, type Records, recordsBy } from "../../storage/server.ts";
import { nightChunks } from "../model/index.ts";
import { nightOutcome, reckonChunk, runNight, workNights } from "./nightly.ts";

const at = new Date("2026-11-19T02:10:00.000Z");
const forecast = (question: dynamics.ForecastQuestion) => dynamics.colonyForecast({ ...question, draws: 100 });
const quick = { say: (text: string) => expect.fail(text), heartbeatSeconds: 10, lookSeconds: 1 };

const onDatabase = (database: string): Records => {
  const records = recordsBy({ database, folder: "none" });
  return records.ok ? records.value : expect.fail("no address");
};

async function filled(records: Records): Promise<void> {
  const store = await records.open("main");
  await store.push(demonstrationAsMain());
  await store.close();
}

/** What is kept, without the place in the journal, which is each database's own. */
async function kept(records: Records): Promise<string> {
  const store = await records.open("main");
  const found = await store.nights.forecasts().finally(() => store.close());
  return JSON.stringify(found.map(({ position: _, ...rest }) => rest));
}

/** Plans the night in chunks of one colony, so that there are several. */
async function planned(records: Records): Promise<readonly number[]> {
  const store = await records.open("main");
  const chunks = nightChunks(await store.states(), "2026-11-19", 1);
  const standing = { night: "2026-11-19", stoodAt: at.toISOString(), position: 1 };
  const texts = chunks.map((chunk) => ({ number: chunk.number, text: JSON.stringify(chunk) }));
  return store.nights
    .plan(standing, texts, [])
    .then((plan) => plan?.left ?? expect.fail("not planned"))
    .finally(() => store.close());
}

const jobsOf = (numbers: readonly number[]) =>
  numbers.map((number) => ({ programme: "main", night: "2026-11-19", stoodAt: at.toISOString(), number }));

async function untilDone(queue: { readonly left: () => Promise<number> }): Promise<void> {
  while ((await queue.left()) > 0) await new Promise((resolve) => setTimeout(resolve, 200));
}

describe.skipIf(server === null)("the forecast of a night on PostgreSQL", () => {
  it("[SG223] has the bytes of one process on files, and is handed in once", async () => {
    const folder = mkdtempSync(path.join(tmpdir(), "skepsis-night-"));
    const files = inFolder(folder);
    await filled(files);
    await runNight({ records: files, queue: null, forecast, say: quick.say }, at);
    const database = await newDatabase();
    const records = onDatabase(database);
    await filled(records);
    const queues = await Promise.all([openChunkQueue(database, quick), openChunkQueue(database, quick)]);
    // Two processes plan at once, and both take chunks.
    await Promise.all(queues.map((queue) => runNight({ records, queue, forecast, say: quick.say }, at)));
    await Promise.all(queues.map((queue) => workNights(records, queue, forecast)));
    await Promise.all(queues.map(untilDone));
    expect(await kept(records)).toBe(await kept(files));
    expect(
      await ask(
        database,
        "select state::text, count(*)::int from jobs_of_skepsis.job where name = 'season-chunks' group by 1",
      ),
    ).toEqual([{ state: "completed", count: 1 }]);
    // No word of the records lies with the queue.
    const [job] = await ask(database, "select data from jobs_of_skepsis.job where name = 'season-chunks'");
    expect(job?.data).toEqual({ programme: "main", night: "2026-11-19", stoodAt: at.toISOString(), number: 0 });
    // Dropped, as an erasure does it, and planned anew the same night: the chunks are others, the bytes the same.
    const before = (await kept(records)).replaceAll(at.toISOString(), "then");
    for (const table of ["nights", "night_chunks", "forecasts"])
      await ask(database, `delete from skepsis_main.${table}`);
    expect(await kept(records)).toBe("[]");
    const later = new Date(at.getTime() + 3_600_000);
    await Promise.all(queues.map((queue) => runNight({ records, queue, forecast, say: quick.say }, later)));
    await Promise.all(queues.map(untilDone));
    expect((await kept(records)).replaceAll(later.toISOString(), "then")).toBe(before);
    // The queue's own schema is no programme.
    expect(await records.programmes()).toEqual(["main"]);
    await Promise.all(queues.map((queue) => queue.close()));
    await records.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("[SG223] a chunk of a process that is killed is taken by another, and each colony is told once", async () => {
    const database = await newDatabase();
    const records = onDatabase(database);
    await filled(records);
    const numbers = await planned(records);
    expect(numbers.length).toBeGreaterThan(2);
    const queue = await openChunkQueue(database, quick);
    await queue.put(jobsOf(numbers));
    const hanging = spawn(process.execPath, [path.join("tests", "postgres", "hanging-worker.ts"), database]);
    const [said] = (await once(hanging.stdout, "data")) as [Buffer];
    const number = Number(/took (\d+)/.exec(String(said))?.[1]);
    hanging.kill("SIGKILL");
    await once(hanging, "exit");
    const taken: number[] = [];
    await queue.work(async (job) => {
      taken.push(job.number);
      const store = await records.open(job.programme);
      await reckonChunk(store, job, forecast);
      // Reckoned twice, as by a process that was slow and not dead: nothing changes.
      await reckonChunk(store, job, forecast);
      await store.close();
    });
    await untilDone(queue);
    expect([...taken].sort()).toEqual([...numbers].sort());
    expect(taken.at(-1)).toBe(number);
    const found = JSON.parse(await kept(records)) as readonly unknown[];
    expect(found).toHaveLength(numbers.length);
    // Handed in again, by whoever planned the same night: none is reckoned again.
    await queue.put(jobsOf(numbers));
    expect(await queue.left()).toBe(0);
    await queue.close();
    await records.close();
  });

  it("[SG223] a chunk that broke is told and given back, and goes well the next time", async () => {
    const database = await newDatabase();
    const said: string[] = [];
    const queue = await openChunkQueue(database, { ...quick, say: (text) => said.push(text) });
    await queue.put(jobsOf([7]));
    let tries = 0;
    await queue.work(async () => {
      tries += 1;
      if (tries === 1) throw new Error("the disk is full");
    });
    await untilDone(queue);
    expect(tries).toBe(2);
    expect(said).toEqual(["Chunk 7 of the night of 2026-11-19, main, is given back: the disk is full"]);
    await queue.close();
  });

  it("[SG226] a chunk that breaks each time is given up, told, and counted as left; the others are done", async () => {
    const database = await newDatabase();
    const records = onDatabase(database);
    await filled(records);
    const numbers = await planned(records);
    const said: string[] = [];
    const queue = await openChunkQueue(database, { ...quick, say: (text) => said.push(text) });
    await queue.put(jobsOf(numbers));
    await workNights(records, queue, (question) => {
      if (question.counts[0]?.infested === 17) throw new Error("out of memory");
      return forecast(question);
    });
    await untilDone(queue);
    expect(new Set(said).size).toBe(1);
    expect(said[0]).toMatch(/^Chunk \d of the night of 2026-11-19, main, is given back: out of memory$/);
    const store = await records.open("main");
    expect(await nightOutcome(store, "2026-11-19")).toEqual({ colonies: numbers.length - 1, missed: [], left: 1 });
    await store.close();
    await queue.close();
    await records.close();
  });
});
