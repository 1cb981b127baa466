/** How many times a fault is tried, and on how much: what was asked for, and never fewer than in the gate. */
import { expect, it } from "vitest";
import { amount, amountIn, expectSome, isFull, tries } from "./count.ts";

it.each([
  ["a few in the gate, whatever the share", { isFull: false, share: 1 }, 2],
  ["all at full count", { isFull: true, share: 1 }, 350],
  ["a tenth when that was asked for", { isFull: true, share: 0.1 }, 35],
  ["whole ones, rounded up", { isFull: true, share: 0.0101 }, 4],
  ["a few when the share is less", { isFull: true, share: 0.001 }, 2],
] as const)("tries %s", (_, run, expected) => {
  expect(amountIn(run)(2, 350)).toBe(expected);
});

it("counts what was tried, also when several take from it", () => {
  const rounds = tries(3, 6);
  const wanted = amount(3, 6);
  const [one, other] = [rounds[Symbol.iterator](), rounds[Symbol.iterator]()];
  const taken = [one.next().value, other.next().value, ...rounds];
  expect(taken).toEqual(Array.from({ length: wanted }, (_, index) => index));
  expect(rounds.count()).toBe(wanted);
  if (!isFull) expect(wanted).toBe(3);
});

it("fails when many tries missed what they are for, and not when a few did", () => {
  const after = (count: number) => ({ count: () => count });
  expectSome(0, after(1));
  expectSome(1, after(100));
  expect(() => expectSome(0, after(100))).toThrow("of 100 tries that hit");
});
