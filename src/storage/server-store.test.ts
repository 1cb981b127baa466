import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import SQLite from "better-sqlite3";
import { sql } from "kysely";
import { afterAll, describe, expect, it } from "vitest";
import { bee, callDrafts, everyKind } from "../../tests/journals/every-kind.ts";
import { writer } from "../../tests/journals/writer.ts";
import { storageContract } from "../../tests/laws/storage-contract.ts";
import { fold, foldVersion } from "../casebook/index.ts";
import type { Entry } from "../journal/index.ts";
import { openServerStore, removeDemonstration } from "./server.ts";
import { openFile } from "./sqlite.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-store-"));
let files = 0;
const newFile = (): string => {
  files += 1;
  return path.join(folder, `${files}.sqlite`);
};
afterAll(() => rmSync(folder, { recursive: true, force: true }));

storageContract("SQLite", (programme) => openServerStore({ file: newFile(), programme }));

describe("the service's store", () => {
  it("keeps everything when it is opened again", async () => {
    const file = newFile();
    const story = everyKind();
    const store = await openServerStore({ file, programme: "main" });
    await store.push(story);
    await store.close();
    const again = await openServerStore({ file, programme: "main" });
    expect(await again.states()).toEqual(fold(story));
    expect(await again.all()).toHaveLength(story.length);
    await again.close();
  });

  it("writes ahead and waits for the disk", async () => {
    const file = newFile();
    const store = await openServerStore({ file, programme: "main" });
    expect(new SQLite(file).pragma("journal_mode", { simple: true })).toBe("wal");
    await store.close();
    const { database, close } = openFile(file, "main");
    expect((await sql`pragma synchronous`.execute(database)).rows).toEqual([{ synchronous: 2 }]); // FULL
    await close();
  });

  it("keeps header and body as the words that came", async () => {
    const file = newFile();
    const store = await openServerStore({ file, programme: "main" });
    const [entry] = writer().write(bee(1)) as [Entry];
    await store.push([entry]);
    const row = new SQLite(file).prepare("select header, body, root, kind, seq from entries").get();
    expect(row).toEqual({
      header: JSON.stringify(entry.header),
      body: JSON.stringify(entry.body),
      root: "specimen-1",
      kind: "bee-read",
      seq: 1,
    });
    await store.close();
  });

  it("makes states anew that another version of the fold left", async () => {
    const file = newFile();
    const story = everyKind();
    const store = await openServerStore({ file, programme: "main" });
    await store.push(story);
    await store.close();
    const raw = new SQLite(file);
    raw.prepare("update states set fold_version = ?, part = '{}'").run(foldVersion + 1);
    raw.close();
    const again = await openServerStore({ file, programme: "main" });
    expect(await again.states()).toEqual(fold(story));
    await again.close();
  });

  it("gives each entry a place of its own when two openings of the file push at once", async () => {
    const file = newFile();
    const one = await openServerStore({ file, programme: "main" });
    const two = await openServerStore({ file, programme: "main" });
    const chains = ["phone-1", "phone-2", "phone-3", "phone-4"].map((device) =>
      writer({ device }).write(...Array.from({ length: 25 }, (_, index) => bee(index + 1))),
    );
    await Promise.all(
      chains.map(async (chain, index) => {
        for (const entry of chain) await (index % 2 ? one : two).push([entry]);
      }),
    );
    const seen: Entry[] = [];
    let [cursor, more] = [0, true];
    while (more) {
      const page = await one.pull(cursor, 9);
      seen.push(...page.entries);
      [cursor, more] = [page.cursor, page.more];
    }
    expect(seen).toHaveLength(100);
    expect(cursor).toBe(100);
    expect(await two.states()).toEqual(fold(chains.flat()));
    await one.close();
    await two.close();
  });

  it("leaves no trace of an erased body in its files", async () => {
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

  it("does not open the file of another programme", async () => {
    const file = newFile();
    await (await openServerStore({ file, programme: "demonstration" })).close();
    await expect(openServerStore({ file, programme: "main" })).rejects.toThrow(
      "the file holds the programme demonstration, not main",
    );
  });

  it("removes the demonstration with its file, and nothing else", async () => {
    const [invented, real] = [newFile(), newFile()];
    const demonstration = await openServerStore({ file: invented, programme: "demonstration" });
    await demonstration.push(writer({ programme: "demonstration" }).write(bee(1)));
    expect((await removeDemonstration(demonstration)).ok).toBe(true);
    expect(existsSync(invented)).toBe(false);

    const store = await openServerStore({ file: real, programme: "main" });
    await store.push(writer().write(bee(1)));
    expect(await removeDemonstration(store)).toMatchObject({
      ok: false,
      problems: [{ code: "only-demonstration-removable", given: "main" }],
    });
    expect(await store.all()).toHaveLength(1);
    await store.close();
  });
});
