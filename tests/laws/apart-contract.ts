/** What is kept apart can be judged and settled: one suite, run on SQLite and PostgreSQL. */
import { describe, expect, it } from "vitest";
import { conflictsOf, fold, type KeptApart, settlingDrafts } from "../../src/casebook/index.ts";
import { type Entry, type EntryDraft, headerHash, verifyChain } from "../../src/journal/index.ts";
import type { ServerStore } from "../../src/storage/server.ts";
import { differences } from "../../src/views/model/differences.ts";
import { wholeWordsOf } from "../../src/views/words/index.ts";
import { settlingOf } from "../journals/apart-story.ts";
import { bee } from "../journals/every-kind.ts";
import { fork } from "../journals/fork.ts";
import { writer } from "../journals/writer.ts";

const at = "2026-04-01T08:00:00.000Z";
const office = (name = "office-1", from = "2026-03-20T08:00:00.000Z") => writer({ device: name, author: name, from });

/** The entries of the first that is kept apart, or the codes of what stands in the way. */
function settling(kept: KeptApart | undefined, decision: "taken-in" | "left-out"): readonly EntryDraft[] {
  if (!kept) throw new Error("nothing is kept apart");
  const drafts = settlingDrafts(kept, {
    decision,
    reason: "compared with the sheet",
    programme: "main",
    on: "2026-03-20",
  });
  if (!drafts.ok) throw new Error(drafts.problems.map(({ code }) => code).join());
  return drafts.value;
}

const firstBee = async (store: ServerStore) =>
  (await store.states()).specimens["specimen-1"]?.readings["reading-1"]?.bees["1"]?.candidates.map(
    ({ value }) => value.left,
  );

/** `make` gives a new, empty store of the programme `main` each time it is called. */
export function apartContract(name: string, make: () => Promise<ServerStore>): void {
  const withStore = (rule: string, use: (store: ServerStore) => Promise<void>) =>
    it(rule, async () => {
      const store = await make();
      try {
        await use(store);
      } finally {
        await store.close();
      }
    });

  describe(`${name} has what is kept apart settled`, () => {
    withStore("[SG240] an entry kept apart is told beside the one that stands under its number", async (store) => {
      const [first, second] = fork();
      await store.push([first, second]);
      const [kept, ...more] = await store.apart();
      expect(more).toEqual([]);
      expect(kept).toEqual({
        ...{ hash: headerHash(second.header), entry: second, why: "number-taken", standing: first },
        ...{ cameInAs: null, earlierCameInAs: [], withdrawnBy: null, isIdTaken: false, settlements: [] },
      });
      expect(await store.check()).toMatchObject({ isIntact: false, keptApart: 1, settledApart: [] });
    });

    withStore(
      "[SG241] taken in, the fold sees it with its own time, and nothing is a fault any more",
      async (store) => {
        const [first, second] = fork();
        await store.push([first, second]);
        const desk = office();
        const { refused } = await store.push(desk.write(...settling((await store.apart())[0], "taken-in")));
        expect(refused).toEqual([]);
        expect(await firstBee(store)).toEqual(["clear", "mites"]);
        const copy = (await store.all()).find(({ header }) => header.replaces.includes(second.header.id));
        expect(copy).toMatchObject({
          header: { device: "office-1", author: "office-1", at: second.header.at, about: second.header.about },
          body: { data: second.body?.data },
        });
        expect(await store.quarantined()).toEqual([second]);
        const [kept] = await store.apart();
        expect(kept).toMatchObject({ cameInAs: copy?.header.id, settlements: [{ value: { decision: "taken-in" } }] });
        expect(await store.check()).toMatchObject({
          ...{ isIntact: true, keptApart: 0, settledApart: [{ by: "office-1", entries: 1 }], damage: [] },
        });
        expect(settling(kept, "taken-in")).toEqual([]);
        expect(await store.states()).toEqual(fold(await store.all()));
        expect(verifyChain(await store.all()).isIntact).toBe(true);
      },
    );

    withStore("[SG241] left out, what stood stands alone, and nothing is a fault any more", async (store) => {
      await store.push(fork());
      await store.push(office().write(...settling((await store.apart())[0], "left-out")));
      expect(await firstBee(store)).toEqual(["clear"]);
      expect(await store.quarantined()).toHaveLength(1);
      expect(await store.check()).toMatchObject({ isIntact: true, settledApart: [{ by: "office-1", entries: 1 }] });
      expect(settling((await store.apart())[0], "left-out")).toEqual([]);
    });

    withStore(
      "[SG242] where two people settle differently it is a conflict, and a fault until one stands",
      async (store) => {
        const [, second] = fork();
        await store.push(fork());
        await store.push(office().write(settlingOf(second, "taken-in")));
        await store.push(office("desk-2").write(settlingOf(second, "left-out")));
        expect(conflictsOf(await store.states(), "main")).toMatchObject([
          { slot: ["settlements", headerHash(second.header)] },
        ]);
        expect(await store.check()).toMatchObject({ isIntact: false, keptApart: 1, settledApart: [] });
        const [kept] = await store.apart();
        await store.push(office("desk-3").write(...settling(kept, "left-out")));
        expect(conflictsOf(await store.states(), "main")).toEqual([]);
        expect(await store.check()).toMatchObject({ isIntact: true, settledApart: [{ by: "desk-3", entries: 1 }] });
      },
    );

    withStore(
      "[SG242] two who settle alike settle it together; a settlement taken back settles nothing",
      async (store) => {
        const [, second] = fork();
        await store.push(fork());
        const desk = office();
        const [settled] = desk.write(settlingOf(second, "left-out")) as [Entry];
        await store.push([settled]);
        await store.push(office("desk-2").write(settlingOf(second, "left-out", "read twice")));
        expect(await store.check()).toMatchObject({ isIntact: true, settledApart: [{ entries: 1 }] });
        const replaces = (await store.apart())[0]?.settlements.map(({ entry }) => entry) ?? [];
        expect(replaces).toHaveLength(2);
        const undo = {
          kind: "entry-withdrawn",
          at: "2026-03-21",
          about: ["main"],
          data: { reason: "the wrong one" },
        } as const;
        await store.push(desk.write({ ...undo, replaces }));
        expect(await store.check()).toMatchObject({ isIntact: false, keptApart: 1, settledApart: [] });
      },
    );

    withStore("[SG242] a settlement about another root settles nothing", async (store) => {
      const [, second] = fork();
      await store.push(fork());
      await store.push(office().write({ ...settlingOf(second, "left-out"), about: ["case-1"] }));
      expect(await store.check()).toMatchObject({ isIntact: false, keptApart: 1 });
    });

    withStore(
      "[SG243] what a lost phone sent is settled alike, and stands once when the phone is found",
      async (store) => {
        const member = await store.members.admit(
          { name: "Ash", role: "administrator", password: "hash" },
          { by: null, at },
        );
        if (!member.ok) throw new Error("not admitted");
        const by = { by: member.value.id, at };
        const pusher = { ...by, mayClaim: false, trouble: () => null };
        const phone = writer({ device: "phone-1" });
        const [before, after] = [phone.write(bee(1)), phone.write(bee(2, "mites"))];
        await store.members.push(before, pusher);
        await store.members.loseDevice("phone-1", by);
        await store.members.push(after, pusher);
        const [kept] = await store.apart();
        expect(kept).toMatchObject({ why: "from-lost", standing: null, entry: after[0] });
        expect(await store.check()).toMatchObject({ isIntact: true, keptApart: 0, fromLost: 1 });
        expect((await store.members.push(office().write(...settling(kept, "taken-in")), pusher)).refused).toEqual([]);
        const second = async () => (await store.states()).specimens["specimen-1"]?.readings["reading-1"]?.bees["2"];
        expect((await second())?.candidates).toMatchObject([{ device: "office-1", value: { left: "mites" } }]);
        expect(await store.check()).toMatchObject({ isIntact: true, fromLost: 0, settledApart: [{ entries: 1 }] });
        await store.members.returnDevice("phone-1", by);
        expect((await store.members.push(after, pusher)).refused).toEqual([]);
        expect((await second())?.candidates).toMatchObject([{ device: "office-1", value: { left: "mites" } }]);
        expect(await store.apart()).toEqual([]);
        expect((await store.check()).isIntact).toBe(true);
      },
    );

    withStore("[SG244] a kept entry under the id of one that stands never takes its place", async (store) => {
      const phone = writer({ device: "phone-1" });
      const [first] = phone.write(bee(1)) as [Entry];
      const [other] = writer({ device: "phone-1", from: "2026-03-09T10:00:00.000Z" }).write(bee(1, "mites")) as [Entry];
      const copied = { ...other, header: { ...other.header, id: first.header.id } };
      await store.push([first]);
      await store.push([copied]);
      const [kept] = await store.apart();
      expect(kept).toMatchObject({ isIdTaken: true, cameInAs: null });
      await store.push(office().write(...settling(kept, "taken-in")));
      expect(await firstBee(store)).toEqual(["clear", "mites"]);
      expect(await store.check()).toMatchObject({ isIntact: true, settledApart: [{ entries: 1 }] });
    });

    withStore("[SG244] what is not what its header names is refused and not kept", async (store) => {
      const [first, second] = fork();
      await store.push([first]);
      const changed = { ...second, body: { salt: "0".repeat(32), data: second.body?.data ?? {} } };
      const { refused } = await store.push([changed]);
      expect(refused).toMatchObject([{ problem: { code: "two-entries-one-number" } }]);
      expect(await store.apart()).toEqual([]);
    });

    withStore("[SG245] what its device wrote again is told, and settled without a second copy", async (store) => {
      const [first, second] = fork();
      await store.push([first, second]);
      const again = { ...bee(1, "mites"), replaces: [second.header.id] };
      const [moved] = writer({ device: "phone-anew" }).write(again) as [Entry];
      await store.push([moved]);
      const [kept] = await store.apart();
      expect(kept?.cameInAs).toBe(moved.header.id);
      expect(settling(kept, "taken-in").map(({ kind }) => kind)).toEqual(["kept-apart-settled"]);
    });

    withStore("[SG245] what came in and was withdrawn has not come in: then it can be left out", async (store) => {
      await store.push(fork());
      const desk = office();
      await store.push(desk.write(...settling((await store.apart())[0], "taken-in")));
      const [taken] = await store.apart();
      expect(() => settling(taken, "left-out")).toThrow("apart-came-in");
      const undo = {
        kind: "entry-withdrawn",
        at: "2026-03-21",
        about: ["specimen-1"],
        data: { reason: "a slip" },
      } as const;
      await store.push(desk.write({ ...undo, replaces: [taken?.cameInAs ?? ""] }));
      const [kept] = await store.apart();
      expect(kept?.cameInAs).toBeNull();
      await store.push(desk.write(...settling(kept, "left-out")));
      expect(await firstBee(store)).toEqual(["clear"]);
      expect(await store.check()).toMatchObject({ isIntact: true, settledApart: [{ entries: 1 }] });
    });

    const forked = () => {
      const phone = writer({ device: "copied-phone", from: "2026-03-09T10:00:00.000Z" });
      const [own] = phone.write(bee(1, "mites")) as [Entry];
      const undo = {
        kind: "entry-withdrawn",
        at: "2026-03-20",
        about: ["specimen-1"],
        data: { reason: "a slip" },
      } as const;
      const [late] = phone.write({ ...undo, replaces: [own.header.id] }) as [Entry];
      const standing = writer({ device: "copied-phone" }).write(bee(1), bee(2));
      return { own, late, standing };
    };

    for (const order of [
      ["own", "late"],
      ["late", "own"],
    ] as const)
      withStore(
        `[SG246] what its own phone withdrew stays withdrawn, taken in ${order.join(" before ")}`,
        async (store) => {
          const given = forked();
          await store.push(given.standing);
          await store.push([given.own, given.late]);
          const desk = office();
          for (const name of order) {
            const kept = (await store.apart()).find(({ hash }) => hash === headerHash(given[name].header));
            expect((await store.push(desk.write(...settling(kept, "taken-in")))).refused).toEqual([]);
          }
          expect(await firstBee(store)).toEqual(["clear"]);
          expect(await store.check()).toMatchObject({ isIntact: true, keptApart: 0 });
        },
      );

    withStore("[SG246] two who take one in at once bring one copy in, and agree", async (store) => {
      await store.push(fork());
      const [kept] = await store.apart();
      for (const name of ["office-1", "desk-2"]) await store.push(office(name).write(...settling(kept, "taken-in")));
      expect(await firstBee(store)).toEqual(["clear", "mites"]);
      const differ = differences(await store.states(), wholeWordsOf("en")).filter(
        ({ href }) => href === "/records/apart",
      );
      expect(differ).toEqual([]);
      expect(await store.check()).toMatchObject({ isIntact: true, keptApart: 0 });
    });

    withStore("[SG247] to erase what came in empties the entry that is kept apart too", async (store) => {
      await store.push(fork());
      const desk = office();
      await store.push(desk.write(...settling((await store.apart())[0], "taken-in")));
      const [taken] = await store.apart();
      const entries = [taken?.cameInAs ?? ""];
      const erasing = { kind: "content-erased", at: "2026-03-21", about: ["specimen-1"] } as const;
      await store.push(desk.write({ ...erasing, data: { entries, reason: "asked for" } }));
      expect((await store.quarantined()).map(({ body }) => body)).toEqual([null]);
      expect(JSON.stringify(await store.all())).not.toContain("mites");
      expect((await store.check()).isIntact).toBe(true);
    });

    withStore("[SG240] two who settled alike are not waited for", async (store) => {
      const [one, two] = [fork("copied-a"), fork("copied-b")];
      await store.push([...one, ...two]);
      const [first] = await store.apart();
      for (const name of ["office-1", "desk-2"]) await store.push(office(name).write(...settling(first, "left-out")));
      expect((await store.apart()).map(({ settlements }) => settlements.length)).toEqual([0, 2]);
      expect(await store.apartUpTo(1)).toMatchObject({ apart: [{ settlements: [] }], more: 1, waiting: 1 });
      expect(await store.apartUpTo(0)).toEqual({ apart: [], more: 2, waiting: 1 });
    });

    withStore("[SG240] what waits for a person stands first", async (store) => {
      const [one, two] = [fork("copied-a"), fork("copied-b")];
      await store.push([...one, ...two]);
      const [first] = await store.apart();
      await store.push(office().write(...settling(first, "left-out")));
      expect((await store.apart()).map(({ settlements }) => settlements.length)).toEqual([0, 1]);
    });
  });
}
