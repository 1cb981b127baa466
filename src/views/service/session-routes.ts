/** Coming in and going out: sign in and out, who is signed in, and the use of an invitation. */
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import * as z from "zod";
import { programmeName } from "../../journal/index.ts";
import type { Member, ServerStore } from "../../storage/server.ts";
import { type Problem, problem } from "../../units/index.ts";
import { type Gate, logRefusal } from "./gate.ts";
import { read } from "./member-route.ts";
import * as shape from "./member-shapes.ts";
import { wrongPassword } from "./password-check.ts";
import { hashed, newPasswordTrouble, replacementTrouble, tokenHash } from "./passwords.ts";
import { sendProblems } from "./problem-replies.ts";

export const signInBody = z.strictObject({
  programme: programmeName.default("main"),
  name: shape.name,
  password: shape.password,
  /** In exchange for a password that was drawn: left out for any other. */
  next: shape.password.optional(),
});
export const lookBody = z.strictObject({ secret: z.string().min(1).max(200) });
export const lookAnswer = z.strictObject({ programme: z.string(), role: shape.role, endsAt: z.string() });
export const acceptBody = z.strictObject({
  secret: z.string().min(1).max(200),
  name: shape.name,
  password: shape.password,
});

/** Tries a minute from one address at what takes a password or a secret. A choice of ours. */
export const triesPerMinute = 10;

export function sessionRoutes(app: FastifyInstance, gate: Gate): void {
  const slow = { config: { rateLimit: { max: triesPerMinute, timeWindow: 60_000 } } };

  app.get("/api/session", async (request, reply) =>
    reply.header("cache-control", "no-store").send(await standingOf(gate, request)),
  );

  app.post("/api/session", slow, async (request, reply) => {
    const given = read(signInBody, request.body);
    if (!given.ok) return sendProblems(reply, 422, ...given.problems);
    const store = await gate.settings.programmes.find(given.value.programme);
    const checked = await gate.checkPassword({ ...given.value, store, log: request.log });
    if (!checked.ok) return sendProblems(reply, checked.problem.code === "sign-in-waits" ? 429 : 403, checked.problem);
    const member = (await store?.members.members())?.find(({ id }) => id === checked.member);
    if (!store || !member) return sendProblems(reply, 403, wrongPassword);
    const refused = (code: string) =>
      logRefusal(request.log, { code, programme: store.programme, member: checked.member });
    const unfit = await exchangeTrouble(given.value, checked.isDrawn);
    if (unfit) {
      refused(unfit.code);
      return sendProblems(reply, 422, { ...unfit, field: "next" });
    }
    if (given.value.next !== undefined) {
      // In place of what was checked: of two at once, one exchanges it.
      const own = { member: member.id, password: await hashed(given.value.next), inPlaceOf: checked.kept };
      if (!(await store.members.setPassword(own, { by: member.id, at: gate.instant() }))) {
        refused(wrongPassword.code);
        return sendProblems(reply, 403, wrongPassword);
      }
    }
    return begun(gate, request, reply, { store, member });
  });

  app.delete("/api/session", async (request, reply) => {
    const who = await gate.who(request);
    if (!("ended" in who))
      await who.store.members.endSession(who.session.id, "signed-out", { by: who.member.id, at: gate.instant() });
    gate.forget(reply);
    // What the browser still holds of the answers goes too; the records of the device are the member's to remove.
    return reply.header("clear-site-data", '"cache"').code(204).send();
  });

  app.post("/api/invitation", slow, async (request, reply) => {
    const given = read(lookBody, request.body);
    if (!given.ok) return sendProblems(reply, 422, ...given.problems);
    const store = await invited(gate, given.value.secret);
    const invitation = await store?.members.invitation(tokenHash(given.value.secret), gate.instant());
    if (!store || !invitation) return sendProblems(reply, 404, problem("invitation-over", "blocked", null));
    return reply.send({ programme: store.programme, role: invitation.role, endsAt: invitation.endsAt });
  });

  app.post("/api/invitation/acceptance", slow, async (request, reply) => {
    const given = read(acceptBody, request.body);
    if (!given.ok) return sendProblems(reply, 422, ...given.problems);
    const { secret, name, password } = given.value;
    const unfit = await newPasswordTrouble(password, name);
    if (unfit) return sendProblems(reply, 422, unfit);
    const store = await invited(gate, secret);
    const accepted = await store?.members.accept(
      tokenHash(secret),
      { name, password: await hashed(password) },
      gate.instant(),
    );
    if (!store || !accepted) return sendProblems(reply, 404, problem("invitation-over", "blocked", null));
    if (!accepted.ok)
      return sendProblems(reply, accepted.problems[0]?.code === "name-taken" ? 409 : 404, ...accepted.problems);
    return begun(gate, request, reply, { store, member: accepted.value });
  });
}

/** A drawn password comes in together with the one that replaces it, and any other alone; null when it is so. */
async function exchangeTrouble(
  { password, next, name }: z.output<typeof signInBody>,
  isDrawn: boolean,
): Promise<Problem | null> {
  if (next === undefined) return isDrawn ? problem("password-drawn", "blocked", "password") : null;
  if (!isDrawn) return problem("password-not-drawn", "blocked", "password");
  return replacementTrouble({ old: password, next, name });
}

/** The programme that a secret is of; it says so itself. */
async function invited(gate: Gate, secret: string): Promise<ServerStore | null> {
  const [programme = ""] = secret.split(".");
  return programmeName.safeParse(programme).success ? gate.settings.programmes.find(programme) : null;
}

/** A new session in place of the one there was: a token never outlives a sign-in. */
export async function begun(
  gate: Gate,
  request: FastifyRequest,
  reply: FastifyReply,
  { store, member }: { readonly store: ServerStore; readonly member: Member },
): Promise<FastifyReply> {
  const before = await gate.who(request);
  if (!("ended" in before))
    await before.store.members.endSession(before.session.id, "signed-out", {
      by: before.member.id,
      at: gate.instant(),
    });
  await gate.begin(request, reply, { store, member });
  return reply
    .header("cache-control", "no-store")
    .send({ isGuarded: true, programme: store.programme, member, ended: null });
}

async function standingOf(gate: Gate, request: FastifyRequest): Promise<z.output<typeof shape.standing>> {
  const who = await gate.who(request);
  if (!("ended" in who))
    return { isGuarded: true, programme: who.programme, member: { ...who.member, role: who.role }, ended: null };
  const isGuarded = await gate.isGuarded("main");
  return { isGuarded, programme: null, member: null, ended: who.ended === "unknown" ? null : who.ended };
}
