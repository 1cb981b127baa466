/** The thread that reckons for the service: one question after the other, each answered or failed by its number. */
import { parentPort } from "node:worker_threads";
import { type Reply, verbNamed } from "../../reasoning/index.ts";
import { openSeasonThreads, usefulThreads } from "./season-threads.ts";

export interface ThreadQuestion {
  readonly number: number;
  readonly verb: string;
  readonly body: unknown;
}

/** The reply, or what broke: a fault of the program, not of the question. */
export type ThreadAnswer =
  | { readonly number: number; readonly reply: Reply }
  | { readonly number: number; readonly broke: string };

/** A season gets threads of its own; they go with this one. */
const seasons = openSeasonThreads(usefulThreads());

parentPort?.on("message", async ({ number, verb, body }: ThreadQuestion) => {
  parentPort?.postMessage(await answerTo(number, verb, body));
});

async function answerTo(number: number, verb: string, body: unknown): Promise<ThreadAnswer> {
  try {
    const reply = (await seasons.ask(verb, body)) ?? verbNamed(verb)?.ask(body);
    return reply ? { number, reply } : { number, broke: `no verb ${verb}` };
  } catch (trouble) {
    return { number, broke: trouble instanceof Error ? `${trouble.name}: ${trouble.message}` : String(trouble) };
  }
}
