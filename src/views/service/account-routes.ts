/** Routes about one account: its password and passkeys, its data given out whole, its erasure. */
import * as z from "zod";
import { isRole, ownsByRoot } from "../../access/index.ts";
import { answered, blocked, type Problem, problem } from "../../units/index.ts";
import { logRefusal } from "./gate.ts";
import { type Answer, type Asked, doneBy, type MemberRoute, memberRoute, ofMember, unknown } from "./member-route.ts";
import * as shape from "./member-shapes.ts";
import { addPasskey, options, questionToAdd, response } from "./passkeys.ts";
import { wrongPassword } from "./password-check.ts";
import { hashed, replacementTrouble } from "./passwords.ts";

const drawn = problem("password-drawn", "blocked", "password");

const refused = (trouble: Problem) => ({ ...blocked(trouble), status: 403 });

const checked = ({ who, gate, log }: Pick<Asked<unknown, unknown>, "who" | "gate" | "log">, password: string) =>
  gate.checkPassword({ store: who.store, name: who.member.name, password, log });

/** Why an act that asks for the password again is not done; null when it may be. A drawn one is to be exchanged first. */
async function passwordMissing(
  asked: Pick<Asked<unknown, unknown>, "who" | "gate" | "log">,
  password: string,
): Promise<Answer | null> {
  const given = await checked(asked, password);
  if (!given.ok) return refused(given.problem);
  if (!given.isDrawn) return null;
  const { store, member } = asked.who;
  logRefusal(asked.log, { code: drawn.code, programme: store.programme, member: member.id });
  return refused(drawn);
}

export const accountRoutes: readonly MemberRoute[] = [
  memberRoute({
    ...{ operationId: "changePassword", method: "POST", path: "/members/:member/password", act: "change-credentials" },
    takesSecret: true,
    summary: "Choose another password; every other session of the member ends. Only one's own.",
    whose: ofMember,
    body: z.strictObject({ old: shape.password, new: shape.password }),
    async handle({ body, at, ...asked }) {
      const { member, session, store } = asked.who;
      const given = await checked(asked, body.old);
      if (!given.ok) return refused(given.problem);
      const unfit = await replacementTrouble({ old: body.old, next: body.new, name: member.name });
      if (unfit) return { ...blocked({ ...unfit, field: "new" }), status: 422 };
      const fresh = { member: member.id, password: await hashed(body.new), keep: session.id, inPlaceOf: given.kept };
      if (await store.members.setPassword(fresh, doneBy(asked.who, at))) return answered(null);
      logRefusal(asked.log, { code: wrongPassword.code, programme: store.programme, member: member.id });
      return refused(wrongPassword);
    },
  }),
  memberRoute({
    ...{ operationId: "listPasskeys", method: "GET", path: "/members/:member/passkeys", act: "change-credentials" },
    summary: "One's own passkeys.",
    whose: ofMember,
    answer: z.strictObject({ passkeys: z.array(shape.passkey) }),
    async handle({ who }) {
      const passkeys = await who.store.members.passkeys(who.member.id);
      return answered({ passkeys: passkeys.map(({ id, name, madeAt, usedAt }) => ({ id, name, madeAt, usedAt })) });
    },
  }),
  memberRoute({
    operationId: "passkeyQuestion",
    ...{ method: "POST", path: "/members/:member/passkeys/question", act: "change-credentials" },
    takesSecret: true,
    summary: "The question that makes a passkey; it needs the password.",
    whose: ofMember,
    body: z.strictObject({ password: shape.password }),
    answer: options,
    handle: async (asked) =>
      (await passwordMissing(asked, asked.body.password)) ?? questionToAdd(asked.gate, asked.who, asked.host),
  }),
  memberRoute({
    operationId: "addPasskey",
    ...{ method: "POST", path: "/members/:member/passkeys", act: "change-credentials" },
    summary: "Keep the passkey that answers the question.",
    whose: ofMember,
    body: z.strictObject({ name: shape.name, response }),
    async handle({ who, body, gate, host, log }) {
      const added = await addPasskey(gate, who, { ...body, host });
      if (added.ok) return added;
      const [{ code } = { code: "" }] = added.problems;
      logRefusal(log, { code, programme: who.programme, member: who.member.id });
      return { ...added, status: 403 };
    },
  }),
  memberRoute({
    operationId: "removePasskey",
    ...{ method: "POST", path: "/members/:member/passkeys/:passkey/removal", act: "change-credentials" },
    takesSecret: true,
    summary: "Take a passkey away; it needs the password.",
    whose: ofMember,
    body: z.strictObject({ password: shape.password }),
    async handle(asked) {
      const missing = await passwordMissing(asked, asked.body.password);
      if (missing) return missing;
      const { who, params, at } = asked;
      const isGone = await who.store.members.removePasskey(params.passkey ?? "", who.member.id, doneBy(who, at));
      return isGone ? answered(null) : unknown("passkey-unknown");
    },
  }),
  memberRoute({
    ...{ operationId: "exportMember", method: "GET", path: "/members/:member/data", act: "export-data" },
    summary:
      "Everything that is kept of a member: account, devices, sessions, and every entry that is his or hers. The files that these name are read one by one.",
    whose: ofMember,
    answer: z.strictObject({
      member: shape.member,
      devices: z.array(shape.device),
      sessions: z.array(z.looseObject({ id: z.string() })),
      entries: z.array(z.looseObject({ header: z.unknown(), body: z.unknown() })),
    }),
    async handle({ who, params, at }) {
      const { members } = who.store;
      const member = (await members.members()).find((each) => each.id === params.member);
      if (!member) return unknown("member-unknown");
      await members.note({ act: "data-exported", member: member.id }, doneBy(who, at));
      return answered({
        member,
        devices: (await members.devices()).filter((each) => each.member === member.id),
        sessions: await members.sessions(member.id, at),
        entries: await members.entriesOf(member.id, isRole(member.role) && ownsByRoot(member.role)),
      });
    },
  }),
  memberRoute({
    ...{ operationId: "eraseMember", method: "POST", path: "/members/:member/erasure", act: "erase-data" },
    summary:
      "Erase what is kept of a member: name, password and passkeys, and, of a keeper, body and salt of every entry about his or her apiaries and cases. Headers stay, and the chain still verifies.",
    whose: ofMember,
    body: z.strictObject({ name: shape.name, reason: shape.reason }),
    answer: z.strictObject({ erased: z.number().int() }),
    async handle({ who, params, body, at }) {
      const { members } = who.store;
      const member = (await members.members()).find((each) => each.id === params.member);
      if (!member) return unknown("member-unknown");
      // Typed by hand, so that a slip of the finger erases nobody.
      if (member.name !== body.name)
        return {
          ...blocked(problem("field-unfit", "blocked", "name", { given: body.name, expected: "the member’s name" })),
          status: 422,
        };
      return members.erase(member.id, body.reason, doneBy(who, at));
    },
  }),
];
