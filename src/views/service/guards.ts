/** Who may speak to a service that has no accounts yet: programs of this machine and the page it serves, nobody's web page. */
import type { FastifyInstance, FastifyRequest } from "fastify";
import { problem } from "../../units/index.ts";
import { sendProblems } from "./problem-replies.ts";

/** Whether an address to listen on can be reached from this machine alone. */
export const isLoopback = (host: string): boolean =>
  ["localhost", "::1", "[::1]"].includes(host) || /^127(\.\d{1,3}){3}$/.test(host);

/**
 * Refuses requests whose Host is not this machine (a foreign name that resolves to it: DNS rebinding), and writes that
 * another origin's page sends.
 */
export function guard(app: FastifyInstance, port: () => number): void {
  app.addHook("onRequest", async (request, reply) => {
    const { host } = request.headers;
    if (host === undefined || !isOwnHost(host, port()))
      return sendProblems(
        reply,
        421,
        problem("host-unknown", "blocked", "host", {
          given: host,
          expected: `localhost:${port()} or a loopback address`,
        }),
      );
    if (isWrite(request) && !isOwnOrigin(request, port()))
      return sendProblems(
        reply,
        403,
        problem("origin-foreign", "blocked", "origin", {
          given: request.headers.origin,
          expected: "a page this service served, or no browser",
        }),
      );
  });
}

/** A loopback name or address at the port that this service listens on. */
function isOwnHost(host: string, port: number): boolean {
  const [, name = "", given = "80"] = /^(.*?)(?::(\d{1,5}))?$/.exec(host.toLowerCase()) ?? [];
  return isLoopback(name) && Number(given) === port;
}

const isWrite = ({ method }: FastifyRequest): boolean => !["GET", "HEAD", "OPTIONS"].includes(method);

function isOwnOrigin({ headers }: FastifyRequest, port: number): boolean {
  if (headers["sec-fetch-site"] === "cross-site") return false;
  const { origin } = headers;
  return origin === undefined || (origin.startsWith("http://") && isOwnHost(origin.slice(7), port));
}
