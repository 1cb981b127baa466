/** How shares are told: one figure never carries two words, and a figure and its range agree. */
import { expect, it } from "vitest";
import { inTen, wordInTen } from "./en/numbers.ts";
import { wholeWordsOf } from "./index.ts";

const { could } = wholeWordsOf("en");
const shares = Array.from({ length: 999 }, (_, index) => (index + 1) / 1000);

it("a figure from 1 to 9 in 10 has one word", () => {
  const words = new Map<string, Set<string>>();
  for (const share of shares) words.set(inTen(share), (words.get(inTen(share)) ?? new Set()).add(wordInTen(share)));
  for (const figure of ["1", "2", "3", "4", "5", "6", "7", "8", "9"])
    expect([...(words.get(figure) ?? [])], figure).toHaveLength(1);
  expect([...(words.get("1") ?? [])]).toEqual(["unlikely"]);
});

it("the word is never further from the scale of the guidance than the rounding of the figure", () => {
  // Bounds of EFSA 2018, table 2, in per cent: 10 to 33 unlikely, 33 to 66 as likely as not, 66 to 90 likely.
  const bounds = { unlikely: [0.1, 0.33], "as likely as not": [0.33, 0.66], likely: [0.66, 0.9] } as const;
  for (const share of shares.filter((each) => each >= 0.1 && each < 0.95)) {
    const [low, high] = bounds[wordInTen(share) as keyof typeof bounds] ?? expect.fail(String(share));
    expect(share).toBeGreaterThanOrEqual(low - 0.05);
    expect(share).toBeLessThanOrEqual(high + 0.05);
  }
});

it("a range is told in the figures of the shares themselves", () => {
  expect(could.range({ low: 0.06, high: 0.31 })).toBe("under 1 to 3");
  expect(could.range({ low: 0.01, high: 0.09 })).toBe("under 1");
  expect(could.range({ low: 0.97, high: 0.99 })).toBe("over 9");
  expect(could.range({ low: 0.47, high: 0.52 })).toBe("about 5");
});
