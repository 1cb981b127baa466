/** What a backup carries beside the journal: one suite, run on SQLite and PostgreSQL. */
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { accountsHash } from "../../src/storage/accounts.ts";
import {
  ErasedMeanwhile,
  type Records,
  readBackup,
  restoreBackup,
  type ServerStore,
  writeBackup,
} from "../../src/storage/server.ts";
import { hashed, newInvitation } from "../../src/views/service/passwords.ts";
import { programmesOf } from "../../src/views/service/programmes.ts";
import { service } from "../../src/views/service/service.ts";
import { scratch } from "../faults/count.ts";
import { bee } from "../journals/every-kind.ts";
import { attachedDraft, photo, sha256Of, voice } from "../journals/file-story.ts";
import { anotherSession, at, type Person, person, sender, start } from "../members.ts";
import { sendFile } from "./files-contract.ts";

const password = "quiet copper lantern";
const doing = { by: null, at };
const drawnUntil = "2026-04-08T08:00:00.000Z";

/** A programme with people, a lost phone, a given apiary, a passkey, an invitation and two files, one of them not sent. */
async function filled(store: ServerStore) {
  const { members } = store;
  const head = await members.admit(
    { name: "Rowan Vale", role: "administrator", password: await hashed(password) },
    doing,
  );
  if (!head.ok) throw new Error("not admitted");
  const [keeper, neighbour, gone] = [
    await person(store, "keeper", "keeper", 45),
    await person(store, "keeper", "neighbour", 46),
    await person(store, "keeper", "gone", 47),
  ];
  const manager = await person(store, "manager", "manager", 48);
  await members.setPassword({ member: manager.id, password: "drawn", endsAt: drawnUntil }, doing);
  await members.change(manager.id, { hasExactPlaces: true }, doing);
  await members.change(gone.id, { ended: true }, doing);
  await members.giveApiary(keeper.id, neighbour.apiary, doing);
  // Names the keeper's photo, and has not sent it.
  const named = neighbour.phone.write(attachedDraft(photo, "image/jpeg", { root: neighbour.case, colony: null }));
  await members.push(named, { by: neighbour.id, at, mayClaim: false, trouble: () => null });
  await members.loseDevice(neighbour.device, doing);
  // What the lost phone sends afterwards goes on its chain, and is kept apart all the same.
  const late = neighbour.phone.write(
    attachedDraft(voice.slice(0, 900), "audio/webm", { root: neighbour.case, colony: null }),
  );
  const told = await members.push(late, { by: neighbour.id, at, mayClaim: false, trouble: () => null });
  if (told.refused.length !== 1) throw new Error("what a lost phone sends was taken in");
  await members.addPasskey(
    { id: "key-1", member: keeper.id, publicKey: "cHVibGlj", counter: 7, transports: ["internal"], name: "Phone" },
    doing,
  );
  const { secret, ...invitation } = newInvitation("main", at);
  await members.invite({ role: "administrator", ...invitation }, doing);
  const token = await anotherSession(store, head.value.id, "a-token-that-was-alive");
  const root = { root: keeper.case, colony: null };
  const entries = keeper.phone.write(
    attachedDraft(photo, "image/jpeg", root),
    attachedDraft(voice, "audio/webm", root),
  );
  await members.push(entries, { by: keeper.id, at, mayClaim: false, trouble: () => null });
  await sendFile(store, photo, { sender: keeper.id });
  // More than one statement copies.
  const many = keeper.phone.write(...Array.from({ length: 2100 }, (_, index) => bee(index + 1)));
  await members.push(many, { by: keeper.id, at, mayClaim: false, trouble: () => null });
  return { keeper, neighbour, gone, manager, secret, invitation, token };
}

/** What a member is given by a pull, and what the book says: the same before and after. */
async function bookOf(store: ServerStore, people: readonly Person[]) {
  const { members } = store;
  const given = [];
  for (const { id, role } of people)
    given.push(await members.pull({ member: id, onlyOwn: role === "keeper", byRoot: true }, 0, 1000));
  return {
    given,
    members: (await members.members()).toSorted((one, other) => (one.id < other.id ? -1 : 1)),
    devices: (await members.devices()).toSorted((one, other) => (one.device < other.device ? -1 : 1)),
    passkeys: await members.passkeys(people[0]?.id ?? ""),
    roots: await Promise.all(people.map(({ id }) => members.rootsOf(id))),
    audit: await members.audit(null, 500),
    apart: (await store.quarantined()).map(({ header }) => header.id).toSorted(),
  };
}

/** `from` is backed up and put into `into`; both give new, empty records each time they are called. */
export function restoredContract(name: string, from: () => Promise<Records>, into: () => Promise<Records>): void {
  const folder = scratch("restored");
  let files = 0;

  async function backedUp() {
    files += 1;
    const file = path.join(folder, `${name.replaceAll(/\W+/g, "-")}-${files}.zip`);
    const records = await from();
    const store = await records.open("main");
    const made = await filled(store);
    const chunks: Uint8Array[] = [];
    await writeBackup(store, at, (chunk) => void chunks.push(chunk.slice()));
    writeFileSync(file, Buffer.concat(chunks));
    return { file, made, records, store };
  }

  describe(`a backup, ${name}`, () => {
    it("[SG65] is begun anew when something is erased while it is written", async () => {
      const records = await from();
      const store = await records.open("main");
      const { keeper } = await filled(store);
      const during: ServerStore = {
        ...store,
        pull: async (...asked) => {
          const page = await store.pull(...asked);
          await store.members.erase(keeper.id, "asked for", doing);
          return page;
        },
      };
      await expect(writeBackup(during, at, () => {})).rejects.toThrow(ErasedMeanwhile);
      await store.close();
      await records.close();
    });

    it("[SG66] carries members, devices, passkeys, grants and files: after it members sign in and are given what was theirs", async () => {
      const { file, made, records, store } = await backedUp();
      const people = [made.keeper, made.neighbour, made.manager];
      const [before, checked] = [await bookOf(store, people), await store.check()];
      await store.close();
      await records.close();
      expect(readBackup(file)).toMatchObject({
        ok: true,
        value: { schema: 4, accounts: { members: 5, devices: 4 }, files: [{ sha256: sha256Of(photo) }] },
      });
      const fresh = await into();
      expect(await restoreBackup(file, fresh, at)).toMatchObject({ ok: true });
      const programmes = programmesOf(fresh);
      const app = await service({ version: "0", programmes, page: null, port: () => 80, now: () => start });
      const send = sender(app);
      const restored = await programmes.open("main");
      expect(await bookOf(restored, people)).toEqual(before);
      expect(await restored.check()).toEqual(checked);
      expect(await restored.members.credential(made.manager.name)).toMatchObject({ endsAt: drawnUntil });
      expect(await restored.members.credential(made.keeper.name)).toMatchObject({ endsAt: null });
      expect(Buffer.from((await restored.files.read(sha256Of(photo)))?.bytes ?? []).equals(photo)).toBe(true);
      expect(await restored.files.standing(sha256Of(voice), made.keeper.id)).toEqual({ held: 0, isWhole: false });
      expect(await restored.files.standing(sha256Of(photo), made.keeper.id)).toMatchObject({ isWhole: true });
      expect(await restored.files.standing(sha256Of(photo), made.neighbour.id)).toEqual({ held: 0, isWhole: false });

      const signIn = (word: string) => send("POST", "/api/session", null, { name: "rowan vale", password: word });
      const came = await signIn(password);
      expect(came.statusCode).toBe(200);
      expect((await signIn("another copper lantern")).statusCode).toBe(403);
      const cookie = String(came.headers["set-cookie"]).split(";")[0] ?? "";
      expect((await send("GET", "/api/programmes/main/members", { cookie })).json().members).toHaveLength(5);
      // Nobody who was signed in is so any more, and the lost phone stays lost.
      for (const each of [made.token, made.keeper, made.gone])
        expect((await send("GET", "/api/programmes/main/entries", each)).statusCode).toBe(401);
      expect((await restored.members.devices()).find(({ device }) => device === made.neighbour.device)?.lostAt).toBe(
        at,
      );
      expect(await restored.members.invitations()).toEqual([]);
      await app.close();
    });

    it("[SG66] of a version that did not say which entries open a file: all that name it do, as they did then", async () => {
      const { file, made, store, records } = await backedUp();
      await store.close();
      await records.close();
      const inside = unzipSync(readFileSync(file));
      const manifest = JSON.parse(new TextDecoder().decode(inside["manifest.json"]));
      const files = manifest.files.map(({ openedBy: _, ...each }: { openedBy: unknown }) => each);
      const older = strToU8(JSON.stringify({ ...manifest, schema: 3, files }));
      writeFileSync(file, zipSync({ ...inside, "manifest.json": older }));
      const fresh = await into();
      expect(await restoreBackup(file, fresh, at)).toMatchObject({ ok: true });
      const restored = await fresh.open("main");
      for (const { id } of [made.keeper, made.neighbour])
        expect(await restored.files.standing(sha256Of(photo), id)).toMatchObject({ isWhole: true });
      await fresh.close();
    });

    it("[SG113] of a version without accounts: they are said to be left behind, and what is made anew is checked", async () => {
      const { file, made, store, records } = await backedUp();
      await store.close();
      await records.close();
      const inside = unzipSync(readFileSync(file));
      const { accounts: _, files: __, ...manifest } = JSON.parse(new TextDecoder().decode(inside["manifest.json"]));
      writeFileSync(file, zipSync({ ...inside, "manifest.json": strToU8(JSON.stringify({ ...manifest, schema: 2 })) }));
      const fresh = await into();
      expect(await restoreBackup(file, fresh, at)).toMatchObject({ ok: true });
      const restored = await fresh.open("main");
      expect((await restored.all()).at(-1)?.body?.data).toEqual({ act: "accounts-left-behind", by: null });
      const wrong = async () => (await restored.check()).damage.filter((line) => !line.startsWith("file "));
      expect(await wrong()).toEqual([]);
      await restored.members.giveApiary((await person(restored, "keeper", "new", 49)).id, made.keeper.apiary, doing);
      expect(await wrong()).toEqual([]);
      await restored.members.admit({ name: "Ash Moor", role: "keeper", password: null }, doing);
      expect((await restored.check()).rights?.unproven).toEqual([]);
      await fresh.close();
    });

    it("[SG67] carries no session, no invitation and no secret of either", async () => {
      const { file, made, store, records } = await backedUp();
      const inside = Object.values(unzipSync(readFileSync(file))).map((bytes) => Buffer.from(bytes).toString("latin1"));
      for (const secret of [made.secret, made.invitation.hash, "a-token-that-was-alive", made.token.session])
        expect(inside.some((text) => text.includes(secret))).toBe(false);
      expect(inside.some((text) => text.includes("$argon2id$"))).toBe(true);
      await store.close();
      await records.close();
    });

    it("[SG66] of a version before drawn passwords ran out is taken in", async () => {
      const { file, made, store, records } = await backedUp();
      await store.close();
      await records.close();
      const inside = unzipSync(readFileSync(file));
      const [accounts, manifest] = ["accounts.json", "manifest.json"].map((name) =>
        JSON.parse(new TextDecoder().decode(inside[name])),
      );
      for (const member of accounts.members) delete member.password_ends_at;
      manifest.accounts.hash = accountsHash(accounts);
      const [older, words] = [`${file}.older`, (value: unknown) => strToU8(JSON.stringify(value))];
      writeFileSync(older, zipSync({ ...inside, "accounts.json": words(accounts), "manifest.json": words(manifest) }));
      const fresh = await into();
      expect(await restoreBackup(older, fresh, at)).toMatchObject({ ok: true });
      const restored = await fresh.open("main");
      expect(await restored.members.credential(made.manager.name)).toMatchObject({ password: "drawn", endsAt: null });
      await restored.close();
      await fresh.close();
    });

    it("[SG65] whose accounts or files were changed restores nothing", async () => {
      const { file, store, records } = await backedUp();
      await store.close();
      await records.close();
      const inside = unzipSync(readFileSync(file));
      const accounts = new TextDecoder().decode(inside["accounts.json"]);
      const flipped = photo.slice();
      flipped[90] = (flipped[90] ?? 0) ^ 1;
      const { "accounts.json": _, ...bare } = inside;
      const picture = `files/${sha256Of(photo)}`;
      const { [picture]: __, ...without } = inside;
      for (const [what, changed] of Object.entries({
        promoted: {
          ...inside,
          "accounts.json": strToU8(accounts.replace('"role":"keeper"', '"role":"administrator"')),
        },
        bare,
        flipped: { ...inside, [picture]: flipped },
        without,
      })) {
        const wrong = `${file}.${what}`;
        writeFileSync(wrong, zipSync(changed));
        expect(readBackup(wrong), what).toMatchObject({ ok: false, problems: [{ code: "backup-damaged" }] });
        const fresh = await into();
        expect(await restoreBackup(wrong, fresh, at), what).toMatchObject({ ok: false });
        expect(await (await fresh.open("main")).all()).toEqual([]);
        await fresh.close();
      }
    });
  });
}
