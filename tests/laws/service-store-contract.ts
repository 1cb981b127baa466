/** What the service's store must do when several have the same place open: one suite, run on SQLite and PostgreSQL. */
import { describe, expect, it } from "vitest";
import { fold, foldVersion } from "../../src/casebook/index.ts";
import { type Entry, headsOf, verifyChain } from "../../src/journal/index.ts";
import type { ServerStore } from "../../src/storage/server.ts";
import { bee, everyKind } from "../journals/every-kind.ts";
import { fork } from "../journals/fork.ts";
import { writer } from "../journals/writer.ts";

/** A new, empty place, as it can be met from the side. */
export interface Place {
  /** Another opening of it. */
  readonly open: () => Promise<ServerStore>;
  /** One statement that goes past the store; rows come back. */
  readonly ask: (statement: string) => Promise<readonly Record<string, unknown>[]>;
}

const bees = (device: string, count: number): readonly Entry[] =>
  writer({ device }).write(...Array.from({ length: count }, (_, index) => bee(index + 1)));

/** Pulls as a device does, from the cursor of its last page, until `isDone` and nothing is new. */
async function follow(store: ServerStore, isDone: () => boolean): Promise<readonly Entry[]> {
  const seen: Entry[] = [];
  for (let cursor = 0; ; ) {
    const wasDone = isDone();
    const page = await store.pull(cursor, 7);
    seen.push(...page.entries);
    cursor = page.cursor;
    if (wasDone && page.entries.length === 0) return seen;
    await new Promise((resolve) => setImmediate(resolve));
  }
}

/** `make` gives a new, empty place each time it is called. */
export function serviceStoreContract(name: string, make: () => Promise<Place>): void {
  const withPlace = (rule: string, use: (place: Place, opened: ServerStore[]) => Promise<void>) =>
    it(rule, async () => {
      const place = await make();
      const opened: ServerStore[] = [];
      const open = async () => {
        const store = await place.open();
        opened.push(store);
        return store;
      };
      try {
        await use({ ...place, open }, opened);
      } finally {
        for (const store of opened) await store.close();
      }
    });

  describe(`${name}, opened more than once`, () => {
    withPlace("[SG20] a follower misses nothing while four devices push through two openings", async ({ open }) => {
      const [one, two, reader] = [await open(), await open(), await open()];
      const chains = ["phone-1", "phone-2", "phone-3", "phone-4"].map((device) => bees(device, 25));
      let isDone = false;
      const following = follow(reader, () => isDone);
      await Promise.all(
        chains.map(async (chain, index) => {
          for (const entry of chain) await (index % 2 ? one : two).push([entry]);
        }),
      );
      isDone = true;
      const seen = await following;
      expect(seen).toHaveLength(100);
      expect(seen).toEqual(await reader.all());
      expect(verifyChain(seen, await reader.heads()).isIntact).toBe(true);
      expect((await reader.pull(0, 1000)).cursor).toBe(100);
      expect(await two.states()).toEqual(fold(chains.flat()));
    });

    withPlace("[SG21] the same entries of one device pushed by many at once are taken in once", async ({ open }) => {
      const stores = [await open(), await open(), await open()];
      const chain = bees("phone-1", 40);
      const pushes = Array.from({ length: 12 }, (_, index) => chain.slice(0, 40 - 3 * (index % 4)));
      const replies = await Promise.all(pushes.map((some, index) => (stores[index % 3] as ServerStore).push(some)));
      expect(replies.flatMap((reply) => reply.refused)).toEqual([]);
      const store = await open();
      expect(await store.all()).toEqual(chain);
      expect(await store.heads()).toEqual(headsOf(chain));
      expect(await store.quarantined()).toEqual([]);
    });

    withPlace("[SG22] of two entries with one number pushed at once, one is kept and one kept apart", async (place) => {
      const [one, two] = [await place.open(), await place.open()];
      for (let round = 0; round < 8; round += 1) {
        const both = fork(`copied-${round}`);
        const replies = await Promise.all([one.push([both[0]]), two.push([both[1]])]);
        expect(replies.flatMap(({ refused }) => refused.map((each) => each.problem.code))).toEqual([
          "two-entries-one-number",
        ]);
      }
      expect(await one.all()).toHaveLength(8);
      expect(await one.quarantined()).toHaveLength(8);
    });

    withPlace("[SG23] what one opening took in, another's states show, also a later erasure", async ({ open }) => {
      const [one, two] = [await open(), await open()];
      const story = everyKind();
      for (let from = 0; from < story.length; from += 9) {
        await one.push(story.slice(from, from + 9));
        const looks = await Promise.all([two.states(), two.states(), one.states()]);
        const now = fold(await two.all());
        expect(looks).toEqual([now, now, now]);
      }
    });
  });

  describe(`${name}, its kept states`, () => {
    const dropped = ["drop table states", "delete from states"];
    for (const statement of dropped) {
      withPlace(`[SG30] are made again from the journal after "${statement}"`, async ({ open, ask }) => {
        const story = everyKind();
        await (await open()).push(story);
        await ask(statement);
        const again = await open();
        expect(await again.states()).toEqual(fold(story));
        const rows = await ask("select root, fold_version, part from states");
        expect(new Set(rows.map((row) => row.fold_version))).toEqual(new Set([foldVersion]));
        expect(rows).toHaveLength(new Set(story.map((entry) => entry.header.about[0])).size);
      });
    }

    withPlace("[SG31] are made anew at opening where another version of the fold left them", async ({ open, ask }) => {
      const story = everyKind();
      await (await open()).push(story);
      await ask(`update states set fold_version = ${foldVersion + 1}, part = '{}'`);
      expect(await (await open()).states()).toEqual(fold(story));
      expect(await ask("select 1 from states where part = '{}'")).toEqual([]);
    });

    withPlace("[SG32] of another fold are not read even when they appear while it runs", async ({ open, ask }) => {
      const story = everyKind();
      const store = await open();
      await store.push(story.slice(0, 10));
      await store.states();
      await store.push(story);
      await ask(`update states set fold_version = ${foldVersion - 1}, part = '{}'`);
      expect(await store.states()).toEqual(fold(story));
    });
  });

  describe(`${name}, damaged`, () => {
    withPlace("[SG108] shows no kept state that is not what was written, and names it", async ({ open, ask }) => {
      const story = everyKind();
      await (await open()).push(story);
      await ask("update states set part = replace(part, 'present', 'absent')");
      const store = await open();
      expect(await store.states()).toEqual(fold(story));
      const { isIntact, damage, faults } = await store.check();
      expect({ isIntact, faults }).toEqual({ isIntact: false, faults: [] });
      expect(damage).toEqual([expect.stringContaining("hollow"), expect.stringContaining("case-1")]);
    });

    const changes: readonly (readonly [string, RegExp])[] = [
      [`update entries set body = replace(body, '"clear"', '"mites"') where seq = 1`, /^$/],
      ["update entries set header = replace(header, '2026', '2025') where seq = 3", /looked up by/],
      ["update entries set header = '{' where seq = 2", /no longer the words/],
      ["update entries set root = 'elsewhere' where seq = 4", /place of another/],
      ["delete from entries where seq = 5", /^$/],
      ["delete from entries where seq = 12", /^$/],
      ["delete from erased", /^$/],
      ["delete from heads", /heads: none of/],
      ["delete from states where root = 'specimen-1'", /states: /],
      ["update counters set position = 1", /counter/],
    ];
    for (const [statement, told] of changes)
      withPlace(`[SG100] tells of "${statement.slice(0, 60)}"`, async ({ open, ask }) => {
        const store = await open();
        const erasure = everyKind().filter(({ header }) => header.device === "office-1");
        await store.push([...bees("phone-9", 12), ...erasure]);
        expect((await store.check()).isIntact).toBe(true);
        await ask(statement);
        const { isIntact, damage, faults } = await store.check();
        expect(isIntact).toBe(false);
        expect(damage.length + faults.length).toBeGreaterThan(0);
        if (told.source !== "^$") expect(damage.join("\n")).toMatch(told);
      });
  });

  describe(`${name}, its rows`, () => {
    withPlace("[SG40] hold header and body as the words that came", async ({ open, ask }) => {
      const [entry] = writer().write(bee(1)) as [Entry];
      await (await open()).push([entry]);
      const [row] = await ask("select header, body, root, kind, seq, position from entries");
      expect({ ...row, seq: Number(row?.seq), position: Number(row?.position) }).toEqual({
        header: JSON.stringify(entry.header),
        body: JSON.stringify(entry.body),
        root: "specimen-1",
        kind: "bee-read",
        seq: 1,
        position: 1,
      });
    });

    withPlace("[SG41] hold numbers beyond four bytes", async ({ open, ask }) => {
      const far = 9_000_000_000_000;
      const store = await open();
      await ask(`update counters set position = ${far}`);
      const [one] = writer().write(bee(1)) as [Entry];
      await store.push([one]);
      expect(await store.pull(far - 5)).toEqual({ entries: [one], cursor: far + 1, more: false });
      expect(await store.states()).toEqual(fold([one]));
    });

    withPlace("[SG42] keep everything when it is opened again", async ({ open }) => {
      const story = [...everyKind(), ...fork()];
      await (await open()).push(story);
      const again = await open();
      expect(await again.all()).toHaveLength(story.length - 1);
      expect(await again.quarantined()).toEqual([story.at(-1)]);
      expect(await again.states()).toEqual(fold(story.slice(0, -1)));
    });
  });
}
