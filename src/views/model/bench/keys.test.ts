/** The bench keys: one key where one key can say it, nothing counted twice, nothing lost. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BenchState, freshBench, leftHand, numericPad, pressKey, type ReadBee } from "./keys.ts";

/** Presses keys half a second apart and gathers the bees. */
function type(
  keys: readonly string[],
  state: BenchState = freshBench,
  map = numericPad,
): { bees: ReadBee[]; state: BenchState } {
  const bees: ReadBee[] = [];
  let now = state;
  keys.forEach((key, index) => {
    const step = pressKey(now, { key, at: (index + 1) * 500, held: false }, map);
    now = step.state;
    if (step.effect.kind === "bee") bees.push(step.effect.bee);
    if (step.effect.kind === "undo-bee") bees.pop();
  });
  return { bees, state: now };
}
const sides = (bees: readonly ReadBee[]) => bees.map((bee) => [bee.left, bee.right]);

describe("bench keys", () => {
  it("0 is a whole bee, both trunks clear", () => {
    expect(sides(type(["0", "0"]).bees)).toEqual([
      ["clear", "clear"],
      ["clear", "clear"],
    ]);
  });

  it("1 2 3 score the left trunk and ask the right with the same keys", () => {
    const half = type(["2"]);
    expect(half.bees).toEqual([]);
    expect(half.state.asked).toBe("right");
    expect(sides(type(["2", "0", "1", "3"]).bees)).toEqual([
      ["mites-blotches", "clear"],
      ["mites", "mites-dark"],
    ]);
  });

  it("7 8 9 are one key for the right trunk alone, since mites fall on either side alike", () => {
    expect(sides(type(["7", "8", "9"]).bees)).toEqual([
      ["clear", "mites"],
      ["clear", "mites-blotches"],
      ["clear", "mites-dark"],
    ]);
  });

  it("a dark trunk without a mite is not a mite", () => {
    expect(sides(type(["6", "4", "0", "4", "6"]).bees)).toEqual([
      ["clear", "dark-no-mite"],
      ["dark-no-mite", "clear"],
      ["dark-no-mite", "dark-no-mite"],
    ]);
  });

  it("unreadable twice is both sides; once and clear is partly read", () => {
    expect(sides(type([".", ".", ".", "0"]).bees)).toEqual([
      ["unreadable", "unreadable"],
      ["unreadable", "clear"],
    ]);
  });

  it("5 is a lost bee, also half-way", () => {
    expect(type(["1", "5"]).bees).toEqual([{ lost: true, left: null, right: null, flagged: false }]);
  });

  it("- takes back the left trunk while the right is asked, else the last bee", () => {
    expect(type(["1", "-", "0"]).bees).toHaveLength(1);
    expect(type(["0", "7", "-"]).bees).toEqual(type(["0"]).bees);
  });

  it("+ repeats the last bee and does nothing when there is none", () => {
    expect(sides(type(["+", "8", "+"]).bees)).toEqual([
      ["clear", "mites-blotches"],
      ["clear", "mites-blotches"],
    ]);
  });

  it("* flags the bee under the lens, and only that one", () => {
    expect(type(["*", "0", "0"]).bees.map((bee) => bee.flagged)).toEqual([true, false]);
  });

  it("the same key within 70 ms is dropped and said, another key is not", () => {
    const first = pressKey(freshBench, { key: "0", at: 1000, held: false });
    const bounced = pressKey(first.state, { key: "0", at: 1069, held: false });
    expect(bounced.effect).toEqual({ kind: "dropped", key: "0", why: "bounce" });
    expect(pressKey(first.state, { key: "0", at: 1070, held: false }).effect.kind).toBe("bee");
    expect(pressKey(first.state, { key: "7", at: 1010, held: false }).effect.kind).toBe("bee");
  });

  it("a held key is dropped, and / makes the dropped press count", () => {
    const first = pressKey(freshBench, { key: "0", at: 1000, held: false });
    const held = pressKey(first.state, { key: "0", at: 1500, held: true });
    expect(held.effect).toEqual({ kind: "dropped", key: "0", why: "held" });
    expect(pressKey(held.state, { key: "/", at: 1600, held: false }).effect.kind).toBe("bee");
    expect(pressKey(first.state, { key: "/", at: 1600, held: false }).effect.kind).toBe("none");
  });

  it("the left hand alone says the same things", () => {
    expect(sides(type([" ", "d", "f", "a", "D"], freshBench, leftHand).bees)).toEqual([
      ["clear", "clear"],
      ["mites", "clear"],
      ["clear", "mites"],
      ["mites", "mites"],
      ["mites", "clear"],
    ]);
  });

  it("any typing leaves every bee with two trunks, or lost with none", () => {
    const keys = fc.array(fc.constantFrom(...Object.keys(numericPad)), { maxLength: 60 });
    fc.assert(
      fc.property(keys, (typed) => {
        for (const bee of type(typed).bees)
          expect((bee.left === null) === bee.lost && (bee.right === null) === bee.lost).toBe(true);
      }),
      { seed: 70, numRuns: 200 },
    );
  });
});
