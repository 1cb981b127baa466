/** Takes colonies through many days: by WebAssembly where the engine allows it, else by the plain day; the same bits. */
import { type DayInRun, type Engine, oneDay } from "../day.ts";
import { at } from "../layout.ts";
import { driftNoise, type Noise, particleStream } from "../particles.ts";
import { runDays } from "./day-program.ts";
import { moduleBytes } from "./encoder.ts";
import { colonyFrom, constantsOf, dayRows, places, placesFrom, placesOf, seenWidth } from "./memory-map.ts";
import { driftNoiseProgram, normalQuantileProgram } from "./noise-program.ts";

/** What moves: one engine, its days, and the noise of the particles, if any. */
export interface Run {
  readonly model: Engine;
  /** The days in order, consecutive. */
  readonly days: readonly DayInRun[];
  readonly seed: number;
  readonly noise: Noise | null;
}

/** A stretch of days of one colony. */
export interface Stretch {
  /** Place in `days` of the first day. */
  readonly from: number;
  /** Not included. */
  readonly to: number;
  readonly particle: number;
}

export interface Kernel {
  /** Where `run` leaves what was seen each next morning: bees, infested share, survival, in this order. */
  readonly seen: Float64Array;
  /** Takes the colony whose record begins at `start` through a stretch of days. */
  readonly run: (states: Float64Array, start: number, stretch: Stretch) => void;
}

/** The kernel for a run: the fastest there is. */
export const kernelFor = (run: Run): Kernel => assembledKernel(run) ?? plainKernel(run);

/** One day after the other as `oneDay` has it. */
export function plainKernel({ model, days, seed, noise }: Run): Kernel {
  const seen = new Float64Array(days.length * seenWidth);
  return {
    seen,
    run: (states, start, { from, to, particle }) => {
      for (let index = from; index < to; index++) {
        const day = days[index] as DayInRun;
        if (noise !== null) driftNoise(states, start, noise, particleStream(seed, particle, day.elapsed));
        oneDay(states, start, model, day);
        const bees = states[start + at.bees] as number;
        const place = (index - from) * seenWidth;
        seen[place] = bees;
        seen[place + 1] = bees > 0 ? (states[start + at.infested] as number) / bees : 0;
        seen[place + 2] = Math.exp(-(states[start + at.hazard] as number));
      }
    },
  };
}

/** What is used of WebAssembly; the pure folders know no browser and no Node. */
declare const WebAssembly:
  | {
      readonly Module: new (bytes: Uint8Array<ArrayBuffer>) => object;
      readonly Instance: new (
        module: object,
        imports: object,
      ) => { readonly exports: Readonly<Record<string, unknown>> };
      readonly Memory: new (size: { readonly initial: number }) => { readonly buffer: ArrayBuffer };
    }
  | undefined;

const pageBytes = 65536;

/** The same in WebAssembly; null where it is not there or not allowed. */
export function assembledKernel({ model, days, seed, noise }: Run): Kernel | null {
  const code = compiled();
  if (code === null || typeof WebAssembly === "undefined") return null;
  const { layout, parameters } = model;
  const map = placesOf(layout, parameters.foragingAge, days.length);
  const memory = new WebAssembly.Memory({ initial: Math.ceil(map.end / pageBytes) });
  const { exports } = new WebAssembly.Instance(code, { world: { memory, exp: Math.exp, log: Math.log } });
  const run = exports.run as (from: number, to: number, particle: number, noisy: number) => void;

  const numbers = new Float64Array(memory.buffer);
  numbers.set(constantsOf(model, noise));
  numbers.set(dayRows(model, days), map.days / 8);
  numbers.set(model.youth, map.youth / 8);
  const integers = new Int32Array(memory.buffer, placesFrom, places.length);
  const given = { ...map, matureAge: model.matureAge, seedLow: seed | 0, seedHigh: Math.floor(seed / 2 ** 32) | 0 };
  integers.set(places.map((name) => given[name]));
  const colony = numbers.subarray(colonyFrom / 8, colonyFrom / 8 + layout.length);
  return {
    seen: numbers.subarray(map.seen / 8, map.end / 8),
    run: (states, start, { from, to, particle }) => {
      for (let each = 0; each < layout.length; each++) colony[each] = states[start + each] as number;
      run(from, to, particle, noise === null ? 0 : 1);
      states.set(colony, start);
    },
  };
}

let module: object | null | undefined;

/** The program, compiled once: engines speed up what runs often, and would begin anew with each new one. */
function compiled(): object | null {
  if (module !== undefined) return module;
  try {
    module = typeof WebAssembly === "undefined" ? null : new WebAssembly.Module(program());
  } catch {
    // A page may forbid it, an old engine may lack the instructions for two numbers at once.
    module = null;
  }
  return module;
}

const oneNumber = { takes: ["f64"], gives: ["f64"] } as const;

/** Functions by their index: e^x, ln x, normal quantile, noise, days. */
const program = (): Uint8Array<ArrayBuffer> =>
  moduleBytes(
    [
      { name: "exp", ...oneNumber },
      { name: "log", ...oneNumber },
    ],
    [normalQuantileProgram(1), driftNoiseProgram(2), runDays(0, 3)],
  );
