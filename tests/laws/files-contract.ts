/** What the service's store must do with the files that entries name: one suite, run on SQLite and PostgreSQL. */
import { describe, expect, it } from "vitest";
import type { Entry } from "../../src/journal/index.ts";
import { mostFileBytes, type ServerStore } from "../../src/storage/server.ts";
import { attachedDraft, fileStory, photo, sha256Of, voice } from "../journals/file-story.ts";
import { type Writer, writer } from "../journals/writer.ts";
import { at, type Person, person } from "../members.ts";
import type { Place } from "./service-store-contract.ts";

const hash = sha256Of(voice);

/** The journal of a case with a voice note, and the phone that wrote it. */
function noted(bytes: Uint8Array = voice, more: Parameters<typeof attachedDraft>[2] = {}) {
  const phone = writer({ device: "phone-1" });
  return { phone, entries: phone.write(attachedDraft(bytes, "audio/webm", more)) };
}

const piece = (from: number, to: number, of: Uint8Array = voice, sha256 = hash) => ({
  ...{ sha256, of: of.length, from, bytes: of.subarray(from, to), sender: null },
});

/** Sends a whole file in pieces of this size, as this member where there are any. */
export async function sendFile(
  store: ServerStore,
  bytes: Uint8Array,
  { size = 1000, sender = null }: { readonly size?: number; readonly sender?: string | null } = {},
): Promise<void> {
  for (let from = 0; from < bytes.length; from += size) {
    const taken = await store.files.take({
      ...{ sha256: sha256Of(bytes), of: bytes.length, from, bytes: bytes.subarray(from, from + size), sender },
    });
    if (!taken.ok) throw new Error(JSON.stringify(taken.problems));
  }
}

export const erasing = (phone: Writer, entries: readonly Entry[], root = "case-1") =>
  phone.write({
    ...{ kind: "content-erased", at: "2026-05-05", about: [root] },
    data: { entries: entries.map(({ header }) => header.id), reason: "asked for" },
  });

/** `make` gives a new, empty place each time it is called. */
export function filesContract(name: string, make: () => Promise<Place>): void {
  const withStore = (rule: string, use: (store: ServerStore, place: Place) => Promise<void>) =>
    it(rule, async () => {
      const place = await make();
      const store = await place.open();
      try {
        await use(store, place);
      } finally {
        await store.close();
      }
    });
  const refused = (code: string, slots: object = {}) => ({ ok: false, problems: [{ code, slots }] });

  describe(`${name} keeps files`, () => {
    withStore("[SG120] piece by piece, says how many bytes are here, and gives the whole back", async (store) => {
      await store.push(noted().entries);
      expect(await store.files.standing(hash, null)).toEqual({ held: 0, isWhole: false });
      expect(await store.files.read(hash)).toBeNull();
      for (const from of [0, 1000, 2000]) {
        const taken = await store.files.take(piece(from, from + 1000));
        expect(taken).toMatchObject({ ok: true, value: { held: from + 1000, isWhole: from === 2000 } });
        expect(await store.files.standing(hash, null)).toEqual({ held: from + 1000, isWhole: from === 2000 });
      }
      const read = await store.files.read(hash);
      expect([read?.mediaType, Buffer.from(read?.bytes ?? []).equals(voice)]).toEqual(["audio/webm", true]);
      expect(await store.files.take(piece(0, 1000))).toMatchObject({ ok: true, value: { isWhole: true } });
    });

    withStore(
      "[SG120] a doubled piece changes nothing, an overlapping one adds its end, a later one waits",
      async (store) => {
        await store.push(noted().entries);
        expect(await store.files.take(piece(1000, 2000))).toMatchObject(refused("file-gap", { held: 0 }));
        await store.files.take(piece(0, 1000));
        expect(await store.files.take(piece(0, 1000))).toMatchObject({ ok: true, value: { held: 1000 } });
        expect(await store.files.take(piece(500, 900))).toMatchObject({ ok: true, value: { held: 1000 } });
        expect(await store.files.take(piece(2500, 3000))).toMatchObject(refused("file-gap", { held: 1000 }));
        expect(await store.files.take(piece(500, 2500))).toMatchObject({ ok: true, value: { held: 2500 } });
        expect(await store.files.take(piece(2500, 3000))).toMatchObject({ ok: true, value: { isWhole: true } });
        expect(Buffer.from((await store.files.read(hash))?.bytes ?? []).equals(voice)).toBe(true);
      },
    );

    withStore(
      "[SG121] another file than the entry names is thrown away with its last piece, and can be sent again",
      async (store) => {
        await store.push(noted().entries);
        for (const at of [4, 1500, 2999]) {
          const wrong = voice.slice();
          wrong[at] = (wrong[at] ?? 0) ^ 1;
          await store.files.take(piece(0, 2000, wrong));
          expect(await store.files.take(piece(2000, 3000, wrong))).toMatchObject(refused("file-hash-wrong"));
          expect(await store.files.standing(hash, null)).toEqual({ held: 0, isWhole: false });
          expect(await store.files.read(hash)).toBeNull();
        }
        await sendFile(store, voice);
        expect(await store.files.standing(hash, null)).toEqual({ held: 3000, isWhole: true });
      },
    );

    withStore("[SG122] only what an entry names, of its size, of its sort and without tags", async (store, { ask }) => {
      expect(await store.files.take(piece(0, 1000))).toMatchObject(refused("file-unnamed"));
      expect(await store.files.standing(hash, null)).toBeNull();
      const page = new TextEncoder().encode("<!doctype html><script>alert(1)</script>");
      const tagged = Buffer.concat([
        photo.slice(0, 2),
        Buffer.from([0xff, 0xfe, 0, 6]),
        Buffer.from("seat"),
        photo.slice(2),
      ]);
      const phone = writer({ device: "phone-1" });
      await store.push(
        phone.write(
          attachedDraft(voice, "audio/webm"),
          attachedDraft(page, "image/jpeg"),
          attachedDraft(tagged, "image/jpeg"),
          attachedDraft(photo, "audio/ogg"),
          attachedDraft(photo, "image/jpeg"),
        ),
      );
      const whole = (bytes: Uint8Array) => store.files.take(piece(0, bytes.length, bytes, sha256Of(bytes)));
      expect(await store.files.take({ ...piece(0, 1000), of: 2999 })).toMatchObject(refused("file-size-unfit"));
      expect(await store.files.take({ ...piece(0, 3000), bytes: Buffer.concat([voice, voice]) })).toMatchObject(
        refused("file-size-unfit"),
      );
      expect(await whole(page)).toMatchObject(refused("file-sort-unfit"));
      expect(await store.files.take(piece(0, 5, page, sha256Of(page)))).toMatchObject({ ok: true });
      expect(await store.files.take(piece(5, page.length, page, sha256Of(page)))).toMatchObject(
        refused("file-sort-unfit"),
      );
      expect(await whole(tagged)).toMatchObject(refused("file-tagged"));
      expect(await store.files.read(sha256Of(tagged))).toBeNull();
      // What was announced and did not come takes no room.
      await ask(`update uploads set bytes = ${mostFileBytes}, held = 0`);
      await ask(`update uploads set held = ${mostFileBytes - photo.length + 1}`);
      expect(await whole(photo)).toMatchObject(refused("files-full"));
      await ask(`update uploads set held = ${mostFileBytes - photo.length}`);
      expect(await whole(photo)).toMatchObject({ ok: true, value: { isWhole: true } });
      // And what is here does.
      await ask("update uploads set held = 0");
      await ask(`update files set bytes = ${mostFileBytes - 2999}`);
      expect(await store.files.take(piece(0, 1000))).toMatchObject(refused("files-full"));
    });

    withStore("[SG123] an erased entry takes its file along, unless another entry names it", async (store) => {
      const { phone, entries } = noted();
      const more = phone.write(attachedDraft(voice, "audio/webm", { caption: "again" }));
      const other = phone.write(attachedDraft(voice.slice(0, 900), "audio/webm"));
      await store.push([...entries, ...more, ...other]);
      await sendFile(store, voice);
      await store.push(erasing(phone, [...entries, ...other]));
      expect(await store.files.read(hash)).not.toBeNull();
      expect(await store.files.standing(sha256Of(voice.slice(0, 900)), null)).toBeNull();
      expect(await store.check()).toMatchObject({ isIntact: true, files: { whole: 1, waiting: [], erased: 2 } });
      await store.push(erasing(phone, more));
      expect(await store.files.read(hash)).toBeNull();
      expect(await store.files.take(piece(0, 1000))).toMatchObject(refused("file-unnamed"));
      expect(await store.check()).toMatchObject({
        isIntact: true,
        damage: [],
        files: { whole: 0, waiting: [], erased: 3 },
      });
    });

    withStore(
      "[SG133] a file comes from each member by itself, and goes when none is left who sent it",
      async (store) => {
        const [one, two] = [await person(store, "keeper", "one", 46), await person(store, "keeper", "two", 47)];
        const note = async (who: Person) => {
          const entries = who.phone.write(attachedDraft(voice, "audio/webm", { root: who.case, colony: null }));
          await store.members.push(entries, { by: who.id, at, mayClaim: false, trouble: () => null });
          return entries;
        };
        const [first] = [await note(one), await note(two)];
        const sent = (who: Person, from: number, to: number) =>
          store.files.take({ ...piece(from, to), sender: who.id });
        const held = async () => [await store.files.standing(hash, one.id), await store.files.standing(hash, two.id)];
        await sent(one, 0, 2000);
        await sent(two, 0, 1000);
        expect(await sent(two, 2000, 3000)).toMatchObject(refused("file-gap", { held: 1000 }));
        await sent(one, 2000, 3000);
        const [all, part] = [
          { held: 3000, isWhole: true },
          { held: 1000, isWhole: false },
        ];
        expect(await held()).toEqual([all, part]);
        expect(await store.check()).toMatchObject({
          ...{ isIntact: true, damage: [] },
          files: { whole: 1, waiting: [{ device: two.device, files: 1 }] },
        });
        const erasure = one.phone.write({
          ...{ kind: "content-erased", at: "2026-05-05", about: [one.case] },
          data: { entries: first.map(({ header }) => header.id), reason: "asked for" },
        });
        await store.members.push(erasure, { by: one.id, at, mayClaim: false, trouble: () => null });
        expect(await store.files.read(hash)).toBeNull();
        expect(await held()).toEqual([null, { held: 0, isWhole: false }]);
        await sendFile(store, voice, { sender: two.id });
        expect(Buffer.from((await store.files.read(hash))?.bytes ?? []).equals(voice)).toBe(true);
        // A new entry of who once sent it is asked again: nothing of it is left of his.
        await note(one);
        expect(await held()).toEqual([{ held: 0, isWhole: false }, all]);
        expect(await store.check()).toMatchObject({ isIntact: true, damage: [] });
      },
    );

    withStore("[SG133] what is on its way from a member goes with his account", async (store, { ask }) => {
      const doing = { by: null, at };
      const [one, two] = [await person(store, "keeper", "one", 46), await person(store, "inspector", "two", 47)];
      for (const who of [one, two]) {
        const entries = who.phone.write(attachedDraft(voice, "audio/webm", { root: who.case, colony: null }));
        await store.members.push(entries, { by: who.id, at, mayClaim: false, trouble: () => null });
        await store.files.take({ ...piece(0, 1000), sender: who.id });
      }
      await store.members.erase(two.id, "asked for", doing);
      expect(await ask("select sender from uploads")).toEqual([{ sender: one.id }]);
      expect(await ask("select sender from pieces")).toEqual([{ sender: one.id }]);
    });

    /** A voice note on the person's own case, pushed. */
    const note = async (store: ServerStore, who: Person, more: Parameters<typeof attachedDraft>[2] = {}) => {
      const root = { root: who.case, colony: null };
      const entries = who.phone.write(attachedDraft(voice, "audio/webm", { ...root, ...more }));
      await store.members.push(entries, { by: who.id, at, mayClaim: false, trouble: () => null });
      return entries.map(({ header }) => header.id);
    };
    const openedBy = async (store: ServerStore) => (await store.files.upTo(999)).flatMap((file) => file.openedBy ?? []);

    withStore(
      "[SG133] of a device that is nobody's no proof is asked where there are no members, and none is enough where there are",
      async (store) => {
        const { phone, entries } = noted();
        await store.push(entries);
        await sendFile(store, voice);
        const more = [{ caption: "again" }, { caption: "of other length", bytes: 2999 }];
        const [again, ...unfit] = phone.write(...more.map((each) => attachedDraft(voice, "audio/webm", each)));
        if (!again) throw new Error("no entry");
        await store.push([again, ...unfit]);
        const before = [...entries, again].map(({ header }) => header.id);
        expect(await openedBy(store)).toEqual(before);
        const one = await person(store, "administrator", "one", 46);
        const own = await note(store, one);
        const third = phone.write(attachedDraft(voice, "audio/webm", { caption: "the third" }));
        await store.push(third);
        // What was opened before stays; what is new does not open, though the file is here, nor when a member sends it.
        expect(await openedBy(store)).toEqual(before);
        await sendFile(store, voice, { sender: one.id });
        expect(await openedBy(store)).toEqual([...before, ...own]);
        // Whoever is given the device can send what waits there.
        const [{ session }, doing] = [one, { by: one.id, at }];
        const claim = { device: "phone-1", name: "Phone", session, mayClaim: true };
        expect(await store.members.registerDevice(claim, doing)).toMatchObject({ ok: true });
        expect(await openedBy(store)).toEqual([...before, ...own]);
        await sendFile(store, voice, { sender: one.id });
        expect(await openedBy(store)).toEqual([...before, ...own, ...third.map(({ header }) => header.id)]);
        expect(await store.check()).toMatchObject({ isIntact: true, damage: [], files: { whole: 1 } });
      },
    );

    withStore("[SG133] an entry that names the file with another size is not opened by it", async (store) => {
      const one = await person(store, "keeper", "one", 46);
      const [right] = [await note(store, one), await note(store, one, { bytes: 2999 })];
      expect(await store.files.standing(hash, one.id)).toEqual({ held: 0, isWhole: false });
      await sendFile(store, voice, { sender: one.id });
      await note(store, one, { bytes: 3001 });
      const later = await note(store, one);
      expect(await openedBy(store)).toEqual([...right, ...later]);
      expect(await store.files.standing(hash, one.id)).toEqual({ held: 3000, isWhole: true });
      const naming = await store.files.naming(hash, { member: one.id, onlyOwn: true, byRoot: true });
      expect(naming.filter(({ hasCome }) => hasCome).map(({ bytes }) => bytes)).toEqual([3000, 3000]);
      // Who names it with another size alone is not told that it is here.
      const two = await person(store, "keeper", "two", 47);
      await note(store, two, { bytes: 2999 });
      expect(await store.files.standing(hash, two.id)).toEqual({ held: 0, isWhole: false });
    });

    withStore(
      "[SG133] what is on its way from nobody goes with the first member, from a member when he is ended",
      async (store, { ask }) => {
        await store.push(noted().entries);
        await store.files.take(piece(0, 1000));
        const one = await person(store, "administrator", "one", 46);
        const onTheWay = async () => [
          ...(await ask("select sender from uploads")),
          ...(await ask("select 1 from pieces")),
        ];
        expect(await onTheWay()).toEqual([]);
        // A piece that was let in before that comes too late.
        expect(await store.files.take(piece(0, 1000))).toMatchObject(refused("file-unnamed"));
        const two = await person(store, "keeper", "two", 47);
        await note(store, one);
        await note(store, two);
        const sent = (who: Person, from: number) => store.files.take({ ...piece(from, from + 1000), sender: who.id });
        expect([await sent(one, 0), await sent(two, 0)]).toMatchObject([{ ok: true }, { ok: true }]);
        await person(store, "keeper", "three", 48);
        expect(await ask("select sender from uploads order by sender")).toHaveLength(2);
        await store.members.change(two.id, { ended: true }, { by: one.id, at });
        expect(await ask("select sender from uploads")).toEqual([{ sender: one.id }]);
        expect(await ask("select sender from pieces")).toEqual([{ sender: one.id }]);
        expect(await sent(two, 0)).toMatchObject(refused("file-unnamed"));
        expect(await sent(one, 1000)).toMatchObject({ ok: true, value: { held: 2000 } });
      },
    );

    withStore("[SG124] the check tells which files are here, and which device has not sent its own", async (store) => {
      await store.push(fileStory());
      await sendFile(store, photo, { size: 50 });
      await store.files.take(piece(0, 1000));
      expect(await store.check()).toMatchObject({
        ...{ isIntact: true, damage: [] },
        files: { whole: 1, waiting: [{ device: "phone-1", files: 2 }], erased: 0 },
      });
    });

    const damages = [
      [
        "a flipped byte",
        (data: string) => `update chunks set data = ${data} where start = 1000`,
        /not what was written/,
      ],
      ["a lost piece", () => "delete from chunks where start = 2000", /not what was written/],
      ["a lost file", () => "delete from files", /was here and is gone/],
      ["another name", () => "update attached set bytes = bytes + 1", /not what entry/],
      ["a lost name", () => "delete from attached", /lost to entry|no entry names it/],
    ] as const;
    for (const [what, statement, told] of damages)
      withStore(`[SG124] the check tells of ${what}, and a damaged file is not given out`, async (store, { ask }) => {
        await store.push(noted().entries);
        await sendFile(store, voice);
        const flipped = voice.slice(1000, 2000);
        flipped[7] = (flipped[7] ?? 0) ^ 1;
        const hex = Buffer.from(flipped).toString("hex");
        await ask(statement(name === "SQLite" ? `x'${hex}'` : `'\\x${hex}'::bytea`));
        const { isIntact, damage } = await store.check();
        expect(isIntact).toBe(false);
        expect(damage.join("\n")).toMatch(told);
        const read = await store.files.read(hash).catch((trouble) => trouble.problem.code);
        if (what !== "another name") expect([null, "records-damaged"]).toContain(read);
      });

    withStore("[SG125] pieces of one file through several openings at once make one file", async (store, { open }) => {
      await store.push(noted().entries);
      const stores = [store, await open(), await open()];
      try {
        await Promise.all(
          stores.map(async (each) => {
            for (;;) {
              const { held = 0, isWhole = false } = (await each.files.standing(hash, null)) ?? {};
              if (isWhole) return;
              await each.files.take(piece(held, held + 170));
            }
          }),
        );
        expect(Buffer.from((await store.files.read(hash))?.bytes ?? []).equals(voice)).toBe(true);
        expect(await store.check()).toMatchObject({ isIntact: true, files: { whole: 1 } });
      } finally {
        for (const each of stores.slice(1)) await each.close();
      }
    });
  });
}
