/** Starts the service where it may listen, says so in words, and stops it without losing a write. */
import { once } from "node:events";
import { type Records, StoreTrouble } from "../../storage/server.ts";
import { isLoopback } from "./guards.ts";
import { programmesOf } from "./programmes.ts";
import { service } from "./service.ts";

export interface StartOptions {
  readonly version: string;
  readonly host: string;
  readonly port: number;
  /** Closed when the service stops. */
  readonly records: Records;
  readonly page: string | null;
  readonly say: (text: string) => void;
  /** Told once, when requests are answered. */
  readonly announce: (address: string) => void;
  /** Stops the service. */
  readonly stop: AbortSignal;
}

/** Serves until `stop`. Resolves to 0 after a clean stop, to 1 when it could not start. */
export async function serve(options: StartOptions): Promise<0 | 1> {
  const { host, records, say, stop } = options;
  if (!isLoopback(host)) {
    say(
      `Not started: SKEPSIS_HOST is ${host}, which other machines can reach, and Skepsis has no accounts yet to tell people apart. Use 127.0.0.1.`,
    );
    return 1;
  }
  const state = { port: options.port };
  const app = await service({
    version: options.version,
    programmes: programmesOf(records),
    page: options.page,
    port: () => state.port,
    logger: true,
  });
  try {
    await app.listen({ host: host.replaceAll(/[[\]]/g, ""), port: options.port });
  } catch (error) {
    await app.close();
    say(refusal(error, host, options.port));
    return 1;
  }
  const address = app.server.address();
  if (typeof address === "object" && address) state.port = address.port;
  options.announce(`http://${host.includes(":") && !host.startsWith("[") ? `[${host}]` : host}:${state.port}`);
  say(`Records are kept in ${records.shown}. Stop with Ctrl+C.`);
  void records.has("main").catch((trouble: unknown) => say(notYet(trouble)));
  if (!stop.aborted) await once(stop, "abort");
  await closed(app.close());
  return 0;
}

/** A request that does not end may not hold the stop longer than this. */
const patienceMilliseconds = 5_000;

const closed = (closing: PromiseLike<unknown>): Promise<unknown> =>
  Promise.race([closing, new Promise((resolve) => setTimeout(resolve, patienceMilliseconds).unref())]);

/** The service starts all the same: the page works without its records, and devices keep what they have. */
const notYet = (trouble: unknown): string =>
  `The records cannot be reached now (${trouble instanceof StoreTrouble ? trouble.problem.slots.reason : String(trouble)}). Until they can, entries are refused and stay on the devices.`;

function refusal(error: unknown, host: string, port: number): string {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  if (code === "EADDRINUSE")
    return `Not started: port ${port} is taken, perhaps by a Skepsis already running. Stop that one, or choose another port: SKEPSIS_PORT=${port + 1} npm start`;
  if (code === "EACCES")
    return `Not started: this account may not open port ${port}. Choose one above 1023: SKEPSIS_PORT=4747 npm start`;
  return `Not started: ${host}:${port} cannot be opened (${code || String(error)}).`;
}
