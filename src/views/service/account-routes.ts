/** Routes about one account: its password and passkeys, its data given out whole, its erasure. */
import * as z from "zod";
import { isRole, ownsByRoot } from "../../access/index.ts";
import { answered, blocked, problem } from "../../units/index.ts";
import { doneBy, type MemberRoute, memberRoute, ofMember, unknown } from "./member-route.ts";
import * as shape from "./member-shapes.ts";
import { addPasskey, options, questionToAdd, response } from "./passkeys.ts";
import { hashed, newPasswordTrouble } from "./passwords.ts";

export const accountRoutes: readonly MemberRoute[] = [
  memberRoute({
    ...{ operationId: "changePassword", method: "POST", path: "/members/:member/password", act: "change-credentials" },
    takesSecret: true,
    summary: "Choose another password; every other session of the member ends. Only one's own.",
    whose: ofMember,
    body: z.strictObject({ old: shape.password, new: shape.password }),
    async handle({ who, body, at, gate }) {
      const { members } = who.store;
      const checked = await gate.checkPassword(who.store, who.member.name, body.old);
      if (!checked.ok) return { ...checked, status: 403 };
      const unfit = await newPasswordTrouble(body.new, who.member.name);
      if (unfit) return { ...blocked({ ...unfit, field: "new" }), status: 422 };
      await members.setPassword(who.member.id, await hashed(body.new), who.session.id, doneBy(who, at));
      return answered(null);
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
    async handle({ who, body, gate, host }) {
      const checked = await gate.checkPassword(who.store, who.member.name, body.password);
      if (!checked.ok) return { ...checked, status: 403 };
      return questionToAdd(gate, who, host);
    },
  }),
  memberRoute({
    operationId: "addPasskey",
    ...{ method: "POST", path: "/members/:member/passkeys", act: "change-credentials" },
    summary: "Keep the passkey that answers the question.",
    whose: ofMember,
    body: z.strictObject({ name: shape.name, response }),
    async handle({ who, body, gate, host }) {
      const added = await addPasskey(gate, who, { ...body, host });
      return added.ok ? added : { ...added, status: 403 };
    },
  }),
  memberRoute({
    operationId: "removePasskey",
    ...{ method: "DELETE", path: "/members/:member/passkeys/:passkey", act: "change-credentials" },
    summary: "Take a passkey away.",
    whose: ofMember,
    handle: async ({ who, params, at }) =>
      (await who.store.members.removePasskey(params.passkey ?? "", who.member.id, doneBy(who, at)))
        ? answered(null)
        : unknown("passkey-failed"),
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
