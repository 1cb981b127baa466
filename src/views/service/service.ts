/** The service: one Fastify with its guards, limits, headers and routes. Nothing listens until it is told to. */
import type { Writable } from "node:stream";
import compress from "@fastify/compress";
import cookie from "@fastify/cookie";
import helmet from "@fastify/helmet";
import rateLimit from "@fastify/rate-limit";
import Fastify, { type FastifyError, type FastifyInstance, type FastifyRequest } from "fastify";
import { apartRoute } from "./apart-route.ts";
import { headersFor } from "./content-security.ts";
import { fileRoutes } from "./file-routes.ts";
import { forecastRoutes } from "./forecast-routes.ts";
import { gateOf } from "./gate.ts";
import { guard } from "./guards.ts";
import { healthRoute } from "./health-route.ts";
import { serveMemberRoute } from "./member-route.ts";
import { memberRoutes } from "./member-routes.ts";
import { openApiRoute } from "./open-api-route.ts";
import { servePage } from "./page-route.ts";
import { passkeyRoutes } from "./passkeys.ts";
import { answerTrouble } from "./problem-replies.ts";
import { programmeRoutes } from "./programme-routes.ts";
import type { Programmes } from "./programmes.ts";
import { reasoningRoute } from "./reasoning-route.ts";
import { sessionRoutes } from "./session-routes.ts";

export interface ServiceOptions {
  readonly version: string;
  readonly programmes: Programmes;
  /** Folder of the built page; null serves the API alone. */
  readonly page: string | null;
  /** Port that requests name in their Host header. */
  readonly port: () => number;
  /** Where errors of ours and refusals are written; true: standard output. */
  readonly logger?: true | Writable;
  /** Where people reach it, when not on this machine alone: then everything asks for a session. */
  readonly address?: URL | null;
  /** Addresses of proxies whose word is taken for who asks; left out: nobody's. */
  readonly trustedProxies?: readonly string[];
  /** Milliseconds since 1970 UTC; the machine's clock when left out. */
  readonly now?: () => number;
  /** Requests a minute from one address; left out: as stated. */
  readonly requestsPerMinute?: number;
}

/** Requests a minute from one address where others can reach the service. A choice of ours: a first pull of 100 pages fits. */
const requestsPerMinute = 600;

export async function service(options: ServiceOptions): Promise<FastifyInstance> {
  const { address = null, trustedProxies = [] } = options;
  const gate = gateOf({ programmes: options.programmes, address, now: options.now ?? Date.now });
  const app = Fastify({
    trustProxy: trustedProxies.length > 0 ? [...trustedProxies] : false,
    logger: options.logger === undefined ? false : logOf(options.logger),
    bodyLimit: 1024 * 1024,
    requestTimeout: 30_000,
    connectionTimeout: 60_000,
    keepAliveTimeout: 10_000,
    routerOptions: { maxParamLength: 1500 },
    return503OnClosing: true,
    forceCloseConnections: "idle",
  });
  answerTrouble(app);
  app.removeContentTypeParser("text/plain");
  // Wrong passwords, rights that are lacking, foreign origins and names, and too many requests: to be looked at together.
  app.addHook("onResponse", async ({ method, routeOptions, log }, { statusCode }) => {
    if ([403, 421, 429].includes(statusCode)) log.warn({ refused: statusCode, method, route: routeOptions.url });
  });
  guard(app, options.port, address);
  await app.register(helmet, headersFor(address));
  await app.register(cookie);
  await app.register(rateLimit, {
    global: address !== null,
    max: options.requestsPerMinute ?? requestsPerMinute,
    timeWindow: 60_000,
    cache: 10_000,
  });
  await app.register(compress, { threshold: 1024, encodings: ["br", "gzip"] });
  healthRoute(app, options.version);
  reasoningRoute(app, gate);
  sessionRoutes(app, gate);
  passkeyRoutes(app, gate);
  for (const route of memberRoutes) serveMemberRoute(app, gate, route);
  programmeRoutes(app, gate);
  forecastRoutes(app, gate);
  apartRoute(app, gate);
  fileRoutes(app, gate);
  openApiRoute(app, options.version);
  await servePage(app, options.page);
  app.addHook("onClose", () => options.programmes.close());
  return app;
}

/**
 * Errors of ours and what was refused, without who asked for what: no address, no query, no header; a member by an opaque
 * id. A database tells the row that stood in its way beside its message; that is left out.
 */
const logOf = (to: true | Writable) => ({
  level: "warn",
  ...(to === true ? {} : { stream: to }),
  serializers: {
    req: ({ method, routeOptions }: FastifyRequest) => ({ method, route: routeOptions.url }),
    err: (error: FastifyError) => ({
      ...{ type: error.name, code: error.code, message: error.message, stack: error.stack ?? "" },
    }),
  },
});
