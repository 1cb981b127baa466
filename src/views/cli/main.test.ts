/** The command line as people and programs meet it: one JSON value, words for trouble, exit status 0, 1, 2. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import SQLite from "better-sqlite3";
import { expect, it } from "vitest";
import { fileStory, photo, sha256Of } from "../../../tests/journals/file-story.ts";
import { type Entry, newEntryId, newSalt, sealChain } from "../../journal/index.ts";
import { verbs } from "../../reasoning/index.ts";
import { openServerStore } from "../../storage/server.ts";
import { readSavedCopy } from "../../transfer/index.ts";
import { commands } from "./main.ts";
import { said } from "./test-io.ts";

const names = commands.map(({ name }) => name);

it("help lists every verb in one line each, and help VERB its flags", async () => {
  const overview = await said(["help"]);
  expect(overview.status).toBe(0);
  for (const name of names) expect(overview.out).toMatch(new RegExp(`^  ${name} `, "m"));
  expect((await said([])).out).toBe(overview.out);
  for (const name of names) {
    const help = await said(["help", name]);
    expect(help.status, name).toBe(0);
    expect(help.out).toContain(`skepsis ${name}`);
    expect(help.out.split("\n").filter((line) => line.length > 100 && !line.startsWith('  {"'))).toEqual([]);
    expect((await said([name, "--help"])).out).toBe(help.out);
  }
});

it("says in words that a verb is unknown: exit 2, and with --json as problems", async () => {
  const words = await said(["diferential"]);
  expect(words.status).toBe(2);
  expect(words.out).toBe("");
  expect(words.err).toContain("diferential");
  expect(words.err).toContain("sample-size");
  const json = await said(["diferential", "--json"]);
  expect(json.status).toBe(2);
  expect(json.err).toBe("");
  expect(json.json().problems).toMatchObject([{ field: "verb", given: "diferential" }]);
});

it.each(verbs.map((verb) => [verb.name, verb] as const))(
  "%s answers its own example, as JSON and for people",
  async (name, verb) => {
    const stdin = JSON.stringify(verb.example);
    const json = await said([name, "--input", "-", "--json"], { stdin });
    expect(json.status).toBe(0);
    expect(json.err).toBe("");
    expect(json.out.trim().split("\n")).toHaveLength(1);
    const { notices: _notices, ...answer } = json.json();
    expect(verb.output.safeParse(answer).error).toBeUndefined();

    const table = await said([name, "--input", "-"], { stdin });
    expect(table.status).toBe(0);
    expect(table.out).not.toBe("");
    expect(table.out).not.toMatch(/\[object|undefined|NaN/);
  },
);

it("says what of JSON it does not take, and never with a stack", async () => {
  for (const stdin of ["[".repeat(9000) + "]".repeat(9000), '{"season":1e400}', '{"season":"\\ud800"}']) {
    const bad = await said(["differential", "--input", "-", "--json"], { stdin });
    expect([bad.status, bad.err]).toEqual([2, ""]);
    expect(bad.json().problems).toMatchObject([
      { field: "--input", expected: expect.stringMatching(/levels|numbers|text/) },
    ]);
  }
});

it.each(verbs.map(({ name }) => [name]))("%s names field, given and expected of what does not fit", async (name) => {
  const bad = await said([name, "--input", "-", "--json"], { stdin: '{"noSuchField":1}' });
  expect(bad.status).toBe(2);
  const problems = bad.json().problems as { field: string; given: unknown; message: string }[];
  expect(problems.some(({ field, given }) => field === "noSuchField" && given === 1)).toBe(true);
  for (const { message } of problems) expect(message).toMatch(/Expected|expected/);
});

it("flags say the same as JSON, and win over it", async () => {
  const byFlags = await said(["sample-size", "--design-prevalence", "0.05", "--sensitivity", "0.8", "--json"]);
  const byJson = await said(["sample-size", "--input", "-", "--json"], {
    stdin: '{"designPrevalence":0.05,"sensitivity":0.8}',
  });
  expect(byFlags.json()).toEqual(byJson.json());
  const both = await said(["sample-size", "--input", "-", "--sensitivity", "1", "--json"], {
    stdin: '{"designPrevalence":0.05,"sensitivity":0.8}',
  });
  expect(both.json().bees).toBe(59);
});

it("a lawful refusal is no failure: exit 0, with the rule", async () => {
  const alone = { treated: { after: { infested: 12, examined: 100 } }, scored: "living-mites", daysAfter: 28 };
  const reply = await said(["efficacy", "--input", "-", "--json"], { stdin: JSON.stringify(alone) });
  expect(reply.status).toBe(0);
  expect(reply.json().refused).toMatchObject([{ rule: "no-comparator" }]);
});

it("says what keeps an input from being read", async () => {
  const missing = await said(["estimate", "--input", "nowhere.json"]);
  expect(missing).toMatchObject({ status: 2, out: "" });
  expect(missing.err).toContain("nowhere.json");
  const broken = await said(["estimate", "--input", "-"], { stdin: "{" });
  expect(broken).toMatchObject({ status: 2, out: "" });
  expect(broken.err).toContain("JSON");
});

/** A chain of three entries. */
function threeColonies(): readonly Entry[] {
  const drafts = ["A-1", "A-2", "A-3"].map((code) => ({
    kind: "colony-registered" as const,
    at: "2026-03-09",
    about: ["yard", code],
    data: { code },
  }));
  const end = { device: "d", programme: "main", author: "tester", recordedAt: "2026-03-09T10:00:00.000Z", head: null };
  const bytes = (seed: number) => new Uint8Array(16).fill(seed);
  return sealChain(
    drafts,
    end,
    drafts.map((_, index) => ({ id: newEntryId(index, bytes(index)), salt: newSalt(bytes(index)) })),
  );
}

it("[SG124] verify says which files are here and which device has not sent its own; a copy carries those that are", async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-cli-"));
  const env = { SKEPSIS_DATA: folder };
  const store = await openServerStore({ file: path.join(folder, "main.sqlite"), programme: "main" });
  await store.push(fileStory());
  await store.files.take({ sha256: sha256Of(photo), of: photo.length, from: 0, bytes: photo, sender: null });
  const checked = await said(["verify"], { env });
  expect(checked.status).toBe(0);
  expect(checked.out).toContain("1 file that entries name, here and unchanged.");
  expect(checked.out).toContain("2 files not uploaded yet from device phone-1.");
  const exported = await said(["export", "--format", "copy", "--output", "copy.zip", "--json"], { env, folder });
  expect(exported.json()).toEqual({ output: "copy.zip", entries: 5, files: 1 });
  const copy = readSavedCopy(new Uint8Array(readFileSync(path.join(folder, "copy.zip"))));
  expect(copy?.files.map(({ sha256 }) => sha256)).toEqual([sha256Of(photo)]);
  expect((await said(["export", "--format", "copy"], { env, folder })).status).toBe(2);
  await store.close();
});

it("a journal that was exported verifies, and one that was changed does not", async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-cli-"));
  const env = { SKEPSIS_DATA: folder };
  expect((await said(["verify", "--json"], { env })).status).toBe(2);

  const store = await openServerStore({ file: path.join(folder, "main.sqlite"), programme: "main" });
  await store.push(threeColonies());
  await store.close();

  expect((await said(["verify", "--json"], { env })).json()).toMatchObject({ isIntact: true, checked: 3 });
  const exported = await said(["export", "--output", "journal.jsonl", "--json"], { env, folder });
  expect(exported.json()).toEqual({ output: "journal.jsonl", entries: 3 });
  expect((await said(["export", "--output", "journal.jsonl"], { env, folder })).status).toBe(2);
  expect((await said(["export"], { env })).out).toBe(readFileSync(path.join(folder, "journal.jsonl"), "utf8"));
  const verified = await said(["verify", "journal.jsonl"], { folder });
  expect(verified).toMatchObject({ status: 0, out: expect.stringContaining("3 entries, all there and unchanged") });

  const text = readFileSync(path.join(folder, "journal.jsonl"), "utf8");
  writeFileSync(path.join(folder, "changed.jsonl"), text.replace('"code":"A-2"', '"code":"A-9"'));
  const changed = await said(["verify", "changed.jsonl", "--json"], { folder });
  expect(changed.status).toBe(1);
  expect(changed.json()).toMatchObject({ isIntact: false, faults: [{ seq: 2, reason: "wrong-content" }] });

  writeFileSync(path.join(folder, "heads.json"), JSON.stringify([{ device: "d", seq: 4, hash: "0".repeat(64) }]));
  const cut = await said(["verify", "journal.jsonl", "--heads", "heads.json"], { folder });
  expect(cut.status).toBe(1);
  expect(cut.out).toContain("head-missing");
});

it("verify finds that the newest entry of the store is gone", async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-cli-"));
  const file = path.join(folder, "main.sqlite");
  const store = await openServerStore({ file, programme: "main" });
  await store.push(threeColonies());
  await store.close();
  const raw = new SQLite(file);
  raw.prepare("delete from entries where seq = 3").run();
  raw.close();
  const verified = await said(["verify", "--json"], { env: { SKEPSIS_DATA: folder } });
  expect(verified.status).toBe(1);
  expect(verified.json()).toMatchObject({ checked: 2, faults: [{ device: "d", seq: 3, reason: "head-missing" }] });
});

it.each(["verify", "export"])("%s says in words that the records cannot be opened", async (name) => {
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-cli-"));
  const env = { SKEPSIS_DATA: folder };
  writeFileSync(path.join(folder, "main.sqlite"), "no database at all, but long enough to be taken for one".repeat(99));
  await (await openServerStore({ file: path.join(folder, "other.sqlite"), programme: "main" })).close();
  for (const argv of [[name], [name, "--programme", "other"]]) {
    const told = await said(argv, { env });
    expect([told.status, told.out]).toEqual([2, ""]);
    expect(told.err).toMatch(/SQLITE_NOTADB|holds the programme main/);
    expect(told.err).not.toMatch(/\bat .*:\d+:\d+/);
  }
});

it("refuses to serve other machines and a port that is none, in words", async () => {
  const open = await said(["serve"], { env: { SKEPSIS_HOST: "0.0.0.0" } });
  expect(open.status).toBe(1);
  expect(open.err).toContain("can be reached by other machines");
  expect((await said(["serve", "--port", "x"])).status).toBe(2);
  expect((await said(["serve"], { env: { SKEPSIS_PORT: "70000" } })).err).toContain("SKEPSIS_PORT");
});

it("runs as a program of its own", () => {
  const run = spawnSync(
    process.execPath,
    ["src/views/cli/skepsis.ts", "sample-size", "--design-prevalence", "0.05", "--sensitivity", "1", "--json"],
    { encoding: "utf8" },
  );
  expect(run.stderr).toBe("");
  expect(run.status).toBe(0);
  expect(JSON.parse(run.stdout).bees).toBe(59);
});
