/** Backup and restore on the command line: the same casebook on another machine, and nothing from a damaged archive. */
import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { strToU8, unzipSync, zipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { decodeJournal } from "../../journal/index.ts";
import { casebookHash, openServerStore } from "../../storage/server.ts";
import { said } from "./test-io.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-backup-"));
const env = { SKEPSIS_DATA: folder };
const file = path.join(folder, "kept.zip");
const aside = () => ({ SKEPSIS_DATA: mkdtempSync(path.join(tmpdir(), "skepsis-restore-")) });

beforeAll(async () => {
  const text = readFileSync(path.join(import.meta.dirname, "../../../examples/demonstration/journal.jsonl"), "utf8");
  const journal = decodeJournal(text);
  if (!journal.ok) throw new Error("the demonstration journal cannot be read");
  const store = await openServerStore({ file: path.join(folder, "demonstration.sqlite"), programme: "demonstration" });
  await store.push(journal.value);
  await store.close();
});

const stateOf = async (data: string) => {
  const store = await openServerStore({ file: path.join(data, "demonstration.sqlite"), programme: "demonstration" });
  const state = { heads: await store.heads(), casebook: casebookHash(await store.states()) };
  await store.close();
  return state;
};

describe("a backup", () => {
  it("[SG65] is read back before it gets its name, and restored elsewhere amounts to the same", async () => {
    const made = await said(["backup", "--programme", "demonstration", "--output", file, "--json"], { env });
    expect([made.status, made.err]).toEqual([0, ""]);
    expect(readdirSync(folder).filter((name) => name.includes("part"))).toEqual([]);
    const other = aside();
    const restored = await said(["restore", file], { env: other });
    expect([restored.status, restored.err]).toEqual([0, ""]);
    expect(restored.out).toMatch(/^\d+ entries of the programme demonstration, .* are whole and restored\.$/m);
    expect(await stateOf(other.SKEPSIS_DATA)).toEqual(await stateOf(folder));
    expect((await said(["verify", "--programme", "demonstration"], { env: other })).status).toBe(0);
  });

  it("[SG65] into a folder is named by programme and instant; a file that is there is not touched", async () => {
    const made = await said(["backup", "--programme", "demonstration", "--output", folder, "--json"], { env });
    expect(path.basename(String(made.json().output))).toMatch(/^skepsis-demonstration-\d{4}-\d\d-\d\dT\d{6}Z\.zip$/);
    const before = readFileSync(file);
    const again = await said(["backup", "--programme", "demonstration", "--output", file, "--json"], { env });
    expect([again.status, again.json().problems]).toMatchObject([2, [{ field: "--output" }]]);
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it("[SG65] is not restored over records, and --check writes nothing", async () => {
    expect((await said(["restore", file, "--json"], { env })).json().problems).toMatchObject([{ field: "programme" }]);
    const other = aside();
    expect((await said(["restore", file, "--check"], { env: other })).status).toBe(0);
    expect(readdirSync(other.SKEPSIS_DATA)).toEqual([]);
  });

  it("[SG65] that was cut, changed or robbed of a line restores nothing and says so", async () => {
    const bytes = readFileSync(file);
    const files = unzipSync(bytes);
    const part = new TextDecoder().decode(files["journal-00001.jsonl"]);
    const lines = part.trimEnd().split("\n");
    const without = lines.toSpliced(5, 1);
    without[0] = (lines[0] ?? "").replace(/"entries":\d+/, `"entries":${without.length - 1}`);
    const changed = part.replace('"state":"present"', '"state":"absent"');
    expect(changed).not.toBe(part);
    const rezipped = (text: string) => zipSync({ ...files, "journal-00001.jsonl": strToU8(text) });
    const wrong: Readonly<Record<string, Uint8Array>> = {
      cut: bytes.subarray(0, bytes.length - 4000),
      robbed: rezipped(`${without.join("\n")}\n`),
      changed: rezipped(changed),
      bare: rezipped(part.replace(/"body":\{.*?\},"header"/, '"body":null,"header"')),
      strange: strToU8("a letter"),
    };
    for (const [name, content] of Object.entries(wrong)) {
      const other = aside();
      const place = path.join(other.SKEPSIS_DATA, "given.zip");
      writeFileSync(place, content);
      const answer = await said(["restore", place, "--json"], { env: other });
      expect([name, answer.status]).toEqual([name, 2]);
      expect(existsSync(path.join(other.SKEPSIS_DATA, "demonstration.sqlite"))).toBe(false);
    }
    copyFileSync(file, path.join(folder, "still.zip"));
    expect((await said(["restore", path.join(folder, "still.zip"), "--check"], { env })).status).toBe(0);
  });
});
