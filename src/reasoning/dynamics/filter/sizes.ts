/** How large a colony was seen to be: frames of bees or of brood, as a number with its scatter. */
import { type Day, isDay, type Problem } from "../../../units/index.ts";
import { at, broodDays, type Layout } from "../layout.ts";
import { dynamicsProblem } from "../problems.ts";

/** Frames covered with bees, or filled with brood of all ages, on a day. */
export interface DatedSize {
  readonly date: Day;
  readonly what: "bees" | "brood";
  /** Frames, both sides; parts of a frame count as parts. */
  readonly frames: number;
  /** Bees on a frame that is covered, or cells of a frame that is full; `usualSizes` when left out. */
  readonly perFrame?: number;
  /** Standard deviation of the logarithm of such an estimate; `usualSizes` when left out. */
  readonly scatter?: number;
}

/** 2,000 bees and 5,000 brood cells a frame: common practice, no source. 0.25 in logs: assumed, no source. */
export const usualSizes = { perFrame: { bees: 2000, brood: 5000 }, scatter: 0.25 } as const;

/** Most that can be said of a size, and the least scatter: nobody estimates bees to less than 1 in 100. Judgement. */
export const sizeBounds = { frames: 200, perFrame: 20_000, scatter: 2, leastScatter: 0.01 } as const;

/** What one size did to the particles. */
export interface SizeTaken extends Required<DatedSize> {
  /** Null: left out, no particle could be of that size. */
  readonly logLikelihood: number | null;
  readonly effectiveShare: number;
  /** How far it lay from what was expected, in standard deviations of that, in logs; null where nothing of it was expected. */
  readonly surprise: number | null;
}

/** With everything that was left out. */
export const filledIn = ({ date, what, frames, perFrame, scatter }: DatedSize): Required<DatedSize> => ({
  ...{ date, what, frames },
  perFrame: perFrame ?? usualSizes.perFrame[what],
  scatter: scatter ?? usualSizes.scatter,
});

/** ln of what each particle has of it; −Infinity for none. */
export function logSizes(
  states: Float64Array,
  particles: number,
  layout: Layout,
  what: DatedSize["what"],
): Float64Array {
  return Float64Array.from({ length: particles }, (_, each) => {
    const record = each * layout.length;
    if (what === "bees") return Math.log(states[record + at.bees] as number);
    let brood = 0;
    for (let day = 0; day < broodDays; day++) brood += states[record + layout.brood + day] as number;
    return Math.log(brood);
  });
}

/** ln of the density of an estimate about each particle's own size, both in logs: a normal curve. */
export function logChancesOfSize(
  sizes: Float64Array,
  { frames, perFrame, scatter }: Required<DatedSize>,
): Float64Array {
  const seen = Math.log(frames * perFrame);
  return sizes.map((each) => -0.5 * (((seen - each) / scatter) ** 2 + Math.log(2 * Math.PI)) - Math.log(scatter));
}

/** Deviations off what the particles expect: scatter of the estimate and of their sizes. Null where one of them has none. */
export function surpriseOfSize(sizes: Float64Array, { frames, perFrame, scatter }: Required<DatedSize>): number | null {
  const mean = sizes.reduce((sum, each) => sum + each, 0) / sizes.length;
  const variance = sizes.reduce((sum, each) => sum + (each - mean) ** 2, 0) / sizes.length;
  const off = (Math.log(frames * perFrame) - mean) / Math.sqrt(variance + scatter * scatter);
  return Number.isFinite(off) ? off : null;
}

/** What sizes of a question cannot be. */
export function sizeFaults(
  sizes: readonly DatedSize[],
  { from, until }: { readonly from: Day; readonly until: Day },
): readonly Problem[] {
  return sizes.flatMap((size, index): readonly Problem[] => {
    const field = `sizes[${index}]`;
    const { date, frames, perFrame, scatter } = filledIn(size);
    if (!isDay(date))
      return [dynamicsProblem("season-day-unknown", "blocked", `${field}.date`, { date: String(date) })];
    for (const [name, value] of Object.entries({ frames, perFrame, scatter })) {
      const most = sizeBounds[name as "frames" | "perFrame" | "scatter"];
      const least = name === "scatter" ? sizeBounds.leastScatter : 0;
      if (!(value > 0 && value >= least && value <= most))
        return [dynamicsProblem("season-size-impossible", "blocked", `${field}.${name}`, { value, least, most })];
    }
    if (isDay(from) && isDay(until) && (date < from || date > until))
      return [dynamicsProblem("season-size-outside", "blocked", `${field}.date`, { date, from, until })];
    return [];
  });
}

/** Told when frames were turned into numbers by common practice, once for bees and once for brood. */
export const sizeNotes = (sizes: readonly DatedSize[]): readonly Problem[] =>
  (["bees", "brood"] as const)
    .filter((what) => sizes.some((size) => size.what === what && size.perFrame === undefined))
    .map((what) =>
      dynamicsProblem("season-frames-by-common-practice", "noted", "sizes", {
        what,
        perFrame: usualSizes.perFrame[what],
      }),
    );
