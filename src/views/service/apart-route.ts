/** GET what the service keeps apart, each beside what stands under its number: for those who settle it. */
import type { FastifyInstance } from "fastify";
import { mayAdd, mayEverAdd, notAddable, shared, type Whose } from "../../access/index.ts";
import { type KeptApart, rootOf } from "../../casebook/index.ts";
import type { Entry } from "../../journal/index.ts";
import { type Gate, signInNeeded, type Who } from "./gate.ts";
import { read } from "./member-route.ts";
import { sendProblems } from "./problem-replies.ts";
import { type Address, address, asking } from "./programme-routes.ts";

/** Told in one answer at most; what waits for a person comes first. */
const mostTold = 200;

/** What the page is told of an entry kept apart. */
export interface ToldApart extends KeptApart {
  /** Whether whoever asks may add an entry that says the same. */
  readonly mayTakeIn: boolean;
}

export function apartRoute(app: FastifyInstance, gate: Gate): void {
  app.get<Address>("/api/programmes/:programme/apart", async (request, reply) => {
    const of = read(address, request.params);
    if (!of.ok) return sendProblems(reply, 404, ...of.problems);
    const who = await asking(gate, request, of.value.programme);
    if (who === "nobody") return sendProblems(reply, 401, signInNeeded);
    if (who !== "anyone" && !mayEverAdd(who.role, "kept-apart-settled"))
      return sendProblems(reply, 403, notAddable(who.role, "kept-apart-settled"));
    reply.header("cache-control", "no-store");
    const store = who === "anyone" ? await gate.settings.programmes.find(of.value.programme) : who.store;
    const { apart, more, waiting } = (await store?.apartUpTo(mostTold)) ?? { apart: [], more: 0, waiting: 0 };
    const told = apart.flatMap((kept) => (who === "anyone" ? { ...kept, mayTakeIn: true } : (toldTo(who, kept) ?? [])));
    return { apart: told, more, waiting };
  });
}

/** As the member may see it; null when not at all. */
function toldTo(who: Who, kept: KeptApart): ToldApart | null {
  const entry = seenBy(who, kept.entry);
  if (entry === null) return null;
  const standing = kept.standing && seenBy(who, kept.standing);
  const mayTakeIn = mayAdd(who.role, kept.entry.header.kind, whoseIs(who, kept.entry));
  return { ...kept, entry, standing, mayTakeIn };
}

const seenBy = (who: Who, entry: Entry): Entry | null =>
  shared(entry, { role: who.role, hasExactPlaces: who.member.hasExactPlaces }, whoseIs(who, entry));

/** The stingier reading: what is kept apart belongs to no one yet, so it is another's. */
const whoseIs = ({ programme }: Who, entry: Entry): Whose => (rootOf(entry) === programme ? "common" : "other");
