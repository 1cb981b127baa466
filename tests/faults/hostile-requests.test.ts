/** Whatever is sent to the service, by nobody or by a member signed in, it answers within two seconds, in words, and goes on. */
import { createHash, randomUUID } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { roles } from "../../src/access/index.ts";
import { openServerStore } from "../../src/storage/server.ts";
import { type ServiceProcess, startService } from "../postgres/service.ts";
import { amount, isFull, seeded, tell, tries } from "./count.ts";
import { mutated, oddOf, valueFor } from "./from-schema.ts";

type Json = Readonly<Record<string, unknown>>;

interface Operation {
  readonly path: string;
  readonly method: string;
  readonly body: Json | null;
  readonly example: unknown;
}

/** Every operation of the document, with the schema of its body and an example where it gives one. */
function operationsOf(document: Json): readonly Operation[] {
  const paths = document.paths as Readonly<Record<string, Readonly<Record<string, Json>>>>;
  return Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods)
      .filter(([method]) => ["get", "post", "put", "delete", "patch"].includes(method))
      .map(([method, operation]) => {
        const content = (operation.requestBody as { content?: Readonly<Record<string, Json>> } | undefined)?.content;
        const { schema = null, example } = content?.["application/json"] ?? {};
        return { path, method: method.toUpperCase(), body: schema as Json | null, example };
      }),
  );
}

/** How long a request may take; beyond, it hangs. In the gate other tests hold the processor meanwhile. */
const longestMilliseconds = isFull ? 2000 : 10_000;
/** Of all of them, milliseconds. */
const longestRun = isFull ? 3_600_000 : 60_000;
const stack = /\bat .{0,200}:\d+:\d+|node_modules|\.ts:\d+/;

/** Sessions of a member: one may end another's, or all but its own. Each is on the disk before it is used. */
const sessionsEach = amount(5, 200);

/** A folder of records with a member of every role; their cookies, each of a session of its own. */
async function withMembers(): Promise<{ readonly folder: string; readonly cookies: readonly string[] }> {
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-hostile-"));
  const store = await openServerStore({ file: path.join(folder, "main.sqlite"), programme: "main" });
  const at = new Date().toISOString();
  const endsAt = new Date(Date.now() + 86_400_000).toISOString();
  const cookies: string[] = [];
  for (const role of roles) {
    const admitted = await store.members.admit({ name: `a ${role}`, role, password: null }, { by: null, at });
    if (!admitted.ok) throw new Error(`no ${role}: ${JSON.stringify(admitted.problems)}`);
    for (let each = 0; each < sessionsEach; each++) {
      const token = `main.${randomUUID()}`;
      const hash = createHash("sha256").update(token).digest("hex");
      await store.members.beginSession({ member: admitted.value.id, hash, client: "a test", endsAt }, at);
      cookies.push(`skepsis=${token}`);
    }
  }
  await store.close();
  return { folder, cookies };
}

/** A request made from an operation: as it should be, changed, or not JSON at all. `programme`: the one it speaks of. */
function requestOf(
  { path, method, body, example }: Operation,
  { below, programme }: { readonly below: (bound: number) => number; readonly programme: string | null },
) {
  const names = ["demonstration", "main", "a", "%00", "..%2f..%2fetc", "A".repeat(120), "con", "x y", "%ff"];
  const query =
    below(6) === 0
      ? `?cursor=${encodeURIComponent((JSON.stringify(oddOf(below)) ?? "").toWellFormed())}&limit=${below(9000)}`
      : "";
  const named = programme === null ? path : path.replace("{programme}", programme);
  const at = named.replace(/\{\w+\}/g, () => names[below(names.length)] ?? "a") + query;
  const headers: Record<string, string> =
    below(30) === 0 ? { "content-type": "text/csv" } : { "content-type": "application/json" };
  if (method === "GET") return { at, init: { method } };
  const good = example !== undefined && below(2) === 0 ? example : body ? valueFor(body, below) : oddOf(below);
  const value = below(8) === 0 ? good : mutated(good, below);
  const text = JSON.stringify(value) ?? "";
  const sent = below(20) === 0 ? text.slice(0, below(text.length + 1)) : text;
  return {
    at,
    init: { method, headers: method === "DELETE" ? {} : headers, ...(method === "DELETE" ? {} : { body: sent }) },
  };
}

describe("hostile requests", () => {
  it(
    "[SG110] are answered within two seconds, without a stack trace and without a crash",
    async () => {
      const { folder, cookies } = await withMembers();
      const service: ServiceProcess = await startService("", folder);
      try {
        const document = (await (await fetch(`${service.address}/api/openapi.json`)).json()) as Json;
        const operations = operationsOf(document);
        // The thread that reckons starts with the first question: that is no answer's time.
        const [warm] = operations.filter(({ path }) => path.startsWith("/api/reasoning/"));
        const init = { method: "POST", headers: { "content-type": "application/json" }, body: "{}" };
        await fetch(`${service.address}${warm?.path}`, init);
        const rounds = tries(300, 100_000);
        const statuses = new Map<number, number>();
        // Of those signed in, on routes that let nobody else in.
        let [signedIn, letIn] = [0, 0];
        const wrong: string[] = [];
        let slowest = 0;
        const sender = async (which: number) => {
          const below = seeded(110 + which);
          for (const _ of rounds) {
            // One in two is signed in, and speaks of the programme that has members.
            const cookie = below(2) === 0 ? (cookies[below(cookies.length)] ?? "") : null;
            const operation = operations[below(operations.length)] as Operation;
            const { at, init } = requestOf(operation, { below, programme: cookie === null ? null : "main" });
            const sent =
              cookie === null ? init : { ...init, headers: { ...("headers" in init ? init.headers : {}), cookie } };
            const began = performance.now();
            try {
              const reply = await fetch(service.address + at, {
                ...sent,
                signal: AbortSignal.timeout(30_000),
              });
              const text = await reply.text();
              const took = performance.now() - began;
              slowest = Math.max(slowest, took);
              statuses.set(reply.status, (statuses.get(reply.status) ?? 0) + 1);
              if (cookie !== null && at.startsWith("/api/programmes/main/")) {
                signedIn += 1;
                if (reply.status !== 401) letIn += 1;
              }
              const isOurs = reply.status >= 500 && !text.includes("takes too long");
              if (isOurs || stack.test(text) || took > longestMilliseconds)
                wrong.push(
                  `${reply.status} after ${Math.round(took)} ms: ${init.method} ${at} ${JSON.stringify(init)}`.slice(
                    0,
                    1500,
                  ),
                );
            } catch (trouble) {
              wrong.push(`${String(trouble)}: ${init.method} ${at} ${JSON.stringify(init)}`.slice(0, 1500));
            }
          }
        };
        await Promise.all([0, 1].map(sender));
        expect((await fetch(`${service.address}/api/health`)).status).toBe(200);
        const told = [...statuses].sort(([one], [other]) => one - other).map(([status, count]) => `${count}×${status}`);
        tell({
          fault: "hostile requests",
          tried: rounds.count(),
          against: `${operations.length} operations; ${signedIn} signed in at a programme, ${letIn} of them let in; ${told.join(" ")}; slowest ${Math.round(slowest)} ms; ${wrong.length} wrong`,
        });
        expect(wrong.slice(0, 10)).toEqual([]);
        expect(signedIn).toBeGreaterThan(rounds.count() / 20);
        expect(letIn).toBeGreaterThan(0.8 * signedIn);
        expect(statuses.get(200) ?? 0).toBeGreaterThan(rounds.count() / 50);
      } finally {
        await service.kill();
        rmSync(folder, { recursive: true, force: true });
      }
    },
    longestRun,
  );
});
