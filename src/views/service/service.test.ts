/** The service answers its own machine alone, and trouble is always JSON in words. */
import { mkdtempSync, writeFileSync } from "node:fs";
import { mkdir } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { brotliCompressSync, brotliDecompressSync } from "node:zlib";
import type { FastifyInstance } from "fastify";
import { afterAll, beforeAll, expect, it } from "vitest";
import { verbs } from "../../reasoning/index.ts";
import { isLoopback } from "./guards.ts";
import { openProgrammes } from "./programmes.ts";
import { service } from "./service.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-service-"));
const host = "localhost:4747";
/** The worker that may compile WebAssembly, and files that are not it. */
const kernel = "assets/season-piece.worker-A_1-b.js";
const others = [
  "assets/season.worker-A_1-b.js",
  "assets/season-piece.worker-a.b.js",
  "assets/my-season-piece.worker-a.js",
  "season-piece.worker-a.js",
];
let app: FastifyInstance;

beforeAll(async () => {
  const page = path.join(folder, "web");
  await mkdir(path.join(page, "assets"), { recursive: true });
  writeFileSync(path.join(page, "index.html"), "<!doctype html><title>Skepsis</title>");
  writeFileSync(path.join(page, "assets", "page-abc.js"), "export {};");
  writeFileSync(path.join(page, "assets", "page-abc.js.br"), brotliCompressSync("export {};"));
  for (const name of [kernel, ...others]) writeFileSync(path.join(page, name), "export {};");
  writeFileSync(path.join(page, `${kernel}.br`), brotliCompressSync("export {};"));
  writeFileSync(path.join(folder, "outside.txt"), "not yours");
  app = await service({
    version: "0.0.0",
    page,
    programmes: openProgrammes(path.join(folder, "data")),
    port: () => 4747,
  });
});
afterAll(() => app.close());

const send = (method: "GET" | "POST", url: string, headers: Record<string, string> = {}, payload?: string) =>
  app.inject({ method, url, headers: { host, ...headers }, ...(payload === undefined ? {} : { payload }) });
const json = { "content-type": "application/json" };

it("says who answers", async () => {
  const reply = await send("GET", "/api/health");
  expect(reply.json()).toMatchObject({
    name: "skepsis",
    version: "0.0.0",
    knowledge: expect.stringMatching(/^\d{4}\.\d+$/),
  });
});

it.each(["evil.example", "evil.example:4747", "localhost", "localhost:80", "127.0.0.1.evil.example:4747"])(
  "does not answer to the name %s",
  async (foreign) => {
    const reply = await send("GET", "/api/health", { host: foreign });
    expect(reply.statusCode).toBe(421);
    expect(reply.json().problems[0]).toMatchObject({ field: "host", given: foreign });
  },
);

it.each(["localhost:4747", "127.0.0.1:4747", "127.8.0.1:4747", "[::1]:4747", "LOCALHOST:4747"])(
  "answers to the name %s",
  async (own) => {
    expect((await send("GET", "/api/health", { host: own })).statusCode).toBe(200);
  },
);

it("takes no write from another origin's page, and reads its own", async () => {
  const write = (headers: Record<string, string>) => send("POST", "/api/reasoning/none", { ...json, ...headers }, "{}");
  expect((await write({ origin: "http://evil.example" })).statusCode).toBe(403);
  expect((await write({ origin: "http://localhost:9999" })).statusCode).toBe(403);
  expect((await write({ origin: "null" })).statusCode).toBe(403);
  expect((await write({ origin: "http://localhost:4747.evil.example" })).statusCode).toBe(403);
  expect((await write({ origin: "https://localhost:4747" })).statusCode).toBe(403);
  expect((await write({ "sec-fetch-site": "cross-site" })).statusCode).toBe(403);
  expect((await write({ origin: "http://localhost:4747" })).statusCode).toBe(404);
  expect((await write({})).statusCode).toBe(404);
});

it("names the verbs when the verb is unknown", async () => {
  const reply = await send("POST", "/api/reasoning/none", json, "{}");
  expect(reply.json().problems[0]).toMatchObject({
    field: "verb",
    given: "none",
    message: expect.stringContaining("none"),
  });
});

it("answers malformed, empty, foreign and huge bodies with problems, never with a stack", async () => {
  const replies = await Promise.all([
    send("POST", "/api/reasoning/none", json, "{"),
    send("POST", "/api/reasoning/none", json, ""),
    send("POST", "/api/reasoning/none", { "content-type": "text/plain" }, "{}"),
    send("POST", "/api/reasoning/none", { "content-type": "application/x-www-form-urlencoded" }, "a=1"),
    send("POST", "/api/reasoning/none", json, JSON.stringify("x".repeat(2 ** 21))),
    send("GET", "/api/none"),
    send("GET", `/api/${"x".repeat(500)}`),
    send("POST", "/api/reasoning/none", json, '{"__proto__":{"a":1}}'),
    send("POST", "/api/reasoning/differential", json, "[".repeat(9000) + "]".repeat(9000)),
    send("POST", "/api/reasoning/differential", json, '{"season":"winter","findings":{"\\ud800":1}}'),
    send("POST", "/api/reasoning/differential", json, '{"season":"winter","findings":{},"seed":1e400}'),
    send(
      "POST",
      "/api/reasoning/differential",
      json,
      JSON.stringify({ findings: { ["x".repeat(2 ** 19)]: "present" } }),
    ),
  ]);
  expect(replies.map(({ statusCode }) => statusCode)).toEqual([
    400, 400, 415, 415, 413, 404, 404, 400, 422, 422, 422, 422,
  ]);
  for (const reply of replies) {
    const [problem] = reply.json().problems;
    expect(Object.keys(problem)).toEqual(["field", "given", "expected", "message"]);
    expect(reply.body).not.toMatch(/\bat .*:\d+:\d+|node_modules|FST_/);
  }
});

it("serves the page for any of its addresses, its files for a year, and nothing beside it", async () => {
  const page = await send("GET", "/cases/1", { accept: "text/html" });
  expect(page.statusCode).toBe(200);
  expect(page.body).toContain("<title>Skepsis");
  expect(page.headers["cache-control"]).toBe("no-cache");
  const asset = await send("GET", "/assets/page-abc.js");
  expect(asset.headers["cache-control"]).toBe("public, max-age=31536000, immutable");
  expect((await send("GET", "/assets/gone.js", { accept: "*/*" })).statusCode).toBe(404);
  expect((await send("GET", "/api/none", { accept: "text/html" })).statusCode).toBe(404);
  expect((await send("GET", "/..%2foutside.txt")).body).not.toContain("not yours");
});

it("sends the compressed twin of a file, compressed once", async () => {
  const asset = await send("GET", "/assets/page-abc.js", { "accept-encoding": "br" });
  expect(asset.headers["content-encoding"]).toBe("br");
  expect(asset.headers["content-type"]).toContain("javascript");
  expect(brotliDecompressSync(asset.rawPayload).toString()).toBe("export {};");
});

it("tells an error of ours without its stack", async () => {
  const broken = { ...openProgrammes(folder), open: () => Promise.reject(new Error("the disk is on fire")) };
  const ours = await service({ version: "0", page: null, programmes: broken, port: () => 80 });
  const reply = await ours.inject({
    method: "POST",
    url: "/api/programmes/main/entries",
    headers: { host: "localhost" },
    payload: { entries: [] },
  });
  await ours.close();
  expect(reply.statusCode).toBe(500);
  expect(reply.json().problems[0].message).toContain("error of ours");
  expect(reply.body).not.toContain("fire");
});

it("lets the page fetch and run nothing from elsewhere", async () => {
  const policy = String((await send("GET", "/", { accept: "text/html" })).headers["content-security-policy"]);
  const sources = policy.split(";").map((directive) => directive.trim().split(" "));
  const allowed = new Set(sources.flatMap(([, ...values]) => values));
  expect([...allowed].sort()).toEqual(["'none'", "'self'", "'unsafe-inline'", "blob:", "data:"]);
  expect(sources.find(([name]) => name === "script-src")).toEqual(["script-src", "'self'"]);
  expect(policy).not.toContain("upgrade-insecure-requests");
});

it("lets one worker's file compile WebAssembly, and loosens nothing else", async () => {
  const policyOf = async (file: string, headers = {}) =>
    String((await send("GET", `/${file}`, headers)).headers["content-security-policy"]);
  const only = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'";
  expect(await policyOf(kernel)).toBe(only);
  expect(await policyOf(kernel, { "accept-encoding": "br" })).toBe(only);
  const usual = await policyOf("", { accept: "text/html" });
  for (const file of [...others, "assets/page-abc.js", "api/health"]) expect(await policyOf(file)).toBe(usual);
  expect(usual).not.toContain("eval");
});

it.each(verbs.map((verb) => [verb.name, verb] as const))(
  "answers the example of %s as the document says",
  async (name, verb) => {
    const reply = await send("POST", `/api/reasoning/${name}`, json, JSON.stringify(verb.example));
    expect(reply.statusCode).toBe(200);
    const { notices: _notices, ...answer } = reply.json();
    expect(verb.output.safeParse(answer).error).toBeUndefined();
  },
);

it("knows which addresses stay on this machine", () => {
  expect(["127.0.0.1", "127.1.2.3", "::1", "[::1]", "localhost"].every(isLoopback)).toBe(true);
  expect(["0.0.0.0", "::", "192.168.1.2", "127.0.0.1.evil.example", "localhost.evil.example"].some(isLoopback)).toBe(
    false,
  );
});
