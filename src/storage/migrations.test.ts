import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import SQLite from "better-sqlite3";
import { afterAll, describe, expect, it } from "vitest";
import { migrationContract } from "../../tests/laws/migration-contract.ts";
import { openServerStore } from "./server.ts";
import { openFile } from "./sqlite.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-shapes-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let files = 0;

/** Columns and indexes as SQLite sees them, whatever words made them. */
function shapeOf(file: string): unknown {
  const raw = new SQLite(file, { readonly: true });
  const named = (pragma: string) => raw.pragma(pragma) as readonly { readonly name: string }[];
  const tables = named("table_list").filter(({ name }) => !name.startsWith("sqlite_"));
  const shape = tables.map((table) => ({
    table,
    columns: raw.pragma(`table_info(${table.name})`),
    indexes: named(`index_list(${table.name})`).map((index) => ({
      ...index,
      on: raw.pragma(`index_info(${index.name})`),
    })),
  }));
  raw.close();
  return shape.toSorted((one, other) => (one.table.name < other.table.name ? -1 : 1));
}

migrationContract("SQLite", async () => {
  files += 1;
  const file = path.join(folder, `${files}.sqlite`);
  const run = (statements: string) => {
    const raw = new SQLite(file);
    raw.exec(statements);
    raw.close();
  };
  return {
    keeping: () => openFile(file),
    run: async (statements) => run(statements),
    shape: async () => shapeOf(file),
    close: async () => {},
  };
});

describe("a file of a version before steps were counted", () => {
  it("[SG45] takes the first step without a change, and the others", async () => {
    const file = path.join(folder, "old.sqlite");
    const raw = new SQLite(file);
    raw.exec(readFileSync(path.join("tests", "golden", "store", "sqlite-shape-1.sql"), "utf8"));
    expect(raw.prepare("select 1 from sqlite_master where name = 'migrations'").all()).toEqual([]);
    raw.close();
    const store = await openServerStore({ file, programme: "main" });
    await store.close();
    const after = new SQLite(file);
    expect(after.prepare("select number, name from migrations order by number").all()).toEqual([
      { number: 1, name: "journal-as-first-released" },
      { number: 2, name: "no-index-by-kind" },
      { number: 3, name: "members-and-devices" },
      { number: 4, name: "files-of-entries" },
      { number: 5, name: "passwords-that-run-out" },
      { number: 6, name: "files-by-sender" },
    ]);
    after.close();
  });
});
