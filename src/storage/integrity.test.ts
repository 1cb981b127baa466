/** SQLite's own check of a file: the same here and in a thread, on a whole file and on a damaged one. */
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import SQLite from "better-sqlite3";
import { expect, it } from "vitest";
import { codeOf } from "./engine.ts";
import { integrityHere, integrityInThread } from "./integrity.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-integrity-"));

function made(name: string): string {
  const file = path.join(folder, name);
  const driver = new SQLite(file);
  driver.exec("create table t (a integer primary key, b text); create index by_b on t (b)");
  const insert = driver.prepare("insert into t (b) values (?)");
  driver.transaction(() => {
    for (let row = 0; row < 2000; row++) insert.run(`row ${row} ${"x".repeat(40)}`);
  })();
  driver.close();
  return file;
}

it("[SG112] finds nothing in a whole file, here and in a thread", async () => {
  const file = made("whole.sqlite");
  expect(integrityHere(file)).toEqual([]);
  expect(await integrityInThread(file)).toEqual([]);
});

it("[SG112] finds the same damage here and in a thread", async () => {
  const file = made("damaged.sqlite");
  const bytes = readFileSync(file);
  // A word in the table that the index spells otherwise.
  bytes[bytes.indexOf("row 1500 x") + "row 1500 ".length] = "y".charCodeAt(0);
  writeFileSync(file, bytes);
  const here = integrityHere(file);
  expect(here.length).toBeGreaterThan(0);
  expect(await integrityInThread(file)).toEqual(here);
});

it("[SG112] what is no database is the trouble of SQLite in both", async () => {
  const file = path.join(folder, "none.sqlite");
  writeFileSync(file, "these are no records ".repeat(500));
  const codes = await Promise.all(
    [Promise.resolve().then(() => integrityHere(file)), integrityInThread(file)].map((each) =>
      each.then(() => "none", codeOf),
    ),
  );
  expect(codes).toEqual(["SQLITE_NOTADB", "SQLITE_NOTADB"]);
});
