// Brings everything a fresh clone needs, then runs one of the project's tasks under the right Node.
// Depends on nothing but the Node that starts it (18 or newer); speaks on stderr only.
import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { constants } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";

const parent = process.ppid;
const root = path.dirname(fileURLToPath(import.meta.url));
const tool = path.join(root, ".tool");
const nodeMajor = 24;
const windows = process.platform === "win32";
const platform = windows ? "win" : process.platform;
const runtimePackage = `node-${platform}-${process.arch}`;
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

/** The npm that came with the Node that runs this: by its script when npm started us, else by its name. */
function runOwnNpm(args) {
  const script = process.env.npm_execpath;
  if (script && /npm-cli\.c?js$/.test(script) && existsSync(script)) run(process.execPath, [script, ...args]);
  else if (windows)
    run(
      "npm.cmd",
      args.map((each) => (/\s/.test(each) ? `"${each}"` : each)),
      { shell: true },
    );
  else run("npm", args);
}

const lock = path.join(tool, "lock");
const longestSetUpMilliseconds = 60 * 60 * 1000;

/** The lock is a file with its holder's process number; creating it fails when there is one already. */
function takeLock() {
  try {
    writeFileSync(lock, String(process.pid), { flag: "wx" });
    return true;
  } catch (error) {
    if (error.code === "EEXIST") return false;
    return stop(`Set-up cannot write into ${tool}: ${error.message}`);
  }
}

/** Removes a lock whose holder is gone. The rename lets one of several waiting starts do it, once. */
function clearAbandonedLock() {
  try {
    const holder = Number(readFileSync(lock, "utf8"));
    const age = Date.now() - statSync(lock).mtimeMs;
    // A lock that is still empty is being written this moment.
    const held = holder > 0 ? alive(holder) && age < longestSetUpMilliseconds : age < 10_000;
    if (held) return;
    const aside = `${lock}.abandoned.${process.pid}`;
    renameSync(lock, aside);
    // Another start cleared the lock and took it between our look and our rename: it gets its lock back.
    if (Number(readFileSync(aside, "utf8")) !== holder && !existsSync(lock)) renameSync(aside, lock);
    else rmSync(aside, { force: true });
  } catch (error) {
    if (error.code !== "ENOENT") throw error;
  }
}

/** Two starts at once would write one folder: the second waits for the first. */
async function withLock(action) {
  try {
    mkdirSync(tool, { recursive: true });
  } catch (error) {
    stop(
      `Set-up cannot write into ${root}: ${error.message}. Copy the project to a folder of your own and start there.`,
    );
  }
  for (let waited = 0; !takeLock(); waited += 1) {
    clearAbandonedLock();
    if (waited === 1) say(`Another start is setting up; waiting for it. If there is none, delete ${lock}.`);
    if (waited > 0) await new Promise((resolve) => setTimeout(resolve, 500));
  }
  const release = () => {
    if (existsSync(lock) && readFileSync(lock, "utf8") === String(process.pid)) rmSync(lock, { force: true });
  };
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
    .update(`${platform}|${process.arch}|${nodeMajor}|${bigEnough ? process.versions.node : "carried"}`)
    .digest("hex");
}

const stampFile = path.join(tool, "stamp");
/** Tells that runtime and npm were fetched whole: a fetch that was cut off leaves files, but not this one. */
const fetchedFile = path.join(tool, "fetched");
const isReady = () =>
  existsSync(stampFile) &&
  readFileSync(stampFile, "utf8") === stamp() &&
  existsSync(node()) &&
  existsSync(path.join(root, "node_modules"));

function setUp() {
  if (isReady()) return;
  // NODE_ENV=production would leave out the tools that build the page.
  const quiet = ["--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error", "--include=dev"];
  // From here on the libraries may be half there: only a whole run writes the stamp again.
  rmSync(stampFile, { force: true });
  if (!existsSync(fetchedFile) || !existsSync(npmCli) || !existsSync(node())) {
    say("Fetching the runtime this project runs on …");
    rmSync(path.join(tool, "node_modules"), { recursive: true, force: true });
    writeFileSync(path.join(tool, "package.json"), '{ "private": true }\n');
    const wanted = bigEnough ? ["npm@11"] : [`${runtimePackage}@${nodeMajor}`, "npm@11"];
    runOwnNpm(["install", "--prefix", tool, "--no-save", ...quiet, ...wanted]);
    if (!existsSync(node()))
      stop(
        `No Node ${nodeMajor} package for ${platform} ${process.arch}. Install Node ${nodeMajor} or newer and start again.`,
      );
    writeFileSync(fetchedFile, "");
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
  return {
    ...process.env,
    [key]: [...first, process.env[key]].filter((each) => each).join(path.delimiter),
    SKEPSIS_CWD: standing(),
  };
}

/** Where the person stood: npm runs scripts in the project's folder and notes the other one in INIT_CWD. */
const standing = () => (process.cwd() === root && process.env.INIT_CWD ? process.env.INIT_CWD : process.cwd());

/** Parent and name of a running process; null where that cannot be asked. */
function processFacts(pid) {
  try {
    if (process.platform === "linux") {
      const [, name, rest] = /^\d+ \((.*)\) \S (.*)$/s.exec(readFileSync(`/proc/${pid}/stat`, "utf8"));
      return { name, parent: Number.parseInt(rest, 10) };
    }
    const asked = windows ? null : spawnSync("ps", ["-o", "ppid=,comm=", "-p", String(pid)], { encoding: "utf8" });
    const found = /^\s*(\d+)\s+(.*\S)/.exec(asked?.stdout ?? "");
    return found && { name: path.basename(found[2]), parent: Number(found[1]) };
  } catch {
    return null;
  }
}

/** npm runs a script through a shell, which outlives npm when npm is killed: then the shell's parent is the starter. */
function shellOfNpm() {
  const facts = process.env.npm_lifecycle_event ? processFacts(parent) : null;
  return facts && /^(-?)(sh|dash|bash|ash|zsh|ksh)$/.test(facts.name) && facts.parent > 1 ? facts.parent : null;
}

/** Whether whoever started this is gone. A dead process that nobody has asked after still counts as gone on Linux. */
function starterIsGone(npm) {
  if (process.ppid !== parent || !alive(parent)) return true;
  if (npm === null) return false;
  return process.platform === "linux" ? processFacts(parent)?.parent !== npm : !alive(npm);
}

const signals = windows ? ["SIGINT", "SIGTERM"] : ["SIGINT", "SIGTERM", "SIGHUP"];

function start(task, args) {
  const child = spawn(node(), [path.join(root, "scripts", "tasks.ts"), task, ...args], {
    cwd: root,
    env: environment(),
    stdio: "inherit",
  });
  const npm = shellOfNpm();
  const watch = setInterval(() => {
    if (starterIsGone(npm)) child.kill("SIGTERM");
  }, 500);
  for (const signal of signals) process.on(signal, () => child.kill(signal));
  child.on("error", (error) => stop(String(error)));
  child.on("exit", (code, signal) => {
    clearInterval(watch);
    process.exit(code ?? 128 + (constants.signals[signal] ?? 15));
  });
}

const [task = "start", ...args] = process.argv.slice(2);
if (!existsSync(path.join(root, "package-lock.json")))
  stop("package-lock.json is missing: this is not a whole copy of the project.");
if (!isReady()) await withLock(setUp);
start(task, args);
