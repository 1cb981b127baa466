/** For tests of verbs: the answer to a question that is answered, and what a reply objects to. */
import type { AnswerOf, Reply, Verb } from "../src/reasoning/index.ts";

/** What the verb answers; throws with its problems where it does not. */
export function answerTo<V extends Verb>(verb: V, raw: unknown): AnswerOf<V> {
  const reply = verb.ask(raw);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as AnswerOf<V>;
}

/** Each problem of a reply as `code at field: severity`. */
export const objected = (reply: Reply): readonly string[] =>
  reply.problems.map(({ code, field, severity }) => `${code} at ${field}: ${severity}`);
