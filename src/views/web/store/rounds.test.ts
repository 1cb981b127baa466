/** Rounds of the exchange by a clock that the test moves. */
import { expect, it } from "vitest";
import { rounds } from "./rounds.ts";

/** A clock that stands until it is moved, and rounds that last until they are ended. */
function bySetClock() {
  let now = 0;
  let waiting: readonly { readonly at: number; readonly work: () => void }[] = [];
  const ends: (() => void)[] = [];
  let begun = 0;
  const made = rounds(
    () => {
      begun += 1;
      return new Promise<void>((resolve) => ends.push(resolve));
    },
    {
      restMilliseconds: 60_000,
      later: (work, milliseconds) => {
        const due = { at: now + milliseconds, work };
        waiting = [...waiting, due];
        return () => {
          waiting = waiting.filter((each) => each !== due);
        };
      },
    },
  );
  return {
    made,
    begun: () => begun,
    waiting: () => waiting.length,
    move: (milliseconds: number) => {
      now += milliseconds;
      const due = waiting.filter((each) => each.at <= now);
      waiting = waiting.filter((each) => each.at > now);
      for (const { work } of due) work();
    },
    end: async () => {
      ends.shift()?.();
      await new Promise((resolve) => setImmediate(resolve));
    },
  };
}

it("one round a rest, however much was written while rounds ran", async () => {
  const { made, begun, waiting, move, end } = bySetClock();
  made.within(1_500);
  for (const written of [1, 2, 3]) {
    move(1_500);
    expect(begun()).toBe(written);
    made.within(1_500);
    await end();
    expect(waiting()).toBe(1);
  }
  move(1_500);
  await end();
  expect(begun()).toBe(4);
  move(60_000);
  await end();
  expect(begun()).toBe(5);
  expect(waiting()).toBe(1);
});

it("one that comes due while another runs follows at once, and only one runs at a time", async () => {
  const { made, begun, move, end } = bySetClock();
  made.within(0);
  move(0);
  made.within(0);
  move(0);
  expect(begun()).toBe(1);
  await end();
  move(0);
  expect(begun()).toBe(2);
});

it("none begins after the end, not even by one that was running", async () => {
  const { made, begun, waiting, move, end } = bySetClock();
  made.within(0);
  move(0);
  made.stop();
  await end();
  expect(waiting()).toBe(0);
  move(120_000);
  expect(begun()).toBe(1);
});
