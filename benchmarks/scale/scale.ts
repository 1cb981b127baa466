/**
 * What a large casebook costs: `npm run bench -- --scale 0.1` for a tenth of it. Figures of time are given by the clock
 * and by the processor, since a machine that others use as well is slower by the clock alone.
 */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { sql } from "kysely";
import { ensurePostgres } from "../../scripts/postgres.ts";
import { addingTrouble } from "../../src/access/index.ts";
import type { Entry } from "../../src/journal/index.ts";
import type { PushReply } from "../../src/storage/index.ts";
import { openServerStore, recordsBy, type ServerStore } from "../../src/storage/server.ts";
import { openFile } from "../../src/storage/sqlite.ts";
import { startPostgres } from "../../tests/postgres/server.ts";
import { batchesOf, devices, type Size, shareOf } from "./big-casebook.ts";

interface Taken {
  readonly seconds: number;
  /** Of the processor, this process alone. */
  readonly processor: number;
}

async function taken(work: () => Promise<unknown>): Promise<Taken> {
  const [began, used] = [performance.now(), process.cpuUsage()];
  await work();
  const { user, system } = process.cpuUsage(used);
  return { seconds: (performance.now() - began) / 1000, processor: (user + system) / 1e6 };
}

const say = (what: string, value: number, unit: string, goal: string) =>
  console.log(`${what.padEnd(60)} ${value.toFixed(value < 10 ? 2 : 0).padStart(9)} ${unit.padEnd(10)} ${goal}`);
const rate = (entries: number, { seconds, processor }: Taken, what: string, goal: string) => {
  say(what, entries / seconds, "entries/s", goal);
  say(`${what}, by the processor alone`, entries / processor, "entries/s", "");
};

type PushOf = (batch: readonly Entry[], device: number) => Promise<PushReply>;

/** Pushes everything from all devices at once, sealing apart from the clock: a part of it is made, then pushed. */
async function fill(
  size: Size,
  pushOf: PushOf,
  programme = "main",
): Promise<{ readonly entries: number; readonly push: Taken }> {
  const writers = Array.from({ length: devices }, (_, device) => batchesOf(device, size, 50, programme));
  let [entries, seconds, processor] = [0, 0, 0];
  for (;;) {
    const ready = writers.map((writer) =>
      Array.from({ length: 20 }, () => writer.next().value as readonly Entry[] | undefined),
    );
    const batches = ready.map((own) => own.filter((batch) => batch !== undefined));
    const count = batches.flat().reduce((sum, batch) => sum + batch.length, 0);
    if (count === 0) return { entries, push: { seconds, processor } };
    const push = await taken(() =>
      Promise.all(
        batches.map(async (own, device) => {
          for (const batch of own)
            if ((await pushOf(batch, device)).refused.length > 0)
              throw new Error("the store refused entries of the bench");
        }),
      ),
    );
    entries += count;
    seconds += push.seconds;
    processor += push.processor;
  }
}

/** The door of members: an inspector for each device, rights and shape of every entry looked at. */
async function byMembers({ members }: ServerStore): Promise<PushOf> {
  const at = new Date().toISOString();
  const admitted = Array.from({ length: devices }, (_, device) =>
    members.admit({ name: `inspector ${device}`, role: "inspector", password: null }, { by: null, at }),
  );
  const ids = (await Promise.all(admitted)).map((member) => (member.ok ? member.value.id : ""));
  return (batch, device) =>
    members.push(batch, {
      ...{ by: ids[device] ?? "", at, mayClaim: false },
      trouble: (each) => addingTrouble("inspector", each),
    });
}

/** The 95th of a hundred pushes of one entry each, in milliseconds. */
async function singles(store: ServerStore): Promise<number> {
  const times: number[] = [];
  for (const entries of batchesOf(3, shareOf(0.001), 1)) {
    if (times.length === 200) break;
    times.push((await taken(() => store.push(entries))).seconds * 1000);
  }
  return times.sort((one, other) => one - other)[Math.floor(times.length * 0.95)] ?? Number.NaN;
}

/** The program as it is installed, built. */
const program = path.join(import.meta.dirname, "..", "..", "dist", "cli", "skepsis.js");

interface Served {
  /** Until the service gives its first page. */
  readonly seconds: number;
  /** The 95th of a hundred pages for 50 people at once, in milliseconds. */
  readonly page: number;
  /** Most memory it took while a device fetched everything and others pushed; NaN where the system does not tell. */
  readonly megabytes: number;
}

async function served(folder: string, taken: number): Promise<Served> {
  const began = performance.now();
  const env = { ...process.env, SKEPSIS_PORT: "0", SKEPSIS_HOST: "127.0.0.1", SKEPSIS_DATA: folder };
  const child = spawn(process.execPath, [program, "serve"], { env, stdio: ["ignore", "pipe", "ignore"] });
  let said = "";
  let [seconds, page] = [Number.NaN, Number.NaN];
  for await (const piece of child.stdout) {
    said += String(piece);
    const address = /http:\/\/\S+/.exec(said)?.[0];
    if (!address) continue;
    const entries = `${address}/api/programmes/main/entries`;
    await (await fetch(`${entries}?cursor=0&limit=500`)).arrayBuffer();
    seconds = (performance.now() - began) / 1000;
    page = await pagesAtOnce(address, taken);
    await pullAndPush(entries);
    break;
  }
  const megabytes = Number(/VmHWM:\s+(\d+) kB/.exec(statusOf(child.pid))?.[1]) / 1024;
  const gone = once(child, "exit");
  child.kill("SIGTERM");
  await gone;
  return { seconds, page, megabytes };
}

/** People who work at once, how long each thinks between two pages, and for how long all of them do, in milliseconds. */
const people = { count: 50, thinks: 2000, works: 30_000 } as const;

/**
 * The 95th of a hundred pages, in milliseconds. A page is what a device with its records asks of the service: the
 * document, who is signed in, and what came in since it last asked; every fourth page also sends an entry.
 */
async function pagesAtOnce(address: string, taken: number): Promise<number> {
  const entries = `${address}/api/programmes/main/entries`;
  const times: number[] = [];
  const until = performance.now() + people.works;
  const person = async (index: number) => {
    const own = batchesOf(devices + 2 + index, shareOf(0.02), 1);
    let cursor = Math.max(0, taken - 500);
    // So that they do not all begin at once.
    await pause((people.thinks * index) / people.count);
    for (let pages = 1; performance.now() < until; pages += 1) {
      const began = performance.now();
      await (await fetch(`${address}/cases`)).arrayBuffer();
      const [since] = await Promise.all([
        fetch(`${entries}?cursor=${cursor}&limit=500`).then((reply) => reply.json() as Promise<{ cursor: number }>),
        fetch(`${address}/api/session`).then((reply) => reply.arrayBuffer()),
        ...(pages % 4 === 0 ? [pushOf(entries, own.next().value as readonly Entry[] | undefined)] : []),
      ]);
      times.push(performance.now() - began);
      cursor = (since as { cursor: number }).cursor;
      await pause(people.thinks);
    }
  };
  await Promise.all(Array.from({ length: people.count }, (_, index) => person(index)));
  return times.sort((one, other) => one - other)[Math.floor(times.length * 0.95)] ?? Number.NaN;
}

const pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));

async function pushOf(entries: string, batch: readonly Entry[] | undefined): Promise<void> {
  if (batch === undefined) throw new Error("the bench has no entry left to send");
  const init = {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ entries: batch }),
  };
  const reply = await fetch(entries, init);
  if (!reply.ok) throw new Error(`push: ${reply.status}`);
  await reply.arrayBuffer();
}

/** Up to a hundred thousand entries fetched, and 200 pushes of 50 beside them. */
async function pullAndPush(entries: string): Promise<void> {
  const pull = async () => {
    for (let [cursor, pages] = [0, 0]; pages < 200; pages += 1) {
      const page = (await (await fetch(`${entries}?cursor=${cursor}&limit=500`)).json()) as {
        cursor: number;
        more: boolean;
      };
      if (!page.more) return;
      cursor = page.cursor;
    }
  };
  const push = async () => {
    let pushes = 0;
    for (const batch of batchesOf(devices + 1, shareOf(0.2), 50)) {
      if (pushes === 200) return;
      pushes += 1;
      await pushOf(entries, batch);
    }
  };
  await Promise.all([pull(), push()]);
}

function statusOf(process: number | undefined): string {
  try {
    return readFileSync(`/proc/${process}/status`, "utf8");
  } catch {
    return "";
  }
}

/** Prints every figure for a share of the whole. */
export async function scale(share: number): Promise<void> {
  if (!existsSync(program)) throw new Error("there is no built program: build it first");
  const size = shareOf(share);
  console.log(`${size.cases} cases, ${size.specimens} specimens, ${size.bees} bees read; ${share} of the whole.`);
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-scale-"));
  const file = path.join(folder, "main.sqlite");
  try {
    let store = await openServerStore({ file, programme: "main" });
    const { entries, push } = await fill(size, store.push);
    rate(entries, push, `SQLite: pushes of 50 from ${devices} devices`, "goal 12000");
    await store.close();
    say("SQLite: size of the file", statSync(file).size / 1e6, "MB", "");
    const service = await served(folder, entries);
    say("service start, until the first page is given", service.seconds, "s", "goal 3");
    say(`a page, 95th of 100, ${people.count} people at once`, service.page, "ms", "goal 200");
    say("most memory of the service, fetched from and pushed to", service.megabytes, "MB", "goal 400");
    store = await openServerStore({ file, programme: "main" });
    const check = await taken(async () => {
      const { isIntact, checked } = await store.check();
      if (!isIntact || checked < entries) throw new Error(`verify: ${checked} of ${entries}`);
    });
    say("SQLite: verify", check.seconds, "s", `goal ${(60 * share).toFixed(1)} for this share`);
    say("SQLite: verify, by the processor alone", check.processor, "s", "");
    await store.close();
    const raw = openFile(file);
    await sql`delete from states`.execute(raw.database);
    await raw.close();
    const rebuild = await taken(async () => {
      store = await openServerStore({ file, programme: "main" });
    });
    say("SQLite: all states made anew", rebuild.seconds, "s", `goal ${(120 * share).toFixed(1)} for this share`);
    say("SQLite: all states made anew, by the processor alone", rebuild.processor, "s", "");
    await store.close();
    const fresh = await openServerStore({ file: path.join(folder, "single.sqlite"), programme: "main" });
    say("SQLite: one entry a push, 95th of 100", await singles(fresh), "ms", "goal 60");
    await fresh.close();
    const theirs = await openServerStore({ file: path.join(folder, "members.sqlite"), programme: "main" });
    const pushed = await fill(size, await byMembers(theirs));
    rate(pushed.entries, pushed.push, `SQLite: the same by ${devices} members`, "");
    await theirs.close();
    await onPostgres(size);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function onPostgres(size: Size): Promise<void> {
  const found = ensurePostgres();
  if ("missing" in found) {
    console.log(`PostgreSQL: not measured; ${found.missing}`);
    return;
  }
  // Without waiting for the disk, as the tests' server runs: the figure is of the program, not of a disk.
  const server = await startPostgres(found.programs);
  try {
    const records = recordsBy({ database: server.address, folder: "" });
    if (!records.ok) throw new Error("no address");
    const store = await records.value.open("main");
    const { entries, push } = await fill(size, store.push);
    rate(entries, push, `PostgreSQL: pushes of 50 from ${devices} devices`, "goal 6000");
    const theirs = await records.value.open("members");
    const pushed = await fill(size, await byMembers(theirs), "members");
    rate(pushed.entries, pushed.push, `PostgreSQL: the same by ${devices} members`, "");
    await records.value.close();
  } finally {
    await server.remove();
  }
}
