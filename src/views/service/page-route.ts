/** Serves the built page. Files whose name holds their hash are kept for a year; the page itself is asked for each time. */
import { existsSync } from "node:fs";
import path from "node:path";
import fastifyStatic from "@fastify/static";
import type { FastifyInstance } from "fastify";
import { problem } from "../../units/index.ts";
import { workerPolicy } from "./content-security.ts";
import { sendProblems } from "./problem-replies.ts";

export async function servePage(app: FastifyInstance, folder: string | null): Promise<void> {
  const hasPage = folder !== null && existsSync(path.join(folder, "index.html"));
  if (hasPage)
    await app.register(fastifyStatic, {
      root: folder,
      preCompressed: true,
      dotfiles: "ignore",
      cacheControl: false,
      setHeaders: (reply, file) => {
        const named = path.basename(path.dirname(file)) === "assets";
        reply.header("cache-control", named ? "public, max-age=31536000, immutable" : "no-cache");
        const policy = named ? workerPolicy(path.basename(file).replace(/\.br$/, "")) : null;
        if (policy !== null) reply.header("content-security-policy", policy);
      },
    });
  app.setNotFoundHandler((request, reply) => {
    const isApi = request.url === "/api" || request.url.startsWith("/api/");
    const wantsPage = request.method === "GET" && (request.headers.accept ?? "").includes("text/html");
    if (hasPage && !isApi && wantsPage) return reply.header("cache-control", "no-cache").sendFile("index.html");
    return sendProblems(
      reply,
      404,
      problem("address-unknown", "blocked", null, {
        given: `${request.method} ${request.url}`,
        expected: "an address of /api/openapi.json",
      }),
    );
  });
}
