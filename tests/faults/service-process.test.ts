/** The service as a process: it stops cleanly when asked, when whoever started it is gone, and says why it cannot start. */
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { text } from "node:stream/consumers";
import { afterEach, expect, it } from "vitest";

const started: ChildProcess[] = [];
afterEach(() => {
  for (const child of started.splice(0)) child.kill("SIGKILL");
});

const tasks = path.resolve("scripts", "tasks.ts");
const environment = (port: number) => ({
  ...process.env,
  SKEPSIS_PORT: String(port),
  SKEPSIS_HOST: "127.0.0.1",
  SKEPSIS_DATA: mkdtempSync(path.join(tmpdir(), "skepsis-served-")),
});

function program(args: readonly string[], port = 0) {
  const child = spawn(process.execPath, args, { env: environment(port), stdio: ["ignore", "pipe", "pipe"] });
  started.push(child);
  return child;
}

/** The address that the service announces on its standard output. */
async function addressFrom(child: ReturnType<typeof program>): Promise<string> {
  for await (const chunk of child.stdout) {
    const address = /http:\/\/\S+/.exec(String(chunk))?.[0];
    if (address) return address;
  }
  throw new Error(`no address: ${await text(child.stderr)}`);
}

const answers = async (address: string): Promise<boolean> => {
  try {
    return (await fetch(`${address}/api/health`)).ok;
  } catch {
    return false;
  }
};

async function silentWithin(address: string, milliseconds: number): Promise<boolean> {
  for (let waited = 0; waited < milliseconds; waited += 100) {
    if (!(await answers(address))) return true;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return false;
}

it("announces its address, answers, and ends with 0 when asked to stop", async () => {
  const child = program([tasks, "skepsis", "serve"]);
  const address = await addressFrom(child);
  expect(await answers(address)).toBe(true);
  child.kill("SIGTERM");
  const [status] = await once(child, "exit");
  expect(status).toBe(0);
  expect(await answers(address)).toBe(false);
});

it("closes its port when whoever started it is killed", async () => {
  const parent = program([
    "-e",
    `require("node:child_process").spawn(process.execPath, [${JSON.stringify(tasks)}, "skepsis", "serve"], { stdio: "inherit" });`,
  ]);
  const address = await addressFrom(parent);
  expect(await answers(address)).toBe(true);
  parent.kill("SIGKILL");
  expect(await silentWithin(address, 5000)).toBe(true);
});

it("says in words that its port is taken, and ends with 1", async () => {
  const other = createServer().listen(0, "127.0.0.1");
  await once(other, "listening");
  const { port } = other.address() as { port: number };
  const child = program([tasks, "skepsis", "serve"], port);
  const [said, [status]] = await Promise.all([text(child.stderr), once(child, "exit")]);
  other.close();
  expect(status).toBe(1);
  expect(said).toContain(`port ${port} is taken`);
  expect(said).not.toMatch(/\bat .*:\d+:\d+/);
});
