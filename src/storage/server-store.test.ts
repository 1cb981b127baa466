import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import SQLite from "better-sqlite3";
import { sql } from "kysely";
import { afterAll, describe, expect, it } from "vitest";
import { bee, callDrafts } from "../../tests/journals/every-kind.ts";
import { writer } from "../../tests/journals/writer.ts";
import { apartContract } from "../../tests/laws/apart-contract.ts";
import { filesContract } from "../../tests/laws/files-contract.ts";
import { membersContract } from "../../tests/laws/members-contract.ts";
import { rightsContract } from "../../tests/laws/rights-contract.ts";
import { serviceStoreContract } from "../../tests/laws/service-store-contract.ts";
import { storageContract } from "../../tests/laws/storage-contract.ts";
import type { Entry } from "../journal/index.ts";
import { columnsOf } from "./columns.ts";
import { openServerStore } from "./server.ts";
import { openFile } from "./sqlite.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-store-"));
let files = 0;
const newFile = (): string => {
  files += 1;
  return path.join(folder, `${files}.sqlite`);
};
afterAll(() => rmSync(folder, { recursive: true, force: true }));

storageContract("SQLite", (programme) => openServerStore({ file: newFile(), programme }));

apartContract("SQLite", () => openServerStore({ file: newFile(), programme: "main" }));

membersContract("SQLite", () => openServerStore({ file: newFile(), programme: "main" }));

const newPlace = async () => {
  const file = newFile();
  return {
    open: () => openServerStore({ file, programme: "main" }),
    async ask(statement: string) {
      const raw = new SQLite(file);
      const asked = raw.prepare(statement);
      const rows = asked.reader ? asked.all() : [asked.run()].slice(1);
      raw.close();
      return rows as Record<string, unknown>[];
    },
  };
};

serviceStoreContract("SQLite", newPlace);

filesContract("SQLite", newPlace);

rightsContract("SQLite", newPlace);

describe("the service's store in a SQLite file", () => {
  it("[SG50] writes ahead and waits for the disk", async () => {
    const file = newFile();
    const store = await openServerStore({ file, programme: "main" });
    expect(new SQLite(file).pragma("journal_mode", { simple: true })).toBe("wal");
    await store.close();
    const { database, close } = openFile(file);
    expect((await sql`pragma synchronous`.execute(database)).rows).toEqual([{ synchronous: 2 }]); // FULL
    await close();
  });

  it("[SG100] every column of every table is on the list that the check goes by", async () => {
    const file = newFile();
    await (await openServerStore({ file, programme: "main" })).close();
    const raw = new SQLite(file, { readonly: true });
    const names = (asked: string) => (raw.prepare(asked).all() as readonly { name: string }[]).map(({ name }) => name);
    const tables = names("select name from sqlite_master where type = 'table'");
    const found = tables.map((table) => [table, names(`select name from pragma_table_info('${table}')`).toSorted()]);
    raw.close();
    const listed = Object.entries(columnsOf).map(([table, columns]) => [table, columns.toSorted()]);
    expect(Object.fromEntries(found)).toEqual(Object.fromEntries(listed));
  });

  it("[SG100] a column whose name is written with another capital is named, not taken for a bug", async () => {
    const file = newFile();
    const store = await openServerStore({ file, programme: "main" });
    const raw = new SQLite(file);
    raw.exec('alter table pieces rename column data to "Data"');
    raw.exec("insert into uploads values ('a', '', 2, 1)");
    raw.exec("insert into pieces values ('a', '', 0, x'01')");
    raw.close();
    expect((await store.check()).damage).toContain("columns of pieces: not named as they were");
    await store.close();
  });

  it("[SG51] leaves no trace of an erased body in its files", async () => {
    const file = newFile();
    const secret = "Wrenfield Orchard Lane";
    const phone = writer();
    const store = await openServerStore({ file, programme: "main" });
    const opened = callDrafts[0];
    if (opened?.kind !== "case-opened") throw new Error("the story opens with the case");
    const [entry] = phone.write({ ...opened, data: { ...opened.data, caller: secret } }) as [Entry];
    await store.push([entry]);
    const text = () =>
      readdirSync(folder)
        .filter((name) => name.startsWith(path.basename(file)))
        .map((name) => readFileSync(path.join(folder, name), "latin1"))
        .join("");
    expect(text()).toContain(secret);
    await store.push(
      phone.write({
        kind: "content-erased",
        at: "2026-03-17",
        about: entry.header.about,
        data: { entries: [entry.header.id], reason: "asked for" },
      }),
    );
    expect(text()).not.toContain(secret);
    await store.close();
  });

  it("[SG52] does not open the file of another programme", async () => {
    const file = newFile();
    await (await openServerStore({ file, programme: "demonstration" })).close();
    await expect(openServerStore({ file, programme: "main" })).rejects.toThrow(
      "holds the programme demonstration, not main",
    );
  });

  it("[SG53] removes the demonstration with its file, and nothing else", async () => {
    const [invented, real] = [newFile(), newFile()];
    const demonstration = await openServerStore({ file: invented, programme: "demonstration" });
    await demonstration.push(writer({ programme: "demonstration" }).write(bee(1)));
    expect((await demonstration.removeDemonstration()).ok).toBe(true);
    expect(existsSync(invented)).toBe(false);

    const store = await openServerStore({ file: real, programme: "main" });
    await store.push(writer().write(bee(1)));
    expect(await store.removeDemonstration()).toMatchObject({
      ok: false,
      problems: [{ code: "only-demonstration-removable", given: "main" }],
    });
    expect(await store.all()).toHaveLength(1);
    await store.close();
  });
});
