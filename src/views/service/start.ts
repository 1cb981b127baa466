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
  /** Where people reach it, as they type it; null on this machine alone. */
  readonly address: URL | null;
  /** Proxies whose word is taken for who asks. */
  readonly trustedProxies: readonly string[];
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
  const open = await openness(options);
  if (open !== null) {
    say(open);
    await records.close();
    return 1;
  }
  const state = { port: options.port };
  const app = await service({
    version: options.version,
    programmes: programmesOf(records),
    page: options.page,
    address: options.address,
    trustedProxies: options.trustedProxies,
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
  if (options.address) say(`People reach it at ${options.address.origin}; everything asks them to sign in.`);
  options.announce(`http://${host.includes(":") && !host.startsWith("[") ? `[${host}]` : host}:${state.port}`);
  say(`Records are kept in ${records.shown}. Stop with Ctrl+C.`);
  void records.has("main").catch((trouble: unknown) => say(notYet(trouble)));
  if (!stop.aborted) await once(stop, "abort");
  await closed(app.close());
  return 0;
}

/** Why the service may not be reached by others as it is; null when it may, or when nobody else can reach it. */
async function openness({ host, address, records }: StartOptions): Promise<string | null> {
  if (isLoopback(host) && address === null) return null;
  if (address === null)
    return `Not started: ${host} can be reached by other machines. Say by --address https://… where people reach it, so that their passwords travel over TLS; or use 127.0.0.1.`;
  if (address.protocol !== "https:")
    return `Not started: ${address.origin} is not https, and passwords would travel in the open. Put a proxy that speaks TLS before it.`;
  try {
    for (const programme of await records.programmes()) {
      const store = await records.open(programme);
      const has = await store.members.hasAdministrator().finally(() => store.close());
      if (has) return null;
    }
  } catch (trouble) {
    return `Not started: ${notYet(trouble)}`;
  }
  return "Not started: others can reach it, and no programme has an administrator yet. Make one first: skepsis member add --role administrator --name NAME";
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
