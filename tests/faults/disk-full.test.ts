/** A disk without room: what does not fit is not acknowledged and is told; what was acknowledged stays; with room it goes on. */
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import path from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { headsOf } from "../../src/journal/index.ts";
import { openServerStore } from "../../src/storage/server.ts";
import { bee } from "../journals/every-kind.ts";
import { writer } from "../journals/writer.ts";
import { push } from "../postgres/service.ts";
import { patience, scratch, tell, tries } from "./count.ts";
import { until } from "./victim.ts";

let serving: ChildProcess | null = null;
afterEach(() => serving?.kill("SIGKILL"));

/** The service, whose files may grow to so many blocks of 1024 bytes; a full disk as the system calls tell it. */
async function serveWithin(folder: string, blocks: number | null): Promise<string> {
  // A program that has no answer to the signal would be ended by it; on a full disk there is none.
  const quiet = "data:text/javascript,process.on('SIGXFSZ',()=>{})";
  const words = [process.execPath, "--import", quiet, "src/views/cli/skepsis.ts", "serve"];
  const limited = blocks === null ? words : ["bash", "-c", `ulimit -f ${blocks}; exec "$@"`, "limited", ...words];
  const [program = "", ...args] = limited;
  const env = { ...process.env, SKEPSIS_PORT: "0", SKEPSIS_HOST: "127.0.0.1", SKEPSIS_DATA: folder };
  const child = spawn(program, args, { env, stdio: ["ignore", "pipe", "pipe"] });
  serving = child;
  let said = "";
  for (const stream of [child.stdout, child.stderr]) stream.on("data", (piece: Buffer) => (said += piece.toString()));
  const address = () => /http:\/\/\S+/.exec(said)?.[0];
  await until(
    () => address() !== undefined,
    () => `the service does not start: ${said}`,
  );
  return address() ?? "";
}

const hasLimits = process.platform !== "win32";

describe.skipIf(!hasLimits)("a service whose disk is full", { timeout: patience }, () => {
  it("[SG106] acknowledges nothing that is not kept, says so, and goes on when there is room", async () => {
    const rounds = tries(1, 25);
    let [acknowledged, refused] = [0, 0];
    for (const round of rounds) {
      const folder = scratch("full");
      let address = await serveWithin(folder, 400 + 37 * round);
      const phone = writer();
      const chain = phone.write(
        ...Array.from({ length: 900 }, (_, index) => ({ ...bee(1), about: [`s-${index}`, "reading-1"] })),
      );
      let safe = 0;
      for (let troubles = 0; troubles < 3 && safe < chain.length; ) {
        const { status, text, reply } = await push(address, chain.slice(safe, safe + 20));
        if (status === 200) safe = reply.heads[0]?.seq ?? safe;
        else {
          expect(status).toBe(503);
          expect(text).toContain("records cannot be reached now");
          troubles += 1;
          refused += 1;
        }
      }
      expect(safe).toBeGreaterThan(0);
      expect(safe).toBeLessThan(chain.length);
      expect((await fetch(`${address}/api/health`)).status).toBe(200);
      const gone = once(serving as ChildProcess, "exit");
      serving?.kill("SIGTERM");
      await gone;

      const store = await openServerStore({ file: path.join(folder, "main.sqlite"), programme: "main" });
      expect(await store.check(headsOf(chain.slice(0, safe)))).toMatchObject({ isIntact: true });
      await store.close();
      address = await serveWithin(folder, null);
      const { reply } = await push(address, chain.slice(safe));
      expect(reply).toMatchObject({ heads: [{ seq: chain.length }], refused: [] });
      const stopped = once(serving as ChildProcess, "exit");
      serving?.kill("SIGTERM");
      await stopped;
      acknowledged += safe;
    }
    tell({
      fault: "disk full under the service",
      tried: rounds.count(),
      against: `${acknowledged} entries acknowledged, ${refused} pushes told`,
    });
  });
});
