/** How often each fault is tried: a few times in the gate, as often as promised by `npm run faults`, which prints what was told. */
import { appendFileSync, existsSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect } from "vitest";

/** File that the full run collects its table in; undefined in the gate. */
const table = process.env.SKEPSIS_FAULTS;
const share = Number(process.env.SKEPSIS_FAULTS_SHARE ?? 1);

/** Whether faults are tried at full count. */
export const isFull = table !== undefined;

interface Run {
  readonly isFull: boolean;
  /** Of the full numbers, above 0 to 1. */
  readonly share: number;
}

/** How many of a thing in such a run: a few in the gate, else the full number or a share of it, and never fewer. */
export const amountIn =
  ({ isFull, share }: Run) =>
  (few: number, full: number): number =>
    isFull ? Math.max(few, Math.ceil(full * share)) : few;

/** How many of a thing in this run. */
export const amount = amountIn({ isFull, share });

/** Milliseconds that each fault may take in the full run; without end when not asked. */
const longest = Number(process.env.SKEPSIS_FAULTS_MINUTES ?? Number.POSITIVE_INFINITY) * 60_000;

/** Numbers of tries, from 0, and how many there have been. Several may take from it at once. */
export interface Tries extends Iterable<number> {
  readonly count: () => number;
}

/** A few tries in the gate, else the full count or the share that was asked for; fewer when the time for it is over. */
export function tries(few: number, full: number): Tries {
  const wanted = amount(few, full);
  const end = performance.now() + (isFull ? longest : Number.POSITIVE_INFINITY);
  let tried = 0;
  return {
    count: () => tried,
    *[Symbol.iterator]() {
      while (tried < wanted && (tried < few || performance.now() < end)) {
        tried += 1;
        yield tried - 1;
      }
    },
  };
}

/** Milliseconds for a test that starts many processes, beside other tests: of the harness, no promise of the product. */
export const patience = isFull ? 36_000_000 : 180_000;

/** So many tries do not all miss what they are for. */
const enough = 12;

/** Expects that some of the tries hit what they are for, once there were enough of them. */
export function expectSome(hits: number, { count }: Pick<Tries, "count">): void {
  if (count() >= enough) expect(hits, `of ${count()} tries that hit`).toBeGreaterThan(0);
}

/** A line of the table: a fault that was tried. Whether it held is told by its test, which fails when anything was lost. */
export interface Tried {
  readonly fault: string;
  readonly tried: number;
  /** What was acknowledged, checked or changed meanwhile. */
  readonly against: string;
}

/** A line as it is written down: with the test that tried it, which may still fail afterwards. */
export interface Told extends Tried {
  readonly test: string;
}

/** Adds a line to the table of the full run. */
export function tell(line: Tried): void {
  const told: Told = { ...line, test: expect.getState().currentTestName ?? "" };
  if (table !== undefined) appendFileSync(table, `${JSON.stringify(told)}\n`);
}

/** A new folder, in memory where the machine has such: processes and writes are cut here, the machine itself stays up. */
export const scratch = (name: string): string =>
  mkdtempSync(path.join(existsSync("/dev/shm") ? "/dev/shm" : tmpdir(), `skepsis-${name}-`));

/** Whole numbers below a bound, from a seed: the same on every run. */
export function seeded(seed: number): (below: number) => number {
  let state = seed >>> 0 || 1;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}
