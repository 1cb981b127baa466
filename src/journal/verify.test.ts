import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bee, everyKind, ids } from "../../tests/journals/every-kind.ts";
import { writer } from "../../tests/journals/writer.ts";
import { type Entry, headerHash, headsOf, verifyChain } from "./index.ts";

const story = everyKind();
const chain = writer().write(...Array.from({ length: 6 }, (_, index) => bee(index + 1)));
const head = headsOf(chain);
const reasons = (entries: readonly Entry[], noted = head) =>
  verifyChain(entries, noted).faults.map((fault) => [fault.seq, fault.reason]);
const without = (index: number) => chain.filter((_, other) => other !== index);
const swapped = (index: number, change: (entry: Entry) => Entry) =>
  chain.map((entry, other) => (other === index ? change(entry) : entry));

/** Every way to change one member: another value of the same sort. */
const members = [
  "id",
  "kind",
  "schema",
  "at",
  "recordedAt",
  "author",
  "programme",
  "about",
  "replaces",
  "content",
] as const;
const another = (value: unknown): unknown =>
  typeof value === "number" ? value + 1 : Array.isArray(value) ? [...value, "more"] : `${String(value)}0`;

describe("checking the chain", () => {
  it("[JN12] a sealed journal is intact in any order and with copies", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...story, ...story], { minLength: story.length * 2 }), (entries) => {
        expect(verifyChain(entries)).toMatchObject({ isIntact: true, checked: story.length });
      }),
      { seed: 12, numRuns: 8 },
    );
    expect(verifyChain([])).toMatchObject({ isIntact: true, checked: 0, heads: [] });
  });

  it.each(members)("[JN13] a changed header is found at the next entry: %s", (member) => {
    const changed = swapped(2, (entry) => ({
      ...entry,
      header: { ...entry.header, [member]: another(entry.header[member]) },
    }));
    const at = reasons(changed).map(([seq]) => seq);
    expect(at[0] === 3 || at[0] === 4).toBe(true);
    expect(reasons(changed)).toContainEqual([4, "wrong-prev"]);
  });

  it("[JN13] a changed last header is found by a noted head, and by nothing else", () => {
    const changed = swapped(5, (entry) => ({ ...entry, header: { ...entry.header, author: "someone else" } }));
    expect(reasons(changed, [])).toEqual([]);
    expect(reasons(changed)).toEqual([[6, "head-differs"]]);
  });

  it("[JN13] a member that was added is found", () => {
    const changed = swapped(2, (entry) => ({ ...entry, header: { ...entry.header, mood: "calm" } as Entry["header"] }));
    expect(reasons(changed)).toEqual([[4, "wrong-prev"]]);
  });

  it("[JN14] a changed body or salt is found at its entry", () => {
    const inData = swapped(2, (entry) => ({
      ...entry,
      body: { salt: entry.body?.salt ?? "", data: { ...entry.body?.data, left: "mites" } },
    }));
    const inSalt = swapped(2, (entry) => ({ ...entry, body: { data: entry.body?.data ?? {}, salt: "0".repeat(32) } }));
    const noSalt = swapped(2, (entry) => ({ ...entry, body: { data: entry.body?.data ?? {}, salt: "" } }));
    for (const changed of [inData, inSalt, noSalt]) expect(reasons(changed)).toEqual([[3, "wrong-content"]]);
  });

  it("[JN15] a missing entry is a gap at its number, however wide", () => {
    expect(reasons(without(0))).toEqual([[1, "gap"]]);
    expect(reasons(without(3))).toEqual([[4, "gap"]]);
    expect(reasons(chain.filter((_, index) => index < 1 || index > 4))).toEqual([[2, "gap"]]);
  });

  it("[JN15] a missing end is found by a noted head alone", () => {
    expect(reasons(chain.slice(0, 4), [])).toEqual([]);
    expect(reasons(chain.slice(0, 4))).toEqual([[6, "head-missing"]]);
    expect(reasons([])).toEqual([[6, "head-missing"]]);
  });

  it("[JN16] two entries with one number are a fork, at 1 a device that began again", () => {
    const after = headsOf(chain.slice(0, 3))[0] ?? null;
    const branch = writer({ head: after, from: "2026-03-10T00:00:00.000Z" }).write(bee(40), bee(50));
    expect(reasons([...chain, ...branch])).toEqual([
      [4, "fork"],
      [5, "fork"],
    ]);
    const again = writer({ from: "2026-03-11T00:00:00.000Z" }).write(bee(1));
    expect(reasons([...chain, ...again])).toEqual([[1, "seq-restart"]]);
    expect(verifyChain([...chain, ...again]).faults[0]?.entries).toHaveLength(2);
  });

  it("[JN17] heads noted inside the journal are held against it", () => {
    const office = writer({ device: "office-1" });
    const noted = office.write({ kind: "heads-noted", at: "2026-03-09", about: ["main"], data: { heads: [...head] } });
    expect(reasons([...chain, ...noted], [])).toEqual([]);
    expect(reasons([...chain.slice(0, 4), ...noted], [])).toEqual([[6, "head-missing"]]);
  });

  it("[JN17] a head noted in the middle of the chain is held against that entry", () => {
    const early = headsOf(chain.slice(0, 2));
    expect(reasons(chain, [...early])).toEqual([]);
    expect(reasons(chain, [{ device: "phone-1", seq: 2, hash: "0".repeat(64) }])).toEqual([[2, "head-differs"]]);
  });

  it("[JN18] an erased body is listed and no fault; without an erasure it is withheld", () => {
    const erased = story.find((entry) => entry.body === null);
    expect(verifyChain(story).missingBodies).toMatchObject([{ entry: erased?.header.id, why: "erased" }]);
    const hidden = swapped(2, (entry) => ({ ...entry, body: null }));
    expect(verifyChain(hidden, head)).toMatchObject({ isIntact: true, missingBodies: [{ seq: 3, why: "withheld" }] });
  });

  it("[JN19] faults stand in the order of device and number", () => {
    const other = writer({ device: "a-phone" }).write(bee(1), bee(2), bee(3));
    const report = verifyChain(
      [...chain.slice(0, 2), ...chain.slice(3, 5), ...other.slice(0, 1), ...other.slice(2)],
      head,
    );
    expect(report.faults.map((fault) => [fault.device, fault.seq, fault.reason])).toEqual([
      ["a-phone", 2, "gap"],
      ["phone-1", 3, "gap"],
      ["phone-1", 6, "head-missing"],
    ]);
    expect(report.isIntact).toBe(false);
  });

  it("gives the heads to note", () => {
    const last = story.filter((entry) => entry.header.device === "office-1").at(-1) as Entry;
    expect(verifyChain(story).heads).toContainEqual({
      device: "office-1",
      seq: last.header.seq,
      hash: headerHash(last.header),
    });
    expect(story.some((entry) => entry.header.about[0] === ids.case)).toBe(true);
  });
});
