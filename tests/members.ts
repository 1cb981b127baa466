/** A service with a member of every role, each with a device, an apiary, a case and a vial of his or her own: all invented. */
import { createHash } from "node:crypto";
import type { FastifyInstance } from "fastify";
import type { Role } from "../src/access/index.ts";
import type { Entry, EntryDraft } from "../src/journal/index.ts";
import type { ServerStore } from "../src/storage/server.ts";
import { type Writer, writer } from "./journals/writer.ts";

export const start = Date.parse("2026-04-01T08:00:00.000Z");
export const at = new Date(start).toISOString();

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly programme: string;
  /** What the browser would send. */
  readonly cookie: string;
  readonly session: string;
  readonly device: string;
  readonly phone: Writer;
  readonly apiary: string;
  readonly case: string;
  readonly vial: string;
  readonly entries: readonly Entry[];
}

const sha = (text: string): string => createHash("sha256").update(text).digest("hex");

/** Another session of the member, by a token that is made up; returns id and cookie. */
export async function anotherSession(store: ServerStore, member: string, token: string, name = "skepsis") {
  const whole = `${store.programme}.${token}`;
  const endsAt = new Date(start + 90 * 86_400_000).toISOString();
  const session = await store.members.beginSession({ member, hash: sha(whole), client: "a browser", endsAt }, at);
  return { session: session.id, cookie: `${name}=${whole}` };
}

/** An apiary, a case with a caller and a story, a vial with one bee read: each word holds whose it is. */
export function ownDrafts(key: string, latitude: number): readonly EntryDraft[] {
  const [apiary, kase, vial] = [`apiary-${key}`, `case-${key}`, `vial-${key}`];
  return [
    {
      ...{ kind: "apiary-registered", at: "2026-03-02", about: [apiary] },
      data: { code: `CODE-${key}`, name: `Yard of ${key}`, place: `Place of ${key}`, latitude, longitude: -93.123456 },
    },
    {
      ...{ kind: "case-opened", at: "2026-03-03", about: [kase, apiary] },
      data: {
        ...{ code: `C-${key}`, openedOn: "2026-03-03", question: "why", colonies: [] },
        ...{ caller: `Caller of ${key}`, story: `Story of ${key}` },
      },
    },
    {
      ...{ kind: "finding-recorded", at: "2026-03-03", about: [kase] },
      data: { colony: null, finding: "crawlers", state: "present", on: "2026-03-03", note: `Finding of ${key}` },
    },
    {
      ...{ kind: "specimen-labelled", at: "2026-03-04", about: [vial, kase, "colony-1"] },
      data: {
        ...{ code: `V-${key}`, case: kase, colony: "colony-1", takenOn: "2026-03-04", from: "S" },
        ...{ preservative: "ethanol-70", purpose: "detect" },
      },
    },
    {
      ...{ kind: "reading-started", at: "2026-03-05", about: [vial, `reading-${key}`] },
      data: {
        reading: `reading-${key}`,
        reader: `Reader of ${key}`,
        on: "2026-03-05",
        method: "dissection",
        target: 50,
      },
    },
    {
      ...{ kind: "bee-read", at: "2026-03-05", about: [vial, `reading-${key}`] },
      data: { reading: `reading-${key}`, bee: 1, lost: false, left: "mites-dark", right: "clear" },
    },
  ];
}

/** Admits a person, signed in on a phone of his or her own, with things of his or her own. */
export async function person(store: ServerStore, role: Role, key: string, latitude: number): Promise<Person> {
  const name = `Name of ${key}`;
  const admitted = await store.members.admit({ name, role, password: null }, { by: null, at });
  if (!admitted.ok) throw new Error(`${name} is not admitted`);
  const { id } = admitted.value;
  const { session, cookie } = await anotherSession(store, id, `token-of-${key}`);
  const [device, doing] = [`phone-${key}`, { by: id, at }];
  await store.members.registerDevice({ device, name: `Phone of ${key}`, session, mayClaim: false }, doing);
  const phone = writer({ device, programme: store.programme, author: `Author ${key}` });
  const entries = phone.write(...ownDrafts(key, latitude));
  const pushed = await store.members.push(entries, { ...doing, mayClaim: false, trouble: () => null });
  if (pushed.refused.length > 0) throw new Error(JSON.stringify(pushed.refused));
  return {
    ...{ id, name, role, programme: store.programme, cookie, session, device, phone, entries },
    ...{ apiary: `apiary-${key}`, case: `case-${key}`, vial: `vial-${key}` },
  };
}

/** A request as the page or a program sends it. */
export const sender =
  (app: FastifyInstance, host = "localhost", from: () => string = () => "127.0.0.1") =>
  (
    method: string,
    url: string,
    who: Pick<Person, "cookie"> | null,
    payload?: object,
    headers: Record<string, string> = {},
  ) =>
    app.inject({
      ...{ method: method as "GET", url, remoteAddress: from() },
      headers: { host, ...(who ? { cookie: who.cookie } : {}), ...headers },
      ...(payload === undefined ? {} : { payload }),
    });
