/** GET the forecasts of the night: derived from the records, given with them. */
import type { FastifyInstance } from "fastify";
import { ownsByRoot, seesOnlyOwn } from "../../access/index.ts";
import type { KeptForecast } from "../../storage/server.ts";
import type { NightFound } from "../model/index.ts";
import { type Gate, signInNeeded } from "./gate.ts";
import { read } from "./member-route.ts";
import { sendProblems } from "./problem-replies.ts";
import { type Address, address, asking } from "./programme-routes.ts";

/** A member is given those of the cases that he or she may read: a reader of vials none, a keeper his or her own. */
export function forecastRoutes(app: FastifyInstance, gate: Gate): void {
  app.get<Address>("/api/programmes/:programme/forecasts", async (request, reply) => {
    const of = read(address, request.params);
    if (!of.ok) return sendProblems(reply, 404, ...of.problems);
    const who = await asking(gate, request, of.value.programme);
    if (who === "nobody") return sendProblems(reply, 401, signInNeeded);
    reply.header("cache-control", "no-store");
    const store = who === "anyone" ? await gate.settings.programmes.find(of.value.programme) : who.store;
    const kept = (await store?.nights.forecasts()) ?? [];
    if (who === "anyone") return { forecasts: kept.map(told) };
    if (!ownsByRoot(who.role)) return { forecasts: [] };
    const own = seesOnlyOwn(who.role) ? new Set(await who.store.members.rootsOf(who.member.id)) : null;
    return { forecasts: kept.filter(({ root }) => own === null || own.has(root)).map(told) };
  });
}

const told = ({ night, stoodAt, position, text }: KeptForecast) => ({
  ...{ night, stoodAt, position },
  ...(JSON.parse(text) as NightFound),
});
