/** The book of members over HTTP: members, invitations, sessions, devices, apiaries, places, audit. */
import * as z from "zod";
import { coarsened, type Relation } from "../../access/index.ts";
import { settled } from "../../casebook/index.ts";
import { answered } from "../../units/index.ts";
import { accountRoutes } from "./account-routes.ts";
import type { Who } from "./gate.ts";
import { doneBy, type MemberRoute, memberRoute, ofMember, unknown } from "./member-route.ts";
import * as shape from "./member-shapes.ts";
import { invitationDays, newInvitation } from "./passwords.ts";

const one = (): Relation => "own";
const anyones = (): Relation => "other";
const region = (): Relation => "region";

/** Whose a device or session is; one that is not there is another's, so that its absence is not told apart. */
const ofThing = async (
  who: Who,
  find: (who: Who) => Promise<{ readonly member: string } | undefined>,
): Promise<Relation> => ((await find(who))?.member === who.member.id ? "own" : "other");

const deviceNamed = (device: string | undefined) => async (who: Who) =>
  (await who.store.members.devices()).find((each) => each.device === device);
const sessionNamed = (id: string | undefined, at: string) => async (who: Who) =>
  (await who.store.members.sessions(null, at)).find((each) => each.id === id);

export const memberRoutes: readonly MemberRoute[] = [
  memberRoute({
    ...{ operationId: "listMembers", method: "GET", path: "/members", act: "see-members" },
    summary: "Members with their devices: oneself, or everyone for an administrator.",
    whose: one,
    answer: z.strictObject({ members: z.array(shape.member), devices: z.array(shape.device) }),
    async handle({ who }) {
      const isAll = who.role === "administrator";
      const [members, devices] = [await who.store.members.members(), await who.store.members.devices()];
      const own = who.member.id;
      return answered({
        members: members.filter((each) => isAll || each.id === own),
        devices: devices.filter((each) => isAll || each.member === own),
      });
    },
  }),
  memberRoute({
    ...{ operationId: "changeMember", method: "POST", path: "/members/:member", act: "change-member" },
    summary: "Give another role, grant or revoke exact places, or end a membership with its sessions.",
    whose: ofMember,
    body: z.strictObject({
      role: shape.role.optional(),
      hasExactPlaces: z.boolean().optional(),
      ended: z.literal(true).optional(),
    }),
    answer: shape.member,
    async handle({ who, params, body, at }) {
      const { role, hasExactPlaces, ended } = body;
      const to = {
        ...(role === undefined ? {} : { role }),
        ...(hasExactPlaces === undefined ? {} : { hasExactPlaces }),
        ...(ended === undefined ? {} : { ended }),
      };
      return who.store.members.change(params.member ?? "", to, doneBy(who, at));
    },
  }),
  memberRoute({
    ...{ operationId: "giveApiary", method: "POST", path: "/members/:member/apiaries/:apiary", act: "give-apiary" },
    summary: "Make an apiary a member's own, with its cases and their past.",
    whose: ofMember,
    handle: ({ who, params, at }) =>
      who.store.members.giveApiary(params.member ?? "", params.apiary ?? "", doneBy(who, at)),
  }),
  memberRoute({
    ...{ operationId: "takeApiary", method: "DELETE", path: "/members/:member/apiaries/:apiary", act: "give-apiary" },
    summary: "Take an apiary back from a member.",
    whose: ofMember,
    handle: ({ who, params, at }) =>
      who.store.members.takeApiary(params.member ?? "", params.apiary ?? "", doneBy(who, at)),
  }),
  memberRoute({
    ...{ operationId: "invite", method: "POST", path: "/invitations", act: "invite" },
    summary: `Make an invitation that is used once, within ${invitationDays} days. Its secret is told here and never again.`,
    whose: anyones,
    body: z.strictObject({ role: shape.role }),
    answer: z.strictObject({ invitation: shape.invitation, secret: z.string() }),
    async handle({ who, body, at }) {
      const { secret, ...made } = newInvitation(who.programme, at);
      const invitation = await who.store.members.invite({ role: body.role, ...made }, doneBy(who, at));
      return answered({ invitation, secret });
    },
  }),
  memberRoute({
    ...{ operationId: "listInvitations", method: "GET", path: "/invitations", act: "invite" },
    summary: "Invitations, used and open; their secrets are not kept.",
    whose: anyones,
    answer: z.strictObject({ invitations: z.array(shape.invitation) }),
    handle: async ({ who }) => answered({ invitations: await who.store.members.invitations() }),
  }),
  memberRoute({
    ...{ operationId: "cancelInvitation", method: "DELETE", path: "/invitations/:invitation", act: "invite" },
    summary: "Take an invitation back before it is used.",
    whose: anyones,
    handle: async ({ who, params, at }) =>
      (await who.store.members.cancelInvitation(params.invitation ?? "", doneBy(who, at)))
        ? answered(null)
        : unknown("invitation-over"),
  }),
  memberRoute({
    ...{ operationId: "listSessions", method: "GET", path: "/members/:member/sessions", act: "see-sessions" },
    summary: "Sessions of a member that go on.",
    whose: ofMember,
    answer: z.strictObject({ sessions: z.array(shape.session) }),
    async handle({ who, params, at }) {
      const sessions = await who.store.members.sessions(params.member ?? "", at);
      return answered({
        sessions: sessions.map(({ endedAt: _ended, why: _why, ...each }) => ({
          ...each,
          isThis: each.id === who.session.id,
        })),
      });
    },
  }),
  memberRoute({
    ...{ operationId: "endSession", method: "DELETE", path: "/sessions/:session", act: "end-session" },
    summary: "End a session: one's own, or anyone's for an administrator.",
    whose: ({ who, params }) => ofThing(who, sessionNamed(params.session, who.session.seenAt)),
    handle: async ({ who, params, at }) =>
      (await who.store.members.endSession(params.session ?? "", "ended", doneBy(who, at)))
        ? answered(null)
        : unknown("session-unknown"),
  }),
  memberRoute({
    ...{ operationId: "registerDevice", method: "POST", path: "/devices", act: "register-device" },
    summary: "Tie this session to the device it is used on, and the device to the member.",
    whose: one,
    body: z.strictObject({ device: shape.deviceId, name: shape.name }),
    answer: shape.device,
    handle: ({ who, body, at }) =>
      who.store.members.registerDevice(
        { ...body, session: who.session.id, mayClaim: who.role === "administrator" },
        doneBy(who, at),
      ),
  }),
  memberRoute({
    ...{ operationId: "loseDevice", method: "POST", path: "/devices/:device/loss", act: "report-device-lost" },
    summary: "This phone is lost: its session ends, and what it sends later is kept apart.",
    whose: ({ who, params }) => ofThing(who, deviceNamed(params.device)),
    answer: shape.device,
    handle: ({ who, params, at }) => who.store.members.loseDevice(params.device ?? "", doneBy(who, at)),
  }),
  memberRoute({
    ...{ operationId: "returnDevice", method: "DELETE", path: "/devices/:device/loss", act: "return-device" },
    summary: "The phone is back in its member's hands: what it sends is taken in again.",
    whose: ({ who, params }) => ofThing(who, deviceNamed(params.device)),
    answer: shape.device,
    handle: ({ who, params, at }) => who.store.members.returnDevice(params.device ?? "", doneBy(who, at)),
  }),
  memberRoute({
    ...{ operationId: "listPlaces", method: "GET", path: "/places", act: "see-places" },
    summary: "Where the programme's apiaries lie: the middle of a grid cell unless exact places were granted.",
    whose: region,
    answer: z.strictObject({ places: z.array(shape.place) }),
    handle: async ({ who }) => answered({ places: await placesFor(who) }),
  }),
  memberRoute({
    ...{ operationId: "audit", method: "GET", path: "/audit", act: "read-audit" },
    summary: "Who did what and when, newest first, from the journal.",
    whose: region,
    query: z.strictObject({
      before: z.coerce.number().int().min(1).optional(),
      limit: z.coerce.number().int().min(1).max(500).default(100),
    }),
    answer: z.strictObject({ entries: z.array(shape.audited) }),
    async handle({ who, query }) {
      const rows = await who.store.members.audit(query.before ?? null, query.limit);
      return answered({
        entries: rows.map(({ position, header, data, member }) => ({
          ...{ position, at: header.at, recordedAt: header.recordedAt, kind: header.kind, about: header.about },
          ...{ device: header.device, member, act: data },
        })),
      });
    },
  }),
  ...accountRoutes,
];

/** Apiaries whose place is known. Code and name say where it is, so they go with the exact place alone. */
async function placesFor({ store, role, member }: Who) {
  const isExact = role !== "manager" || member.hasExactPlaces;
  const { apiaries } = await store.states();
  return Object.values(apiaries).flatMap(({ id, record, colonies }): readonly z.output<typeof shape.place>[] => {
    const known = settled(record);
    if (known?.latitude === undefined || known.longitude === undefined) return [];
    const { latitude, longitude, coordinateUncertaintyMetres = null, code, name } = known;
    const counted = { apiary: id, isExact, colonies: Object.keys(colonies).length };
    if (isExact) return [{ ...counted, code, name, latitude, longitude, coordinateUncertaintyMetres }];
    const coarse = coarsened({ latitude, longitude });
    return [
      {
        ...{ ...counted, code: null, name: null, latitude: coarse.latitude, longitude: coarse.longitude },
        coordinateUncertaintyMetres: coarse.coordinateUncertaintyMetres,
      },
    ];
  });
}
