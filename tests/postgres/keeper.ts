/**
 * Keeps one PostgreSQL running as long as whoever started this process lives: the end of standard input is the sign,
 * and it comes however the other went. Then the server is stopped and its folder removed, unless a word came before. A
 * word that names a signal is sent on to the server at once: it goes as it would in an accident.
 */
import { spawn } from "node:child_process";
import { rmSync } from "node:fs";

export interface Kept {
  readonly program: string;
  readonly args: readonly string[];
  readonly folder: string;
  /** Whom to run as; undefined: as whoever runs this. */
  readonly uid?: number;
  readonly gid?: number;
}

const { program, args, folder, uid, gid } = JSON.parse(process.argv[2] ?? "") as Kept;
const server = spawn(program, args, {
  cwd: folder,
  env: { PATH: process.env.PATH, LC_ALL: "C" },
  stdio: ["ignore", "ignore", "inherit"],
  ...(uid === undefined ? {} : { uid }),
  ...(gid === undefined ? {} : { gid }),
});
// A signal to the whole group is not this process's affair: it goes when its starter goes.
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.on(signal, () => {});
// A word before the end: the server will be started again on the same folder.
let [isToStay, isEnded] = [false, false];
process.stdin.on("data", (word: Buffer) => {
  isToStay = true;
  const signal = word.toString();
  if (signal === "SIGKILL" || signal === "SIGQUIT") server.kill(signal);
});
server.on("exit", (code) => {
  if (isEnded && !isToStay) rmSync(folder, { recursive: true, force: true });
  process.exit(code ?? 1);
});
process.stdin.on("close", () => {
  isEnded = true;
  server.kill("SIGINT"); // fast shutdown: connections are cut
  setTimeout(() => server.kill("SIGQUIT"), 5_000).unref();
});
