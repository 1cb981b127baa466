/** What must hold of every step of the store's shape: one suite, run on SQLite and PostgreSQL. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { type Kysely, sql } from "kysely";
import { describe, expect, it } from "vitest";
import { fold } from "../../src/casebook/index.ts";
import { fileNamedBy, headerHash, headsOf } from "../../src/journal/index.ts";
import type { Keeping } from "../../src/storage/keeping.ts";
import { type Migration, migrate, migrations } from "../../src/storage/migrations.ts";
import { storeIn } from "../../src/storage/server-store.ts";
import { bee, everyKind } from "../journals/every-kind.ts";
import { attachedDraft, photo, sha256Of, voice } from "../journals/file-story.ts";
import { fork } from "../journals/fork.ts";
import { writer } from "../journals/writer.ts";
import { sendFile } from "./files-contract.ts";

/** A new, empty place. */
export interface BarePlace {
  readonly keeping: () => Keeping;
  /** Statements that go past the store. */
  readonly run: (statements: string) => Promise<void>;
  /** Tables, columns, keys and indexes in a form that can be compared. */
  readonly shape: () => Promise<unknown>;
  readonly close: () => Promise<void>;
}

const folder = path.join(import.meta.dirname, "..", "golden", "store");

/** The kept stores of an engine, oldest shape first. PostgreSQL came with the second shape. */
export const shapes: Readonly<Record<"sqlite" | "postgres", readonly string[]>> = {
  sqlite: [
    ...["sqlite-shape-1.sql", "sqlite-shape-2.sql", "sqlite-shape-3.sql", "sqlite-shape-4.sql"],
    ...["sqlite-shape-5.sql", "sqlite-shape-6.sql"],
  ],
  postgres: [
    ...["postgres-shape-2.sql", "postgres-shape-3.sql", "postgres-shape-4.sql", "postgres-shape-5.sql"],
    "postgres-shape-6.sql",
  ],
};

const sqlOf = (file: string): string => readFileSync(path.join(folder, file), "utf8");

export function migrationContract(name: "SQLite" | "PostgreSQL", make: () => Promise<BarePlace>): void {
  const withPlace = (rule: string, use: (place: BarePlace) => Promise<void>) =>
    it(rule, async () => {
      const place = await make();
      try {
        await use(place);
      } finally {
        await place.close();
      }
    });

  describe(`the shape of the store on ${name}`, () => {
    const engine = name === "SQLite" ? "sqlite" : "postgres";
    for (const file of shapes[engine]) {
      withPlace(`[SG45] ${file} is opened with all it holds, and goes on`, async ({ keeping, run }) => {
        await run(sqlOf(file));
        const store = await storeIn(keeping(), "main");
        const [first, second] = fork();
        const story = [...everyKind(), first];
        const kept = await store.all();
        expect(kept).toHaveLength(story.length);
        expect(await store.heads()).toEqual(headsOf(story));
        expect(await store.quarantined()).toEqual([second]);
        expect(await store.states()).toEqual(fold(story));
        expect((await store.push(story)).refused).toEqual([]);
        const [more] = writer({ device: "phone-9" }).write(bee(99));
        if (more) await store.push([more]);
        expect((await store.check()).damage).toEqual([]);
        expect((await store.pull(kept.length)).entries).toEqual([more]);
        await store.close();
      });

      withPlace(`[SG46] ${file} ends in the shape of a new one`, async ({ keeping, run, shape }) => {
        await run(sqlOf(file));
        await (await storeIn(keeping(), "main")).close();
        const fresh = await make();
        await (await storeIn(fresh.keeping(), "main")).close();
        expect(await shape()).toEqual(await fresh.shape());
        await fresh.close();
      });
    }

    withPlace("[SG45] a file whose entry an older version kept without reading it is taken in", async (place) => {
      await place.run(sqlOf(`${engine}-shape-3.sql`));
      const [entry] = writer({ device: "phone-8" }).write(attachedDraft(photo, "image/jpeg"));
      if (!entry) throw new Error("no entry");
      const { id, device, kind } = entry.header;
      const [hash, text] = [headerHash(entry.header), (value: unknown) => JSON.stringify(value).replaceAll("'", "''")];
      const schema = engine === "postgres" ? "skepsis_main." : "";
      await place.run(
        `insert into ${schema}entries values (41, '${id}', '${device}', 1, 'case-1', '${kind}', '${hash}', '${text(entry.header)}', '${text(entry.body)}');
        insert into ${schema}heads values ('${device}', 1, '${hash}');
        update ${schema}counters set position = 41;`,
      );
      const store = await storeIn(place.keeping(), "main");
      expect((await store.check()).files).toEqual({ whole: 0, waiting: [{ device, files: 1 }], erased: 0 });
      await sendFile(store, photo);
      expect(await store.check()).toMatchObject({ damage: [], files: { whole: 1, waiting: [] } });
      await store.close();
    });

    withPlace(
      "[SG45] files that were here stay open to all that name them; one on its way begins anew",
      async (place) => {
        await place.run(sqlOf(`${engine}-shape-4.sql`));
        const schema = engine === "postgres" ? "skepsis_main." : "";
        const hex = (bytes: Uint8Array) => {
          const text = Buffer.from(bytes).toString("hex");
          return engine === "postgres" ? `'\\x${text}'::bytea` : `x'${text}'`;
        };
        const drafts = [attachedDraft(photo, "image/jpeg"), attachedDraft(voice, "audio/webm")];
        const entries = writer({ device: "phone-8" }).write(...drafts);
        const text = (value: unknown) => JSON.stringify(value).replaceAll("'", "''");
        for (const [index, { header, body }] of entries.entries()) {
          const { sha256, bytes, mediaType } = fileNamedBy({ header, body }) ?? { sha256: "", bytes: 0, mediaType: "" };
          const [isWhole, here] = index === 0 ? [1, photo] : [0, voice.slice(0, 1000)];
          await place.run(
            `insert into ${schema}entries values (${41 + index}, '${header.id}', 'phone-8', ${index + 1}, 'case-1', '${header.kind}', '${headerHash(header)}', '${text(header)}', '${text(body)}');
          insert into ${schema}attached values ('${header.id}', 'case-1', '${sha256}', ${bytes}, '${mediaType}', ${isWhole});
          insert into ${schema}files values ('${sha256}', ${bytes}, ${here.length}, ${isWhole});
          insert into ${schema}chunks values ('${sha256}', 0, ${hex(here)});`,
          );
        }
        const { hash } = headsOf(entries)[0] ?? {};
        await place.run(
          `insert into ${schema}heads values ('phone-8', 2, '${hash}');
        insert into ${schema}devices values ('phone-8', 'member-8', '', '2026-05-04', null);
        update ${schema}counters set position = 42;`,
        );
        const store = await storeIn(place.keeping(), "main");
        expect(await store.files.standing(sha256Of(photo), "member-8")).toEqual({ held: photo.length, isWhole: true });
        expect(Buffer.from((await store.files.read(sha256Of(photo)))?.bytes ?? []).equals(photo)).toBe(true);
        expect(await store.files.standing(sha256Of(voice), "member-8")).toEqual({ held: 0, isWhole: false });
        await sendFile(store, voice, { sender: "member-8" });
        // The device was put here past the journal.
        const damage = ["devices phone-8: the journal knows of none"];
        expect(await store.check()).toMatchObject({ damage, files: { whole: 2, waiting: [] } });
        await store.close();
      },
    );

    it("[SG45] a store is kept of every shape, the newest too", () => {
      const kept = readdirSync(folder).filter((file) => file.startsWith(engine));
      expect(kept.toSorted()).toEqual(shapes[engine]);
      expect(kept).toContain(`${engine}-shape-${migrations.length}.sql`);
    });

    withPlace("[SG47] a store of a newer version is not touched, and the person is told", async (place) => {
      await (await storeIn(place.keeping(), "main")).close();
      const keeping = place.keeping();
      const number = migrations.length + 1;
      await keeping.database.insertInto("migrations").values({ number, name: "of-tomorrow" }).execute();
      await keeping.close();
      const before = await place.shape();
      await expect(storeIn(place.keeping(), "main")).rejects.toMatchObject({
        problem: { code: "records-newer", given: `shape ${number}` },
      });
      expect(await place.shape()).toEqual(before);
    });

    withPlace("[SG48] a step that fails half-way leaves everything as it was", async (place) => {
      await (await storeIn(place.keeping(), "main")).close();
      const before = await place.shape();
      const keeping = place.keeping();
      const steps = [...migrations, halfWay];
      const taking = keeping.database.transaction().execute((tx) => migrate(tx, keeping.engine, steps));
      await expect(taking).rejects.toThrow();
      await keeping.close();
      expect(await place.shape()).toEqual(before);
      const store = await storeIn(place.keeping(), "main");
      expect((await store.push(writer().write(bee(1)))).heads).toHaveLength(1);
      await store.close();
    });

    withPlace("[SG49] openings at once take each step once", async (place) => {
      const stores = await Promise.all(Array.from({ length: 6 }, () => storeIn(place.keeping(), "main")));
      const keeping = place.keeping();
      const taken = await keeping.database.selectFrom("migrations").selectAll().orderBy("number").execute();
      expect(taken).toEqual(migrations.map((each, index) => ({ number: index + 1, name: each.name })));
      await keeping.close();
      for (const store of stores) await store.close();
    });
  });
}

const halfWay: Migration = {
  name: "half-way",
  async step(tx: Kysely<unknown>) {
    await tx.schema.createTable("half").addColumn("one", "text").execute();
    await sql`this is no statement`.execute(tx);
  },
};
