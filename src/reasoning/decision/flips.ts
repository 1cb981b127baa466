/** Which input would change the choice, and at what value. */
import { benchChances, centreOf, signals } from "./belief.ts";
import { type Action, bestOf, lossesFrom, type Prices } from "./losses.ts";
import type { Setting, Stretch } from "./strip.ts";

export type FlipInput = keyof Prices | "centre-of-belief" | "sensitivity";

/** The nearest value of one input, all else equal, at which another action becomes best. */
export interface Flip {
  readonly input: FlipInput;
  readonly given: number;
  readonly direction: "up" | "down";
  readonly at: number;
  readonly becomes: Action;
}

/**
 * Nearest turns of the choice in both directions of every input.
 *
 * Prices are searched from a thousandth to a thousand times their value, shares over all of their range, on a grid
 * and then by halving. An input that does not appear does not change the choice in that range by itself.
 */
export function flips(setting: Setting & { readonly strip: readonly Stretch[] }): readonly Flip[] {
  const { belief, prices, test, bench, line } = setting;
  const seen = signals(belief, test, bench, line);
  const withPrices = (changed: Partial<Prices>) => bestOf(lossesFrom(seen, line, { ...prices, ...changed }));
  const withSensitivity = (sensitivity: number) => {
    const other = { ...test, sensitivity };
    return bestOf(lossesFrom(signals(belief, other, benchChances(other), line), line, prices));
  };
  const money = (["colonyValue", "actCost", "testCost"] as const).flatMap((input) => {
    const given = prices[input];
    const start = given > 0 ? given : Math.max(prices.colonyValue, prices.actCost, prices.testCost) * 1e-6;
    const factors = Array.from({ length: 60 }, (_, i) => 1000 ** ((i + 1) / 60));
    const at = (value: number) => withPrices({ [input]: value });
    return both({
      input,
      given,
      at,
      up: start > 0 ? factors.map((factor) => start * factor * (given > 0 ? 1 : 1000)) : [],
      down: given > 0 ? [...factors.map((factor) => given / factor), 0] : [],
    });
  });
  const shares = (from: number, to: number, steps: number) =>
    Array.from({ length: steps }, (_, i) => from + ((to - from) * (i + 1)) / steps);
  return [
    ...money,
    ...both({
      input: "residualShare",
      given: prices.residualShare,
      at: (residualShare) => withPrices({ residualShare }),
      up: shares(prices.residualShare, 1, 40),
      down: shares(prices.residualShare, 0, 40),
    }),
    ...alongStrip(centreOf(belief), setting.strip),
    ...both({
      input: "sensitivity",
      given: test.sensitivity,
      at: withSensitivity,
      up: shares(test.sensitivity, 1, 10),
      down: shares(test.sensitivity, 0.02, 10),
    }),
  ];
}

/** Halving stops when the turn is known to this share of its value. */
const precision = 1e-10;

interface Search {
  readonly input: FlipInput;
  readonly given: number;
  readonly at: (value: number) => Action;
  readonly up: readonly number[];
  readonly down: readonly number[];
}

function both({ input, given, at, up, down }: Search): readonly Flip[] {
  const now = at(given);
  const search = (direction: "up" | "down", values: readonly number[]): readonly Flip[] => {
    let same = given;
    for (const value of values) {
      if (value === same) continue;
      if (at(value) === now) {
        same = value;
        continue;
      }
      let other = value;
      for (let step = 0; step < 60 && Math.abs(other - same) > precision * Math.abs(other); step++) {
        const middle = (same + other) / 2;
        if (at(middle) === now) same = middle;
        else other = middle;
      }
      return [{ input, given, direction, at: other, becomes: at(other) }];
    }
    return [];
  };
  return [...search("down", down), ...search("up", up)];
}

function alongStrip(centre: number, stretches: readonly Stretch[]): readonly Flip[] {
  const here = stretches.findIndex(({ from, to }) => centre >= from && centre <= to);
  const [left, own, right] = [stretches[here - 1], stretches[here], stretches[here + 1]];
  const input = "centre-of-belief";
  return [
    ...(left && own ? [{ input, given: centre, direction: "down", at: own.from, becomes: left.best } as const] : []),
    ...(right && own ? [{ input, given: centre, direction: "up", at: own.to, becomes: right.best } as const] : []),
  ];
}
