/** Who may speak to the service: programs of this machine and the page it serves, nobody's web page. */
import type { FastifyInstance, FastifyRequest } from "fastify";
import { problem } from "../../units/index.ts";
import { sendProblems } from "./problem-replies.ts";

/** Whether an address to listen on can be reached from this machine alone. */
export const isLoopback = (host: string): boolean =>
  ["localhost", "::1", "[::1]"].includes(host) || /^127(\.\d{1,3}){3}$/.test(host);

/** Whether the process is there and answers: for whoever watches over it, at any name. */
export const healthAddress = "/healthz";

/**
 * Refuses requests whose Host is not this machine (a foreign name that resolves to it: DNS rebinding), and writes that
 * another origin's page sends. With an address of its own, that one is the only name and the only origin.
 */
export function guard(app: FastifyInstance, port: () => number, address: URL | null): void {
  const isOwn = (host: string) => (address ? host.toLowerCase() === address.host : isOwnHost(host, port()));
  app.addHook("onRequest", async (request, reply) => {
    const { host } = request.headers;
    if (request.url === healthAddress) return undefined;
    if (host === undefined || !isOwn(host))
      return sendProblems(
        reply,
        421,
        problem("host-unknown", "blocked", "host", {
          given: host,
          expected: address?.host ?? `localhost:${port()} or a loopback address`,
        }),
      );
    if (isWrite(request) && !isOwnOrigin(request, port(), address))
      return sendProblems(
        reply,
        403,
        problem("origin-foreign", "blocked", "origin", {
          given: request.headers.origin,
          expected: "a page this service served, or no browser",
        }),
      );
    return undefined;
  });
}

/** A loopback name or address at the port that this service listens on. */
function isOwnHost(host: string, port: number): boolean {
  const [, name = "", given = "80"] = /^(.*?)(?::(\d{1,5}))?$/.exec(host.toLowerCase()) ?? [];
  return isLoopback(name) && Number(given) === port;
}

const isWrite = ({ method }: FastifyRequest): boolean => !["GET", "HEAD", "OPTIONS"].includes(method);

/**
 * A browser says whose page sends a write, and one that is not ours is refused: a sibling site's too. What says nothing
 * is no browser, and holds no cookie that it did not get by signing in itself.
 */
function isOwnOrigin({ headers }: FastifyRequest, port: number, address: URL | null): boolean {
  if (["cross-site", "same-site"].includes(String(headers["sec-fetch-site"]))) return false;
  const { origin } = headers;
  if (address !== null) return origin === undefined || origin === address.origin;
  return origin === undefined || (origin.startsWith("http://") && isOwnHost(origin.slice(7), port));
}
