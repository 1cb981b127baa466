/** R and Python, asked for one piece of work at a time; absent programs are told, not guessed. */
import { spawnSync } from "node:child_process";
import path from "node:path";

/** What a program gave: seconds of processor time of its fastest warm run, its answer, and with which routines. */
export interface Told {
  readonly seconds: number;
  readonly answer: readonly number[];
  readonly by: string;
  readonly version: string;
}

export interface Program {
  readonly name: string;
  /** The work done, or null where the program or a package of it is not on this machine. */
  readonly tell: (work: string, inputFile: string) => Told | null;
}

/** One thread each, as ours has one. */
const oneThread = { OMP_NUM_THREADS: "1", OPENBLAS_NUM_THREADS: "1", MKL_NUM_THREADS: "1" };

/** Commands are tried in turn; one that lacks a package counts as absent, any other failure throws. */
function program(name: string, script: string, commands: readonly string[]): Program {
  const file = path.join(import.meta.dirname, script);
  return {
    name,
    tell: (work, inputFile) => {
      for (const command of commands) {
        const { status, stdout, stderr, error } = spawnSync(command, [file, work, inputFile], {
          encoding: "utf8",
          env: { ...process.env, ...oneThread },
        });
        if (error || /there is no package called|ModuleNotFoundError/.test(stderr)) continue;
        if (status !== 0) throw new Error(`${name} failed at ${work}: ${stderr}`);
        return JSON.parse(stdout) as Told;
      }
      return null;
    },
  };
}

export const programs: readonly Program[] = [
  program("R", "work.R", ["Rscript"]),
  program("Python", "work.py", ["python3", "/usr/bin/python3"]),
];
