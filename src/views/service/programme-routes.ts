/** The exchange of entries: devices push what is theirs and pull what is new, programme by programme. */
import type { FastifyInstance, FastifyRequest } from "fastify";
import * as z from "zod";
import { addingTrouble, ownsByRoot, seesOnlyOwn, shared } from "../../access/index.ts";
import { type Entry, programmeName } from "../../journal/index.ts";
import { largestPush } from "../../storage/index.ts";
import { type Gate, signInNeeded, type Who } from "./gate.ts";
import { read } from "./member-route.ts";
import { sendProblems } from "./problem-replies.ts";

export interface Address {
  Params: { programme: string };
}

const pushLimitBytes = 16 * 1024 * 1024;

/** Each entry's own shape is judged by the store, entry by entry, so that one bad entry refuses itself alone. */
export const pushBody = z.strictObject({ entries: z.array(z.unknown()).max(largestPush) });

const whole = (highest: number) => z.coerce.number().int().min(0).max(highest);
export const pullQuery = z.strictObject({
  cursor: whole(Number.MAX_SAFE_INTEGER).default(0),
  limit: whole(5000).min(1).default(500),
});
export const address = z.strictObject({ programme: programmeName });

/** Whoever may come to a programme: a member of it, or anyone where it has none and is open; else nobody. */
export async function asking(
  gate: Gate,
  request: FastifyRequest,
  programme: string,
): Promise<Who | "anyone" | "nobody"> {
  if (!(await gate.isGuarded(programme))) return "anyone";
  const who = await gate.who(request);
  return "ended" in who || who.programme !== programme ? "nobody" : who;
}

export function programmeRoutes(app: FastifyInstance, gate: Gate): void {
  const { programmes } = gate.settings;
  const entries = "/api/programmes/:programme/entries";

  app.post<Address>(entries, { bodyLimit: pushLimitBytes }, async (request, reply) => {
    const to = read(address, request.params);
    if (!to.ok) return sendProblems(reply, 404, ...to.problems);
    const who = await asking(gate, request, to.value.programme);
    if (who === "nobody") return sendProblems(reply, 401, signInNeeded);
    const given = read(pushBody, request.body);
    if (!given.ok) return sendProblems(reply, 422, ...given.problems);
    const sent = given.value.entries as readonly Entry[];
    if (who === "anyone") return (await programmes.open(to.value.programme)).push(sent);
    return who.store.members.push(sent, {
      ...{ by: who.member.id, at: gate.instant(), mayClaim: who.role === "administrator" },
      trouble: (each) => addingTrouble(who.role, each),
    });
  });

  app.get<Address>(entries, async (request, reply) => {
    const from = read(address, request.params);
    if (!from.ok) return sendProblems(reply, 404, ...from.problems);
    const who = await asking(gate, request, from.value.programme);
    if (who === "nobody") return sendProblems(reply, 401, signInNeeded);
    const page = read(pullQuery, request.query);
    if (!page.ok) return sendProblems(reply, 422, ...page.problems);
    const { cursor, limit } = page.value;
    reply.header("cache-control", "no-store");
    if (who !== "anyone") return pullFor(who, cursor, limit);
    const store = await programmes.find(from.value.programme);
    return store ? store.pull(cursor, limit) : { entries: [], cursor: 0, more: false };
  });

  app.delete<Address>("/api/programmes/:programme", async (request, reply) => {
    const which = read(address, request.params);
    if (!which.ok) return sendProblems(reply, 404, ...which.problems);
    const who = await asking(gate, request, which.value.programme);
    if (who === "nobody") return sendProblems(reply, 401, signInNeeded);
    const removed = await programmes.remove(which.value.programme);
    return removed.ok ? reply.code(204).send() : sendProblems(reply, 403, ...removed.problems);
  });
}

/** A page of what the member may see. `scope` changes with the rights, so that the device knows to begin anew. */
async function pullFor({ store, member, role }: Who, cursor: number, limit: number) {
  const asker = { role, hasExactPlaces: member.hasExactPlaces };
  const looked = { member: member.id, onlyOwn: seesOnlyOwn(role), byRoot: ownsByRoot(role) };
  const page = await store.members.pull(looked, cursor, limit);
  const entries = page.entries.flatMap(({ entry, whose }) => shared(entry, asker, whose) ?? []);
  return { entries, cursor: page.cursor, more: page.more, scope: `${member.id} ${role} ${member.hasExactPlaces}` };
}
