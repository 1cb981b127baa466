/** One byte of the store is another one: what is read is what was written, or the damage is told. */
import { readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import SQLite from "better-sqlite3";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { canonicalJson, type Entry } from "../../src/journal/index.ts";
import { openServerStore, type ServerStore, StoreTrouble } from "../../src/storage/server.ts";
import { bee, everyKind } from "../journals/every-kind.ts";
import { attachedDraft, photo, sha256Of, voice } from "../journals/file-story.ts";
import { fork } from "../journals/fork.ts";
import { writer } from "../journals/writer.ts";
import { fillWithRights } from "../laws/rights-contract.ts";
import { at } from "../members.ts";
import { scratch, seeded, tell, tries } from "./count.ts";
import { notRefolded } from "./not-refolded.ts";

const folder = scratch("flipped");
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const whole = path.join(folder, "whole.sqlite");
const bees = writer({ device: "bench-1" }).write(...Array.from({ length: 60 }, (_, index) => bee(index + 1)));
const story: readonly Entry[] = [...everyKind(), ...bees, ...fork()];

/** A store with entries, what is kept apart, members and what each was given, files, sessions and a night. */
async function filled(store: ServerStore): Promise<void> {
  await store.push(story);
  const { head } = await fillWithRights(store);
  // Names a photo that another has sent, and that has not come from here.
  const named = head.phone.write(attachedDraft(photo, "image/jpeg", { root: head.case, colony: null }));
  await store.members.push(named, { by: head.id, at, mayClaim: false, trouble: () => null });
  await store.members.putChallenge({ hash: "q".padEnd(64, "0"), purpose: "add", member: head.id, endsAt: at });
  const { position } = await store.accounts();
  const standing = { night: "2026-04-01", stoodAt: at, position };
  const chunks = [1, 2].map((number) => ({ number, text: `what chunk ${number} is reckoned from` }));
  await store.nights.plan(standing, chunks, [{ root: "case-1", colony: "colony-1" }]);
  await store.nights.done({ ...standing, number: 1 }, [{ root: "case-1", colony: "colony-1", text: "a forecast" }]);
}

interface Given {
  readonly words: string;
  /** Of each file, to whom it is open and of whom it is still awaited: what `attached.arrived` tells alone. */
  readonly opening: string;
}

/** Everything that a store gives to whoever asks; of accounts what the journal can be held against. */
async function given(store: ServerStore): Promise<Given> {
  const { members } = store;
  const book = (await members.members()).map(({ name, hasPassword: _, ...each }) => ({
    ...each,
    n: name.toLowerCase(),
  }));
  const pulls = [];
  for (const { id } of book)
    for (const onlyOwn of [true, false])
      pulls.push([await members.pull({ member: id, onlyOwn, byRoot: true }, 0, 5000), await members.rootsOf(id)]);
  const [files, opening]: [unknown[], unknown[]] = [[], []];
  for (const bytes of [photo, voice, voice.slice(0, 900)]) {
    const sha256 = sha256Of(bytes);
    const asked = book.map(({ id }) => store.files.naming(sha256, { member: id, onlyOwn: true, byRoot: true }));
    const named = await Promise.all(asked);
    const file = await store.files.read(sha256);
    const senders = [null, ...book.map(({ id }) => id)];
    opening.push(await Promise.all(senders.map((sender) => store.files.standing(sha256, sender))));
    opening.push(named.flat().map(({ hasCome }) => hasCome));
    files.push([file?.mediaType, sha256Of(file?.bytes ?? new Uint8Array())]);
    files.push(named.map((names) => names.map(({ hasCome: _, ...name }) => name)));
  }
  const devices = (await members.devices()).map(({ name: _, ...each }) => each);
  const [entries, heads, states, apart, page, audit] = [
    await store.all(),
    await store.heads(),
    await store.states(),
    await store.quarantined(),
    await store.pull(0, 5000),
    await members.audit(null, 5000),
  ];
  const all = [entries, heads, states, apart, page, audit, book, devices, pulls, files];
  const text = (value: readonly unknown[]) => canonicalJson(JSON.parse(JSON.stringify(value)) as Entry[]);
  return { words: text(all), opening: text(opening) };
}

const asked = <Row>(file: string, statement: string): readonly Row[] => {
  const raw = new SQLite(file, { readonly: true });
  try {
    return raw.prepare(statement).all() as readonly Row[];
  } finally {
    raw.close();
  }
};

const tablesOf = (file: string): readonly string[] =>
  asked<{ readonly name: string }>(file, "select name from sqlite_master where type = 'table' order by name").map(
    ({ name }) => name,
  );

const ofRights =
  "'members', 'devices', 'scopes', 'parents', 'sessions', 'invitations', 'passkeys', 'attached', 'files', 'uploads'";

/** Bytes, other than zero, of the pages in which the rows lie that decide who may see what. */
function placesOf(file: string, bytes: Buffer): readonly number[] {
  const pages = asked<{ readonly pgoffset: number; readonly pgsize: number }>(
    file,
    `select pgoffset, pgsize from dbstat where name in (${ofRights})`,
  );
  return pages
    .flatMap(({ pgoffset, pgsize }) => Array.from({ length: pgsize }, (_, index) => pgoffset + index))
    .filter((place) => bytes[place] !== 0);
}

type Dump = Readonly<Record<string, readonly Readonly<Record<string, unknown>>[]>>;

/** Every row of every table, read past the store. */
const dumped = (file: string, tables: readonly string[]): Dump =>
  Object.fromEntries(tables.map((table) => [table, asked(file, `select * from ${table} order by 1, 2`)]));

/** Columns, with their table, in which two dumps differ; `*` where there are more rows, or fewer. */
function differing(one: Dump, other: Dump): readonly string[] {
  const found = new Set<string>();
  for (const [table, rows] of Object.entries(one)) {
    const others = other[table] ?? [];
    if (rows.length !== others.length) found.add(`${table}.*`);
    for (const [index, row] of rows.entries())
      for (const column of new Set([...Object.keys(row), ...Object.keys(others[index] ?? {})]))
        if (JSON.stringify(row[column]) !== JSON.stringify(others[index]?.[column])) found.add(`${table}.${column}`);
  }
  return [...found];
}

const isBorne = (column: string): boolean => column in notRefolded || `${column.split(".")[0]}.*` in notRefolded;

interface Expected {
  readonly given: Given;
  readonly tables: Dump;
}

/** `borne`: only what cannot be refolded has changed. */
type Outcome = "same" | "named" | "borne" | "silent";

/** What became of a store that was opened and read to the end, and the columns that have changed in silence. */
async function outcome(file: string, expected: Expected): Promise<readonly [Outcome, readonly string[]]> {
  let now: Given;
  try {
    const store = await openServerStore({ file, programme: "main" });
    try {
      const report = await store.check();
      if (report.damage.length > 0 || report.faults.length > 0) return ["named", []];
      now = await given(store);
    } finally {
      await store.close();
    }
    const changed = differing(expected.tables, dumped(file, Object.keys(expected.tables)));
    const isOpen = now.opening === expected.given.opening || changed.includes("attached.arrived");
    if (now.words !== expected.given.words || !isOpen || !changed.every(isBorne)) return ["silent", changed];
    return [changed.length === 0 ? "same" : "borne", changed];
  } catch (trouble) {
    if (trouble instanceof StoreTrouble) return ["named", []];
    throw trouble;
  }
}

/** The store as it was written, which lies in the file `whole` from then on. */
async function wholeStore(): Promise<Expected> {
  const store = await openServerStore({ file: whole, programme: "main" });
  await filled(store);
  expect((await store.check()).damage).toEqual([]);
  const allGiven = await given(store);
  await store.close();
  return { given: allGiven, tables: dumped(whole, tablesOf(whole)) };
}

/** A copy of the whole store with these bytes. */
function copyOf(bytes: Buffer): string {
  const file = path.join(folder, "flipped.sqlite");
  for (const ending of ["-wal", "-shm"]) rmSync(`${file}${ending}`, { force: true });
  writeFileSync(file, bytes);
  return file;
}

describe("a store with one byte flipped", () => {
  let expected: Expected;
  beforeAll(async () => {
    expected = await wholeStore();
  });

  it("[SG100] gives what was written, or says that it is damaged; nothing changes in silence", async () => {
    // A table without a row would prove nothing.
    expect(Object.keys(expected.tables).filter((table) => expected.tables[table]?.length === 0)).toEqual([]);
    const bytes = readFileSync(whole);
    const places = placesOf(whole, bytes);
    const below = seeded(20261127);
    const rounds = tries(120, 20_000);
    const found = { same: 0, named: 0, borne: 0, silent: 0 };
    const silent: string[] = [];
    for (const round of rounds) {
      // Every other one among accounts and grants, which are a small part of the file.
      const at = round % 2 === 0 ? below(bytes.length) : (places[below(places.length)] ?? 0);
      const flipped = Buffer.from(bytes);
      flipped[at] = (flipped[at] ?? 0) ^ (1 << below(8));
      const [became, changed] = await outcome(copyOf(flipped), expected);
      found[became] += 1;
      if (became === "silent") silent.push(`byte ${at}: ${changed.join(", ")}`);
    }
    expect(silent).toEqual([]);
    expect(found.named).toBeGreaterThan(rounds.count() / 4);
    tell({
      fault: "one bit flipped in the SQLite file",
      tried: rounds.count(),
      against: `${found.named} named, ${found.same} without effect, ${found.borne} in what no journal tells`,
    });
  });

  it("[SG100] that an entry's writer sent the file is borne alone where another entry opens it", async () => {
    const changedTo = async (arrived: 0 | 1, sha256: string) => {
      const file = copyOf(readFileSync(whole));
      const raw = new SQLite(file);
      const change = "update attached set arrived = ? where sha256 = ? and arrived <> ?";
      expect(raw.prepare(change).run(arrived, sha256, arrived).changes).toBe(1);
      raw.close();
      return outcome(file, expected);
    };
    expect(await changedTo(1, sha256Of(photo))).toEqual(["borne", ["attached.arrived"]]);
    expect(await changedTo(1, sha256Of(voice))).toEqual(["named", []]);
    expect(await changedTo(0, sha256Of(photo))).toEqual(["named", []]);
  });
});
