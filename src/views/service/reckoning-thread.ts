/** The thread that reckons for the service: one question after the other, each answered or failed by its number. */
import { availableParallelism } from "node:os";
import { parentPort } from "node:worker_threads";
import { askSeason, type Reply, verbNamed } from "../../reasoning/index.ts";
import { openForecastThreads } from "./forecast-threads.ts";

export interface ThreadQuestion {
  readonly number: number;
  readonly verb: string;
  readonly body: unknown;
}

/** The reply, or what broke: a fault of the program, not of the question. */
export type ThreadAnswer =
  | { readonly number: number; readonly reply: Reply }
  | { readonly number: number; readonly broke: string };

/** A forecast gets threads of its own; they go with this one. No more than help with the usual number of draws. */
const forecasts = openForecastThreads(Math.min(availableParallelism(), 4));

parentPort?.on("message", async ({ number, verb, body }: ThreadQuestion) => {
  parentPort?.postMessage(await answerTo(number, verb, body));
});

async function answerTo(number: number, verb: string, body: unknown): Promise<ThreadAnswer> {
  try {
    const reply = verb === "season" ? await askSeason(body, forecasts.forecast) : verbNamed(verb)?.ask(body);
    return reply ? { number, reply } : { number, broke: `no verb ${verb}` };
  } catch (trouble) {
    return { number, broke: trouble instanceof Error ? `${trouble.name}: ${trouble.message}` : String(trouble) };
  }
}
