/** The service: one Fastify with its guards, limits, headers and routes. Nothing listens until it is told to. */
import compress from "@fastify/compress";
import helmet from "@fastify/helmet";
import Fastify, { type FastifyInstance } from "fastify";
import { guard } from "./guards.ts";
import { healthRoute } from "./health-route.ts";
import { openApiRoute } from "./open-api-route.ts";
import { servePage } from "./page-route.ts";
import { answerTrouble } from "./problem-replies.ts";
import { programmeRoutes } from "./programme-routes.ts";
import type { Programmes } from "./programmes.ts";
import { reasoningRoute } from "./reasoning-route.ts";

export interface ServiceOptions {
  readonly version: string;
  readonly programmes: Programmes;
  /** Folder of the built page; null serves the API alone. */
  readonly page: string | null;
  /** Port that requests name in their Host header. */
  readonly port: () => number;
  readonly logger?: boolean;
}

export async function service(options: ServiceOptions): Promise<FastifyInstance> {
  const app = Fastify({
    logger: options.logger === true ? { level: "error" } : false,
    bodyLimit: 1024 * 1024,
    requestTimeout: 30_000,
    connectionTimeout: 60_000,
    keepAliveTimeout: 10_000,
    routerOptions: { maxParamLength: 100 },
    return503OnClosing: true,
    forceCloseConnections: "idle",
  });
  answerTrouble(app);
  app.removeContentTypeParser("text/plain");
  guard(app, options.port);
  await app.register(helmet, headers);
  await app.register(compress, { threshold: 1024, encodings: ["br", "gzip"] });
  healthRoute(app, options.version);
  reasoningRoute(app);
  programmeRoutes(app, options.programmes);
  openApiRoute(app, options.version);
  await servePage(app, options.page);
  app.addHook("onClose", () => options.programmes.close());
  return app;
}

/**
 * Everything comes from this address. Styles may stand inline, since the component library sets them while it runs:
 * they can draw but neither run nor fetch from elsewhere. No HTTPS upgrade: the service speaks plain HTTP to its own
 * machine.
 */
const headers = {
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'none'"],
      scriptSrc: ["'self'"],
      workerSrc: ["'self'"],
      styleSrc: ["'self'", "'unsafe-inline'"],
      imgSrc: ["'self'", "data:", "blob:"],
      fontSrc: ["'self'"],
      connectSrc: ["'self'"],
      manifestSrc: ["'self'"],
      frameSrc: ["'self'", "blob:"],
      baseUri: ["'none'"],
      formAction: ["'self'"],
      frameAncestors: ["'none'"],
    },
  },
  strictTransportSecurity: false,
  xFrameOptions: { action: "deny" },
  referrerPolicy: { policy: "no-referrer" },
} as const;
