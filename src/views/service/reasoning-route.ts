/** POST /api/reasoning/:verb: the same JSON as the command line. */
import type { FastifyInstance } from "fastify";
import { replyBody, unknownVerb, verbNamed, verbs } from "../../reasoning/index.ts";
import { jsonTrouble, problem } from "../../units/index.ts";
import { problemSentence } from "../words/index.ts";
import { type Gate, signInNeeded } from "./gate.ts";
import { sendProblems } from "./problem-replies.ts";
import { openReckoner } from "./reckoner.ts";

/** Where others can reach the service, only its members let it reckon. */
export function reasoningRoute(app: FastifyInstance, gate: Gate): void {
  const reckoner = openReckoner();
  app.addHook("onClose", () => reckoner.close());
  app.post<{ Params: { verb: string } }>("/api/reasoning/:verb", { bodyLimit: 1024 * 1024 }, async (request, reply) => {
    if (gate.settings.address !== null && "ended" in (await gate.who(request)))
      return sendProblems(reply, 401, signInNeeded);
    const verb = verbNamed(request.params.verb);
    if (!verb)
      return sendProblems(
        reply,
        404,
        unknownVerb(
          request.params.verb,
          verbs.map(({ name }) => name),
        ),
      );
    const expected = jsonTrouble(request.body);
    if (expected !== null) return sendProblems(reply, 422, problem("field-unfit", "blocked", "body", { expected }));
    const answer = await reckoner.ask(verb.name, request.body);
    if (answer === null) return sendProblems(reply, 503, problem("reckoning-too-long", "blocked", null));
    return reply.code(answer.kind === "unfit" ? 422 : 200).send(replyBody(answer, problemSentence));
  });
}
