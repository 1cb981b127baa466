/** A route of the book of members: told once, served, documented and tested from the same words. */
import type { FastifyBaseLogger, FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import * as z from "zod";
import { type Act, mayAct, notAllowed, type Relation } from "../../access/index.ts";
import { readInput, type Shape } from "../../reasoning/index.ts";
import { problem, type Result } from "../../units/index.ts";
import { type Gate, signInNeeded, type Who } from "./gate.ts";
import { sendProblems } from "./problem-replies.ts";
import { triesPerMinute } from "./session-routes.ts";

export interface Asked<Body, Query> {
  readonly who: Who;
  readonly params: Readonly<Record<string, string>>;
  readonly body: Body;
  readonly query: Query;
  readonly at: string;
  readonly reply: FastifyReply;
  readonly gate: Gate;
  /** The name by which the service was asked. */
  readonly host: string | undefined;
  readonly log: FastifyBaseLogger;
}

/** What a handler gives back: the answer, or problems with their status. */
export type Answer =
  | { readonly ok: true; readonly value: unknown }
  | (Extract<Result<never>, { ok: false }> & { readonly status?: number });

export interface MemberRoute<B extends z.ZodType = z.ZodType, Q extends z.ZodType = z.ZodType> {
  readonly operationId: string;
  readonly method: "GET" | "POST" | "DELETE";
  /** After `/api/programmes/:programme`. */
  readonly path: string;
  readonly summary: string;
  /** It takes a secret: as few tries a minute as at signing in. */
  readonly takesSecret?: true;
  readonly act: Act;
  /** Whose the thing is that is asked for, by what stands in the address. */
  readonly whose: (asked: Pick<Asked<unknown, unknown>, "who" | "params">) => Relation | Promise<Relation>;
  readonly body?: B;
  readonly query?: Q;
  /** Shape of the answer; left out: none, status 204. */
  readonly answer?: z.ZodType;
  readonly handle: (asked: Asked<z.output<B>, z.output<Q>>) => Promise<Answer>;
}

/** Keeps the types of body and query together while a list of routes is written. */
export const memberRoute = <B extends z.ZodType = z.ZodUndefined, Q extends z.ZodType = z.ZodUndefined>(
  route: MemberRoute<B, Q>,
): MemberRoute => route as unknown as MemberRoute;

export const read = <S extends z.ZodType>(schema: S, raw: unknown): Result<z.output<S>> =>
  readInput(schema, z.toJSONSchema(schema, { io: "input" }) as Shape, raw);

export const underProgramme = "/api/programmes/:programme";

/** Registers a route: session first, then the role, then what was sent. Nothing is told to who may not know. */
export function serveMemberRoute(app: FastifyInstance, gate: Gate, route: MemberRoute): void {
  app.route({
    method: route.method,
    url: `${underProgramme}${route.path}`,
    ...(route.takesSecret ? { config: { rateLimit: { max: triesPerMinute, timeWindow: 60_000 } } } : {}),
    handler: async (request: FastifyRequest, reply) => {
      reply.header("cache-control", "no-store");
      const params = request.params as Readonly<Record<string, string>>;
      const who = await gate.who(request);
      if ("ended" in who) return sendProblems(reply, 401, signInNeeded);
      // Another programme is answered as a thing that is not allowed, whether it exists or not.
      const isOwn = who.programme === params.programme;
      if (!isOwn || !mayAct(who.role, route.act, await route.whose({ who, params }))) {
        request.log.warn({ notAllowed: route.act, member: who.member.id });
        return sendProblems(reply, 403, notAllowed(who.role, route.act));
      }
      const body = route.body ? read(route.body, request.body) : { ok: true as const, value: undefined };
      const query = route.query ? read(route.query, request.query) : { ok: true as const, value: undefined };
      if (!body.ok) return sendProblems(reply, 422, ...body.problems);
      if (!query.ok) return sendProblems(reply, 422, ...query.problems);
      const asked = {
        who,
        params,
        body: body.value,
        query: query.value,
        at: gate.instant(),
        reply,
        gate,
        host: request.headers.host,
        log: request.log,
      };
      const answer = await route.handle(asked);
      if (!answer.ok) return sendProblems(reply, answer.status ?? 409, ...answer.problems);
      return route.answer ? reply.send(answer.value) : reply.code(204).send();
    },
  });
}

/** Whose the member is that the address names. */
export const ofMember = ({ who, params }: Pick<Asked<unknown, unknown>, "who" | "params">): Relation =>
  params.member === who.member.id ? "own" : "other";

/** There is no such thing. */
export const unknown = (code: string): Answer => ({
  ok: false,
  problems: [problem(code, "blocked", null)],
  status: 404,
});

export const doneBy = (who: Who, at: string) => ({ by: who.member.id, at });
