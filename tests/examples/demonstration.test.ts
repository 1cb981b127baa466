/** The demonstration is what its script writes, reads without a remainder, and tells the stories its README tells. */
import { describe, expect, it } from "vitest";
import { demonstrationJournal } from "../../scripts/demonstration.ts";
import { caseList, fold, type SpecimenState, settled } from "../../src/casebook/index.ts";
import { decodeJournal, verifyChain } from "../../src/journal/index.ts";
import { read } from "../tidy/tree.ts";

const text = read("examples/demonstration/journal.jsonl");
const expected = JSON.parse(read("examples/demonstration/expected.json")) as {
  readonly cases: Readonly<Record<string, { readonly question: number; readonly isClosed: boolean }>>;
  readonly withMites: Readonly<Record<string, readonly [number, number]>>;
};
const decoded = decodeJournal(text);
const entries = decoded.ok ? decoded.value : [];
const casebook = fold(entries);

/** Counted here from the bees themselves, without the bench's own reckoning: both trunks readable, or mites in one. */
function counted(specimen: SpecimenState): readonly [number, number] {
  const bees = Object.values(specimen.readings)
    .flatMap((reading) => Object.values(reading.bees))
    .map((bee) => settled(bee));
  const positive = bees.filter((bee) => [bee?.left, bee?.right].some((trunk) => trunk?.startsWith("mites"))).length;
  const clear = bees.filter((bee) => [bee?.left, bee?.right].every((trunk) => trunk === "clear")).length;
  return [positive, positive + clear];
}

describe("the demonstration casebook", () => {
  it("is what its script writes", () => {
    expect(demonstrationJournal() === text).toBe(true);
  });

  it("belongs to its own programme, whole and unbroken", () => {
    expect(new Set(entries.map((entry) => entry.header.programme))).toEqual(new Set(["demonstration"]));
    expect(verifyChain(entries).isIntact).toBe(true);
    expect(casebook.unread).toEqual([]);
  });

  it("has three apiaries and five cases, each where its story stands", () => {
    expect(Object.keys(casebook.apiaries)).toHaveLength(3);
    const rows = caseList(casebook, "2026-11-25").map((row) => [
      row.code,
      { question: row.question, isClosed: row.isClosed },
    ]);
    expect(Object.fromEntries(rows)).toEqual(expected.cases);
  });

  it("has the counts that its README tells", () => {
    const specimens = Object.values(casebook.specimens).map(
      (each) => [settled(each.label)?.code ?? "", counted(each)] as const,
    );
    const told = Object.fromEntries(specimens.filter(([code]) => code in expected.withMites));
    expect(told).toEqual(expected.withMites);
  });
});
