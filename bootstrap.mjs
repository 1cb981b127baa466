// Brings everything a fresh clone needs, then runs one of the project's tasks under the right Node.
// Depends on nothing but the Node that starts it (18 or newer); speaks on stderr only.
import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.dirname(fileURLToPath(import.meta.url));
const tool = path.join(root, ".tool");
const nodeMajor = 24;
const platform = process.platform === "win32" ? "win" : process.platform;
const runtimePackage = `node-${platform}-${process.arch}`;
const windows = process.platform === "win32";
const carriedNode = path.join(tool, "node_modules", runtimePackage, "bin", windows ? "node.exe" : "node");
const npmCli = path.join(tool, "node_modules", "npm", "bin", "npm-cli.js");

const say = (text) => process.stderr.write(`${text}\n`);
const stop = (text) => {
  say(text);
  process.exit(1);
};
const bigEnough = Number(process.versions.node.split(".")[0]) >= nodeMajor;
const node = () => (bigEnough ? process.execPath : carriedNode);

/** Runs a program quietly; its words come on stderr only when it fails. */
function run(command, args, options = {}) {
  const done = spawnSync(command, args, { cwd: root, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"], ...options });
  if (done.status === 0) return;
  say((done.stdout ?? "") + (done.stderr ?? "") + (done.error ? String(done.error) : ""));
  stop(
    `Set-up stopped at: ${path.basename(command)} ${args.slice(0, 4).join(" ")}. See the lines above; run the command again once mended.`,
  );
}

/** Two starts at once would write one folder: the second waits for the first. */
async function withLock(action) {
  mkdirSync(tool, { recursive: true });
  const lock = path.join(tool, "lock");
  for (let waited = 0; ; waited += 1) {
    try {
      mkdirSync(lock);
      break;
    } catch {
      const pidFile = path.join(lock, "pid");
      const pid = existsSync(pidFile) ? Number(readFileSync(pidFile, "utf8")) : 0;
      const abandoned = pid ? !alive(pid) : waited > 20;
      if (abandoned) rmSync(lock, { recursive: true, force: true });
      else {
        if (waited === 0) say("Another start is setting up; waiting for it.");
        await new Promise((resolve) => setTimeout(resolve, 500));
      }
    }
  }
  writeFileSync(path.join(lock, "pid"), String(process.pid));
  const release = () => rmSync(lock, { recursive: true, force: true });
  process.once("exit", release);
  try {
    action();
  } finally {
    release();
    process.removeListener("exit", release);
  }
}

function alive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === "EPERM";
  }
}

/** Lock file and Node version: when either changes, set-up runs again. */
function stamp() {
  const lockFile = readFileSync(path.join(root, "package-lock.json"));
  return createHash("sha256")
    .update(lockFile)
    .update(`${nodeMajor}|${bigEnough ? process.versions.node : "carried"}`)
    .digest("hex");
}

const stampFile = path.join(tool, "stamp");
const isReady = () =>
  existsSync(stampFile) &&
  readFileSync(stampFile, "utf8") === stamp() &&
  existsSync(node()) &&
  existsSync(path.join(root, "node_modules"));

function setUp() {
  if (isReady()) return;
  const quiet = ["--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"];
  const ownNpm = windows ? "npm.cmd" : "npm";
  if (!existsSync(npmCli) || !existsSync(node())) {
    say("Fetching the runtime this project runs on …");
    writeFileSync(path.join(tool, "package.json"), '{ "private": true }\n');
    const wanted = bigEnough ? ["npm@11"] : [`${runtimePackage}@${nodeMajor}`, "npm@11"];
    run(ownNpm, ["install", "--prefix", tool, "--no-save", ...quiet, ...wanted], { shell: windows });
    if (!existsSync(node()))
      stop(
        `No Node ${nodeMajor} package for ${platform} ${process.arch}. Install Node ${nodeMajor} or newer and start again.`,
      );
  }
  say("Installing the libraries …");
  run(node(), [npmCli, "ci", ...quiet], { env: environment() });
  const draft = `${stampFile}.${process.pid}`;
  writeFileSync(draft, stamp());
  renameSync(draft, stampFile);
}

/** The right Node first in PATH, else scripts of libraries find the old one. */
function environment() {
  const key = Object.keys(process.env).find((name) => name.toUpperCase() === "PATH") ?? "PATH";
  const first = [path.dirname(node()), path.join(root, "node_modules", ".bin")];
  return { ...process.env, [key]: [...first, process.env[key]].join(path.delimiter) };
}

const [task = "start", ...args] = process.argv.slice(2);
if (!existsSync(path.join(root, "package-lock.json")))
  stop("package-lock.json is missing: this is not a whole copy of the project.");
if (!isReady()) await withLock(setUp);
statSync(node());

const child = spawn(node(), [path.join(root, "scripts", "tasks.ts"), task, ...args], {
  cwd: process.env.INIT_CWD && task === "skepsis" ? process.env.INIT_CWD : root,
  env: environment(),
  stdio: "inherit",
});
const parent = process.ppid;
const watch = setInterval(() => {
  if (process.ppid !== parent || !alive(parent)) child.kill("SIGTERM");
}, 1000);
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.on(signal, () => child.kill(signal));
child.on("error", (error) => stop(String(error)));
child.on("exit", (code, signal) => {
  clearInterval(watch);
  process.exit(code ?? (signal === "SIGINT" || signal === "SIGTERM" ? 0 : 1));
});
