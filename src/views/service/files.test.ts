/** Photos and voice notes over HTTP: sent in pieces, given to whoever is given the entry, and harmless however they are opened. */

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { FastifyInstance } from "fastify";
import { afterAll, beforeEach, describe, expect, it } from "vitest";
import { type Documented, documented } from "../../../tests/documented.ts";
import { attachedDraft, photo, sha256Of, voice } from "../../../tests/journals/file-story.ts";
import { writer } from "../../../tests/journals/writer.ts";
import { at, type Person, person, sender, start } from "../../../tests/members.ts";
import { settlingDrafts } from "../../casebook/index.ts";
import type { ServerStore } from "../../storage/server.ts";
import { largestPart } from "./file-routes.ts";
import { openProgrammes, type Programmes } from "./programmes.ts";
import { service } from "./service.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-files-"));
const opened: FastifyInstance[] = [];
const answers: Documented[] = [];
let app: FastifyInstance;
let programmes: Programmes;
let store: ServerStore;
let folders = 0;
beforeEach(async () => {
  folders += 1;
  programmes = openProgrammes(path.join(folder, String(folders)));
  app = await service({ version: "0", programmes, page: null, port: () => 80, now: () => start });
  opened.push(app);
  answers.push(documented(app));
  store = await programmes.open("main");
});
afterAll(async () => {
  for (const each of opened) await each.close();
  rmSync(folder, { recursive: true, force: true });
});

const nobody = { cookie: "" };
const base = "/api/programmes/main";
const octets = { "content-type": "application/octet-stream" };
type Who = Pick<Person, "cookie">;
const get = (who: Who, url: string) => sender(app)("GET", `${base}/files/${url}`, who);
const sendPart = (who: Who, bytes: Uint8Array, from: number, to: number) =>
  sender(app)(
    "POST",
    `${base}/files/${sha256Of(bytes)}/parts?from=${from}&of=${bytes.length}`,
    who,
    Buffer.from(bytes.subarray(from, to)),
    octets,
  );
const push = (who: Who, entries: readonly object[]) => sender(app)("POST", `${base}/entries`, who, { entries });

/** A voice note on the person's own case. */
const noted = (who: Person, bytes = voice) =>
  who.phone.write(attachedDraft(bytes, "audio/webm", { root: who.case, colony: null }));

describe("files of entries over HTTP", () => {
  it("[AC36] come in pieces, go on after a cut, and are refused when they are another file", async () => {
    await push(nobody, writer({ device: "phone-1" }).write(attachedDraft(voice, "audio/webm")));
    expect((await sendPart(nobody, voice, 0, 1000)).json()).toEqual({ held: 1000, isWhole: false });
    expect((await sendPart(nobody, voice, 2000, 3000)).statusCode).toBe(409);
    expect((await get(nobody, `${sha256Of(voice)}/standing`)).json()).toEqual({ held: 1000, isWhole: false });
    expect((await get(nobody, sha256Of(voice))).statusCode).toBe(404);
    expect((await sendPart(nobody, voice, 1000, 3000)).json()).toEqual({ held: 3000, isWhole: true });
    expect((await get(nobody, sha256Of(voice))).rawPayload.equals(voice)).toBe(true);
    expect((await sendPart(nobody, photo, 0, photo.length)).statusCode).toBe(404);
    const large = await sender(app)(
      "POST",
      `${base}/files/${sha256Of(voice)}/parts?from=0&of=3000`,
      nobody,
      Buffer.alloc(largestPart + 1),
      octets,
    );
    expect(large.statusCode).toBe(413);
  });

  it("[AC36] are served to be saved, as what their bytes are, and nothing in them runs", async () => {
    const phone = writer({ device: "phone-1" });
    await push(nobody, phone.write(attachedDraft(photo, "image/jpeg")));
    await sendPart(nobody, photo, 0, photo.length);
    const { headers } = await get(nobody, sha256Of(photo));
    expect(headers).toMatchObject({
      "content-type": "image/jpeg",
      "content-disposition": `attachment; filename="${sha256Of(photo).slice(0, 12)}.jpg"`,
      "content-security-policy": "default-src 'none'; sandbox",
      "x-content-type-options": "nosniff",
      "cache-control": "no-store",
      "cross-origin-resource-policy": "same-origin",
    });
  });

  it("[AC36] a drawing or a page that holds a script is not taken, whatever its entry calls it", async () => {
    const drawing = Buffer.from("<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>");
    const page = Buffer.from("<!doctype html><script>alert(1)</script>");
    const phone = writer({ device: "phone-1" });
    const [one, two] = phone.write(attachedDraft(drawing, "image/jpeg"), attachedDraft(page, "audio/mp4"));
    expect((await push(nobody, [one, two] as object[])).json().refused).toEqual([]);
    for (const bytes of [drawing, page]) {
      const reply = await sendPart(nobody, bytes, 0, bytes.length);
      expect([reply.statusCode, reply.json().problems[0].message]).toEqual([422, expect.stringMatching(/no photo/)]);
      expect((await get(nobody, sha256Of(bytes))).statusCode).toBe(404);
    }
    expect(
      (
        await sender(app)("POST", `${base}/files/${sha256Of(drawing)}/parts?from=0&of=72`, nobody, drawing, {
          "content-type": "image/svg+xml",
        })
      ).statusCode,
    ).toBe(415);
  });

  it("[AC36] go with the grant: a manager with exact places, a keeper who was given the apiary, until it is taken back", async () => {
    const [head, keeper, other, manager] = [
      await person(store, "administrator", "head", 45),
      await person(store, "keeper", "keeper", 46),
      await person(store, "keeper", "other", 47),
      await person(store, "manager", "manager", 48),
    ];
    await push(keeper, noted(keeper));
    await sendPart(keeper, voice, 0, 3000);
    const reads = async () =>
      Promise.all([keeper, other, manager, head].map(async (who) => (await get(who, sha256Of(voice))).statusCode));
    expect(await reads()).toEqual([200, 403, 403, 200]);
    const doing = { by: head.id, at };
    await store.members.change(manager.id, { hasExactPlaces: true }, doing);
    await store.members.giveApiary(other.id, keeper.apiary, doing);
    expect(await reads()).toEqual([200, 200, 200, 200]);
    await store.members.takeApiary(other.id, keeper.apiary, doing);
    await store.members.change(manager.id, { hasExactPlaces: false }, doing);
    expect(await reads()).toEqual([200, 403, 403, 200]);
    // A withdrawal changes what is shown, not who may read; another's guess of the hash opens nothing.
    expect((await sendPart(other, voice, 0, 3000)).statusCode).toBe(403);
  });

  it("[AC42] to know a file's hash opens nothing: another member reads it when he has sent all of it himself", async () => {
    const [keeper, other, head] = [
      await person(store, "keeper", "keeper", 46),
      await person(store, "keeper", "other", 47),
      await person(store, "administrator", "head", 45),
    ];
    await push(keeper, noted(keeper));
    await push(other, noted(other));
    const hash = sha256Of(voice);
    /** What the other is told: of the file, of how far it has come, of a piece that leaves a gap. */
    const told = async () => {
      const replies = [
        await get(other, hash),
        await get(other, `${hash}/standing`),
        await sendPart(other, voice, 9, 99),
      ];
      return replies.map(({ statusCode, body }) => [statusCode, body]);
    };
    const before = await told();
    expect(before.map(([status]) => status)).toEqual([404, 200, 409]);
    await sendPart(keeper, voice, 0, 2990);
    expect(await told()).toEqual(before);
    expect((await sendPart(other, voice, 2990, 3000)).statusCode).toBe(409); // the end of a file may be guessed
    await sendPart(keeper, voice, 2990, 3000);
    expect((await get(keeper, hash)).statusCode).toBe(200);
    expect(await told()).toEqual(before);

    const wrong = voice.slice();
    wrong[2500] = (wrong[2500] ?? 0) ^ 1;
    const guess = await sender(app)(
      ...(["POST", `${base}/files/${hash}/parts?from=0&of=3000`, other, Buffer.from(wrong), octets] as const),
    );
    expect([guess.statusCode, (await get(other, hash)).statusCode]).toEqual([422, 404]);
    await sendPart(other, voice, 0, 2000);
    expect((await get(other, hash)).statusCode).toBe(404);
    expect((await sendPart(other, voice, 2000, 3000)).json()).toEqual({ held: 3000, isWhole: true });
    expect((await get(other, hash)).rawPayload.equals(voice)).toBe(true);
    // From then on his entries open it, the next ones too; and each member's stay his own.
    await push(other, noted(other));
    expect((await get(other, `${hash}/standing`)).json()).toEqual({ held: 3000, isWhole: true });
    expect((await get(head, hash)).statusCode).toBe(200);
    expect(await store.check()).toMatchObject({ isIntact: true, files: { whole: 1, waiting: [] } });
  });

  it("[AC42] an entry whose writer has not sent the file opens it to nobody else either", async () => {
    const [keeper, other, friend] = [
      await person(store, "keeper", "keeper", 46),
      await person(store, "keeper", "other", 47),
      await person(store, "keeper", "friend", 48),
    ];
    await push(keeper, noted(keeper));
    await sendPart(keeper, voice, 0, 3000);
    await push(other, noted(other));
    await store.members.giveApiary(friend.id, other.apiary, { by: other.id, at });
    const reads = async () =>
      Promise.all([other, friend].map(async (who) => (await get(who, sha256Of(voice))).statusCode));
    expect(await reads()).toEqual([404, 404]);
    // Nor may the friend send it in his place.
    expect((await sendPart(friend, voice, 0, 3000)).statusCode).toBe(404);
    await sendPart(other, voice, 0, 3000);
    expect(await reads()).toEqual([200, 200]);
  });

  it("[AC42] words of a keeper that were kept apart, and what is written at the machine, open no file of another", async () => {
    const [keeper, other] = [await person(store, "keeper", "keeper", 46), await person(store, "keeper", "other", 47)];
    const hash = sha256Of(voice);
    /** The other names the file under a number that he has used: it is kept apart, and not taken in. */
    const head = other.phone.head();
    await push(other, noted(other, photo));
    const copy = writer({ device: other.device, programme: "main", from: "2026-04-02T08:00:00.000Z", head });
    await push(other, copy.write(attachedDraft(voice, "audio/webm", { root: other.case, colony: null })));
    const [kept] = await store.apart();
    if (!kept) throw new Error("nothing is kept apart");
    const settling = { decision: "taken-in", reason: "looks right", programme: "main", on: "2026-04-02" } as const;
    expect(settlingDrafts(kept, settling)).toMatchObject({ ok: false, problems: [{ code: "apart-names-file" }] });
    /** Written at the machine on a device that is nobody's, it opens nothing either. */
    const written = async (device: string) => {
      const entry = attachedDraft(voice, "audio/webm", { root: other.case, colony: null });
      expect((await store.push(writer({ device }).write(entry))).refused).toEqual([]);
      return Promise.all([hash, `${hash}/standing`].map(async (url) => (await get(other, url)).statusCode));
    };
    await push(keeper, noted(keeper));
    // Before the file has come, and after.
    expect(await written("settling-1")).toEqual([404, 404]);
    await sendPart(keeper, voice, 0, 3000);
    expect((await get(keeper, hash)).statusCode).toBe(200);
    expect((await get(other, hash)).statusCode).toBe(404);
    expect((await written("settling-2"))[0]).toBe(404);
    expect((await sendPart(other, voice, 0, 3000)).statusCode).toBe(404);
  });

  it("[AC42] who may read the file and keeps a copy of it is told that it is here, and sends nothing", async () => {
    const [keeper, head] = [
      await person(store, "keeper", "keeper", 46),
      await person(store, "administrator", "head", 45),
    ];
    await push(keeper, noted(keeper));
    expect((await get(head, `${sha256Of(voice)}/standing`)).statusCode).toBe(404);
    await sendPart(keeper, voice, 0, 3000);
    expect((await get(head, `${sha256Of(voice)}/standing`)).json()).toEqual({ held: 3000, isWhole: true });
  });

  it("[AC29] are erased with a keeper's data: gone from the service, and the check says erased", async () => {
    const [head, keeper] = [
      await person(store, "administrator", "head", 45),
      await person(store, "keeper", "keeper", 46),
    ];
    await push(keeper, noted(keeper));
    await sendPart(keeper, voice, 0, 3000);
    const erasure = { name: keeper.name, reason: "asked for" };
    const erased = await sender(app)("POST", `${base}/members/${keeper.id}/erasure`, head, erasure);
    expect(erased.statusCode).toBe(200);
    expect((await get(head, sha256Of(voice))).statusCode).toBe(404);
    expect(await store.files.read(sha256Of(voice))).toBeNull();
    expect(await store.check()).toMatchObject({ isIntact: true, files: { whole: 0, waiting: [], erased: 1 } });
  });
});

it("[SG230] every answer above was such as the OpenAPI document says", () => {
  expect(answers.flatMap(({ misfits }) => misfits)).toEqual([]);
  expect(new Set(answers.flatMap(({ held }) => [...held.keys()])).size).toBeGreaterThan(3);
});
