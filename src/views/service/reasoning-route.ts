/** POST /api/reasoning/:verb: the same JSON as the command line. */
import type { FastifyInstance } from "fastify";
import { replyBody, unknownVerb, verbNamed, verbs } from "../../reasoning/index.ts";
import { problemSentence } from "../words/index.ts";
import { sendProblems } from "./problem-replies.ts";

export function reasoningRoute(app: FastifyInstance): void {
  app.post<{ Params: { verb: string } }>("/api/reasoning/:verb", { bodyLimit: 1024 * 1024 }, async (request, reply) => {
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
    const answer = verb.ask(request.body);
    return reply.code(answer.kind === "unfit" ? 422 : 200).send(replyBody(answer, problemSentence));
  });
}
