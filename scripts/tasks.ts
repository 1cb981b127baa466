/** The project's tasks by name; bootstrap.mjs runs this file under the right Node. */
import { type ChildProcess, spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { brotliCompressSync } from "node:zlib";
import { ensureBrowser } from "./browser.ts";

const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));
/** Where the person stood when the task was started; a relative path of theirs is seen from there. */
const standing = process.env.SKEPSIS_CWD ?? process.cwd();
delete process.env.SKEPSIS_CWD;

const bin = (name: string) =>
  path.join(root, "node_modules", ".bin", process.platform === "win32" ? `${name}.cmd` : name);

interface Outcome {
  readonly name: string;
  readonly passed: number;
  readonly failed: number;
}

/** Programs now running: a signal to this one is theirs too. */
const running = new Set<ChildProcess>();
const signals = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

/** A signal ends the whole task, not just the program that happened to run. */
function passOn(signal: (typeof signals)[number]): void {
  for (const child of running) child.kill(signal);
  process.exitCode = 128 + { SIGHUP: 1, SIGINT: 2, SIGTERM: 15 }[signal];
  if (running.size === 0) process.exit();
}

/** Runs a program with the output of this one; resolves to its exit status. */
function run(command: string, args: readonly string[], env: NodeJS.ProcessEnv = process.env): Promise<number> {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, env, stdio: "inherit", shell: command.endsWith(".cmd") });
    running.add(child);
    const ended = (status: number): void => {
      running.delete(child);
      if (process.exitCode !== undefined && running.size === 0) process.exit();
      resolve(status);
    };
    child.on("error", (error) => {
      process.stderr.write(`${command}: ${error.message}\n`);
      ended(1);
    });
    child.on("exit", (code) => ended(code ?? 1));
  });
}

/** The command line, in this very process: one program less between a signal and the service. */
async function skepsis(args: readonly string[]): Promise<number> {
  for (const signal of signals) process.removeAllListeners(signal);
  process.chdir(standing);
  const parent = process.ppid;
  // Whoever started this is gone without a word: the service may not stay behind.
  setInterval(() => process.ppid !== parent && process.kill(process.pid, "SIGTERM"), 500).unref();
  const { runProcess } = await import("../src/views/cli/index.ts");
  return runProcess(args);
}

const node = (script: string, args: readonly string[] = []) =>
  run(process.execPath, [path.join(root, script), ...args]);
const tool = (name: string, args: readonly string[], env?: NodeJS.ProcessEnv) => run(bin(name), args, env);

/** A step that either holds or does not. */
async function step(name: string, work: () => Promise<number>): Promise<Outcome> {
  const began = performance.now();
  const status = await work();
  process.stderr.write(
    `${status === 0 ? "ok    " : "FAILED"} ${name} (${((performance.now() - began) / 1000).toFixed(1)} s)\n`,
  );
  return { name, passed: status === 0 ? 1 : 0, failed: status === 0 ? 0 : 1 };
}

/** Runs test projects and counts their tests from the machine-readable report. */
async function tests(projects: readonly string[]): Promise<Outcome> {
  // What the tests write aside goes with this folder; a database server under another account must come through it.
  const scratch = mkdtempSync(path.join(tmpdir(), "skepsis-tests-"));
  chmodSync(scratch, 0o711);
  const report = path.join(scratch, "tests.json");
  const chosen = projects.flatMap((project) => ["--project", project]);
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${report}`];
  const aside = { TMPDIR: scratch, TEMP: scratch, TMP: scratch };
  const status = await tool("vitest", ["run", ...chosen, ...reporters], { ...process.env, ...aside });
  const counted = existsSync(report)
    ? (JSON.parse(readFileSync(report, "utf8")) as { numPassedTests: number; numFailedTests: number })
    : { numPassedTests: 0, numFailedTests: 0 };
  rmSync(scratch, { recursive: true, force: true });
  // A file that does not load, or a run without tests, fails without a failed test: count it.
  const silent = status !== 0 && counted.numFailedTests === 0 ? 1 : 0;
  return { name: projects.join(", "), passed: counted.numPassedTests, failed: counted.numFailedTests + silent };
}

async function check(): Promise<number> {
  const outcomes: Outcome[] = await Promise.all([
    step("format and lint", () => tool("biome", ["ci", "--error-on-warnings", "."])),
    step("types, whole", () => tool("tsc", ["-p", "tsconfig.json"])),
    step("types, pure folders", () => tool("tsc", ["-p", "tsconfig.pure.json"])),
  ]);
  outcomes.push(await tests(["unit", "postgres"]));
  outcomes.push(await step("build", build));
  outcomes.push(await step("a browser to test in", async () => ensureBrowser()));
  outcomes.push(await tests(["built"]));
  const passed = outcomes.reduce((sum, outcome) => sum + outcome.passed, 0);
  const failed = outcomes.reduce((sum, outcome) => sum + outcome.failed, 0);
  for (const outcome of outcomes.filter((each) => each.failed > 0)) console.error(`failed: ${outcome.name}`);
  console.log(`${passed} passed, ${failed} failed`);
  return failed === 0 && passed > 0 ? 0 : 1;
}

/** The page, the programs that run without the sources, and the list of what they are made of. */
const build = async (): Promise<number> =>
  (await buildPage()) ||
  (await tool("vite", ["build", "--logLevel", "warn", "--config", "vite.programs.config.ts"])) ||
  (await node("scripts/sbom.ts"));

/** What the page is made from, as one hash: it changes when any of these files does. */
function pageSources(): string {
  const hash = createHash("sha256");
  const files = ["src", "public", "examples/demonstration"].flatMap((folder) =>
    existsSync(path.join(root, folder))
      ? readdirSync(path.join(root, folder), { recursive: true, withFileTypes: true })
          .filter((each) => each.isFile() && !/\.test\.tsx?$/.test(each.name))
          .map((each) => path.join(each.parentPath, each.name))
      : [],
  );
  for (const name of ["index.html", "vite.config.ts", "package-lock.json"]) files.push(path.join(root, name));
  for (const file of files.filter((each) => existsSync(each)).sort()) hash.update(file).update(readFileSync(file));
  return hash.digest("hex");
}

/** Builds the page unless the one there was made from these very sources. */
async function buildPage(): Promise<number> {
  const stamp = path.join(root, "dist", "page-sources");
  const wanted = pageSources();
  const isFresh = existsSync(path.join(root, "dist", "web", "index.html")) && existsSync(stamp);
  if (isFresh && readFileSync(stamp, "utf8") === wanted) return 0;
  process.stderr.write("Building the page …\n");
  const status = await tool("vite", ["build", "--logLevel", "warn", "--config", "vite.config.ts"]);
  if (status !== 0) return status;
  compressPage(path.join(root, "dist", "web"));
  writeFileSync(stamp, wanted);
  return 0;
}

/** A compressed twin beside every file of text, so that the service compresses nothing twice. */
function compressPage(folder: string): void {
  for (const file of readdirSync(folder, { recursive: true, encoding: "utf8" })) {
    if (!/\.(js|css|html|svg|json|webmanifest|txt)$/.test(file)) continue;
    const text = readFileSync(path.join(folder, file));
    if (text.length > 1024) writeFileSync(path.join(folder, `${file}.br`), brotliCompressSync(text));
  }
}

const tasks: Readonly<Record<string, (args: readonly string[]) => Promise<number>>> = {
  start: async (args) => (await buildPage()) || (await skepsis(["serve", ...args])),
  check,
  build,
  dev: (args) => tool("vite", args),
  format: () => tool("biome", ["check", "--write", "."]),
  lint: () => tool("biome", ["ci", "--error-on-warnings", "."]),
  types: async () => (await tool("tsc", ["-p", "tsconfig.json"])) || (await tool("tsc", ["-p", "tsconfig.pure.json"])),
  unit: (args) => tool("vitest", ["run", "--project", "unit", ...args]),
  browser: (args) => tool("vitest", ["run", "--project", "built", ...args]),
  bench: (args) => node("benchmarks/run.ts", args),
  faults: (args) => node("scripts/faults.ts", args),
  reference: (args) =>
    node(
      "tests/reference/run.ts",
      args.map((each) => (each.startsWith("--") ? each : path.resolve(standing, each))),
    ),
  knowledge: async (args) => (await node("scripts/knowledge.ts", args)) || (await node("scripts/schemas.ts", args)),
  skepsis,
};

const [name = "", ...args] = process.argv.slice(2);
const task = tasks[name];
if (!task) {
  process.stderr.write(`There is no task "${name}". There are: ${Object.keys(tasks).join(", ")}.\n`);
  process.exit(2);
}
for (const signal of signals) process.on(signal, () => passOn(signal));
process.exit(await task(args));
