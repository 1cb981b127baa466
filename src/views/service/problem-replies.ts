/** Trouble over HTTP is always the same JSON, `{ problems: [{ field, given, expected, message }] }`, never a stack trace. */
import type { FastifyError, FastifyInstance, FastifyReply } from "fastify";
import { type ProblemLine, problemLine } from "../../reasoning/index.ts";
import { StoreTrouble } from "../../storage/server.ts";
import { type Problem, problem } from "../../units/index.ts";
import { problemSentence } from "../words/index.ts";

export interface ProblemsBody {
  readonly problems: readonly ProblemLine[];
}

/** Sends problems with this status. */
export const sendProblems = (reply: FastifyReply, status: number, ...problems: readonly Problem[]): FastifyReply =>
  reply
    .code(status)
    .send({ problems: problems.map((each) => problemLine(each, problemSentence)) } satisfies ProblemsBody);

/** Turns the server's own errors into problems. An error of ours is logged with its stack and told without it. */
export function answerTrouble(app: FastifyInstance): void {
  app.setErrorHandler((error: FastifyError, request, reply) => {
    if (error instanceof StoreTrouble) {
      request.log.error(error);
      return sendProblems(reply.header("retry-after", "5"), 503, error.problem);
    }
    const status = error.statusCode ?? 500;
    if (status === 429) return sendProblems(reply, 429, tooMany(Number(reply.getHeader("retry-after") ?? 60)));
    const known = byCode[error.code];
    if (known) return sendProblems(reply, status, known(request.headers["content-type"]));
    if (status < 500)
      return sendProblems(reply, status, problem("request-unfit", "blocked", null, { expected: error.message }));
    request.log.error(error);
    return sendProblems(reply, 500, problem("error-of-ours", "blocked", null));
  });
}

const tooMany = (seconds: number): Problem => problem("too-many-requests", "blocked", null, { slots: { seconds } });

const byCode: Readonly<Record<string, (contentType: string | undefined) => Problem>> = {
  FST_ERR_CTP_INVALID_MEDIA_TYPE: (given) =>
    problem("content-type-unfit", "blocked", "content-type", { given, expected: "application/json" }),
  FST_ERR_CTP_INVALID_JSON_BODY: () =>
    problem("body-not-json", "blocked", "body", { given: "text that is no JSON", expected: "JSON" }),
  FST_ERR_CTP_EMPTY_JSON_BODY: () =>
    problem("request-body-missing", "blocked", "body", { given: "nothing", expected: "JSON" }),
  FST_ERR_CTP_BODY_TOO_LARGE: () =>
    problem("body-too-large", "blocked", "body", {
      given: "more than fits",
      expected: "a smaller body; send it in parts",
    }),
};
