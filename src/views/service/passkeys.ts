/** Passkeys: a key that the device keeps and opens by its own lock. The service keeps the public half and asks once. */
import type { FastifyInstance, FastifyRequest } from "fastify";
import * as z from "zod";
import { programmeName } from "../../journal/index.ts";
import type { Passkey, ServerStore } from "../../storage/server.ts";
import { answered, blocked, problem, type Result } from "../../units/index.ts";
import { type Gate, logRefusal, type Who } from "./gate.ts";
import { read } from "./member-route.ts";
import { tokenHash } from "./passwords.ts";
import { sendProblems } from "./problem-replies.ts";
import { begun, triesPerMinute } from "./session-routes.ts";

/** A question is answered within so long. A choice of ours. */
const questionMilliseconds = 5 * 60_000;

/** EdDSA, ES256, RS256 (COSE): what authenticators speak today, and nothing that Node calls an experiment. */
const algorithms = [-8, -7, -257];

const failed = problem("passkey-failed", "blocked", null);

/** What a browser gives back; its inside is judged by the library. */
export const response = z.looseObject({ id: z.string().min(1).max(2000), type: z.literal("public-key") });
export const questionBody = z.strictObject({ programme: programmeName.default("main") });
export const answerBody = z.strictObject({ programme: programmeName.default("main"), response });
export const options = z.looseObject({ challenge: z.string() });

/** The name that a passkey is bound to. A bare address has none: on its own machine the service must be met as localhost. */
function party(
  { settings: { address } }: Gate,
  host: string | undefined,
): { readonly id: string; readonly origin: string } | null {
  if (address) return { id: address.hostname, origin: address.origin };
  return /^localhost(:\d+)?$/i.test(host ?? "") ? { id: "localhost", origin: `http://${host}` } : null;
}

type Library = typeof import("@simplewebauthn/server");
/** Loaded when the first passkey is met: it is large, and most starts need none. */
const library = (): Promise<Library> => import("@simplewebauthn/server");

const put = (store: ServerStore, purpose: string, challenge: string, gate: Gate, member: string | null) =>
  store.members.putChallenge({
    ...{ hash: tokenHash(challenge), purpose, member },
    endsAt: new Date(gate.settings.now() + questionMilliseconds).toISOString(),
  });

/** The question that makes a new passkey for a member. */
export async function questionToAdd(
  gate: Gate,
  { store, member }: Who,
  host: string | undefined,
): Promise<Result<object>> {
  const bound = party(gate, host);
  if (!bound) return blocked(problem("passkey-needs-name", "blocked", null));
  const known = await store.members.passkeys(member.id);
  const made = await (await library()).generateRegistrationOptions({
    ...{ rpName: "Skepsis", rpID: bound.id, userName: member.name, userDisplayName: member.name },
    userID: new Uint8Array(Buffer.from(member.id)),
    attestationType: "none",
    excludeCredentials: known.map(({ id }) => ({ id })),
    supportedAlgorithmIDs: algorithms,
    authenticatorSelection: { residentKey: "required", userVerification: "required" },
  });
  await put(store, "add", made.challenge, gate, member.id);
  return answered(made);
}

/** Keeps a new passkey when it answers the question that was put to this member. */
export async function addPasskey(
  gate: Gate,
  { store, member }: Who,
  given: { readonly name: string; readonly response: z.output<typeof response>; readonly host: string | undefined },
): Promise<Result<null>> {
  const bound = party(gate, given.host);
  if (!bound) return blocked(problem("passkey-needs-name", "blocked", null));
  try {
    const verified = await (await library()).verifyRegistrationResponse({
      response: given.response as unknown as Parameters<Library["verifyRegistrationResponse"]>[0]["response"],
      expectedChallenge: async (challenge) =>
        (await store.members.takeChallenge(tokenHash(challenge), "add", gate.instant()))?.member === member.id,
      ...{ expectedOrigin: bound.origin, expectedRPID: bound.id, requireUserVerification: true },
      supportedAlgorithmIDs: algorithms,
    });
    if (!verified.verified || (await store.members.passkey(verified.registrationInfo.credential.id)))
      return blocked(failed);
    const { id, publicKey, counter, transports = [] } = verified.registrationInfo.credential;
    const kept = {
      id,
      member: member.id,
      publicKey: Buffer.from(publicKey).toString("base64url"),
      counter,
      transports,
    };
    await store.members.addPasskey({ ...kept, name: given.name }, { by: member.id, at: gate.instant() });
    return answered(null);
  } catch {
    return blocked(failed); // the library tells a lie of the browser by throwing
  }
}

/** The member whose passkey answers the question that was put. */
async function memberBy(
  gate: Gate,
  store: ServerStore,
  given: z.output<typeof response>,
  host: string | undefined,
): Promise<string | null> {
  const [bound, passkey] = [party(gate, host), await store.members.passkey(given.id)];
  if (!bound || !passkey) return null;
  try {
    const verified = await (await library()).verifyAuthenticationResponse({
      response: given as unknown as Parameters<Library["verifyAuthenticationResponse"]>[0]["response"],
      expectedChallenge: async (challenge) =>
        (await store.members.takeChallenge(tokenHash(challenge), "sign-in", gate.instant())) !== null,
      ...{ expectedOrigin: bound.origin, expectedRPID: bound.id, requireUserVerification: true },
      credential: credentialOf(passkey),
    });
    if (!verified.verified) return null;
    await store.members.notePasskeyUse(passkey.id, verified.authenticationInfo.newCounter, gate.instant());
    return passkey.member;
  } catch {
    return null;
  }
}

const credentialOf = ({ id, publicKey, counter }: Passkey) => ({
  ...{ id, counter },
  publicKey: new Uint8Array(Buffer.from(publicKey, "base64url")),
});

/** Signing in by a passkey: a question, then its answer. */
export function passkeyRoutes(app: FastifyInstance, gate: Gate): void {
  const slow = { config: { rateLimit: { max: triesPerMinute, timeWindow: 60_000 } } };
  const { programmes } = gate.settings;

  app.post("/api/session/passkey-question", slow, async (request: FastifyRequest, reply) => {
    const given = read(questionBody, request.body);
    if (!given.ok) return sendProblems(reply, 422, ...given.problems);
    const bound = party(gate, request.headers.host);
    if (!bound) return sendProblems(reply, 409, problem("passkey-needs-name", "blocked", null));
    const made = await (await library()).generateAuthenticationOptions({
      rpID: bound.id,
      userVerification: "required",
    });
    // A programme that is not there gets a question too: nobody can answer it.
    const store = await programmes.find(given.value.programme);
    if (store) await put(store, "sign-in", made.challenge, gate, null);
    return reply.header("cache-control", "no-store").send(made);
  });

  app.post("/api/session/passkey", slow, async (request: FastifyRequest, reply) => {
    const given = read(answerBody, request.body);
    if (!given.ok) return sendProblems(reply, 422, ...given.problems);
    const store = await programmes.find(given.value.programme);
    const id = store ? await memberBy(gate, store, given.value.response, request.headers.host) : null;
    const member = (await store?.members.members())?.find((each) => each.id === id && each.endedAt === null);
    if (!store || !member) {
      const tried = await store?.members.passkey(given.value.response.id);
      const programme = store?.programme ?? null;
      logRefusal(request.log, { code: failed.code, programme, member: tried?.member ?? null });
      return sendProblems(reply, 403, failed);
    }
    return begun(gate, request, reply, { store, member });
  });
}
