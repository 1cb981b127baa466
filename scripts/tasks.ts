/** The project's tasks by name; bootstrap.mjs runs this file under the right Node. */
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));
const bin = (name: string) =>
  path.join(root, "node_modules", ".bin", process.platform === "win32" ? `${name}.cmd` : name);

interface Outcome {
  readonly name: string;
  readonly passed: number;
  readonly failed: number;
}

/** Runs a program with the output of this one; resolves to its exit status. */
function run(command: string, args: readonly string[], env: NodeJS.ProcessEnv = process.env): Promise<number> {
  return new Promise((resolve) => {
    const child = spawn(command, args, { cwd: root, stdio: "inherit", env });
    child.on("error", () => resolve(1));
    child.on("exit", (code) => resolve(code ?? 1));
  });
}

const node = (script: string, args: readonly string[] = []) =>
  run(process.execPath, [path.join(root, script), ...args]);
const tool = (name: string, args: readonly string[]) => run(bin(name), args);

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
  const report = path.join(mkdtempSync(path.join(tmpdir(), "skepsis-")), "tests.json");
  const chosen = projects.flatMap((project) => ["--project", project]);
  const status = await tool("vitest", [
    "run",
    ...chosen,
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${report}`,
  ]);
  const counted = existsSync(report)
    ? (JSON.parse(readFileSync(report, "utf8")) as { numPassedTests: number; numFailedTests: number })
    : { numPassedTests: 0, numFailedTests: 0 };
  // A file that does not load, or a run without tests, fails without a failed test: count it.
  const silent = status !== 0 && counted.numFailedTests === 0 ? 1 : 0;
  return { name: projects.join(", "), passed: counted.numPassedTests, failed: counted.numFailedTests + silent };
}

async function check(): Promise<number> {
  const outcomes: Outcome[] = [];
  outcomes.push(await step("format and lint", () => tool("biome", ["ci", "--error-on-warnings", "."])));
  outcomes.push(await step("types, whole", () => tool("tsc", ["-p", "tsconfig.json"])));
  outcomes.push(await step("types, pure folders", () => tool("tsc", ["-p", "tsconfig.pure.json"])));
  outcomes.push(await tests(["unit"]));
  outcomes.push(await step("build", build));
  outcomes.push(await tests(["built"]));
  const passed = outcomes.reduce((sum, outcome) => sum + outcome.passed, 0);
  const failed = outcomes.reduce((sum, outcome) => sum + outcome.failed, 0);
  for (const outcome of outcomes.filter((each) => each.failed > 0)) console.error(`failed: ${outcome.name}`);
  console.log(`${passed} passed, ${failed} failed`);
  return failed === 0 && passed > 0 ? 0 : 1;
}

async function build(): Promise<number> {
  for (const config of ["vite.config.ts", "vite.programs.config.ts"]) {
    const status = await tool("vite", ["build", "--logLevel", "warn", "--config", config]);
    if (status !== 0) return status;
  }
  return 0;
}

/** The page is built when there is none, or when sources are newer than it. */
function pageIsStale(): boolean {
  const page = path.join(root, "dist", "web", "index.html");
  if (!existsSync(page)) return true;
  const newest = spawnSync("git", ["log", "-1", "--format=%ct", "--", "src", "package-lock.json", "vite.config.ts"], {
    cwd: root,
    encoding: "utf8",
  });
  const changed = spawnSync("git", ["status", "--porcelain", "--", "src"], { cwd: root, encoding: "utf8" });
  const stamp = path.join(root, "dist", "web", ".built-from");
  const wanted = `${newest.stdout ?? ""}${changed.stdout ?? ""}`;
  return !existsSync(stamp) || readFileSync(stamp, "utf8") !== wanted;
}

const tasks: Readonly<Record<string, (args: readonly string[]) => Promise<number>>> = {
  start: async (args) => {
    if (pageIsStale()) {
      process.stderr.write("Building the page …\n");
      const status = await tool("vite", ["build", "--logLevel", "warn"]);
      if (status !== 0) return status;
    }
    return node("src/views/cli/skepsis.ts", ["serve", ...args]);
  },
  check,
  build,
  dev: (args) => tool("vite", args),
  format: () => tool("biome", ["check", "--write", "."]),
  lint: () => tool("biome", ["ci", "--error-on-warnings", "."]),
  types: async () => (await tool("tsc", ["-p", "tsconfig.json"])) || (await tool("tsc", ["-p", "tsconfig.pure.json"])),
  unit: (args) => tool("vitest", ["run", "--project", "unit", ...args]),
  browser: (args) => tool("vitest", ["run", "--project", "built", ...args]),
  bench: (args) => node("benchmarks/run.ts", args),
  knowledge: (args) => node("scripts/knowledge.ts", args),
  reference: (args) => node("tests/reference/run.ts", args),
  skepsis: (args) => run(process.execPath, [path.join(root, "src/views/cli/skepsis.ts"), ...args]),
};

const [name = "", ...args] = process.argv.slice(2);
const task = tasks[name];
if (!task) {
  process.stderr.write(`There is no task "${name}". There are: ${Object.keys(tasks).join(", ")}.\n`);
  process.exit(2);
}
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.on(signal, () => {});
process.exit(await task(args));
