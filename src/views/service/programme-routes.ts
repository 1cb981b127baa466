/** The exchange of entries: devices push what is theirs and pull what is new, programme by programme. */
import type { FastifyInstance } from "fastify";
import * as z from "zod";
import { type Entry, programmeName } from "../../journal/index.ts";
import { readInput, type Shape } from "../../reasoning/index.ts";
import { largestPush } from "../../storage/index.ts";
import type { Result } from "../../units/index.ts";
import { sendProblems } from "./problem-replies.ts";
import type { Programmes } from "./programmes.ts";

interface Address {
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
const address = z.strictObject({ programme: programmeName });

const read = <S extends z.ZodType>(schema: S, raw: unknown): Result<z.output<S>> =>
  readInput(schema, z.toJSONSchema(schema, { io: "input" }) as Shape, raw);

export function programmeRoutes(app: FastifyInstance, programmes: Programmes): void {
  const entries = "/api/programmes/:programme/entries";

  app.post<Address>(entries, { bodyLimit: pushLimitBytes }, async ({ params, body }, reply) => {
    const [to, given] = [read(address, params), read(pushBody, body)];
    if (!to.ok) return sendProblems(reply, 404, ...to.problems);
    if (!given.ok) return sendProblems(reply, 422, ...given.problems);
    const store = await programmes.open(to.value.programme);
    return store.push(given.value.entries as readonly Entry[]);
  });

  app.get<Address>(entries, async ({ params, query }, reply) => {
    const [from, page] = [read(address, params), read(pullQuery, query)];
    if (!from.ok) return sendProblems(reply, 404, ...from.problems);
    if (!page.ok) return sendProblems(reply, 422, ...page.problems);
    const { cursor, limit } = page.value;
    const store = await programmes.find(from.value.programme);
    reply.header("cache-control", "no-store");
    return store ? store.pull(cursor, limit) : { entries: [], cursor: 0, more: false };
  });

  app.delete<Address>("/api/programmes/:programme", async ({ params }, reply) => {
    const which = read(address, params);
    if (!which.ok) return sendProblems(reply, 404, ...which.problems);
    const removed = await programmes.remove(which.value.programme);
    return removed.ok ? reply.code(204).send() : sendProblems(reply, 403, ...removed.problems);
  });
}
