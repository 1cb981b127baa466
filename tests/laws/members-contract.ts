/** What the book of members must do: one suite, run on SQLite and PostgreSQL. */
import { describe, expect, it } from "vitest";
import { fold } from "../../src/casebook/index.ts";
import { type Entry, type EntryDraft, verifyChain } from "../../src/journal/index.ts";
import type { MemberBook, PullAsker, Pusher, ServerStore } from "../../src/storage/server.ts";
import { problem } from "../../src/units/index.ts";
import { apiaryDrafts, bee, callDrafts, everyKind } from "../journals/every-kind.ts";
import { type Writer, writer } from "../journals/writer.ts";

const at = "2026-04-01T08:00:00.000Z";
const later = "2026-04-02T08:00:00.000Z";
const muchLater = "2026-09-01T08:00:00.000Z";
const doing = { by: null, at };
const hash = (name: string): string => name.padEnd(64, "0");
/** Signs in a hundred days from the start at most, and ten days from when it was seen. */
const idle = (seenAt: string): string => new Date(Date.parse(seenAt) + 10 * 86_400_000).toISOString();

async function admitted(book: MemberBook, name: string, role = "keeper") {
  const result = await book.admit({ name, role, password: `hash of ${name}` }, doing);
  if (!result.ok) throw new Error("not admitted");
  return result.value;
}

const session = (book: MemberBook, member: string, token: string) =>
  book.beginSession({ member, hash: hash(token), client: "a browser", endsAt: "2026-07-10T08:00:00.000Z" }, at);

const pusher = (by: string, more: Partial<Pusher> = {}): Pusher => ({
  ...{ by, at, mayClaim: false, trouble: () => null },
  ...more,
});
const keeperAsks = (member: string): PullAsker => ({ member, onlyOwn: true, byRoot: true });
const codes = (reply: Awaited<ReturnType<MemberBook["push"]>>) => reply.refused.map((each) => each.problem.code);

/** Everything that a member is given, by cursor, in pages of this size. */
async function pullAll(book: MemberBook, asker: PullAsker, limit: number, from = 0) {
  const seen: Entry[] = [];
  for (let [cursor, more] = [from, true]; more; ) {
    const page = await book.pull(asker, cursor, limit);
    seen.push(...page.entries.map(({ entry }) => entry));
    [cursor, more] = [page.cursor, page.more];
  }
  return seen;
}

/** An apiary, a case about it, and a vial of the case, written on one device. */
function ownStory(device: string, name: string): { readonly phone: Writer; readonly entries: readonly Entry[] } {
  const phone = writer({ device });
  const renamed = (draft: EntryDraft): EntryDraft =>
    JSON.parse(JSON.stringify(draft).replaceAll(/"(apiary-hollow|case-1|colony-\d)"/g, `"${name}-$1"`)) as EntryDraft;
  return { phone, entries: phone.write(...apiaryDrafts.map(renamed), ...callDrafts.map(renamed)) };
}

/** `make` gives a new, empty store of the programme `main` each time it is called. */
export function membersContract(name: string, make: () => Promise<ServerStore>): void {
  const withBook = (rule: string, use: (book: MemberBook, store: ServerStore) => Promise<void>) =>
    it(rule, async () => {
      const store = await make();
      try {
        await use(store.members, store);
        expect((await store.check()).damage, "[SG113] what came of it is what the journal says").toEqual([]);
      } finally {
        await store.close();
      }
    });

  describe(`${name} keeps the book of members`, () => {
    withBook("[SG200] a name is taken once, however it is spelt", async (book) => {
      expect([await book.hasMembers(), await book.hasAdministrator()]).toEqual([false, false]);
      const member = await admitted(book, "Rowan Vale", "administrator");
      expect(member).toMatchObject({ name: "Rowan Vale", role: "administrator", hasExactPlaces: false, endedAt: null });
      const again = await book.admit({ name: "  rowan  VALE ", role: "keeper", password: null }, doing);
      expect(again).toMatchObject({ ok: false, problems: [{ code: "name-taken" }] });
      expect(await book.members()).toEqual([member]);
      expect([await book.hasMembers(), await book.hasAdministrator()]).toEqual([true, true]);
      expect(await book.credential("ROWAN vale")).toMatchObject({ member: member.id, password: "hash of Rowan Vale" });
    });

    withBook("[SG201] the last administrator stays one", async (book) => {
      const only = await admitted(book, "Rowan Vale", "administrator");
      const stays = { ok: false, problems: [{ code: "last-administrator" }] };
      expect(await book.change(only.id, { role: "keeper" }, doing)).toMatchObject(stays);
      expect(await book.change(only.id, { ended: true }, doing)).toMatchObject(stays);
      const other = await admitted(book, "Ash Moor", "administrator");
      expect((await book.change(only.id, { ended: true }, { by: other.id, at: later })).ok).toBe(true);
      expect(await book.credential("Rowan Vale")).toBeNull();
    });

    withBook("[SG202] an invitation is used once, also by two at once, and not after its end", async (book) => {
      await book.invite({ role: "keeper", hash: hash("one"), endsAt: later }, doing);
      await book.invite({ role: "reader", hash: hash("two"), endsAt: later }, doing);
      const third = await book.invite({ role: "reader", hash: hash("three"), endsAt: later }, doing);
      expect(await book.invitation(hash("one"), at)).toMatchObject({ role: "keeper" });
      const both = await Promise.all(
        ["Ash", "Elm"].map((each) => book.accept(hash("one"), { name: each, password: "hash" }, at)),
      );
      expect(both.filter((each) => each.ok)).toHaveLength(1);
      expect(await book.members()).toHaveLength(1);
      const over = { ok: false, problems: [{ code: "invitation-over" }] };
      expect(await book.accept(hash("one"), { name: "Oak", password: "hash" }, at)).toMatchObject(over);
      expect(await book.accept(hash("two"), { name: "Oak", password: "hash" }, later)).toMatchObject(over);
      expect(await book.cancelInvitation(third.id, doing)).toBe(true);
      expect(await book.accept(hash("three"), { name: "Oak", password: "hash" }, at)).toMatchObject(over);
      expect(await book.invitation(hash("none"), at)).toBeNull();
    });

    withBook("[SG203] a session ends by its day, by idleness, by hand, and with its member", async (book) => {
      const [one, two] = [await admitted(book, "Ash", "administrator"), await admitted(book, "Elm")];
      await session(book, one.id, "a");
      const second = await session(book, two.id, "b");
      await session(book, two.id, "c");
      expect(await book.standing(hash("a"), at, idle)).toMatchObject({
        member: { id: one.id },
        session: { endedAt: null },
      });
      expect(await book.standing(hash("none"), at, idle)).toEqual({ ended: "unknown" });
      expect(await book.standing(hash("a"), "2026-04-11T08:00:00.000Z", idle)).toEqual({ ended: "over" });
      expect(await book.standing(hash("a"), "2026-04-09T08:00:00.000Z", idle)).toHaveProperty("member");
      expect(await book.standing(hash("a"), "2026-04-18T08:00:00.000Z", idle)).toHaveProperty("member");
      expect(await book.standing(hash("a"), muchLater, (seen) => `9${seen}`)).toEqual({ ended: "over" });
      expect(await book.endSession(second.id, "ended", doing)).toBe(true);
      expect(await book.endSession(second.id, "ended", doing)).toBe(false);
      expect(await book.standing(hash("b"), at, idle)).toEqual({ ended: "ended" });
      expect((await book.sessions(two.id, at)).map(({ member }) => member)).toEqual([two.id]);
      await book.change(two.id, { ended: true }, doing);
      expect(await book.standing(hash("c"), at, idle)).toEqual({ ended: "member-ended" });
    });

    withBook("[SG203] a new password ends the other sessions", async (book) => {
      const member = await admitted(book, "Ash");
      const [kept] = [await session(book, member.id, "a"), await session(book, member.id, "b")];
      await book.noteFailure(member.id, at);
      expect(await book.credential("Ash")).toMatchObject({ failures: 1, failedAt: at });
      await book.setPassword({ member: member.id, password: "another hash", keep: kept.id }, doing);
      expect(await book.standing(hash("a"), at, idle)).toHaveProperty("member");
      expect(await book.standing(hash("b"), at, idle)).toEqual({ ended: "ended" });
      expect(await book.credential("Ash")).toMatchObject({ password: "another hash", failures: 0 });
    });

    withBook("[SG213] a drawn password keeps when it runs out, the member's own has no end", async (book) => {
      const [given, end] = [{ name: "Ash", role: "keeper", password: "drawn" }, "2026-04-08T08:00:00.000Z"];
      const made = await book.admit({ ...given, passwordEndsAt: end }, doing);
      if (!made.ok) throw new Error("not admitted");
      const member = made.value.id;
      expect(await book.credential("Ash")).toMatchObject({ password: "drawn", endsAt: end });
      await book.setPassword({ member, password: "own" }, doing);
      expect(await book.credential("Ash")).toMatchObject({ password: "own", endsAt: null });
      await book.setPassword({ member, password: "drawn anew", endsAt: end }, doing);
      expect(await book.credential("Ash")).toMatchObject({ password: "drawn anew", endsAt: end });
      await admitted(book, "Elm");
      expect(await book.credential("Elm")).toMatchObject({ endsAt: null });
    });

    withBook(
      "[SG204] a device is one member's; one that wrote before is taken over by those who may",
      async (book, store) => {
        const [one, two] = [await admitted(book, "Ash"), await admitted(book, "Elm")];
        await store.push(writer({ device: "old-desk" }).write(bee(1)));
        const phone = writer({ device: "phone-1" });
        expect(codes(await book.push(phone.write(bee(1)), pusher(one.id)))).toEqual([]);
        expect(codes(await book.push(phone.write(bee(2)), pusher(two.id)))).toEqual(["device-of-another"]);
        const old = writer({ device: "old-desk" });
        old.write(bee(1));
        const more = old.write(bee(2));
        expect(codes(await book.push(more, pusher(one.id)))).toEqual(["device-of-another"]);
        expect(codes(await book.push(more, pusher(two.id, { mayClaim: true })))).toEqual([]);
        expect(
          codes(await book.push(writer({ device: "service" }).write(bee(1)), pusher(one.id, { mayClaim: true }))),
        ).toEqual(["device-of-another"]);
        expect((await book.devices()).map(({ device, member }) => [device, member])).toEqual([
          ["old-desk", two.id],
          ["phone-1", one.id],
        ]);
      },
    );

    withBook(
      "[SG205] a lost phone: its session ends, what it sends later is kept apart until it is back",
      async (book, store) => {
        const member = await admitted(book, "Ash");
        const held = await session(book, member.id, "a");
        const other = await session(book, member.id, "b");
        const phone = writer({ device: "phone-1" });
        const [before, after] = [phone.write(bee(1)), phone.write(bee(2), bee(3))];
        await book.push(before, pusher(member.id));
        const doingSo = { by: member.id, at };
        await book.registerDevice({ device: "phone-1", name: "Phone", session: held.id, mayClaim: false }, doingSo);
        expect(await book.loseDevice("phone-1", doingSo)).toMatchObject({
          ok: true,
          value: { lostAt: at, name: "Phone" },
        });
        expect(await book.standing(hash("a"), at, idle)).toEqual({ ended: "device-lost" });
        expect(await book.standing(hash("b"), at, idle)).toMatchObject({ session: { id: other.id } });
        const told = await book.push([...before, ...after], pusher(member.id));
        expect(codes(told)).toEqual(["device-lost", "device-lost"]);
        expect(told.heads).toMatchObject([{ device: "phone-1", seq: 1 }]);
        expect(await store.quarantined()).toHaveLength(2);
        expect((await store.all()).filter(({ header }) => header.device === "phone-1")).toEqual(before);
        await book.returnDevice("phone-1", doingSo);
        expect(codes(await book.push(after, pusher(member.id)))).toEqual([]);
        expect(await store.quarantined()).toEqual([]);
        expect(await book.loseDevice("no-such-phone", doingSo)).toMatchObject({
          ok: false,
          problems: [{ code: "device-unknown" }],
        });
      },
    );

    withBook(
      "[SG206] each entry that is sent is judged by whose it is; what follows a refused one waits",
      async (book) => {
        const [one, two] = [await admitted(book, "Ash"), await admitted(book, "Elm")];
        const { entries } = ownStory("phone-1", "one");
        await book.push(entries, pusher(one.id));
        const met: unknown[] = [];
        const trouble: Pusher["trouble"] = ({ entry, root, named }) => {
          met.push([entry.header.kind, root, ...named]);
          return root === "other" || named.includes("other") ? problem("entry-not-allowed", "blocked", null) : null;
        };
        const [opened] = callDrafts.filter(({ kind }) => kind === "case-opened") as [EntryDraft];
        const phone = writer({ device: "phone-2" });
        const foreign = phone.write({ ...opened, about: ["one-case-1", "two-apiary"] } as EntryDraft);
        const hung = writer({ device: "phone-3" }).write({
          ...opened,
          about: ["two-case", "one-apiary-hollow"],
        } as EntryDraft);
        const next = phone.write({ ...opened, about: ["two-case-2", "two-apiary"] } as EntryDraft);
        expect(codes(await book.push([...foreign, ...next], pusher(two.id, { trouble })))).toEqual([
          "entry-not-allowed",
          "entries-missing-before",
        ]);
        expect(codes(await book.push(hung, pusher(two.id, { trouble })))).toEqual(["entry-not-allowed"]);
        expect(met).toEqual([
          ["case-opened", "other", "own"],
          ["case-opened", "own", "own"],
          ["case-opened", "own", "other"],
        ]);
      },
    );

    withBook(
      "[SG207] a keeper pulls own roots and what is everyone's, in pages of any size, each once",
      async (book, store) => {
        const [one, two] = [await admitted(book, "Ash"), await admitted(book, "Elm")];
        const [mine, theirs] = [ownStory("phone-1", "one"), ownStory("phone-2", "two")];
        for (let from = 0; from < mine.entries.length; from += 3) {
          await book.push(mine.entries.slice(from, from + 3), pusher(one.id));
          await book.push(theirs.entries.slice(from, from + 3), pusher(two.id));
        }
        await store.push(everyKind().filter(({ header }) => header.device === "office-1"));
        const own = mine.entries.map(({ header }) => header.id).toSorted();
        for (const limit of [1, 2, 7, 1000]) {
          const given = (await pullAll(book, keeperAsks(one.id), limit)).filter(
            ({ header }) => header.device === "phone-1",
          );
          expect(given.map(({ header }) => header.id).toSorted()).toEqual(own);
          const all = await pullAll(book, keeperAsks(one.id), limit);
          expect(all.filter(({ header }) => header.device === "phone-2")).toEqual([]);
          expect(new Set(all.map(({ header }) => header.id)).size).toBe(all.length);
        }
        const end = (await store.pull(Number.MAX_SAFE_INTEGER, 1)).cursor;
        expect(await book.pull(keeperAsks(two.id), end + 9, 5)).toEqual({ entries: [], cursor: end, more: false });
        expect((await book.pull(keeperAsks("nobody"), 0, 5000)).cursor).toBe(end);
      },
    );

    withBook("[SG208] whoever is given an apiary meets its past, though the cursor went past it", async (book) => {
      const [one, two] = [await admitted(book, "Ash"), await admitted(book, "Elm")];
      const theirs = ownStory("phone-2", "two");
      await book.push(theirs.entries, pusher(two.id));
      const asker = keeperAsks(one.id);
      const { cursor } = await book.pull(asker, 0, 5000);
      expect(await pullAll(book, asker, 3, cursor)).toEqual([]);
      expect((await book.giveApiary(one.id, "two-apiary-hollow", doing)).ok).toBe(true);
      const past = await pullAll(book, asker, 3, cursor);
      const told = past.filter(({ header }) => header.device === "phone-2");
      expect(told).toEqual(theirs.entries);
      const more = theirs.phone.write(bee(1));
      await book.push(more, pusher(two.id));
      expect((await pullAll(book, asker, 3)).filter(({ header }) => header.kind === "bee-read")).toEqual([]);
      await book.takeApiary(one.id, "two-apiary-hollow", doing);
      expect((await pullAll(book, asker, 100)).filter(({ header }) => header.device === "phone-2")).toEqual([]);
      expect(await book.rootsOf(two.id)).toEqual(["specimen-1", "two-apiary-hollow", "two-case-1"]);
      expect(await book.giveApiary("nobody", "two-apiary-hollow", doing)).toMatchObject({ ok: false });
      expect(await book.giveApiary(one.id, "no-apiary", doing)).toMatchObject({ ok: false });
    });

    withBook(
      "[SG209] every change is an entry of the service's own chain, without a name or a secret",
      async (book, store) => {
        const member = await admitted(book, "Rowan Vale", "administrator");
        await book.invite({ role: "keeper", hash: hash("token"), endsAt: later }, { by: member.id, at });
        await session(book, member.id, "a");
        await book.setPassword({ member: member.id, password: "hash two" }, { by: member.id, at });
        const entries = await store.all();
        expect(verifyChain(entries, await store.heads())).toMatchObject({ isIntact: true, checked: 4 });
        expect(entries.map(({ header, body }) => [header.device, header.kind, body?.data.act])).toEqual([
          ["service", "access-noted", "member-admitted"],
          ["service", "access-noted", "invited"],
          ["service", "access-noted", "signed-in"],
          ["service", "access-noted", "password-changed"],
        ]);
        expect(JSON.stringify(entries)).not.toMatch(/Rowan|hash|token/i);
        expect((await store.states()).unread).toEqual([]);
        expect(fold(entries).cases).toEqual({});
        const [newest, ...rest] = await book.audit(null, 3);
        expect(newest).toMatchObject({ position: 4, data: { act: "password-changed", by: member.id } });
        expect(rest.map(({ position }) => position)).toEqual([3, 2]);
        expect((await book.audit(2, 9)).map(({ position }) => position)).toEqual([1]);
      },
    );

    withBook("[SG212] what was given to a keeper and is another's stays when he is erased", async (book, store) => {
      const [one, two] = [await admitted(book, "Ash"), await admitted(book, "Elm")];
      await admitted(book, "Head", "administrator");
      const [mine, theirs] = [ownStory("phone-1", "one"), ownStory("phone-2", "two")];
      await book.push(mine.entries, pusher(one.id));
      await book.push(theirs.entries, pusher(two.id));
      await book.giveApiary(one.id, "two-apiary-hollow", doing);
      await book.giveApiary(two.id, "one-apiary-hollow", doing);
      await book.erase(one.id, "asked for", doing);
      const bodiesFrom = async (device: string) =>
        (await store.all()).filter(({ header, body }) => header.device === device && body !== null);
      expect(await bodiesFrom("phone-2")).toHaveLength(theirs.entries.length);
      // What he began himself goes, whomever it was given to.
      expect(await bodiesFrom("phone-1")).toEqual([]);
    });

    withBook(
      "[SG212] a keeper's data come whole, and are erased with the account; headers stay",
      async (book, store) => {
        const [one, two] = [await admitted(book, "Ash"), await admitted(book, "Elm")];
        await admitted(book, "Head", "administrator");
        const [mine, theirs] = [ownStory("phone-1", "one"), ownStory("phone-2", "two")];
        await book.push(mine.entries, pusher(one.id));
        await book.push(theirs.entries, pusher(two.id));
        expect(await book.entriesOf(one.id, true)).toEqual(mine.entries);
        const result = await book.erase(one.id, "asked for", doing);
        expect(result).toMatchObject({ ok: true, value: { erased: mine.entries.length } });
        const all = await store.all();
        const of = (device: string) => all.filter(({ header }) => header.device === device);
        expect(of("phone-1")).toEqual(mine.entries.map(({ header }) => ({ header, body: null })));
        expect(of("phone-2")).toEqual(theirs.entries);
        const report = verifyChain(all, await store.heads());
        expect(report.isIntact).toBe(true);
        expect(new Set(report.missingBodies.map(({ erased }) => erased?.by))).toEqual(new Set(["machine"]));
        expect(await store.states()).toEqual(fold(all));
        expect((await book.members()).map(({ name }) => name)).not.toContain("Ash");
        expect(await book.credential("Ash")).toBeNull();
      },
    );

    withBook("[SG210] a question to a passkey is answered once, in time, and for what it was put", async (book) => {
      const member = await admitted(book, "Ash");
      await book.putChallenge({ hash: hash("q"), purpose: "sign-in", member: null, endsAt: later });
      expect(await book.takeChallenge(hash("q"), "add", at)).toBeNull();
      expect(await book.takeChallenge(hash("q"), "sign-in", at)).toEqual({ member: null });
      expect(await book.takeChallenge(hash("q"), "sign-in", at)).toBeNull();
      await book.putChallenge({ hash: hash("r"), purpose: "sign-in", member: null, endsAt: later });
      expect(await book.takeChallenge(hash("r"), "sign-in", later)).toBeNull();
      const key = {
        id: "key-1",
        member: member.id,
        publicKey: "AA",
        counter: 0,
        transports: ["internal"],
        name: "Phone",
      };
      await book.addPasskey(key, doing);
      await book.notePasskeyUse("key-1", 7, later);
      expect(await book.passkey("key-1")).toEqual({ ...key, counter: 7, madeAt: at, usedAt: later });
      expect(await book.removePasskey("key-1", "nobody", doing)).toBe(false);
      expect(await book.removePasskey("key-1", member.id, doing)).toBe(true);
      expect(await book.passkeys(member.id)).toEqual([]);
    });
  });
}
