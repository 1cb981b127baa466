/** The exchange: pushed twice is pushed once, changed entries are refused, programmes do not mix. */

import { existsSync, mkdtempSync, readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type Documented, documented } from "../../../tests/documented.ts";
import { type Entry, newEntryId, newSalt, sealChain } from "../../journal/index.ts";
import { openProgrammes } from "./programmes.ts";
import { service } from "./service.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-programmes-"));
let app: Awaited<ReturnType<typeof service>>;
let answers: Documented;

beforeAll(async () => {
  app = await service({ version: "0", programmes: openProgrammes(folder), page: null, port: () => 80 });
  answers = documented(app);
});
afterAll(() => app.close());

const bytes = (seed: number) => new Uint8Array(16).fill(seed);

/** Entries of one device about an invented apiary. */
function journal(programme: string, count: number): readonly Entry[] {
  const drafts = Array.from({ length: count }, (_, index) => ({
    kind: "colony-registered" as const,
    at: "2026-03-09",
    about: ["yard", `colony-${index}`],
    data: { code: `A-${index}` },
  }));
  const end = {
    device: "test-device",
    programme,
    author: "tester",
    recordedAt: "2026-03-09T10:00:00.000Z",
    head: null,
  };
  const chances = drafts.map((_, index) => ({
    id: newEntryId(1_773_000_000_000 + index, bytes(index)),
    salt: newSalt(bytes(index)),
  }));
  return sealChain(drafts, end, chances);
}

const push = (programme: string, entries: readonly unknown[]) =>
  app.inject({
    method: "POST",
    url: `/api/programmes/${programme}/entries`,
    headers: { host: "localhost" },
    payload: { entries },
  });
const pull = (programme: string, query = "") =>
  app.inject({ url: `/api/programmes/${programme}/entries${query}`, headers: { host: "localhost" } });
const remove = (programme: string) =>
  app.inject({ method: "DELETE", url: `/api/programmes/${programme}`, headers: { host: "localhost" } });

it("takes entries in once, however often they are sent, and gives them back word for word, page by page", async () => {
  const entries = journal("main", 5);
  const first = (await push("main", entries)).json();
  expect(first.refused).toEqual([]);
  expect(first.heads).toEqual([{ device: "test-device", seq: 5, hash: expect.stringMatching(/^[0-9a-f]{64}$/) }]);
  expect((await push("main", entries)).json()).toEqual(first);

  const page = (await pull("main", "?cursor=0&limit=3")).json();
  expect(page).toMatchObject({ more: true });
  const rest = (await pull("main", `?cursor=${page.cursor}&limit=3`)).json();
  expect(rest).toMatchObject({ more: false });
  expect([...page.entries, ...rest.entries]).toEqual(entries);
});

it("refuses a changed body, an entry of another programme, and what is no entry, each by name", async () => {
  const [entry] = journal("changed", 1);
  const changed = { header: entry?.header, body: { ...entry?.body, data: { code: "B-9" } } };
  const reply = (await push("changed", [changed])).json();
  expect(reply.refused).toMatchObject([{ id: entry?.header.id, problem: { code: expect.any(String) } }]);
  expect(reply.heads).toEqual([]);
  expect((await push("changed", journal("main", 1))).json().refused).toHaveLength(1);
  expect((await push("changed", [{ nonsense: true }, 5])).json().refused).toHaveLength(2);
  expect((await pull("changed")).json().entries).toEqual([]);
});

it("does not fit: a body without entries, a cursor that is no number", async () => {
  const body = await app.inject({
    method: "POST",
    url: "/api/programmes/main/entries",
    headers: { host: "localhost" },
    payload: {},
  });
  expect(body.statusCode).toBe(422);
  expect(body.json().problems[0].field).toBe("entries");
  const query = await pull("main", "?cursor=x");
  expect(query.statusCode).toBe(422);
  expect(query.json().problems[0]).toMatchObject({ field: "cursor", given: "x" });
});

it.each(["..%2f..%2fetc", "Main", "a--b", "%2e%2e", "nul"])(
  "knows no programme %s, and makes no file for it",
  async (name) => {
    const before = readdirSync(folder);
    expect((await push(name, [])).statusCode).toBe(404);
    expect((await pull(name)).statusCode).toBe(404);
    expect(readdirSync(folder)).toEqual(before);
  },
);

it("makes no file for a programme that is only read", async () => {
  expect((await pull("unheard-of")).json()).toEqual({ entries: [], cursor: 0, more: false });
  expect(existsSync(path.join(folder, "unheard-of.sqlite"))).toBe(false);
});

it("keeps the demonstration in a file of its own, and removes it alone", async () => {
  await push("demonstration", journal("demonstration", 2));
  expect(existsSync(path.join(folder, "demonstration.sqlite"))).toBe(true);
  expect((await remove("main")).statusCode).toBe(403);
  expect((await remove("demonstration")).statusCode).toBe(204);
  expect(existsSync(path.join(folder, "demonstration.sqlite"))).toBe(false);
  expect((await pull("demonstration")).json().entries).toEqual([]);
  expect((await pull("main")).json().entries).toHaveLength(5);
  expect((await remove("demonstration")).statusCode).toBe(204);
  expect((await push("demonstration", journal("demonstration", 1))).json().heads).toHaveLength(1);
});

it("[SG230] every answer above was such as the OpenAPI document says", () => {
  expect(answers.misfits).toEqual([]);
  expect(answers.held.size).toBeGreaterThan(3);
});
