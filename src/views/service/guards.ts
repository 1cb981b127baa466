/** Who may speak to a service that has no accounts yet: programs of this machine and the page it serves, nobody's web page. */
import type { FastifyInstance, FastifyRequest } from "fastify";
import { problem } from "../../units/index.ts";
import { sendProblems } from "./problem-replies.ts";

const loopbackNames = ["localhost", "127.0.0.1", "[::1]"] as const;

/** Whether an address to listen on can be reached from this machine alone. */
export const isLoopback = (host: string): boolean =>
  host === "localhost" || host === "::1" || host === "[::1]" || /^127(\.\d{1,3}){3}$/.test(host);

/**
 * Refuses requests whose Host is not this machine (a foreign name that resolves to it: DNS rebinding), and writes that
 * another origin's page sends.
 */
export function guard(app: FastifyInstance, port: () => number): void {
  app.addHook("onRequest", async (request, reply) => {
    const allowed = hostsAt(port());
    const { host } = request.headers;
    if (host === undefined || !allowed.includes(host.toLowerCase()))
      return sendProblems(
        reply,
        421,
        problem("host-unknown", "blocked", "host", { given: host, expected: `one of ${allowed.join(", ")}` }),
      );
    if (isWrite(request) && !isOwnOrigin(request, allowed))
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

const hostsAt = (port: number): readonly string[] =>
  loopbackNames.flatMap((name) => (port === 80 ? [name, `${name}:80`] : [`${name}:${port}`]));

const isWrite = ({ method }: FastifyRequest): boolean => !["GET", "HEAD", "OPTIONS"].includes(method);

function isOwnOrigin({ headers }: FastifyRequest, allowed: readonly string[]): boolean {
  if (headers["sec-fetch-site"] === "cross-site") return false;
  return headers.origin === undefined || allowed.some((host) => headers.origin === `http://${host}`);
}
