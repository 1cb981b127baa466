/** GET /api/health: who answers, and in which version. GET /healthz: that it answers, without a word more. */
import type { FastifyInstance } from "fastify";
import { knowledgeVersion } from "../../knowledge/index.ts";
import { healthAddress } from "./guards.ts";

export function healthRoute(app: FastifyInstance, version: string): void {
  app.get(healthAddress, async (_request, reply) => reply.header("cache-control", "no-store").send({ ok: true }));
  app.get("/api/health", async (_request, reply) =>
    reply.header("cache-control", "no-store").send({ name: "skepsis", version, knowledge: knowledgeVersion }),
  );
}
