/** GET /api/openapi.json: what this service takes and gives. */
import type { FastifyInstance } from "fastify";
import { openApiDocument } from "./open-api.ts";

export function openApiRoute(app: FastifyInstance, version: string): void {
  const document = JSON.stringify(openApiDocument(version));
  app.get("/api/openapi.json", async (_request, reply) => reply.type("application/json").send(document));
}
