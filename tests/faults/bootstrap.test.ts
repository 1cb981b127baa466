/** The start: set up once, quietly, one at a time; and nothing stays behind when whoever started it goes. */
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { text } from "node:stream/consumers";
import { afterEach, expect, it } from "vitest";

const started: ChildProcess[] = [];
afterEach(() => {
  for (const child of started.splice(0)) child.kill("SIGKILL");
});

/** A project with the real bootstrap, an npm that notes its calls instead of installing, and one task. */
function project(task: string): string {
  const root = realpathSync(mkdtempSync(path.join(tmpdir(), "skepsis-start-")));
  copyFileSync("bootstrap.mjs", path.join(root, "bootstrap.mjs"));
  writeFileSync(path.join(root, "package-lock.json"), "{}");
  const npm = path.join(root, ".tool", "node_modules", "npm", "bin");
  mkdirSync(npm, { recursive: true });
  writeFileSync(path.join(root, ".tool", "node_modules", "npm", "package.json"), '{"type":"module"}');
  writeFileSync(
    path.join(npm, "npm-cli.js"),
    `import { appendFileSync, mkdirSync } from "node:fs";
     console.log("noise of npm");
     appendFileSync("calls.txt", process.argv.slice(2).join(" ") + "\\n");
     await new Promise((resolve) => setTimeout(resolve, 300));
     mkdirSync("node_modules", { recursive: true });`,
  );
  writeFileSync(path.join(root, ".tool", "fetched"), "");
  mkdirSync(path.join(root, "scripts"));
  writeFileSync(path.join(root, "scripts", "tasks.ts"), task);
  return root;
}

function start(root: string, args: readonly string[], options: { cwd?: string; env?: NodeJS.ProcessEnv } = {}) {
  const { INIT_CWD: _ours, ...env } = process.env;
  const child = spawn(process.execPath, [path.join(root, "bootstrap.mjs"), ...args], {
    cwd: options.cwd ?? root,
    env: { ...env, ...options.env },
    stdio: ["ignore", "pipe", "pipe"],
  });
  started.push(child);
  return child;
}

async function ended(child: ReturnType<typeof start>) {
  const [out, err, [status]] = await Promise.all([text(child.stdout), text(child.stderr), once(child, "exit")]);
  return { out, err, status };
}

const calls = (root: string): string[] => readFileSync(path.join(root, "calls.txt"), "utf8").trim().split("\n");
const tellTask = `process.stdout.write(JSON.stringify({ args: process.argv.slice(2), at: process.env.SKEPSIS_CWD }));
  process.exit(3);`;

it("sets up once for two starts at once, says so on stderr only, and hands on arguments and exit status", async () => {
  const root = project(tellTask);
  const both = await Promise.all([start(root, ["skepsis", "--json"]), start(root, ["skepsis", "--json"])].map(ended));
  for (const { out, status } of both) {
    expect(JSON.parse(out)).toEqual({ args: ["skepsis", "--json"], at: root });
    expect(status).toBe(3);
  }
  expect(both.map(({ err }) => err).join("")).toContain("Installing the libraries");
  expect(calls(root)).toEqual([expect.stringMatching(/^ci --ignore-scripts .*--include=dev$/)]);
  expect(existsSync(path.join(root, ".tool", "lock"))).toBe(false);

  const again = await ended(start(root, ["skepsis"]));
  expect(again.err).toBe("");
  expect(calls(root)).toHaveLength(1);
});

it("sets up again when the lock file of the libraries changed", async () => {
  const root = project(tellTask);
  await ended(start(root, ["skepsis"]));
  writeFileSync(path.join(root, "package-lock.json"), '{"changed":true}');
  await ended(start(root, ["skepsis"]));
  expect(calls(root)).toHaveLength(2);
});

it("does not wait for a start that died in the middle", async () => {
  const root = project(tellTask);
  const dead = spawn(process.execPath, ["-e", ""]);
  await once(dead, "exit");
  writeFileSync(path.join(root, ".tool", "lock"), String(dead.pid));
  expect((await ended(start(root, ["skepsis"]))).status).toBe(3);
});

it("leaves no stamp when setting up failed, so that the next start tries again", async () => {
  const root = project(tellTask);
  const npm = path.join(root, ".tool", "node_modules", "npm", "bin", "npm-cli.js");
  writeFileSync(npm, 'console.log("no network"); process.exit(1);');
  const { out, err, status } = await ended(start(root, ["skepsis"]));
  expect({ out, status }).toEqual({ out: "", status: 1 });
  expect(err).toContain("no network");
  expect(err).toContain("run the command again once mended");
  expect(existsSync(path.join(root, ".tool", "stamp"))).toBe(false);
  expect(existsSync(path.join(root, ".tool", "lock"))).toBe(false);
});

it("sets up again after a set-up that was cut off, also when the lock file is as it was before", async () => {
  const root = project(tellTask);
  const npm = path.join(root, ".tool", "node_modules", "npm", "bin", "npm-cli.js");
  const whole = readFileSync(npm, "utf8");
  await ended(start(root, ["skepsis"]));
  writeFileSync(path.join(root, "package-lock.json"), '{"changed":true}');
  writeFileSync(npm, "process.exit(1);");
  expect((await ended(start(root, ["skepsis"]))).status).toBe(1);
  writeFileSync(path.join(root, "package-lock.json"), "{}");
  writeFileSync(npm, whole);
  expect((await ended(start(root, ["skepsis"]))).status).toBe(3);
  expect(calls(root)).toHaveLength(2);
});

it("fetches runtime and npm anew when fetching them was cut off", async () => {
  const root = project(tellTask);
  rmSync(path.join(root, ".tool", "fetched"));
  const own = path.join(root, "own", "npm-cli.js");
  mkdirSync(path.dirname(own));
  const kept = path.join(root, ".tool", "node_modules", "npm");
  cpSync(kept, path.join(root, "whole"), { recursive: true });
  writeFileSync(path.join(kept, "bin", "npm-cli.js"), "half of it");
  writeFileSync(
    own,
    `require("node:fs").cpSync("whole", ".tool/node_modules/npm", { recursive: true });
     require("node:fs").appendFileSync("calls.txt", process.argv[2] + "\\n");`,
  );
  expect((await ended(start(root, ["skepsis"], { env: { npm_execpath: own } }))).status).toBe(3);
  expect(calls(root)).toEqual(["install", expect.stringMatching(/^ci /)]);
});

it("says in words that it may not write into the folder", async () => {
  const root = project(tellTask);
  rmSync(path.join(root, ".tool"), { recursive: true });
  writeFileSync(path.join(root, ".tool"), "in the way");
  const { out, err, status } = await ended(start(root, ["skepsis"]));
  expect({ out, status }).toEqual({ out: "", status: 1 });
  expect(err).toMatch(/^Set-up cannot write into .*\n$/);
});

it("knows where the person stood: npm's note when npm moved, else the folder itself", async () => {
  const root = project(tellTask);
  const elsewhere = realpathSync(mkdtempSync(path.join(tmpdir(), "skepsis-yard-")));
  const byNpm = await ended(start(root, ["skepsis"], { env: { INIT_CWD: elsewhere } }));
  expect(JSON.parse(byNpm.out).at).toBe(elsewhere);
  const byHand = await ended(start(root, ["skepsis"], { cwd: elsewhere, env: { INIT_CWD: root } }));
  expect(JSON.parse(byHand.out).at).toBe(elsewhere);
});

const stayTask = `process.on("SIGTERM", () => process.exit(0));
  setInterval(() => {}, 1000);
  console.log(process.pid);`;

const isAlive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};

async function goneWithin(pid: number, milliseconds: number): Promise<boolean> {
  for (let waited = 0; waited < milliseconds; waited += 50) {
    if (!isAlive(pid)) return true;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return !isAlive(pid);
}

it("ends the task when the program that started it is gone without a word", async () => {
  const root = project(stayTask);
  const parent = spawn(
    process.execPath,
    ["-e", `require("node:child_process").spawn(process.execPath, ["bootstrap.mjs", "start"], { stdio: "inherit" });`],
    { cwd: root, stdio: ["ignore", "pipe", "ignore"] },
  );
  started.push(parent);
  const [pid] = await once(parent.stdout, "data");
  parent.kill("SIGKILL");
  expect(await goneWithin(Number(pid), 5000)).toBe(true);
});

const hasShell = process.platform !== "win32";
it("ends the task when npm is killed and the shell between stays", async () => {
  if (!hasShell) return; // npm starts scripts otherwise there
  const root = project(stayTask);
  const shell = `"${process.execPath}" bootstrap.mjs start; true`;
  const npm = spawn(
    process.execPath,
    ["-e", `require("node:child_process").spawn("sh", ["-c", ${JSON.stringify(shell)}], { stdio: "inherit" });`],
    { cwd: root, env: { ...process.env, npm_lifecycle_event: "start" }, stdio: ["ignore", "pipe", "ignore"] },
  );
  started.push(npm);
  const [pid] = await once(npm.stdout, "data");
  npm.kill("SIGKILL");
  expect(await goneWithin(Number(pid), 5000)).toBe(true);
});

it("hands a request to stop on, and ends with the task's status", async () => {
  const child = start(project(stayTask), ["start"]);
  const [pid] = await once(child.stdout, "data");
  child.kill("SIGTERM");
  const [status] = await once(child, "exit");
  expect(status).toBe(0);
  expect(isAlive(Number(pid))).toBe(false);
});

it("says in words that a copy is not whole", async () => {
  const bare = realpathSync(mkdtempSync(path.join(tmpdir(), "skepsis-bare-")));
  copyFileSync("bootstrap.mjs", path.join(bare, "bootstrap.mjs"));
  const { err, status } = await ended(start(bare, ["start"]));
  expect(status).toBe(1);
  expect(err).toContain("not a whole copy");
});
