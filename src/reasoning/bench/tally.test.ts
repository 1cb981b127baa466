/** The bench codes turned into counts, case by case and by law. */
import fc from "fast-check";
import { expect, it } from "vitest";
import type { BodyOf } from "../../journal/index.ts";
import { type BeeReading, beeResult, bySidesRead, type Trunk, tally } from "./tally.ts";

const trunks: readonly Trunk[] = ["clear", "mites", "mites-blotches", "mites-dark", "dark-no-mite", "unreadable"];
const bee = (left: Trunk | null, right: Trunk | null, more: Partial<BeeReading> = {}): BeeReading => ({
  lost: false,
  left,
  right,
  ...more,
});
const times = (n: number, each: BeeReading): BeeReading[] => Array.from({ length: n }, () => each);

it.each([
  ["mites", "clear", "positive"],
  ["clear", "mites-blotches", "positive"],
  ["mites-dark", "mites", "positive"],
  ["mites", "unreadable", "positive"],
  ["clear", "clear", "clear"],
  ["dark-no-mite", "clear", "clear"],
  ["dark-no-mite", "dark-no-mite", "clear"],
  ["clear", "unreadable", "partly-read"],
  ["unreadable", "dark-no-mite", "partly-read"],
  ["unreadable", "unreadable", "unreadable"],
] as const)("[BE1] %s and %s: %s", (left, right, result) => {
  expect(beeResult(bee(left, right))).toBe(result);
});

it("[BE1] a side that was not read is like an unreadable one; a lost bee is lost whatever was seen", () => {
  expect(beeResult(bee("clear", null))).toBe("partly-read");
  expect(beeResult(bee(null, null))).toBe("unreadable");
  expect(beeResult(bee("mites", "clear", { lost: true }))).toBe("lost");
});

it("[BE2] a poor vial of 30: 18 unreadable, 12 read, 2 positive has the denominator 12", () => {
  const counts = tally([
    ...times(18, bee("unreadable", "unreadable")),
    ...times(10, bee("clear", "clear")),
    ...times(2, bee("mites", "clear")),
  ]);
  expect(counts).toMatchObject({ read: 12, positive: 2, clear: 10, unreadable: 18, partlyRead: 0, lost: 0 });
  expect(counts.bestCase).toBeCloseTo(2 / 30, 12);
  expect(counts.worstCase).toBeCloseTo(20 / 30, 12);
});

it("[BE2] partly read bees stay outside the denominator and widen the bounds", () => {
  const counts = tally([...times(3, bee("clear", "unreadable")), bee("mites", "mites"), bee("clear", "dark-no-mite")]);
  expect(counts).toMatchObject({ read: 2, positive: 1, partlyRead: 3, darkNoMite: 1, bothInfested: 1 });
  expect([counts.bestCase, counts.worstCase]).toEqual([0.2, 0.8]);
});

it("[BE2] nothing set out has no bounds", () => {
  expect(tally([])).toMatchObject({ read: 0, bestCase: null, worstCase: null, mites: null, mitesPerBee: null });
  expect(tally([bee(null, null, { lost: true })])).toMatchObject({ read: 0, lost: 1, bestCase: null });
});

it("[BE3] mites are summed only when every positive bee was counted; contradictions are told", () => {
  const whole = [bee("mites", "clear", { mites: 7 }), bee("clear", "clear"), bee("clear", "mites", { mites: 3 })];
  expect(tally(whole)).toMatchObject({ mites: 10, mitesPerBee: [7, 0, 3], contradictions: 0 });
  expect(tally([...whole, bee("mites", "mites")])).toMatchObject({ mites: null, mitesPerBee: null });
  expect(tally([...whole, bee("clear", "clear", { mites: 2 })]).contradictions).toBe(1);
  expect(tally([bee("mites", "clear", { mites: 0 })]).contradictions).toBe(1);
  expect(() => tally([bee("mites", "clear", { mites: 1.5 })])).toThrow("mites");
});

it("[BE4] the sides are compared in bees with both trunks read", () => {
  const counts = tally([
    bee("mites", "unreadable"),
    bee("mites", "mites"),
    bee("clear", "mites"),
    bee("clear", "clear"),
  ]);
  expect(counts).toMatchObject({ leftInfested: 2, rightInfested: 2, bothInfested: 1 });
  expect(counts.bothSidesRead).toEqual({ examined: 3, infested: 2, left: 1, right: 2, both: 1 });
});

it("[BE2] [BE4] every bee is counted once, and left + right = infested + both", () => {
  const anyTrunk = fc.option(fc.constantFrom(...trunks), { nil: null });
  const anyBee = fc.record({ lost: fc.boolean(), left: anyTrunk, right: anyTrunk });
  fc.assert(
    fc.property(fc.array(anyBee, { maxLength: 60 }), (bees) => {
      const t = tally(bees);
      expect(t.positive + t.clear).toBe(t.read);
      expect(t.read + t.partlyRead + t.unreadable + t.lost).toBe(bees.length);
      expect(t.leftInfested + t.rightInfested).toBe(t.positive + t.bothInfested);
      expect(t.bothSidesRead.left + t.bothSidesRead.right).toBe(t.bothSidesRead.infested + t.bothSidesRead.both);
      if (t.read > 0) {
        expect(t.bestCase).toBeLessThanOrEqual(t.positive / t.read);
        expect(t.worstCase).toBeGreaterThanOrEqual(t.positive / t.read);
      }
    }),
    { seed: 1948, numRuns: 200 },
  );
});

it("[BE1] takes the bees as the journal holds them", () => {
  const entry: BodyOf<"bee-read"> = { reading: "r1", bee: 1, lost: false, left: "mites", right: "clear", mites: 4 };
  expect(tally([entry])).toMatchObject({ read: 1, positive: 1, mites: 4 });
});

it("[BE16] bees of which one trunk was read are kept apart, with mites or clear; the rest have both", () => {
  const counts = tally([
    ...times(40, bee("clear", "clear")),
    ...times(3, bee("mites", "clear")),
    ...times(2, bee("unreadable", "mites-dark")),
    ...times(4, bee("clear", "unreadable")),
    bee("unreadable", "unreadable"),
    bee("mites", null, { lost: true }),
  ]);
  expect(counts).toMatchObject({ positive: 5, read: 45 });
  expect(bySidesRead(counts)).toEqual({
    whole: { infested: 3, examined: 43 },
    oneSided: { infested: 2, examined: 6 },
  });
  expect(bySidesRead(tally([]))).toEqual({
    whole: { infested: 0, examined: 0 },
    oneSided: { infested: 0, examined: 0 },
  });
});
