import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { strToU8, zipSync } from "fflate";
import { afterAll, expect, it } from "vitest";
import { openArchive } from "./archive-file.ts";
import { readBackup } from "./backup.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-archive-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function opened(bytes: Uint8Array) {
  const file = path.join(folder, "given.zip");
  writeFileSync(file, bytes);
  const archive = openArchive(file);
  if (archive === null) throw new Error("no archive");
  archive.close();
  return { archive, file };
}

const mebibyte = 1024 ** 2;

it("[AC41] an archive that unpacks to a hundred times its size, and to more than is always let through, is not read", () => {
  const zeros = (size: number) => zipSync({ "manifest.json": new Uint8Array(size) });
  const { archive, file } = opened(zeros(65 * mebibyte));
  expect(archive.beyond).toMatch(/^68157440 bytes of \d+$/);
  expect(readBackup(file)).toMatchObject({ ok: false, problems: [{ code: "backup-beyond" }] });
  expect(opened(zeros(64 * mebibyte)).archive.beyond).toBeNull();
});

/** An archive of one file that its directory names so many times: each name counts. */
function naming(content: Uint8Array, times: number): Uint8Array {
  const bytes = Buffer.from(zipSync({ a: content }));
  const directory = bytes.readUInt32LE(bytes.length - 6);
  const [head, entry, end] = [bytes.subarray(0, directory), bytes.subarray(directory, -22), bytes.subarray(-22)];
  end.writeUInt32LE(entry.length * times, 12);
  return Buffer.concat([head, ...Array.from({ length: times }, () => entry), end]);
}

it("[AC41] nor one of more files than the format counts, or whose files lie over one another to make more of it", () => {
  expect(opened(naming(strToU8("a"), 65_535)).archive.beyond).toBeNull();
  expect(opened(naming(strToU8("a"), 65_536)).archive.beyond).toBe("65536 files");
  expect(opened(naming(new Uint8Array(mebibyte), 64)).archive.beyond).toBeNull();
  expect(opened(naming(new Uint8Array(mebibyte), 65)).archive.beyond).toMatch(/^68157440 bytes of \d+$/);
});

it("[AC41] a file that is more than it tells is not unpacked, nor one that is asked for again", () => {
  const bytes = Buffer.from(zipSync({ a: new Uint8Array(mebibyte), b: strToU8("few words") }));
  const file = path.join(folder, "read.zip");
  writeFileSync(file, bytes);
  const whole = openArchive(file);
  expect([whole?.bytes("a")?.length, whole?.text("b"), whole?.text("b")]).toEqual([mebibyte, "few words", null]);
  whole?.close();
  const end = bytes.length - 22;
  bytes.writeUInt32LE(0xfffffff0, end + 12);
  writeFileSync(file, bytes);
  const boastful = openArchive(file); // of a directory of 4 GiB
  expect(boastful?.text("b")).toBe("few words");
  boastful?.close();
  bytes.writeUInt32LE(1000, bytes.readUInt32LE(bytes.length - 6) + 24);
  writeFileSync(file, bytes);
  const lying = openArchive(file);
  expect([lying?.bytes("a"), lying?.text("b")]).toEqual([null, "few words"]);
  lying?.close();
});
