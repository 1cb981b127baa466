/** GET /api/health: who answers, and in which version. The page judges by it whether there is a connection. */
import type { FastifyInstance } from "fastify";
import { knowledgeVersion } from "../../knowledge/index.ts";

export function healthRoute(app: FastifyInstance, version: string): void {
  app.get("/api/health", async (_request, reply) =>
    reply.header("cache-control", "no-store").send({ name: "skepsis", version, knowledge: knowledgeVersion }),
  );
}
