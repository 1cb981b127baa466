/** Times the same work here, in R and in Python, row by row in one run, and prints how many times as long they take. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import path from "node:path";
import { programs, type Told } from "./programs.ts";
import { type Work, works } from "./work.ts";

interface Row {
  readonly what: string;
  /** Milliseconds. */
  readonly ours: number;
  readonly theirs: readonly (Told | null)[];
}

/**
 * Milliseconds of processor time of our fastest warm run, as theirs: what else the machine does leaves it as it is.
 * Short work is timed many at a time; the engine's own threads, which compile and clear up, are counted in.
 */
function ourTime({ ours, input }: Work): number {
  const timed = (batch: number): number => {
    const began = process.cpuUsage();
    for (let run = 0; run < batch; run++) ours(input);
    const { user, system } = process.cpuUsage(began);
    return (user + system) / 1000 / batch;
  };
  timed(3);
  timed(Math.ceil(300 / timed(2)));
  const batch = Math.ceil(100 / timed(2));
  return Math.min(...Array.from({ length: 5 }, () => timed(batch)));
}

/** Times mean nothing when the answers differ. */
function mustAgree(
  { name, tolerance }: Work,
  ours: readonly number[],
  program: string,
  theirs: readonly number[],
): void {
  const same =
    ours.length === theirs.length &&
    ours.every((value, i) => Math.abs(value - (theirs[i] as number)) <= tolerance * Math.max(Math.abs(value), 1e-3));
  if (!same) throw new Error(`${name}: ours is ${ours.join(" ")}, ${program} says ${theirs.join(" ")}`);
}

function compared(work: Work, folder: string): Row {
  const file = path.join(folder, `${work.name}.json`);
  writeFileSync(file, JSON.stringify(work.input));
  const answer = work.ours(work.input);
  const ours = ourTime(work);
  const theirs = programs.map(({ name, tell }) => {
    const told = tell(work.name, file);
    if (told) mustAgree(work, answer, name, told.answer);
    return told;
  });
  return { what: work.what, ours, theirs };
}

const shown = (milliseconds: number): string =>
  milliseconds >= 100 ? milliseconds.toFixed(0) : milliseconds.toPrecision(2);
const times = (ratio: number): string => (ratio >= 10 ? ratio.toFixed(0) : ratio.toFixed(1));
const cells = (ours: number, told: Told | null): string =>
  told
    ? `${shown(told.seconds * 1000)} | ${times((told.seconds * 1000) / ours)}${told.seconds * 1000 < ours ? " (slower)" : ""} | ${told.by}`
    : "not compared | | ";

/** Prints a table in Markdown, a row as soon as it is known; `chosen` names rows, none means all. */
export function versus(chosen: readonly string[] = []): void {
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-versus-"));
  try {
    console.log(`| Work | Ours, ms |${programs.map(({ name }) => ` ${name}, ms | times ours | by |`).join("")}`);
    console.log(`| --- | ---: |${programs.map(() => " ---: | ---: | --- |").join("")}`);
    const versions = new Set([`Node ${process.versions.node}`]);
    for (const work of works.filter(({ name }) => chosen.length === 0 || chosen.includes(name))) {
      const { what, ours, theirs } = compared(work, folder);
      for (const told of theirs) if (told) versions.add(told.version);
      console.log(`| ${what} | ${shown(ours)} | ${theirs.map((told) => cells(ours, told)).join(" | ")} |`);
    }
    console.log(`\n${[...versions].join(", ")}; ${availableParallelism()} cores.`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
