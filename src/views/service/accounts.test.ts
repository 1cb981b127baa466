/** Coming in, staying in, going out; lost phones; one's data; and a service that others can reach. */

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { Writable } from "node:stream";
import type { FastifyInstance } from "fastify";
import { afterAll, beforeEach, describe, expect, it } from "vitest";
import { type Documented, documented } from "../../../tests/documented.ts";
import { bee } from "../../../tests/journals/every-kind.ts";
import { writer } from "../../../tests/journals/writer.ts";
import { at, type Person, person, sender, start } from "../../../tests/members.ts";
import { passwordTrouble } from "../../access/index.ts";
import { verifyChain } from "../../journal/index.ts";
import type { ServerStore } from "../../storage/server.ts";
import { argon2, commonPasswords, drawnPasswordEndsAt, hashed, newInvitation } from "./passwords.ts";
import { openProgrammes, type Programmes } from "./programmes.ts";
import { type ServiceOptions, service } from "./service.ts";
import { triesPerMinute } from "./session-routes.ts";
import { serve } from "./start.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-accounts-"));
const opened: FastifyInstance[] = [];
const answers: Documented[] = [];
let folders = 0;
afterAll(async () => {
  for (const app of opened) await app.close();
  rmSync(folder, { recursive: true, force: true });
});

const password = "quiet copper lantern";
const kept = hashed(password);

interface House {
  readonly app: FastifyInstance;
  readonly programmes: Programmes;
  readonly store: ServerStore;
  readonly send: ReturnType<typeof sender>;
  readonly clock: { now: number };
}

async function house(options: Partial<ServiceOptions> = {}): Promise<House> {
  folders += 1;
  const programmes = openProgrammes(path.join(folder, String(folders)));
  const clock = { now: start };
  const app = await service({ version: "0", programmes, page: null, port: () => 80, now: () => clock.now, ...options });
  opened.push(app);
  answers.push(documented(app));
  const store = await programmes.open("main");
  return { app, programmes, store, send: sender(app, options.address?.host ?? "localhost"), clock };
}

async function withAdministrator(options: Partial<ServiceOptions> = {}): Promise<House & { readonly id: string }> {
  const made = await house(options);
  const given = { name: "Rowan Vale", role: "administrator", password: await kept };
  const admitted = await made.store.members.admit(given, { by: null, at });
  if (!admitted.ok) throw new Error("not admitted");
  return { ...made, id: admitted.value.id };
}

const cookieOf = (reply: { headers: Record<string, unknown> }): string => String(reply.headers["set-cookie"] ?? "");
const tokenOf = (reply: { headers: Record<string, unknown> }): string => cookieOf(reply).split(";")[0] ?? "";
const said = (reply: { json: () => { problems: { message: string }[] } }) => reply.json().problems[0]?.message;
const signIn = (send: House["send"], name = "Rowan Vale", word = password) =>
  send("POST", "/api/session", null, { name, password: word });

/** A log that is kept, line by line. */
function written() {
  const lines: string[] = [];
  const log = new Writable({
    write(chunk, _encoding, done) {
      lines.push(String(chunk));
      done();
    },
  });
  return { lines, log };
}

/** What the lines tell of refusals: why, in which programme, of which member. */
const refusalsIn = (lines: readonly string[]) =>
  lines
    .map((line) => JSON.parse(line))
    .filter((line) => "authentication" in line)
    .map(({ authentication, programme, member }) => [authentication, programme, member]);

describe("signing in", () => {
  it("[AC20] begins a session by a cookie that no script reads and no other site sends", async () => {
    const { send, id } = await withAdministrator();
    const reply = await signIn(send, " rowan  vale ");
    expect(reply.statusCode).toBe(200);
    expect(reply.json()).toMatchObject({ isGuarded: true, programme: "main", member: { id, role: "administrator" } });
    expect(cookieOf(reply)).toMatch(/^skepsis=main\.[\w-]{43}; Max-Age=7776000; Path=\/; HttpOnly; SameSite=Strict$/);
    expect(reply.body).not.toContain(tokenOf(reply).slice(13));
    expect(reply.headers["cache-control"]).toBe("no-store");
    const who = await send("GET", "/api/session", { cookie: tokenOf(reply) });
    expect(who.json()).toMatchObject({ member: { id }, ended: null });
    expect((await send("GET", "/api/session", null)).json()).toEqual({
      ...{ isGuarded: true, programme: null, member: null, ended: null },
    });
  });

  it("[AC20] has one answer for a wrong name, a wrong password, and a programme that is not there", async () => {
    const { send } = await withAdministrator();
    const replies = [
      await signIn(send, "Nobody Atall"),
      await signIn(send, "Rowan Vale", "not the password"),
      await send("POST", "/api/session", null, { programme: "none", name: "Rowan Vale", password }),
    ];
    expect(new Set(replies.map((reply) => `${reply.statusCode} ${reply.body}`)).size).toBe(1);
    expect(replies[0]?.statusCode).toBe(403);
    expect(cookieOf(replies[0] ?? { headers: {} })).toBe("");
  });

  it("[AC20] ends the session before it, and signing out ends it for good", async () => {
    const { send } = await withAdministrator();
    const first = { cookie: tokenOf(await signIn(send)) };
    const again = await send("POST", "/api/session", first, { name: "Rowan Vale", password });
    const second = { cookie: tokenOf(again) };
    expect(second.cookie).not.toBe(first.cookie);
    expect((await send("GET", "/api/session", first)).json()).toMatchObject({ member: null, ended: "signed-out" });
    const out = await send("DELETE", "/api/session", second);
    expect([out.statusCode, cookieOf(out)]).toEqual([204, expect.stringContaining("skepsis=;")]);
    expect((await send("GET", "/api/programmes/main/members", second)).statusCode).toBe(401);
  });

  it("[AC20] a session ends when it was not used for two weeks, and after ninety days", async () => {
    const { send, clock } = await withAdministrator();
    const who = { cookie: tokenOf(await signIn(send)) };
    const member = async (days: number) => {
      clock.now = start + days * 86_400_000;
      return (await send("GET", "/api/session", who)).json().member !== null;
    };
    expect(await member(13)).toBe(true);
    expect(await member(26)).toBe(true);
    for (const days of [39, 52, 65, 78, 89]) expect(await member(days)).toBe(true);
    expect(await member(90)).toBe(false);
    const next = { cookie: tokenOf(await signIn(send)) };
    clock.now += 14 * 86_400_000;
    expect((await send("GET", "/api/session", next)).json()).toMatchObject({ member: null, ended: "over" });
  });

  it("[AC20] keeps passwords as Argon2id with 19 MiB and two passes, and the token as a hash", async () => {
    expect(argon2).toEqual({ memoryCost: 19 * 1024, timeCost: 2, parallelism: 1 });
    expect(await kept).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[\w+/]{22}\$[\w+/]{43}$/);
    expect(await hashed(password)).not.toBe(await kept);
  });

  it("[AC21] a wrong password waits longer each time, a name without an account alike; the right one then comes in", async () => {
    const { send, clock } = await withAdministrator({ trustedProxies: ["127.0.0.1"] });
    let from = 0;
    /** From another address each time: the limit of one address is another rule. */
    const signIn = (given: House["send"], name = "Rowan Vale", word = password) => {
      from += 1;
      return given("POST", "/api/session", null, { name, password: word }, { "x-forwarded-for": `10.0.0.${from}` });
    };
    for (const name of ["Rowan Vale", "Nobody Atall"]) {
      for (let wrong = 0; wrong < 5; wrong += 1) {
        clock.now += 60_000;
        expect((await signIn(send, name, "not the password")).statusCode, name).toBe(403);
      }
      const waits = await signIn(send, name);
      expect([waits.statusCode, said(waits)], name).toEqual([429, expect.stringContaining("2 seconds")]);
    }
    clock.now += 301_000;
    expect((await signIn(send)).statusCode).toBe(200);
    expect((await signIn(send, "Rowan Vale", "not the password")).statusCode).toBe(403);
  });

  it("[AC21] another password needs the old one, and ends the other sessions", async () => {
    const { send, id } = await withAdministrator();
    const [here, there] = [{ cookie: tokenOf(await signIn(send)) }, { cookie: tokenOf(await signIn(send)) }];
    const url = `/api/programmes/main/members/${id}/password`;
    const change = (old: string, next: string) => send("POST", url, here, { old, new: next });
    expect((await change("not the password", "another copper lantern")).statusCode).toBe(403);
    expect((await change(password, "short")).statusCode).toBe(422);
    expect((await change(password, "rowan vale rowan")).json().problems[0].field).toBe("new");
    expect((await change(password, "another copper lantern")).statusCode).toBe(204);
    const alive = async (who: { cookie: string }) => (await send("GET", "/api/session", who)).json().member !== null;
    expect([await alive(here), await alive(there)]).toEqual([true, false]);
    expect((await signIn(send)).statusCode).toBe(403);
  });
});

describe("a new password", () => {
  it("[AC13] is held against more than 3000 common ones that no other rule refuses", async () => {
    const fit = [...(await commonPasswords())].filter((each) => passwordTrouble(each, "Rowan Vale") === null);
    // ASVS 5.0.0, 6.2.4 asks for 3000; exact, so that a list that grew thin is seen.
    expect(fit.length).toBe(3998);
  });

  it.each(["leavemealone", "QWERTY123456", "1q2w3e4r5t6y", "motherfucker", "123qwe123qwe", "01telemike01"])(
    "[AC13] %s is common, and refused",
    async (word) => {
      const { send, store } = await withAdministrator();
      const { secret, ...made } = newInvitation("main", at);
      await store.members.invite({ role: "keeper", ...made }, { by: null, at });
      const body = { secret, name: "Ash Moor", password: word };
      const reply = await send("POST", "/api/invitation/acceptance", null, body);
      expect([reply.statusCode, said(reply)]).toEqual([422, expect.stringContaining("common ones")]);
    },
  );
});

describe("a password that was drawn", () => {
  const drawn = "abcde-fghij-kmnpq-rstuv";
  const chosen = "another copper lantern";
  async function withDrawn(options: Partial<ServiceOptions> = {}) {
    const made = await house({ trustedProxies: ["127.0.0.1"], ...options });
    const endsAt = drawnPasswordEndsAt(at);
    expect(endsAt).toBe("2026-04-08T08:00:00.000Z");
    const given = { name: "Rowan Vale", role: "administrator", password: await hashed(drawn), passwordEndsAt: endsAt };
    const admitted = await made.store.members.admit(given, { by: null, at });
    if (!admitted.ok) throw new Error("not admitted");
    const comeIn = (password: string, next?: string) =>
      made.send("POST", "/api/session", null, {
        name: "Rowan Vale",
        password,
        ...(next === undefined ? {} : { next }),
      });
    return { ...made, id: admitted.value.id, comeIn };
  }

  it("[AC38] comes in once, together with the one that replaces it, which must be another and fit", async () => {
    const { send, store, id, comeIn } = await withDrawn();
    for (const next of [undefined, drawn, "short", "leavemealone"]) {
      const reply = await comeIn(drawn, next);
      expect([reply.statusCode, reply.json().problems[0].field, cookieOf(reply)], next).toEqual([422, "next", ""]);
    }
    expect(await store.members.sessions(id, at)).toEqual([]);
    const came = await comeIn(drawn, chosen);
    expect(came.statusCode).toBe(200);
    expect((await send("GET", "/api/session", { cookie: tokenOf(came) })).json().member.id).toBe(id);
    expect([(await comeIn(drawn, chosen)).statusCode, (await comeIn(drawn)).statusCode]).toEqual([403, 403]);
    expect((await comeIn(chosen, "a third copper lantern")).statusCode).toBe(422);
    expect((await comeIn(chosen)).statusCode).toBe(200);
    const acts = (await store.all()).map(({ body }) => body?.data.act);
    expect(acts).toEqual(expect.arrayContaining(["member-admitted", "password-changed", "signed-in"]));
  });

  it("[AC38] of two who exchange it at once one comes in, and with the password that he chose", async () => {
    const { comeIn, store } = await withDrawn();
    const words = ["a first copper lantern", "a second copper lantern"];
    const came = await Promise.all(words.map((word) => comeIn(drawn, word)));
    expect(came.map(({ statusCode }) => statusCode).toSorted()).toEqual([200, 403]);
    const winner = words[came.findIndex(({ statusCode }) => statusCode === 200)] as string;
    expect((await comeIn(winner)).statusCode).toBe(200);
    expect((await store.all()).filter(({ body }) => body?.data.act === "password-changed")).toHaveLength(1);
  });

  it("[AC38] of two changes of a password at once one is made", async () => {
    const { send, id } = await withAdministrator();
    const head = { cookie: tokenOf(await signIn(send)) };
    const url = `/api/programmes/main/members/${id}/password`;
    const change = (word: string) => send("POST", url, head, { old: password, new: word });
    const made = await Promise.all(["a first copper lantern", "a second copper lantern"].map(change));
    expect(made.map(({ statusCode }) => statusCode).toSorted()).toEqual([204, 403]);
  });

  it("[AC39] refused since it was drawn, or was not, stands in the log", async () => {
    const { lines, log } = written();
    const { comeIn, send, store, id } = await withDrawn({ logger: log });
    const { cookie } = await (await import("../../../tests/members.ts")).anotherSession(store, id, "by-passkey");
    await comeIn(drawn);
    const url = `/api/programmes/main/members/${id}/passkeys`;
    await send("POST", `${url}/question`, { cookie }, { password: drawn });
    await comeIn(drawn, chosen);
    await comeIn(chosen, "a third copper lantern");
    expect(refusalsIn(lines)).toEqual([
      ["password-drawn", "main", id],
      ["password-drawn", "main", id],
      ["password-not-drawn", "main", id],
    ]);
    expect(lines.join("")).not.toMatch(/lantern|Rowan/);
  });

  it("[AC38] runs out after seven days, and is good for nothing but the exchange", async () => {
    const { send, store, id, comeIn, clock } = await withDrawn();
    const { cookie } = await (await import("../../../tests/members.ts")).anotherSession(store, id, "by-passkey");
    const url = `/api/programmes/main/members/${id}`;
    const question = await send("POST", `${url}/passkeys/question`, { cookie }, { password: drawn });
    expect([question.statusCode, said(question)]).toEqual([403, expect.stringContaining("drawn for you")]);
    const same = await send("POST", `${url}/password`, { cookie }, { old: drawn, new: drawn });
    expect([same.statusCode, said(same)]).toEqual([422, expect.stringContaining("is the old one")]);
    clock.now = start + 7 * 86_400_000 - 1;
    expect((await comeIn(drawn)).statusCode).toBe(422);
    clock.now += 1;
    const over = await comeIn(drawn, chosen);
    expect([over.statusCode, said(over)]).toEqual([403, expect.stringContaining("run out")]);
    expect(said(await comeIn("not the password"))).not.toContain("run out");
    expect((await send("POST", `${url}/password`, { cookie }, { old: drawn, new: chosen })).statusCode).toBe(403);
  });
});

describe("a passkey", () => {
  it("[AC35] is asked for under a name alone, made only with the password, and a made-up answer is refused", async () => {
    const { app, send, id } = await withAdministrator();
    const bare = sender(app, "127.0.0.1:80");
    expect((await bare("POST", "/api/session/passkey-question", null, {})).statusCode).toBe(409);
    const asked = await send("POST", "/api/session/passkey-question", null, {});
    expect(asked.json()).toMatchObject({ rpId: "localhost", userVerification: "required" });
    const nowhere = await send("POST", "/api/session/passkey-question", null, { programme: "none" });
    expect(Object.keys(nowhere.json()).toSorted()).toEqual(Object.keys(asked.json()).toSorted());
    const response = { id: "made-up", rawId: "made-up", type: "public-key", response: {}, clientExtensionResults: {} };
    expect((await send("POST", "/api/session/passkey", null, { response })).statusCode).toBe(403);
    const head = { cookie: tokenOf(await signIn(send)) };
    const url = `/api/programmes/main/members/${id}/passkeys`;
    expect((await send("POST", `${url}/question`, head, { password: "not the password" })).statusCode).toBe(403);
    const question = await send("POST", `${url}/question`, head, { password });
    expect(question.json()).toMatchObject({
      rp: { id: "localhost" },
      authenticatorSelection: { residentKey: "required", userVerification: "required" },
    });
    expect((await send("POST", url, head, { name: "Phone", response })).statusCode).toBe(403);
    expect((await send("GET", url, head)).json()).toEqual({ passkeys: [] });
  });

  it("[AC35] is taken away only with the password, and then works no more", async () => {
    const { send, store, id } = await withAdministrator();
    const key = { id: "key-1", publicKey: "cHVibGlj", counter: 0, transports: [], name: "Phone" };
    await store.members.addPasskey({ ...key, member: id }, { by: id, at });
    const head = { cookie: tokenOf(await signIn(send)) };
    const url = `/api/programmes/main/members/${id}/passkeys`;
    const remove = async (which: string, payload: object) =>
      (await send("POST", `${url}/${which}/removal`, head, payload)).statusCode;
    expect(await remove("key-1", {})).toBe(422);
    expect(await remove("key-1", { password: "not the password" })).toBe(403);
    expect((await send("GET", url, head)).json().passkeys).toHaveLength(1);
    expect(await remove("key-2", { password })).toBe(404);
    expect(await remove("key-1", { password })).toBe(204);
    expect((await send("GET", url, head)).json()).toEqual({ passkeys: [] });
  });
});

describe("an invitation", () => {
  it("[AC22] makes one member of its role; its secret is told once", async () => {
    const { send, store } = await withAdministrator();
    const head = { cookie: tokenOf(await signIn(send)) };
    const made = (await send("POST", "/api/programmes/main/invitations", head, { role: "inspector" })).json();
    expect(made.secret).toMatch(/^main\.[\w-]{43}$/);
    const listed = await send("GET", "/api/programmes/main/invitations", head);
    expect(listed.body).not.toContain(made.secret);
    const look = (secret: string) => send("POST", "/api/invitation", null, { secret });
    expect((await look(made.secret)).json()).toEqual({
      programme: "main",
      role: "inspector",
      endsAt: made.invitation.endsAt,
    });
    expect([(await look("main.wrong")).statusCode, (await look("none.wrong")).statusCode]).toEqual([404, 404]);
    const accept = (name: string, word = password) =>
      send("POST", "/api/invitation/acceptance", null, { secret: made.secret, name, password: word });
    expect((await accept("Ash Moor", "short")).statusCode).toBe(422);
    expect((await accept("rowan vale")).statusCode).toBe(409);
    const reply = await accept("Ash Moor");
    expect([reply.statusCode, reply.json().member.role]).toEqual([200, "inspector"]);
    expect((await send("GET", "/api/session", { cookie: tokenOf(reply) })).json().member.name).toBe("Ash Moor");
    expect((await accept("Elm Moor")).statusCode).toBe(404);
    expect(JSON.stringify(await store.all())).not.toMatch(new RegExp(`${made.secret}|Ash Moor`));
  });
});

describe("requests of others", () => {
  it("[AC23] a write from another origin's page is refused, session or not", async () => {
    const { send, id } = await withAdministrator();
    const head = { cookie: tokenOf(await signIn(send)) };
    const url = `/api/programmes/main/members/${id}`;
    const from = async (headers: Record<string, string>, who: typeof head | null = head) =>
      (await send("POST", url, who, { hasExactPlaces: true }, headers)).statusCode;
    for (const headers of [
      { origin: "https://evil.example" },
      { origin: "null" },
      { "sec-fetch-site": "cross-site" },
      { "sec-fetch-site": "same-site", origin: "http://localhost" },
    ])
      expect([await from(headers), await from(headers, null)], JSON.stringify(headers)).toEqual([403, 403]);
    expect(await from({ origin: "http://localhost", "sec-fetch-site": "same-origin" })).toBe(200);
    const form = await send("POST", url, head, undefined, { "content-type": "application/x-www-form-urlencoded" });
    expect(form.statusCode).toBe(415);
  });

  it("[AC24] signing in is limited by address, whatever a stranger's forwarded header says", async () => {
    const { send } = await withAdministrator();
    const tries = [];
    for (let each = 0; each <= triesPerMinute; each += 1)
      tries.push(await send("POST", "/api/session", null, { no: 1 }, { "x-forwarded-for": `10.0.0.${each}` }));
    expect(tries.map(({ statusCode }) => statusCode)).toEqual([...Array(triesPerMinute).fill(422), 429]);
    expect(said(tries.at(-1) ?? (tries[0] as never))).toMatch(/Too many requests/);
    expect((await send("GET", "/api/session", null)).statusCode).toBe(200);
  });

  it.each(["password", "passkeys/question", "passkeys/key-1/removal"])(
    "[AC24] so is whatever else takes the password: %s",
    async (what) => {
      const { send, id } = await withAdministrator();
      const head = { cookie: tokenOf(await signIn(send)) };
      const url = `/api/programmes/main/members/${id}/${what}`;
      const tries = [];
      for (let each = 0; each <= triesPerMinute; each += 1)
        tries.push((await send("POST", url, head, { no: 1 })).statusCode);
      expect(tries).toEqual([...Array(triesPerMinute).fill(422), 429]);
    },
  );

  it("[AC24] behind a trusted proxy each address counts for itself; in general there is a limit too", async () => {
    const address = new URL("https://bees.example");
    const { send } = await withAdministrator({ address, trustedProxies: ["127.0.0.1"], requestsPerMinute: 30 });
    const from = async (ip: string) =>
      (await send("POST", "/api/session", null, { no: 1 }, { "x-forwarded-for": ip })).statusCode;
    for (let each = 0; each < triesPerMinute; each += 1) await from("10.0.0.1");
    expect([await from("10.0.0.1"), await from("10.0.0.2")]).toEqual([429, 422]);
    let last = 0;
    for (let each = 0; each <= 30; each += 1)
      last = (await send("GET", "/api/health", null, undefined, { "x-forwarded-for": "10.0.0.3" })).statusCode;
    expect(last).toBe(429);
  });
});

describe("a service that others can reach", () => {
  const address = new URL("https://bees.example");

  it("[AC25] does not start without https and without an administrator", async () => {
    const { recordsBy } = await import("../../storage/server.ts");
    const told = async (host: string, where: URL | null, data: string) => {
      const words: string[] = [];
      const records = recordsBy({ folder: data });
      if (!records.ok) throw new Error("no records");
      const stop = AbortSignal.abort();
      const status = await serve({
        ...{ version: "0", host, port: 0, address: where, trustedProxies: [], records: records.value, page: null },
        ...{ say: (text: string) => words.push(text), announce: () => {}, stop },
      });
      return [status, words.join(" ")];
    };
    const [empty, peopled] = [path.join(folder, "nobody"), path.join(folder, "somebody")];
    const programmes = openProgrammes(peopled);
    const given = { name: "Rowan Vale", role: "administrator", password: null };
    await (await programmes.open("main")).members.admit(given, { by: null, at });
    await programmes.close();
    expect(await told("0.0.0.0", null, peopled)).toEqual([1, expect.stringContaining("--address https://")]);
    expect(await told("0.0.0.0", new URL("http://bees.example"), peopled)).toEqual([
      1,
      expect.stringContaining("not https"),
    ]);
    expect(await told("0.0.0.0", address, empty)).toEqual([
      1,
      expect.stringContaining("no programme has an administrator"),
    ]);
    // A proxy on this machine opens it to others as well.
    expect(await told("127.0.0.1", address, empty)).toEqual([1, expect.stringContaining("administrator")]);
    expect(await told("127.0.0.1", address, peopled)).toEqual([0, expect.stringContaining("asks them to sign in")]);
    expect((await told("127.0.0.1", null, empty))[0]).toBe(0);
  });

  it("[AC25] opens no record and reckons nothing without a session, a programme without members neither", async () => {
    const { send } = await withAdministrator({ address });
    for (const [method, url, payload] of [
      ["GET", "/api/programmes/main/entries"],
      ["GET", "/api/programmes/demonstration/entries"],
      ["POST", "/api/programmes/unheard-of/entries", { entries: [] }],
      ["DELETE", "/api/programmes/demonstration"],
      ["POST", "/api/reasoning/sample-size", {}],
    ] as const)
      expect((await send(method, url, null, payload)).statusCode, url).toBe(401);
    expect((await send("GET", "/api/session", null)).json().isGuarded).toBe(true);
    const head = { cookie: tokenOf(await signIn(send)) };
    expect((await send("POST", "/api/reasoning/sample-size", head, {})).statusCode).toBe(422);
  });

  it("[AC25] answers to its own name alone, binds the cookie to it, and tells browsers to come by TLS", async () => {
    const { app, send } = await withAdministrator({ address });
    for (const host of ["localhost", "evil.example", "bees.example:8080"])
      expect((await sender(app, host)("GET", "/api/session", null)).statusCode, host).toBe(421);
    expect((await sender(app, "10.0.0.7")("GET", "/healthz", null)).json()).toEqual({ ok: true });
    const reply = await signIn(send);
    expect(cookieOf(reply)).toMatch(
      /^__Host-skepsis=main\.[\w-]{43}; Max-Age=7776000; Path=\/; HttpOnly; Secure; SameSite=Strict$/,
    );
    expect(reply.headers["strict-transport-security"]).toBe("max-age=31536000; includeSubDomains");
    expect((await send("POST", "/api/session", null, { no: 1 }, { origin: "http://bees.example" })).statusCode).toBe(
      403,
    );
    expect((await send("POST", "/api/session", null, { no: 1 }, { origin: "https://bees.example" })).statusCode).toBe(
      422,
    );
  });

  it("[AC31] on its own machine a programme without members is open as before, and its demonstration too", async () => {
    const { send, store } = await house();
    const entries = writer().write(bee(1));
    expect((await send("POST", "/api/programmes/main/entries", null, { entries })).statusCode).toBe(200);
    expect((await send("GET", "/api/programmes/main/entries", null)).json()).toEqual({
      entries,
      cursor: 1,
      more: false,
    });
    expect((await send("GET", "/api/session", null)).json().isGuarded).toBe(false);
    await store.members.admit({ name: "Rowan Vale", role: "administrator", password: null }, { by: null, at });
    expect((await send("GET", "/api/programmes/main/entries", null)).statusCode).toBe(401);
    expect((await send("GET", "/api/programmes/demonstration/entries", null)).statusCode).toBe(200);
  });
});

describe("a lost phone", () => {
  let made: House;
  let keeper: Person;
  let head: Person;
  beforeEach(async () => {
    made = await house();
    [keeper, head] = [
      await person(made.store, "keeper", "ash", 45),
      await person(made.store, "administrator", "head", 46),
    ];
  });

  it("[AC28] its session ends and is told why; what it sends later is kept apart; the audit shows it", async () => {
    const { send, store } = made;
    const url = `/api/programmes/main/devices/${keeper.device}/loss`;
    expect((await send("POST", url, head)).json()).toMatchObject({ device: keeper.device, lostAt: at });
    expect((await send("GET", "/api/session", keeper)).json()).toMatchObject({ member: null, ended: "device-lost" });
    const later = keeper.phone.write(bee(7));
    expect((await send("POST", "/api/programmes/main/entries", keeper, { entries: later })).statusCode).toBe(401);
    const again = await store.members.beginSession(
      { member: keeper.id, hash: "1".repeat(64), client: "a thief", endsAt: "2026-06-01T00:00:00.000Z" },
      at,
    );
    expect(again.member).toBe(keeper.id);
    const reply = await store.members.push(later, { by: keeper.id, at, mayClaim: false, trouble: () => null });
    expect(reply.refused).toMatchObject([{ problem: { code: "device-lost" } }]);
    expect(await store.quarantined()).toEqual(later);
    expect(await store.check()).toMatchObject({ isIntact: true, keptApart: 0, fromLost: 1 });
    const audit = (await send("GET", "/api/programmes/main/audit?limit=5", head)).json().entries;
    expect(audit.map((each: { act: { act: string } | null }) => each.act?.act)).toContain("device-lost");
    expect((await send("DELETE", url, keeper)).statusCode).toBe(401);
    expect((await send("DELETE", url, head)).json().lostAt).toBeNull();
    // Found again, it is to send what is kept apart; until then a person has to see to it.
    expect(await store.check()).toMatchObject({ isIntact: false, keptApart: 1, fromLost: 0 });
  });

  it("[AC28] a member reports it from another browser", async () => {
    const { send } = made;
    const { anotherSession } = await import("../../../tests/members.ts");
    const desk = await anotherSession(made.store, keeper.id, "desk");
    expect((await send("POST", `/api/programmes/main/devices/${keeper.device}/loss`, desk)).statusCode).toBe(200);
    expect((await send("GET", "/api/session", desk)).json().member.id).toBe(keeper.id);
    expect((await send("GET", "/api/session", keeper)).json().ended).toBe("device-lost");
  });
});

describe("a member's data", () => {
  it("[AC29] are given out whole, and erased: bodies go, headers stay, and it is told by whom", async () => {
    const { send, store } = await house();
    const [keeper, head] = [await person(store, "keeper", "ash", 45), await person(store, "administrator", "head", 46)];
    const data = (await send("GET", `/api/programmes/main/members/${keeper.id}/data`, keeper)).json();
    expect(data.entries).toEqual(keeper.entries);
    expect(data).toMatchObject({
      member: { name: "Name of ash" },
      devices: [{ device: keeper.device }],
      sessions: [{}],
    });
    const url = `/api/programmes/main/members/${keeper.id}/erasure`;
    expect((await send("POST", url, head, { name: "Name of elm", reason: "asked for" })).statusCode).toBe(422);
    const erased = await send("POST", url, head, { name: "Name of ash", reason: "asked for" });
    expect(erased.json()).toEqual({ erased: keeper.entries.length });
    const all = await store.all();
    const report = verifyChain(all, await store.heads());
    expect(report.isIntact).toBe(true);
    expect(report.missingBodies).toHaveLength(keeper.entries.length);
    expect(new Set(report.missingBodies.map(({ why, erased: by }) => `${why} ${by?.by}`))).toEqual(
      new Set([`erased ${head.id}`]),
    );
    const left = JSON.stringify([
      all,
      await store.states(),
      await store.members.members(),
      await store.members.devices(),
    ]);
    expect(left).not.toMatch(/Caller of ash|Yard of ash|Story of ash|Name of ash|Phone of ash/);
    expect(left).toContain("Yard of head");
    expect((await send("GET", "/api/session", keeper)).json().member).toBeNull();
    expect(all.filter(({ header }) => header.device === keeper.device).map(({ header }) => header)).toEqual(
      keeper.entries.map(({ header }) => header),
    );
  });

  it("[AC29] of an inspector the account goes, and the cases of others stay", async () => {
    const { send, store } = await house();
    const [inspector, head] = [
      await person(store, "inspector", "elm", 45),
      await person(store, "administrator", "head", 46),
    ];
    const body = { name: "Name of elm", reason: "left" };
    const erased = await send("POST", `/api/programmes/main/members/${inspector.id}/erasure`, head, body);
    expect(erased.json()).toEqual({ erased: 0 });
    expect(JSON.stringify(await store.members.members())).not.toContain("Name of elm");
    const own = `/api/programmes/main/members/${head.id}/erasure`;
    expect((await send("POST", own, head, { name: "Name of head", reason: "left" })).statusCode).toBe(409);
  });
});

describe("the log", () => {
  it("[AC39] holds each refused sign-in, by the id of the member that was tried, and nothing that was typed", async () => {
    const { lines, log } = written();
    const { send, store, id } = await withAdministrator({ logger: log });
    await store.members.addPasskey(
      { id: "key-1", member: id, publicKey: "cHVibGlj", counter: 0, transports: [], name: "Phone" },
      { by: id, at },
    );
    const head = { cookie: tokenOf(await signIn(send)) };
    await signIn(send, "Rowan Vale", "not the password");
    await signIn(send, "Nobody Atall", "not the password");
    const nowhere = { programme: "none", name: "Rowan Vale", password: "not the password" };
    await send("POST", "/api/session", null, nowhere);
    const response = { id: "key-1", rawId: "key-1", type: "public-key", response: {}, clientExtensionResults: {} };
    await send("POST", "/api/session/passkey", null, { response });
    const url = `/api/programmes/main/members/${id}/passkeys`;
    await send("POST", `${url}/key-1/removal`, head, { password: "not the password" });
    await send("POST", url, head, { name: "Phone", response });
    const told = lines.map((line) => JSON.parse(line)).filter((line) => "authentication" in line);
    expect(refusalsIn(lines)).toEqual([
      ["sign-in-failed", "main", id],
      ["sign-in-failed", "main", null],
      ["sign-in-failed", null, null],
      ["passkey-failed", "main", id],
      ["sign-in-failed", "main", id],
      ["passkey-failed", "main", id],
    ]);
    expect(told.every(({ time, level }) => Number.isInteger(time) && level === 40)).toBe(true);
    expect(lines.join("")).not.toMatch(/Rowan|Nobody|not the password|key-1|"none"/);
  });

  it("[AC30] holds no name, password, token, address of a person or body of an entry", async () => {
    const { lines, log } = written();
    const broken = await withAdministrator({ logger: log });
    const reply = await signIn(broken.send);
    const who = { cookie: tokenOf(reply) };
    const pull = () => Promise.reject(new Error("the disk is on fire"));
    Object.assign(broken.store.members, { pull });
    const entries = "/api/programmes/main/entries?cursor=0";
    expect((await broken.send("GET", entries, who, undefined, { "x-forwarded-for": "10.9.8.7" })).statusCode).toBe(500);
    await signIn(broken.send, "Rowan Vale", "not the password");
    await broken.send("GET", "/api/session", null, undefined, { host: "evil.example" });
    const text = lines.join("");
    expect(text).toContain("the disk is on fire");
    expect(text).toContain('"refused":403,"method":"POST","route":"/api/session"');
    expect(text).toContain('"refused":421');
    expect(text).not.toMatch(/Rowan|quiet copper|10\.9\.8\.7|127\.0\.0\.1|cookie/i);
    expect(text).not.toContain(who.cookie.slice(13));
  });
});

describe("every answer", () => {
  it("[AC34] says what it is, is framed by nobody, tells no other site anything, and lists no folder", async () => {
    const { app, send } = await withAdministrator();
    for (const [method, url] of [
      ["GET", "/api/health"],
      ["GET", "/api/session"],
      ["GET", "/api/none"],
      ["GET", "/"],
      ["POST", "/api/session"],
      ["GET", "/api/programmes/main/entries"],
    ] as const) {
      const { headers } = await send(method, url, null, method === "POST" ? { no: 1 } : undefined);
      const policy = String(headers["content-security-policy"]);
      for (const directive of ["object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'", "default-src 'none'"])
        expect(policy, url).toContain(directive);
      expect(headers, url).toMatchObject({
        "x-content-type-options": "nosniff",
        "referrer-policy": "no-referrer",
        "x-frame-options": "DENY",
        "content-type": "application/json; charset=utf-8",
      });
      expect(Object.keys(headers).filter((name) => /^access-control|^server$|^x-powered/.test(name))).toEqual([]);
    }
    expect(
      (await app.inject({ method: "TRACE" as "GET", url: "/api/health", headers: { host: "localhost" } })).statusCode,
    ).toBe(404);
    const preflight = { origin: "https://evil.example", "access-control-request-method": "POST" };
    const asked = await send("OPTIONS", "/api/session", null, undefined, preflight);
    expect(asked.headers["access-control-allow-origin"]).toBeUndefined();
  });
});

it("[SG110] half a character, or a null one, is no name: it could not be sealed into the journal", async () => {
  const { send, store } = await house();
  const head = await person(store, "administrator", "head", 46);
  for (const device of ["\ud800", "phone\0"]) {
    const reply = await send("POST", "/api/programmes/main/devices", head, { device, name: "Phone" });
    expect(reply.statusCode).toBe(422);
    expect(said(reply)).toContain("text of whole characters");
  }
  const invited = await send("POST", "/api/programmes/main/devices", head, { device: "phone-2", name: "\udfff" });
  expect(invited.statusCode).toBe(422);
});

it("[SG230] every answer above was such as the OpenAPI document says", () => {
  expect(answers.flatMap(({ misfits }) => misfits)).toEqual([]);
  expect(new Set(answers.flatMap(({ held }) => [...held.keys()])).size).toBeGreaterThan(3);
});
