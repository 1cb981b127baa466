/** What every store must do, whatever it keeps in: one suite, run on each. */
import { describe, expect, it } from "vitest";
import { fold } from "../../src/casebook/index.ts";
import { type Entry, headerHash, headsOf } from "../../src/journal/index.ts";
import type { JournalStore } from "../../src/storage/index.ts";
import { bee, callDrafts, everyKind, ids } from "../journals/every-kind.ts";
import { writer } from "../journals/writer.ts";

/** `make` gives a new, empty store of the programme each time it is called. */
export function storageContract(name: string, make: (programme: string) => Promise<JournalStore>): void {
  const withStore = (rule: string, use: (store: JournalStore) => Promise<void>, programme = "main") =>
    it(rule, async () => {
      const store = await make(programme);
      try {
        await use(store);
      } finally {
        await store.close();
      }
    });
  const codes = (reply: Awaited<ReturnType<JournalStore["push"]>>) => reply.refused.map((each) => each.problem.code);

  describe(`${name} keeps a journal`, () => {
    withStore("[SG1] gives back what was pushed, word for word, and what it amounts to", async (store) => {
      const story = everyKind();
      const reply = await store.push(story);
      expect(reply.refused).toEqual([]);
      expect(reply.heads).toEqual(headsOf(story));
      expect((await store.all()).toSorted(byId)).toEqual(story.toSorted(byId));
      expect(await store.heads()).toEqual(headsOf(story));
      expect(await store.states()).toEqual(fold(story));
      expect((await store.entriesOf(ids.specimen)).toSorted(byId)).toEqual(
        story.filter((entry) => entry.header.about[0] === ids.specimen).toSorted(byId),
      );
    });

    withStore("[SG2] takes a push again without a change, and acknowledges it again", async (store) => {
      const story = everyKind();
      const first = await store.push(story);
      expect(await store.push(story)).toEqual(first);
      expect(await store.all()).toHaveLength(story.length);
    });

    withStore("[SG3] gives the same states when entries come a few at a time", async (store) => {
      const story = everyKind();
      for (let from = 0; from < story.length; from += 5) await store.push(story.slice(from, from + 5));
      // The erased entry came without its body before the erasure that allows it: refused, then pushed again.
      await store.push(story);
      expect(await store.states()).toEqual(fold(story));
    });

    withStore("[SG3] sorts a shuffled push into each device's order", async (store) => {
      const story = everyKind();
      expect((await store.push(story.toReversed())).refused).toEqual([]);
      expect(await store.states()).toEqual(fold(story));
    });

    withStore("[SG5] pages in the order taken in, without a gap or a repeat", async (store) => {
      const story = everyKind();
      await store.push(story);
      const seen: Entry[] = [];
      let [cursor, more] = [0, true];
      while (more) {
        const page = await store.pull(cursor, 7);
        seen.push(...page.entries);
        [cursor, more] = [page.cursor, page.more];
      }
      expect(seen).toEqual(await store.all());
      expect(await store.pull(cursor, 7)).toEqual({ entries: [], cursor, more: false });
      expect(await store.pull(cursor + 9, 7)).toEqual({ entries: [], cursor, more: false });
    });

    withStore("[SG6] refuses an entry whose body was changed, and what follows it", async (store) => {
      const [one, two, three] = writer().write(bee(1), bee(2), bee(3)) as [Entry, Entry, Entry];
      const changed = { ...two, body: { salt: two.body?.salt ?? "", data: { ...two.body?.data, left: "mites" } } };
      const reply = await store.push([one, changed, three]);
      expect(codes(reply)).toEqual(["body-damaged", "entries-missing-before"]);
      expect(reply.heads.map((head) => head.seq)).toEqual([1]);
      expect((await store.push([two, three])).heads.map((head) => head.seq)).toEqual([3]);
    });

    withStore("[SG6] refuses an entry whose header was changed, and names it", async (store) => {
      const [one, two] = writer().write(bee(1), bee(2)) as [Entry, Entry];
      const changed = { ...one, header: { ...one.header, author: "someone else" } };
      const reply = await store.push([changed, two]);
      expect(reply.refused.map((each) => [each.id, each.problem.code])).toEqual([[two.header.id, "chain-broken"]]);
    });

    withStore("[SG4] refuses what does not follow without a gap", async (store) => {
      const [one, , three] = writer().write(bee(1), bee(2), bee(3)) as [Entry, Entry, Entry];
      expect(codes(await store.push([one, three]))).toEqual(["entries-missing-before"]);
      expect((await store.all()).map((entry) => entry.header.id)).toEqual([one.header.id]);
    });

    withStore("[SG8] keeps the first of two entries with one number, and the second apart", async (store) => {
      const original = writer();
      const [first] = original.write(bee(1)) as [Entry];
      const head = original.head();
      const [second] = writer({ head, author: "before the copy", from: "2026-03-09T09:00:00.000Z" }).write(bee(2)) as [
        Entry,
      ];
      const [other] = writer({ head, author: "from the copy", from: "2026-03-09T10:00:00.000Z" }).write(
        bee(2, "mites"),
      ) as [Entry];
      await store.push([first, second]);
      const reply = await store.push([other]);
      expect(reply.refused.map((each) => [each.id, each.problem.code])).toEqual([
        [other.header.id, "two-entries-one-number"],
      ]);
      expect(reply.heads).toEqual(headsOf([second]));
      expect(await store.quarantined()).toEqual([other]);
      await store.push([other]);
      expect(await store.quarantined()).toHaveLength(1);
    });

    withStore("[SG8] refuses another id's header under a known id", async (store) => {
      const [one] = writer().write(bee(1)) as [Entry];
      await store.push([one]);
      const [stranger] = writer({ device: "phone-2" }).write(bee(1)) as [Entry];
      const clash = { ...stranger, header: { ...stranger.header, id: one.header.id } };
      expect(codes(await store.push([clash]))).toEqual(["entry-id-taken"]);
    });

    withStore("[SG7] refuses what is not an entry, by member", async (store) => {
      const [one] = writer().write(bee(1)) as [Entry];
      const broken = [{ ...one, header: { ...one.header, seq: 1.5 } }, 7, null, {}] as unknown as Entry[];
      const reply = await store.push(broken);
      expect(codes(reply)).toEqual(broken.map(() => "entry-unfit"));
      expect(reply.refused[0]?.problem.field).toBe("header.seq");
      expect(await store.all()).toEqual([]);
    });

    withStore("[SG7] refuses by itself what JSON cannot spell, and takes in what came with it", async (store) => {
      const [one] = writer().write(bee(1)) as [Entry];
      const [other] = writer({ device: "phone-2" }).write(bee(1)) as [Entry];
      const spoilt = [
        { ...other, header: { ...other.header, author: "\ud800" } },
        { ...other, header: { ...other.header, extra: Number.POSITIVE_INFINITY } },
        { ...other, header: { ...other.header, extra: nested(5000) } },
        { ...other, body: { ...other.body, data: { deep: nested(5000) } } },
        { header: { id: { toString: 1 } } },
      ] as unknown as Entry[];
      const reply = await store.push([...spoilt, one]);
      expect(codes(reply)).toEqual(spoilt.map(() => "entry-unfit"));
      expect(await store.all()).toEqual([one]);
    });

    withStore("[SG9] refuses entries of another programme, both ways", async (store) => {
      const invented = writer({ programme: "demonstration" }).write(...callDrafts);
      expect(new Set(codes(await store.push(invented)))).toEqual(new Set(["other-programme"]));
      expect(await store.all()).toEqual([]);
    });
    withStore(
      "[SG9] refuses real entries in the demonstration",
      async (store) => {
        expect(new Set(codes(await store.push(writer().write(...callDrafts))))).toEqual(new Set(["other-programme"]));
        expect(await store.all()).toEqual([]);
      },
      "demonstration",
    );

    withStore("[SG10] erases a body when the erasure comes, and keeps the header", async (store) => {
      const phone = writer();
      const [one, two] = phone.write(bee(1), bee(2)) as [Entry, Entry];
      await store.push([one, two]);
      const [erasure] = phone.write(erasing(one)) as [Entry];
      await store.push([erasure]);
      const kept = await store.all();
      expect(kept.map((entry) => entry.body === null)).toEqual([true, false, false]);
      expect(kept[0]?.header).toEqual(one.header);
      expect((await store.states()).unread).toEqual([
        { entry: one.header.id, root: ids.specimen, kind: "bee-read", why: "erased" },
      ]);
      expect((await store.push([one])).refused).toEqual([]);
      expect((await store.all())[0]?.body).toBeNull();
    });

    withStore("[SG10] drops a body that arrives after its erasure", async (store) => {
      const [one] = writer({ device: "phone-2" }).write(bee(1)) as [Entry];
      await store.push(writer().write(erasing(one)));
      await store.push([one]);
      expect((await store.all()).map((entry) => entry.body === null)).toEqual([false, true]);
    });

    withStore(
      "[SG10] holds an erasure also after a mistaken one that names the same entry under another root",
      async (store) => {
        const [one] = writer({ device: "phone-2" }).write(bee(1)) as [Entry];
        const mistaken = { ...erasing(one), about: [ids.case] };
        await store.push(writer().write(erasing(one), mistaken));
        await store.push([one]);
        expect((await store.all()).map((entry) => entry.body === null)).toEqual([false, false, true]);
      },
    );

    withStore("[SG10] erases also what is kept apart, whichever comes first", async (store) => {
      const [one] = writer().write(bee(1)) as [Entry];
      const [two] = writer({ from: "2026-03-09T10:00:00.000Z" }).write(bee(1, "mites")) as [Entry];
      const [three] = writer({ from: "2026-03-09T11:00:00.000Z" }).write(bee(1, "mites")) as [Entry];
      await store.push([one]);
      await store.push([two]);
      await store.push(writer({ device: "phone-2" }).write(erasing(two), erasing(three)));
      await store.push([three]);
      expect((await store.quarantined()).map((entry) => entry.body)).toEqual([null, null]);
    });

    withStore("[SG10] never erases by an entry about another root", async (store) => {
      const phone = writer();
      const [one] = phone.write(bee(1)) as [Entry];
      const [erasure] = phone.write({ ...erasing(one), about: [ids.case] }) as [Entry];
      await store.push([one, erasure]);
      expect((await store.all())[0]?.body).not.toBeNull();
    });

    withStore("[SG12] keeps entries of a kind from a newer version, and counts them", async (store) => {
      const [one] = writer().write(bee(1)) as [Entry];
      const newer = { ...one, header: { ...one.header, kind: "queen-marked", schema: 3, colour: "blue" } };
      expect((await store.push([newer])).refused).toEqual([]);
      expect(await store.all()).toEqual([newer]);
      expect((await store.heads())[0]?.hash).toBe(headerHash(newer.header));
      expect((await store.states()).unread.map((each) => each.why)).toEqual(["unknown-kind"]);
    });

    withStore("[SG4] acknowledges each device up to the newest of its unbroken run", async (store) => {
      const [office, phone] = [writer({ device: "office-1" }), writer({ device: "phone-1" })];
      const [one, two, three, four] = phone.write(bee(1), bee(2), bee(3), bee(4)) as [Entry, Entry, Entry, Entry];
      const [desk] = office.write(bee(9)) as [Entry];
      const first = await store.push([four, desk, two, one]);
      expect(first.heads).toEqual(headsOf([desk, two]));
      expect(first.refused).toMatchObject([
        { id: four.header.id, problem: { code: "entries-missing-before", slots: { device: "phone-1", expected: 3 } } },
      ]);
      expect((await store.push([three, four])).heads).toEqual(headsOf([four]));
      expect(await store.heads()).toEqual(headsOf([desk, four]));
    });

    withStore("[SG7] refuses by itself a null character in a name that is looked up", async (store) => {
      const [device, root] = [writer({ device: "phone\0" }), writer({ device: "phone-2" })];
      const [one] = writer().write(bee(1)) as [Entry];
      const odd = [...device.write(bee(1)), ...root.write({ ...bee(1), about: ["specimen\0", ids.reading] })];
      const reply = await store.push([...odd, one]);
      expect(codes(reply)).toEqual(["entry-unfit", "entry-unfit"]);
      expect(await store.all()).toEqual([one]);
    });

    withStore("[SG11] takes no entry whose body is withheld, unless an erasure names it", async (store) => {
      const [one, two] = writer().write(bee(1), bee(2)) as [Entry, Entry];
      const bare = { ...one, body: null };
      const isReader = "takePage" in store; // a device may read without a body; nobody may hand one in without
      const reply = await store.push([bare, two]);
      expect(codes(reply)).toEqual(isReader ? [] : ["body-missing", "entries-missing-before"]);
      if (isReader) expect((await store.states()).unread.map((each) => each.why)).toEqual(["withheld"]);
      else expect((await store.push([bare, ...writer({ device: "phone-2" }).write(erasing(one))])).refused).toEqual([]);
    });

    withStore("[SG13] is empty at first", async (store) => {
      expect(await store.all()).toEqual([]);
      expect(await store.heads()).toEqual([]);
      expect(await store.push([])).toEqual({ heads: [], refused: [] });
      expect(await store.pull(0)).toEqual({ entries: [], cursor: 0, more: false });
      expect(await store.states()).toEqual(fold([]));
      expect(await store.quarantined()).toEqual([]);
    });
  });

  const erasing = (entry: Entry) => ({
    kind: "content-erased" as const,
    at: "2026-03-17",
    about: [entry.header.about[0] ?? ""],
    data: { entries: [entry.header.id], reason: "asked for by the keeper" },
  });
}

const nested = (levels: number): unknown => JSON.parse("[".repeat(levels) + "]".repeat(levels));

const byId = ({ header: one }: Entry, { header: other }: Entry): number => (one.id < other.id ? -1 : 1);
