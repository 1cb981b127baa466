/** What `check` finds of the tables that decide who may see what: one suite, run on SQLite and PostgreSQL. */
import { describe, expect, it } from "vitest";
import type { Entry } from "../../src/journal/index.ts";
import type { ServerStore } from "../../src/storage/server.ts";
import { seeded } from "../faults/count.ts";
import { bee } from "../journals/every-kind.ts";
import { attachedDraft, photo, sha256Of, voice } from "../journals/file-story.ts";
import { writer } from "../journals/writer.ts";
import { anotherSession, at, ownDrafts, type Person, person } from "../members.ts";
import { erasing, sendFile } from "./files-contract.ts";

const later = "2026-04-02T08:00:00.000Z";

/** A place of its own that can be asked past the store. */
export interface RightsPlace {
  readonly open: () => Promise<ServerStore>;
  readonly ask: (statement: string) => Promise<unknown>;
}

/** Members of every role, grants, a lost device, an ended and an erased member, files here, on their way and to come. */
export async function fillWithRights(store: ServerStore) {
  const { members } = store;
  // Wrote before there were members: the administrator takes it over later.
  await store.push(writer({ device: "old-desk" }).write(...ownDrafts("old", 40)));
  const head = await person(store, "administrator", "head", 44);
  const [keeper, neighbour] = [
    await person(store, "keeper", "keeper", 45),
    await person(store, "keeper", "neighbour", 46),
  ];
  const [gone, erased] = [await person(store, "keeper", "gone", 47), await person(store, "keeper", "erased", 48)];
  const manager = await person(store, "reader", "manager", 49);
  const by = { by: head.id, at: later };
  await members.change(manager.id, { role: "manager", hasExactPlaces: true }, by);
  await members.giveApiary(keeper.id, neighbour.apiary, by);
  await members.giveApiary(manager.id, keeper.apiary, by);
  await members.takeApiary(manager.id, keeper.apiary, by);
  await members.loseDevice(neighbour.device, by);
  await members.change(gone.id, { ended: true }, by);
  await members.erase(erased.id, "asked for", by);
  const session = (await anotherSession(store, head.id, "at the old desk")).session;
  await members.registerDevice({ device: "old-desk", name: "Desk", session, mayClaim: true }, { ...by, by: head.id });
  const key = { id: "key-1", member: keeper.id, publicKey: "cHVibGlj", counter: 7, transports: [], name: "Phone" };
  await members.addPasskey(key, { by: keeper.id, at });
  await members.invite({ role: "reader", hash: "one".padEnd(64, "0"), endsAt: later }, { by: head.id, at });
  await members.invite({ role: "keeper", hash: "two".padEnd(64, "0"), endsAt: later }, { by: head.id, at });
  await members.accept("two".padEnd(64, "0"), { name: "Wren", password: null }, at);
  const root = { root: keeper.case, colony: null };
  const files = keeper.phone.write(
    attachedDraft(photo, "image/jpeg", root),
    attachedDraft(voice, "audio/webm", root),
    attachedDraft(voice.slice(0, 900), "audio/webm", root),
  );
  await members.push(files, { by: keeper.id, at, mayClaim: false, trouble: () => null });
  await sendFile(store, photo, { sender: keeper.id });
  const begun = { sha256: sha256Of(voice), of: voice.length, from: 0, bytes: voice.subarray(0, 1000) };
  await store.files.take({ ...begun, sender: keeper.id });
  return { head, keeper, neighbour, gone, erased, manager };
}

type People = Awaited<ReturnType<typeof fillWithRights>>;

/** What is changed past the store, and what the check must say of it. */
const changes: readonly (readonly [name: string, statement: (people: People) => string, told: RegExp])[] = [
  [
    "a role",
    ({ keeper }) => `update members set role = 'manager' where id = '${keeper.id}'`,
    /^members .*: role is manager, by the journal keeper$/,
  ],
  [
    "a grant of exact places",
    ({ keeper }) => `update members set places = 1 where id = '${keeper.id}'`,
    /^members .*: places is 1, by the journal 0$/,
  ],
  [
    "an ended member who is not",
    ({ gone }) => `update members set ended_at = null where id = '${gone.id}'`,
    /^members .*: ended_at is null/,
  ],
  [
    "an erased member who is not",
    ({ erased }) => `update members set ended_at = null where id = '${erased.id}'`,
    /^members .*: ended_at is null/,
  ],
  [
    "the day of a member",
    ({ head }) => `update members set admitted_at = '2025-04-01' where id = '${head.id}'`,
    /^members .*: admitted_at/,
  ],
  [
    "the name one signs in with",
    ({ head }) => `update members set sign_in = 'name of hexd' where id = '${head.id}'`,
    /^members .*: the name to sign in with/,
  ],
  [
    "a name",
    ({ head }) => `update members set name = 'Name of hexd' where id = '${head.id}'`,
    /^members .*: the name to sign in with/,
  ],
  ["a member who is gone", ({ manager }) => `delete from members where id = '${manager.id}'`, /^members .*: not there/],
  [
    "a member from nowhere",
    () => `insert into members values ('m', 'M', 'm', 'administrator', null, 1, 0, null, '${at}', null, null)`,
    /^members m: the journal knows of none$/,
  ],
  [
    "whose a device is",
    ({ keeper, head }) => `update devices set member = '${head.id}' where device = '${keeper.device}'`,
    /^devices phone-keeper: member is/,
  ],
  [
    "a lost device",
    ({ neighbour }) => `update devices set lost_at = null where device = '${neighbour.device}'`,
    /^devices phone-neighbour: lost_at is null/,
  ],
  [
    "a device that is not lost",
    ({ keeper }) => `update devices set lost_at = '${at}' where device = '${keeper.device}'`,
    /^devices phone-keeper: lost_at/,
  ],
  [
    "when a device came",
    ({ keeper }) => `update devices set registered_at = '2025' where device = '${keeper.device}'`,
    /^devices phone-keeper: registered_at/,
  ],
  [
    "a device that is gone",
    ({ keeper }) => `delete from devices where device = '${keeper.device}'`,
    /^devices phone-keeper: not there/,
  ],
  [
    "whose a root is",
    ({ keeper, manager }) =>
      `update scopes set member = '${manager.id}' where member = '${keeper.id}' and root = 'case-keeper'`,
    /^scopes case-keeper: of .* by the journal not$/,
  ],
  [
    "from when a root is whose",
    ({ keeper }) => `update scopes set since = 0 where member = '${keeper.id}' and root = 'case-neighbour'`,
    /^scopes case-neighbour: of .* since 0, by the journal since \d+$/,
  ],
  [
    "a root that is nobody's any more",
    ({ keeper }) => `delete from scopes where member = '${keeper.id}' and root = 'case-keeper'`,
    /^scopes case-keeper: not of/,
  ],
  [
    "a root that is everyone's",
    () => "update scopes set member = '*' where root = 'case-gone'",
    /^scopes case-gone: of \* since/,
  ],
  [
    "what hangs on what",
    () => "update parents set parent = 'apiary-head' where root = 'case-keeper'",
    /^parents case-keeper: hangs on apiary-head, by the journal not$/,
  ],
  [
    "what hangs on nothing any more",
    () => "delete from parents where root = 'vial-keeper'",
    /^parents vial-keeper: hangs on case-keeper by the journal/,
  ],
  [
    "whose a passkey is",
    ({ head }) => `update passkeys set member = '${head.id}'`,
    /^passkeys of .*: one of .* the journal knows of none$/,
  ],
  ["a passkey that is gone", () => "delete from passkeys", /^passkeys of .*: 0, by the journal 1$/],
  [
    "whose a session is",
    ({ keeper, head }) =>
      `update sessions set member = '${head.id}', device = null, began_at = '2026-04-01' where member = '${keeper.id}'`,
    /^sessions .*the journal knows of none$/,
  ],
  [
    "on which device a session is",
    ({ keeper }) => `update sessions set device = 'phone-head' where member = '${keeper.id}'`,
    /^sessions .*: on a device that is not of/,
  ],
  [
    "to which role an invitation is",
    () => "update invitations set role = 'administrator' where used_at is null",
    /^invitations .*: to administrator/,
  ],
  [
    "an invitation that was used",
    () => "update invitations set used_at = null",
    /^invitations .*: not used as the journal says$/,
  ],
  [
    "about what a file is",
    () => "update attached set root = 'case-head' where arrived = 1",
    /^file .*: not what entry .* names$/,
  ],
  [
    "of which sort a file is",
    () => "update attached set media_type = 'audio/ogg' where arrived = 1",
    /^file .*: not what entry .* names$/,
  ],
  [
    "that a file has come",
    () => "update attached set arrived = 0",
    /^file .*: no entry names it whose writer sent it$/,
  ],
  [
    "that a file has come which has not",
    () => "update attached set arrived = 1 where media_type = 'audio/webm'",
    /^file .*: was here and is gone$/,
  ],
  ["how long a file is", () => "update files set bytes = bytes + 1", /^file .*: not as long as written down$/],
  ["how long an upload will be", () => "update uploads set bytes = bytes + 1", /^upload .*: no entry names it so$/],
  [
    "how much of an upload is here",
    () => "update uploads set held = held - 1",
    /^upload .*: not as much here as written down$/,
  ],
  [
    "whose an upload is",
    ({ neighbour }) => `update uploads set sender = '${neighbour.id}'`,
    /^pieces of .*: of no upload$/,
  ],
  ["the counter", () => "update counters set position = position + 128", /^counter: \d+ where \d+ entries/],
];

/** Of these what the act that let the administrator in may account for: it was one of an administrator's, and of that instant. */
const excused = ["the day of a member", "a member from nowhere", "whose a root is", "from when a root is whose"];

/** Erases the first act that is such a one. */
async function eraseAct(store: ServerStore, head: Person, isIt: (entry: Entry) => boolean): Promise<void> {
  const act = (await store.all()).find((entry) => entry.header.kind === "access-noted" && isIt(entry)) as Entry;
  const erasure = head.phone.write({
    ...{ kind: "content-erased", at: later, about: [store.programme] },
    data: { entries: [act.header.id], reason: "asked for" },
  });
  const told = await store.members.push(erasure, { by: head.id, at: later, mayClaim: false, trouble: () => null });
  if (told.refused.length > 0) throw new Error("the act was not erased");
}

/** `make` gives a new, empty place each time it is called. */
export function rightsContract(name: string, make: () => Promise<RightsPlace>): void {
  describe(`${name}, its rights`, () => {
    it("[SG113] are what the journal says, whatever was done with members, devices, apiaries and files", async () => {
      const { open } = await make();
      const store = await open();
      await fillWithRights(store);
      const { isIntact, damage, rights } = await store.check();
      expect({ isIntact, damage, unproven: rights?.unproven }).toEqual({ isIntact: true, damage: [], unproven: [] });
      const acts = (await store.all()).filter(({ header }) => header.kind === "access-noted").length;
      expect(rights).toMatchObject({ acts, unknownActs: 0 });
    });

    for (const [what, statement, told] of changes)
      it(`[SG113] changed past the journal: ${what}`, async () => {
        const { open, ask } = await make();
        const store = await open();
        const people = await fillWithRights(store);
        await ask(statement(people));
        const { isIntact, damage, faults } = await store.check();
        expect({ isIntact, faults }).toEqual({ isIntact: false, faults: [] });
        expect(
          damage.filter((line) => told.test(line)),
          damage.join("\n"),
        ).not.toEqual([]);
      });

    it("[SG113] where an act was erased, a difference is told as not checkable, and what hangs on what is checked", async () => {
      const { open, ask } = await make();
      const store = await open();
      const { keeper, head } = await fillWithRights(store);
      await eraseAct(store, head, ({ body }) => body?.data.act === "role-given");
      const { isIntact, damage, rights } = await store.check();
      expect({ isIntact, damage }).toEqual({ isIntact: true, damage: [] });
      expect(rights?.unknownActs).toBe(1);
      expect(rights?.unproven).toEqual([expect.stringMatching(/^members .*: role is manager, by the journal reader$/)]);
      await ask(`update parents set parent = '${keeper.apiary}' where root = 'case-head'`);
      expect((await store.check()).damage).toEqual([
        expect.stringMatching(/^parents case-head/),
        expect.stringMatching(/^parents case-head/),
      ]);
    });

    for (const [what, statement, told] of changes.filter(([each]) => !excused.includes(each)))
      it(`[SG113] where the first act was erased, changed past the journal all the same: ${what}`, async () => {
        const { open, ask } = await make();
        const store = await open();
        const people = await fillWithRights(store);
        await eraseAct(store, people.head, ({ body }) => body?.data.act === "member-admitted");
        await ask(statement(people));
        const { damage } = await store.check();
        expect(
          damage.filter((line) => told.test(line)),
          damage.join("\n"),
        ).not.toEqual([]);
      });

    it("[SG113] an act that was erased accounts for what was so from its instant on, and what its doer may do", async () => {
      const { open, ask } = await make();
      const store = await open();
      const { head, keeper, manager } = await fillWithRights(store);
      const isOwn = ({ header, body }: Entry) => header.author === keeper.id && body?.data.act === "signed-in";
      await eraseAct(store, head, ({ body }) => body?.data.act === "member-admitted");
      await eraseAct(store, head, isOwn);
      const { damage, rights } = await store.check();
      expect({ damage, unknownActs: rights?.unknownActs }).toEqual({ damage: [], unknownActs: 2 });
      // It let the administrator in, and signed the keeper in: nothing else is in doubt.
      expect(rights?.unproven).toHaveLength(2);
      expect(rights?.unproven[0]).toBe(`members ${head.id}: the journal knows of none`);
      expect(rights?.unproven[1]).toMatch(new RegExp(`^sessions .*: of ${keeper.id} at .* the journal knows of none$`));
      await ask(`update members set role = 'administrator' where id = '${manager.id}'`);
      await ask(`update members set places = 1 where id = '${keeper.id}'`);
      expect((await store.check()).damage.toSorted()).toEqual(
        [
          `members ${manager.id}: role is administrator, by the journal manager`,
          `members ${keeper.id}: places is 1, by the journal 0`,
        ].toSorted(),
      );
    });

    it("[SG113] whichever act cannot be read, or all of them, what it did is told as no fault", async () => {
      const { open, ask } = await make();
      const store = await open();
      await fillWithRights(store);
      const acts = (await store.all()).filter(({ header }) => header.kind === "access-noted");
      const isIt = ({ header }: Entry) => `id = '${header.id}'`;
      let doubts = 0;
      for (const act of acts) {
        await ask(`update entries set body = null where ${isIt(act)}`);
        const { damage, rights } = await store.check();
        expect({ damage, unknownActs: rights?.unknownActs }, JSON.stringify(act.body?.data)).toEqual({
          ...{ damage: [], unknownActs: 1 },
        });
        doubts += rights?.unproven.length ?? 0;
        await ask(`update entries set body = '${JSON.stringify(act.body)}' where ${isIt(act)}`);
      }
      expect(doubts).toBeGreaterThan(20);
      await ask("update entries set body = null where kind = 'access-noted'");
      expect((await store.check()).damage).toEqual([]);
    });

    it("[SG113] a keeper's act that was erased made nobody an administrator", async () => {
      const { open, ask } = await make();
      const store = await open();
      const { head, keeper, manager } = await fillWithRights(store);
      await anotherSession(store, keeper.id, "again");
      const last = (await store.all()).findLast(({ body }) => body?.data.act === "signed-in") as Entry;
      await eraseAct(store, head, ({ header }) => header.id === last.header.id);
      await ask(`update members set role = 'administrator' where id = '${manager.id}'`);
      expect((await store.check()).damage).toEqual([
        `members ${manager.id}: role is administrator, by the journal manager`,
      ]);
    });

    it("[SG113] a device that a tool wrote by is nobody's to take over, nor was it when it was claimed at once", async () => {
      const { open, ask } = await make();
      const store = await open();
      const head = await person(store, "administrator", "head", 44);
      const notTaken = writer({ device: "import-2" }).write(...ownDrafts("own", 41));
      const pushed = await store.members.push(notTaken, { by: head.id, at, mayClaim: true, trouble: () => null });
      expect(pushed.refused).toHaveLength(notTaken.length);
      await store.push(writer({ device: "import-1" }).write(...ownDrafts("imported", 40)));
      const asked = { by: head.id, at: later };
      const claim = { name: "Desk", session: head.session, mayClaim: true };
      expect(await store.members.registerDevice({ ...claim, device: "import-1" }, asked)).toMatchObject({ ok: false });
      // An older version let it be claimed.
      await store.members.note({ act: "device-registered", device: "import-1" } as never, asked);
      await ask(`insert into devices values ('import-1', '${head.id}', 'Desk', '${later}', null)`);
      expect((await store.check()).damage).toEqual([]);
    });

    it("[SG114] differ in nothing while others go on changing them, and send, erase and begin other things", async () => {
      const { open } = await make();
      const store = await open();
      const { head, keeper, neighbour } = await fillWithRights(store);
      const [elsewhere, by] = [await open(), { by: head.id, at: later }];
      let isOver = false;
      let changed = 0;
      const changing = (async () => {
        for (; !isOver; changed += 1) {
          await elsewhere.members.change(keeper.id, { role: changed % 2 === 0 ? "reader" : "keeper" }, by);
          await elsewhere.members.takeApiary(keeper.id, neighbour.apiary, by);
          await elsewhere.members.giveApiary(keeper.id, neighbour.apiary, by);
          const sound = voice.with(voice.length - 1, changed % 250).with(voice.length - 2, Math.floor(changed / 250));
          const root = { root: keeper.case, colony: null };
          const spoken = keeper.phone.write(attachedDraft(sound, "audio/webm", root));
          await elsewhere.push([
            ...spoken,
            ...keeper.phone.write({ ...bee(1), about: [`vial-${changed}`, "reading-1"] }),
          ]);
          await sendFile(elsewhere, sound, { sender: keeper.id });
          if (changed % 2 === 0) await elsewhere.push(erasing(keeper.phone, spoken, keeper.case));
        }
      })();
      const found: string[] = [];
      for (let checks = 0; checks < 4 || changed < 12; checks += 1) found.push(...(await store.check()).damage);
      isOver = true;
      await changing;
      expect(found).toEqual([]);
    });

    it("[SG113] are what the journal says after whatever order of gifts, pushes, claims and losses", async () => {
      const { open, ask } = await make();
      const store = await open();
      const below = seeded(20261128);
      const people: Person[] = [];
      for (const key of ["a", "b", "c"]) people.push(await person(store, "keeper", key, 45));
      const desks: string[] = [];
      for (let round = 0; round < 120; round += 1) await someAct(store, { people, desks, below, round });
      const { damage, rights } = await store.check();
      expect(damage).toEqual([]);
      expect(rights?.acts).toBeGreaterThan(40);
      for (const each of [7, 3, 2]) {
        await ask(`update entries set body = null where kind = 'access-noted' and position % ${each} = 0`);
        expect((await store.check()).damage, `each act whose position is divided by ${each}`).toEqual([]);
      }
    });
  });
}

interface Acting {
  readonly people: readonly Person[];
  readonly desks: string[];
  readonly below: (bound: number) => number;
  readonly round: number;
}

/** One thing that may happen, drawn. */
async function someAct(store: ServerStore, { people, desks, below, round }: Acting): Promise<void> {
  const drawn = <Each>(list: readonly Each[]): Each => list[below(list.length)] as Each;
  const [who, whose] = [drawn(people), drawn(people)];
  const [book, asked] = [store.members, { by: who.id, at: later }];
  const pusher = { ...asked, mayClaim: true, trouble: () => null };
  const hung = [`case-${round}`, drawn([whose.apiary, "apiary-old", who.case])] as const;
  const opened = ownDrafts("x", 45)[1];
  if (opened?.kind !== "case-opened") throw new Error("the second thing is the case");
  const draft = { ...opened, about: hung };
  switch (below(7)) {
    case 0:
      return void (await book.giveApiary(who.id, whose.apiary, { by: null, at: later }));
    case 1:
      return void (await book.takeApiary(who.id, whose.apiary, { by: null, at: later }));
    case 2: // on a device that is known
      return void (await book.push(who.phone.write(draft), pusher));
    case 3: // on a new device, which becomes his by this push
      return void (await book.push(
        writer({ device: `new-${round}` }).write(draft, ...ownDrafts(`n${round}`, 45)),
        pusher,
      ));
    case 4: // on a desk that nobody has registered
      desks.push(`desk-${round}`);
      return void (await store.push(writer({ device: `desk-${round}` }).write(draft)));
    case 5: {
      const desk = desks.pop();
      if (desk === undefined) return;
      const { session } = await anotherSession(store, who.id, `token-${round}`);
      return void (await book.registerDevice({ device: desk, name: "Desk", session, mayClaim: true }, asked));
    }
    default:
      return void (await (below(2) === 0
        ? book.loseDevice(whose.device, asked)
        : book.returnDevice(whose.device, asked)));
  }
}
