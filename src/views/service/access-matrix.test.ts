/** Every role, every route, own things and another's, against the running service; and what the exchange lets through. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { FastifyInstance } from "fastify";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Documented, documented } from "../../../tests/documented.ts";
import { settlingOf } from "../../../tests/journals/apart-story.ts";
import { bee } from "../../../tests/journals/every-kind.ts";
import { attachedDraft, sha256Of, voice } from "../../../tests/journals/file-story.ts";
import { writer } from "../../../tests/journals/writer.ts";
import { sendFile } from "../../../tests/laws/files-contract.ts";
import { anotherSession, ownDrafts, type Person, person, sender, start } from "../../../tests/members.ts";
import { type Role, roles } from "../../access/index.ts";
import type { Entry, EntryDraft } from "../../journal/index.ts";
import type { ServerStore } from "../../storage/server.ts";
import { openProgrammes, type Programmes } from "./programmes.ts";
import { service } from "./service.ts";

let addresses = 0;
/** Each request from an address of its own: who may do what is asked here, not how often. */
const anyAddress = () => `127.0.${Math.floor(++addresses / 250)}.${1 + (addresses % 250)}`;

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-matrix-"));
let app: FastifyInstance;
let programmes: Programmes;
let answers: Documented;
let people: Readonly<Record<Role, Person>>;
/** A second keeper, whose things are another's to everyone else. */
let neighbour: Person;
/** An administrator of another programme. */
let stranger: Person;
let send: ReturnType<typeof sender>;

beforeAll(async () => {
  programmes = openProgrammes(folder);
  app = await service({ version: "0", programmes, page: null, port: () => 80, now: () => start });
  answers = documented(app);
  send = sender(app, "localhost", anyAddress);
  const store = await programmes.open("main");
  const made = [];
  for (const [index, role] of roles.entries()) made.push([role, await person(store, role, role, 45 + index / 1000)]);
  people = Object.fromEntries(made) as Record<Role, Person>;
  neighbour = await person(store, "keeper", "neighbour", 46.654321);
  for (const who of [...Object.values(people), neighbour]) await attach(store, who);
  stranger = await person(await programmes.open("other"), "administrator", "stranger", 47);
});
afterAll(async () => {
  await app.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A voice note of the person's own. */
const noteOf = ({ name }: Pick<Person, "name">): Uint8Array => Buffer.concat([voice, Buffer.from(`Spoken by ${name}`)]);
const fileOf = (who: Pick<Person, "name">): string => sha256Of(noteOf(who));

/** Puts the voice note to the person's own case, sent and whole. */
async function attach(store: ServerStore, who: Person): Promise<void> {
  const entries = who.phone.write(attachedDraft(noteOf(who), "audio/webm", { root: who.case, colony: null }));
  await store.members.push(entries, {
    by: who.id,
    at: new Date(start).toISOString(),
    mayClaim: false,
    trouble: () => null,
  });
  await sendFile(store, noteOf(who), { sender: who.id });
  (who.entries as Entry[]).push(...entries);
}

/** Whose thing the address names; a thing that is not there is answered like another's. */
type Thing = "own" | "another" | "none";
const things = ["own", "another", "none"] as const;

const all = roles;
const administrator: readonly Role[] = ["administrator"];
const nobody: readonly Role[] = [];
const office: readonly Role[] = ["inspector", "reviewer", "administrator"];
const regional: readonly Role[] = ["manager", "inspector", "reviewer", "administrator"];

interface Row {
  readonly route: string;
  /** Who may, by whose the thing is; "none" as "another" unless said. */
  readonly own: readonly Role[];
  readonly another: readonly Role[];
  readonly payload?: object;
}

/** By hand: who may do what. Bodies are such as do not fit, so that the right is tried and nothing is done. */
const table: readonly Row[] = [
  { route: "GET /members", own: all, another: all },
  { route: "POST /members/:member", own: administrator, another: administrator, payload: { no: 1 } },
  { route: "POST /members/:member/password", own: all, another: nobody, payload: { no: 1 } },
  { route: "POST /members/:member/apiaries/:apiary", own: administrator, another: administrator },
  { route: "DELETE /members/:member/apiaries/:apiary", own: administrator, another: administrator },
  { route: "GET /members/:member/passkeys", own: all, another: nobody },
  { route: "POST /members/:member/passkeys/question", own: all, another: nobody, payload: { no: 1 } },
  { route: "POST /members/:member/passkeys", own: all, another: nobody, payload: { no: 1 } },
  { route: "POST /members/:member/passkeys/:passkey/removal", own: all, another: nobody, payload: { no: 1 } },
  { route: "GET /members/:member/data", own: all, another: administrator },
  { route: "POST /members/:member/erasure", own: administrator, another: administrator, payload: { no: 1 } },
  { route: "GET /members/:member/sessions", own: all, another: administrator },
  { route: "POST /invitations", own: administrator, another: administrator, payload: { no: 1 } },
  { route: "GET /invitations", own: administrator, another: administrator },
  { route: "DELETE /invitations/:invitation", own: administrator, another: administrator },
  { route: "DELETE /sessions/:session", own: all, another: administrator },
  { route: "POST /devices", own: all, another: all, payload: { no: 1 } },
  { route: "POST /devices/:device/loss", own: all, another: administrator },
  { route: "DELETE /devices/:device/loss", own: administrator, another: administrator },
  { route: "GET /places", own: regional, another: regional },
  { route: "GET /audit", own: administrator, another: administrator },
  { route: "POST /entries", own: all, another: all, payload: { no: 1 } },
  { route: "GET /entries", own: all, another: all },
  { route: "GET /forecasts", own: all, another: all },
  { route: "GET /apart", own: ["reviewer", "administrator"], another: ["reviewer", "administrator"] },
  { route: "GET /files/:file", own: all, another: office },
  { route: "GET /files/:file/standing", own: ["keeper", ...office], another: office },
  { route: "POST /files/:file/parts", own: ["keeper", ...office], another: office, payload: { no: 1 } },
  // The programme itself is never removed this way: told to members, and only to them.
  { route: "DELETE ", own: nobody, another: nobody },
];

/** Routes that are for whoever is not signed in, or hold no record. */
const open = [
  "GET /healthz",
  "GET /api/health",
  "POST /api/reasoning/:verb",
  "GET /api/session",
  "POST /api/session",
  "DELETE /api/session",
  "POST /api/session/passkey",
  "POST /api/session/passkey-question",
  "POST /api/invitation",
  "POST /api/invitation/acceptance",
  "GET /api/openapi.json",
];

/** Every route that the service serves, from its own list. */
function served(): readonly string[] {
  const trail: string[] = [];
  return app
    .printRoutes({ commonPrefix: false })
    .split("\n")
    .flatMap((line) => {
      const found = /^([│ ]*)(?:├──|└──) (\S+) \((.*)\)$/.exec(line);
      if (!found) return [];
      const depth = (found[1] ?? "").length / 4;
      trail.splice(depth, trail.length, found[2] ?? "");
      const methods = (found[3] ?? "").split(", ").filter((method) => method !== "HEAD");
      return methods.map((method) => `${method} ${trail.join("")}`);
    });
}

const prefix = "/api/programmes/:programme";

/** The address of a route for a thing of this sort, seen by this person. */
function addressFor(
  row: Row,
  who: Person,
  thing: Thing,
  spare: { readonly session: string; readonly device: string },
): string {
  const target = thing === "own" ? who : neighbour;
  const named: Readonly<Record<string, string>> = {
    programme: who.programme,
    member: thing === "none" ? "no-such-member" : target.id,
    apiary: thing === "none" ? "no-such-apiary" : target.apiary,
    device: thing === "none" ? "no-such-device" : spare.device,
    session: thing === "none" ? "no-such-session" : spare.session,
    invitation: "no-such-invitation",
    passkey: "no-such-passkey",
    file: thing === "none" ? "0".repeat(64) : fileOf(target),
  };
  const route = `${prefix}${row.route.split(" ")[1]}`;
  return route.replaceAll(/:(\w+)/g, (_, name: string) => named[name] ?? "");
}

let spares = 0;
/** A session that may be ended, and a device that may be lost, without harm to the others. */
async function spareSession(of: Person) {
  spares += 1;
  const [store, device] = [await programmes.open(of.programme), `spare-phone-${spares}`];
  const made = await anotherSession(store, of.id, `spare-${spares}`);
  const doing = { by: of.id, at: new Date(start).toISOString() };
  await store.members.registerDevice({ device, name: device, session: made.session, mayClaim: false }, doing);
  return { ...made, device };
}

describe("every role, every route, own and another's", () => {
  it("[AC26] the table written by hand holds every route that is served", () => {
    const told = [...table.map(({ route }) => route.replace(" ", ` ${prefix}`)), ...open];
    expect(served().toSorted()).toEqual(told.toSorted());
  });

  it.each(table.map((row) => [row.route, row] as const))("[AC26] %s", async (_, row) => {
    const [method = ""] = row.route.split(" ");
    for (const role of roles)
      for (const thing of things) {
        const who = people[role];
        const target = thing === "own" ? who : neighbour;
        const spare = /:session|:device/.test(row.route) ? await spareSession(target) : target;
        const reply = await send(method, addressFor(row, who, thing, spare), who, row.payload);
        const may = (thing === "own" ? row.own : row.another).includes(role);
        const label = `${role} ${thing}: ${reply.statusCode} ${reply.body.slice(0, 200)}`;
        if (may) expect([200, 204, 404, 409, 422], label).toContain(reply.statusCode);
        else {
          expect(reply.statusCode, label).toBe(403);
          expect(reply.body, label).not.toMatch(/neighbour/);
          expect(Object.keys(reply.json()), label).toEqual(["problems"]);
        }
      }
  });

  it.each(table.map((row) => [row.route, row] as const))("[AC26] %s without a session", async (_, row) => {
    const [method = ""] = row.route.split(" ");
    for (const cookie of ["", "skepsis=main.no-such-token", "skepsis=../x.y", "skepsis=main.", "skepsis=;"]) {
      const reply = await send(method, addressFor(row, neighbour, "own", neighbour), { cookie }, row.payload);
      expect(reply.statusCode, cookie).toBe(401);
      expect(reply.body).not.toMatch(/neighbour/);
    }
  });

  it.each(table.map((row) => [row.route, row] as const))("[AC26] %s in another programme", async (_, row) => {
    const [method = ""] = row.route.split(" ");
    const url = addressFor(row, neighbour, "own", neighbour);
    for (const programme of ["main", "no-such-programme"]) {
      const reply = await send(method, url.replace("/main", `/${programme}`), stranger, row.payload);
      const isOpen = programme !== "main" && /entries|forecasts|apart|files|^DELETE $/.test(row.route);
      if (!isOpen) expect([401, 403], `${programme} ${reply.body}`).toContain(reply.statusCode);
      expect(reply.body).not.toMatch(/neighbour/);
    }
  });
});

/** Everything the exchange gives this person. */
async function pulled(who: Person): Promise<readonly Entry[]> {
  const seen: Entry[] = [];
  for (let [cursor, more] = [0, true]; more; ) {
    const reply = await send("GET", `${prefix.replace(":programme", "main")}/entries?cursor=${cursor}&limit=9`, who);
    const page = reply.json() as { entries: Entry[]; cursor: number; more: boolean };
    seen.push(...page.entries);
    [cursor, more] = [page.cursor, page.more];
  }
  return seen;
}

describe("what the exchange lets through", () => {
  /** By hand, of the neighbour's things: header of the apiary, exact place, caller, finding, label, reading. */
  const through: Readonly<Record<Role, string>> = {
    keeper: "- - - - - -",
    reader: "- - - - label -",
    manager: "header - - finding label reading",
    inspector: "header place caller finding label reading",
    reviewer: "header place caller finding label reading",
    administrator: "header place caller finding label reading",
  };
  const signs = [
    ["header", /"apiary-neighbour"/],
    ["place", /46\.654321|Yard of neighbour/],
    ["caller", /Caller of neighbour|Story of neighbour/],
    ["finding", /Finding of neighbour/],
    ["label", /V-neighbour/],
    ["reading", /Reader of neighbour|"reading-neighbour","bee":1/],
  ] as const;

  it.each(roles.map((role) => [role]))("[AC27] to %s of another's", async (role) => {
    const given = await pulled(people[role]);
    const ofCases = given.filter(
      ({ header }) => !header.about.includes("vial-neighbour") || header.kind !== "specimen-labelled",
    );
    const text = JSON.stringify(given);
    const found = signs.map(([name, sign]) =>
      sign.test(
        name === "header" ? JSON.stringify(ofCases.filter(({ header }) => header.kind === "apiary-registered")) : text,
      )
        ? name
        : "-",
    );
    expect(found.join(" ")).toBe(through[role]);
  });

  it.each(roles.map((role) => [role]))("[AC27] to %s of his or her own, whole", async (role) => {
    const who = people[role];
    const given = await pulled(who);
    const own = given.filter(({ header }) => header.device === who.device);
    expect(own).toEqual(who.entries);
  });

  it("[AC27] a reader is given no reading of a vial that he labelled, before and after another read it", async () => {
    const reading = people.inspector.phone.write({
      ...{ kind: "bee-read", at: "2026-03-06", about: [people.reader.vial, "reading-second"] },
      data: { reading: "reading-second", bee: 1, lost: false, left: "mites-blotches", right: "clear" },
    });
    const url = "/api/programmes/main/entries";
    expect((await send("POST", url, people.inspector, { entries: reading })).json().refused).toEqual([]);
    const given = (await pulled(people.reader)).filter(({ header }) => header.id === reading[0]?.header.id);
    expect(given).toEqual([{ header: reading[0]?.header, body: null }]);
    const data = await send("GET", `/api/programmes/main/members/${people.reader.id}/data`, people.reader);
    expect(data.json().entries).toEqual(people.reader.entries);
    expect(data.body).not.toContain("mites-blotches");
  });

  it("[SG224] forecasts of the night go with the cases: a keeper's own, a reader's none, all to the others", async () => {
    const store = await programmes.open("main");
    const cases = [people.keeper, neighbour].map((each) => each.case);
    const standing = { night: "2026-04-01", stoodAt: new Date(start).toISOString(), position: 1 };
    await store.nights.plan(standing, [{ number: 0, text: "{}" }], []);
    const found = cases.map((root) => ({
      root,
      colony: "c",
      text: JSON.stringify({ caseId: root, colony: "c", problems: [] }),
    }));
    await store.nights.done({ ...standing, number: 0 }, found);
    const given = async (who: Person | null) => {
      const reply = await send("GET", "/api/programmes/main/forecasts", who);
      if (reply.statusCode !== 200) return reply.statusCode;
      return reply.json().forecasts.map((each: { caseId: string }) => each.caseId);
    };
    expect(await given(people.keeper)).toEqual([people.keeper.case]);
    expect(await given(neighbour)).toEqual([neighbour.case]);
    expect(await given(people.reader)).toEqual([]);
    for (const role of ["manager", "inspector", "reviewer", "administrator"] as const)
      expect(await given(people[role])).toEqual([...cases].sort());
    expect(await given(stranger)).toBe(401);
    expect(await given(null)).toBe(401);
  });

  it("[AC15] what is kept apart is told to those who settle it, and they may settle it", async () => {
    const url = "/api/programmes/main/entries";
    const [kept] = writer({ device: neighbour.device, from: "2026-03-30T08:00:00.000Z" }).write(bee(9, "mites"));
    expect((await send("POST", url, neighbour, { entries: [kept] })).json().refused).toMatchObject([
      { problem: { code: "two-entries-one-number" } },
    ]);
    for (const role of ["reviewer", "administrator"] as const) {
      const { apart } = (await send("GET", "/api/programmes/main/apart", people[role])).json();
      expect(apart).toMatchObject([{ entry: kept, standing: neighbour.entries[0], mayTakeIn: true }]);
    }
    const store = await programmes.open("main");
    const lost = writer({ device: "lost-of-neighbour" });
    await send("POST", url, neighbour, { entries: lost.write(bee(10)) });
    await store.members.loseDevice("lost-of-neighbour", { by: neighbour.id, at: new Date(start).toISOString() });
    const note: EntryDraft = {
      ...{ kind: "access-noted", at: "2026-03-30", about: ["main"] },
      data: { act: "role-given", by: neighbour.id, role: "administrator" },
    };
    await send("POST", url, neighbour, { entries: lost.write(note) });
    const ofNote = async (who: Person) => {
      const { apart } = (await send("GET", "/api/programmes/main/apart", who)).json();
      return apart.filter(({ entry }: { entry: Entry }) => entry.header.kind === "access-noted");
    };
    expect(await ofNote(people.reviewer)).toMatchObject([{ entry: { body: null }, mayTakeIn: false }]);
    expect(await ofNote(people.administrator)).toMatchObject([{ entry: { body: {} }, mayTakeIn: false }]);
    const decided = settlingOf(kept as Entry, "left-out");
    for (const role of roles) {
      const [sent] = writer({ device: `settles-${role}` }).write(decided);
      const { refused } = (await send("POST", url, people[role], { entries: [sent] })).json();
      const may = ["reviewer", "administrator"].includes(role);
      expect(refused.length, role).toBe(may ? 0 : 1);
    }
    const given = async (who: Person) =>
      (await pulled(who)).filter(({ header }) => header.kind === "kept-apart-settled").map(({ body }) => body !== null);
    expect(await given(people.keeper)).toEqual([]);
    expect(await given(people.inspector)).toEqual([false, false]);
    expect(await given(people.reviewer)).toEqual([true, true]);
  });

  it("[AC27] a grant gives a manager exact places and another word for the scope; taken back, no more", async () => {
    const { manager, administrator: head } = people;
    const places = async () => (await send("GET", "/api/programmes/main/places", manager)).json().places;
    const scope = async () => (await send("GET", "/api/programmes/main/entries", manager)).json().scope;
    const change = (hasExactPlaces: boolean) =>
      send("POST", `/api/programmes/main/members/${manager.id}`, head, { hasExactPlaces });
    const before = [await places(), await scope()];
    expect(JSON.stringify(before)).not.toMatch(/46\.654321|CODE-|Yard/);
    expect(before[0]).toContainEqual({
      ...{ apiary: "apiary-neighbour", code: null, name: null, latitude: 46.65, longitude: -93.15 },
      ...{ coordinateUncertaintyMetres: expect.any(Number), isExact: false, colonies: 0 },
    });
    await change(true);
    expect(await places()).toContainEqual(expect.objectContaining({ latitude: 46.654321, name: "Yard of neighbour" }));
    expect(JSON.stringify(await pulled(manager))).toContain("46.654321");
    expect(await scope()).not.toBe(before[1]);
    await change(false);
    expect([await places(), await scope()]).toEqual(before);
  });

  it("[AC27] each role's pushes are judged: another's case, a foreign device, a kind that is not its own", async () => {
    const url = "/api/programmes/main/entries";
    const codes = async (who: Person, entries: readonly Entry[]) =>
      (await send("POST", url, who, { entries }))
        .json()
        .refused.map((each: { problem: { code: string } }) => each.problem.code);
    const onAnothers = ownDrafts("neighbour", 46)[2];
    const change: EntryDraft = {
      ...{ kind: "reasoning-set", at: "2026-04-01", about: ["main"] },
      data: { on: "2026-04-01", nothingWrong: 0.5 },
    };
    for (const role of roles) {
      const phone = writer({ device: `second-${role}` });
      const first = onAnothers ? phone.write(onAnothers) : [];
      const may = ["inspector", "reviewer", "administrator"].includes(role);
      expect(await codes(people[role], first), role).toEqual(may ? [] : ["entry-not-allowed"]);
      const other = writer({ device: `third-${role}` }).write(change);
      const mayReason = ["reviewer", "administrator"].includes(role);
      expect(await codes(people[role], other), role).toEqual(mayReason ? [] : ["entry-not-allowed"]);
      const forged = writer({ device: neighbour.device, head: neighbour.phone.head() }).write(bee(2));
      expect(await codes(people[role], forged), role).toEqual(["device-of-another"]);
      const asService = writer({ device: "service" }).write(bee(3));
      expect(await codes(people[role], asService), role).toEqual(["device-of-another"]);
    }
  });
});

it("[SG230] every answer above was such as the OpenAPI document says", () => {
  expect(answers.misfits).toEqual([]);
  expect(answers.held.size).toBeGreaterThan(80);
});
