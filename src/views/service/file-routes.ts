/** Photos and voice notes over HTTP: sent piece by piece after their entries, given to whoever is given an entry of who sent them. */
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import * as z from "zod";
import { mayAdd, ownsByRoot, seesOnlyOwn, shareOf } from "../../access/index.ts";
import { largestFile, programmeName } from "../../journal/index.ts";
import type { FileName, FileStanding, ServerStore } from "../../storage/server.ts";
import { type Problem, problem } from "../../units/index.ts";
import { type Gate, signInNeeded, type Who } from "./gate.ts";
import { read } from "./member-route.ts";
import { sendProblems } from "./problem-replies.ts";
import { asking } from "./programme-routes.ts";

interface Address {
  Params: { programme: string; file: string };
}

/** Bytes of a piece at most. */
export const largestPart = 1024 * 1024;

const address = z.strictObject({
  programme: programmeName,
  file: z.string().regex(/^[0-9a-f]{64}$/, { message: "64 lower-case hex digits" }),
});
const whole = (least: number) => z.coerce.number().int().min(least).max(largestFile);
export const partQuery = z.strictObject({ from: whole(0), of: whole(1) });

const endings: Readonly<Record<string, string>> = {
  "image/jpeg": "jpg",
  "audio/webm": "webm",
  "audio/ogg": "ogg",
  "audio/mp4": "m4a",
};

const statuses: Readonly<Record<string, number>> = {
  "file-unnamed": 404,
  "file-gap": 409,
  "files-full": 507,
};

interface Right {
  readonly may: "read" | "send";
}

interface Shelved {
  readonly store: ServerStore;
  /** Who sends, where there are members. */
  readonly sender: string | null;
  /** The file as the asker may read it: an entry that he is given whole names it, and its writer has sent it. */
  readonly open: FileStanding | null;
}

/** The store, or what is answered in its place: who may not know is told the same whether there is such a file or not. */
type Found = Shelved | { readonly status: number; readonly problem: Problem };

const missing: Problem = problem("file-unnamed", "blocked", "file");
const notHere: Problem = problem("file-not-here", "blocked", "file");

type Of = Pick<FileName, "kind" | "whose">;

async function foundFor(
  gate: Gate,
  who: Who | "anyone",
  { programme, file, may }: z.output<typeof address> & Right,
): Promise<Found> {
  if (who === "anyone") {
    const store = await gate.settings.programmes.find(programme);
    const standing = await store?.files.standing(file, null);
    return store && standing ? { store, sender: null, open: standing } : { status: 404, problem: missing };
  }
  const { store, role, member } = who;
  const asker = { role, hasExactPlaces: member.hasExactPlaces };
  const mayRead = ({ kind, whose }: Of) => shareOf(asker, kind, whose) === "whole";
  const mayDo = (of: Of) => mayRead(of) && (may === "read" || mayAdd(role, of.kind, of.whose));
  const looked = { member: member.id, onlyOwn: seesOnlyOwn(role), byRoot: ownsByRoot(role) };
  const naming = await store.files.naming(file, looked);
  if (naming.some(mayDo)) {
    const opening = naming.find((name) => name.hasCome && mayRead(name));
    const open = opening ? { held: opening.bytes, isWhole: true } : null;
    return { store, sender: member.id, open };
  }
  return mayDo({ kind: "file-attached", whose: "other" })
    ? { status: 404, problem: missing }
    : { status: 403, problem: problem("not-allowed", "blocked", null, { slots: { role, act: "read-file" } }) };
}

export function fileRoutes(app: FastifyInstance, gate: Gate): void {
  const at = "/api/programmes/:programme/files/:file";

  /** Session first, then the right, then what was sent. */
  const withFile = async (
    request: FastifyRequest<Address>,
    reply: FastifyReply,
    { may, answer }: Right & { readonly answer: (shelved: Shelved, file: string) => Promise<unknown> },
  ) => {
    reply.header("cache-control", "no-store");
    const named = read(address, request.params);
    if (!named.ok) return sendProblems(reply, 404, ...named.problems);
    const who = await asking(gate, request, named.value.programme);
    if (who === "nobody") return sendProblems(reply, 401, signInNeeded);
    const found = await foundFor(gate, who, { ...named.value, may });
    if ("problem" in found) return sendProblems(reply, found.status, found.problem);
    return answer(found, named.value.file);
  };

  app.get<Address>(at, (request, reply) =>
    withFile(request, reply, {
      may: "read",
      async answer({ store, open }, file) {
        const stored = open && (await store.files.read(file));
        if (stored === null) return sendProblems(reply, 404, notHere);
        const { mediaType, bytes } = stored;
        return reply
          .headers({
            "content-type": mediaType,
            "content-disposition": `attachment; filename="${file.slice(0, 12)}.${endings[mediaType] ?? "bin"}"`,
            // Opened by itself it is no page of ours: nothing in it runs, and it reaches nothing.
            "content-security-policy": "default-src 'none'; sandbox",
          })
          .send(Buffer.from(bytes));
      },
    }),
  );

  app.get<Address>(`${at}/standing`, (request, reply) =>
    withFile(request, reply, {
      may: "send",
      // What another sends is told of to whoever may read it: a copy of the file that he keeps need not stay for its sake.
      answer: async ({ store, sender, open }, file) =>
        (await store.files.standing(file, sender)) ?? open ?? sendProblems(reply, 404, missing),
    }),
  );

  // Bytes are taken here and nowhere else.
  app.register(async (scope) => {
    scope.addContentTypeParser(
      "application/octet-stream",
      { parseAs: "buffer", bodyLimit: largestPart },
      (_, body, done) => done(null, body),
    );
    scope.post<Address>(`${at}/parts`, { bodyLimit: largestPart }, (request, reply) =>
      withFile(request, reply, {
        may: "send",
        async answer({ store, sender }, sha256) {
          const query = read(partQuery, request.query);
          if (!query.ok) return sendProblems(reply, 422, ...query.problems);
          if (!Buffer.isBuffer(request.body))
            return sendProblems(
              reply,
              422,
              problem("content-type-unfit", "blocked", "content-type", {
                given: request.headers["content-type"],
                expected: "application/octet-stream",
              }),
            );
          const taken = await store.files.take({ ...query.value, sha256, bytes: request.body, sender });
          if (taken.ok) return taken.value;
          return sendProblems(reply, statuses[taken.problems[0]?.code ?? ""] ?? 422, ...taken.problems);
        },
      }),
    );
  });
}
