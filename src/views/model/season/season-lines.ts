/**
 * What was seen of a colony, a line each, as it is typed into the form of Season.
 *
 * @module views/model
 */
import type { dynamics } from "../../../reasoning/index.ts";
import { isDay } from "../../../units/index.ts";
import { parseNumber } from "../form.ts";

/** A line as typed, and what it says; null where that cannot be read. */
export interface ReadLine<Seen> {
  readonly given: string;
  /** From 1. */
  readonly line: number;
  readonly seen: Seen | null;
}

const linesOf = <Seen>(typed: string, read: (words: readonly string[]) => Seen | null): readonly ReadLine<Seen>[] =>
  typed
    .split("\n")
    .map((given, index) => ({ given: given.trim(), line: index + 1 }))
    .filter(({ given }) => given !== "")
    .map(({ given, line }) => ({ given, line, seen: read(given.split(/[\s,;:/]+|\bof\b/).filter(Boolean)) }));

/** Day, bees with mites, bees read; then, in either order, “one side” and “stop”, each with its two numbers. */
export const countsIn = (typed: string): readonly ReadLine<dynamics.DatedCount>[] =>
  linesOf(typed, ([date = "", first = "", second = "", ...rest]) => {
    const whole = pairOf(first, second);
    const more = whole === null ? null : moreIn(rest);
    return isDay(date) && whole !== null && more !== null ? { date, ...whole, ...more } : null;
  });

/** The line of a count. */
export const countLine = ({ date, infested, examined, oneSided, stop }: dynamics.DatedCount): string =>
  [
    `${date} ${infested} ${examined}`,
    ...(oneSided === undefined ? [] : [`one side ${oneSided.infested} ${oneSided.examined}`]),
    ...(stop === undefined ? [] : [`stop ${stop.infested} ${stop.examined}`]),
  ].join(" ");

/** Day, frames, “bees” or “brood”; then what is on such a frame, where it is known. */
export const sizesIn = (typed: string): readonly ReadLine<dynamics.DatedSize>[] =>
  linesOf(typed, ([date = "", count = "", what = "", each, ...rest]) => {
    const frames = parseNumber(count);
    const perFrame = each === undefined ? undefined : parseNumber(each);
    if (!isDay(date) || frames === null || perFrame === null || rest.length > 0) return null;
    if (what !== "bees" && what !== "brood") return null;
    return { date, what, frames, ...(perFrame === undefined ? {} : { perFrame }) };
  });

function pairOf(first: string, second: string): dynamics.BeesRead | null {
  const [infested, examined] = [parseNumber(first), parseNumber(second)];
  return infested === null || examined === null ? null : { infested, examined };
}

type More = Pick<dynamics.DatedCount, "oneSided" | "stop">;

function moreIn(words: readonly string[], before: More = {}): More | null {
  if (words.length === 0) return before;
  const isSide = words[0] === "one" && words[1] === "side";
  if (!isSide && words[0] !== "stop") return null;
  const name = isSide ? "oneSided" : "stop";
  const [first = "", second = "", ...rest] = words.slice(isSide ? 2 : 1);
  const pair = pairOf(first, second);
  return pair === null || before[name] !== undefined ? null : moreIn(rest, { ...before, [name]: pair });
}
