/** The laws every fold must obey, and journals to try them on: small, crowded, with replacements in all directions. */
import fc from "fast-check";
import { expect } from "vitest";
import { type Casebook, emptyCasebook, rootOf, withRoots } from "../../src/casebook/index.ts";
import type { Entry, EntryHeader } from "../../src/journal/index.ts";

/** What is put to the test: a fold, and the same by steps. */
export interface Folding {
  readonly fold: (entries: readonly Entry[]) => Casebook;
  readonly bySteps: (steps: readonly (readonly Entry[])[]) => Casebook;
}

const idOf = (number: number): string => `00000000-0000-7000-8000-${String(number).padStart(12, "0")}`;

interface Content {
  readonly kind: string;
  readonly schema?: number;
  readonly about: readonly string[];
  readonly data: Readonly<Record<string, unknown>> | null;
}

const caseRoot = fc.constantFrom("case-1", "case-2");
const colony = fc.constantFrom("colony-1", "colony-2");
const seen = fc.constantFrom("present", "absent", "not-looked");
const day = fc.constantFrom("2026-03-09", "2026-03-10");

const finding = fc.record({ root: caseRoot, colony, state: seen, on: day }).map(
  ({ root, ...data }): Content => ({
    kind: "finding-recorded",
    about: [root, data.colony],
    data: { ...data, finding: "crawlers" },
  }),
);
const flag = fc.record({ root: caseRoot, state: seen, on: day }).map(
  ({ root, ...data }): Content => ({
    kind: "red-flag-answered",
    about: [root, "ropy_brood"],
    data: { ...data, flag: "ropy_brood" },
  }),
);
const beeRead = fc.record({ bee: fc.integer({ min: 1, max: 2 }), left: fc.constantFrom("clear", "mites") }).map(
  (data): Content => ({
    kind: "bee-read",
    about: ["specimen-1", "reading-1"],
    data: { ...data, right: "clear", lost: false, reading: "reading-1" },
  }),
);
const testResult = caseRoot.map(
  (root): Content => ({
    kind: "test-result-recorded",
    about: [root],
    data: { colony: null, test: "varroa-wash", on: "2026-03-09", mites: 3, bees: 300 },
  }),
);
const withdrawal = caseRoot.map(
  (root): Content => ({ kind: "entry-withdrawn", about: [root], data: { reason: "a slip" } }),
);
const erasure = fc.record({ root: caseRoot, entry: fc.nat({ max: 11 }) }).map(
  ({ root, entry }): Content => ({
    kind: "content-erased",
    about: [root],
    data: { entries: [idOf(entry)], reason: "asked for" },
  }),
);
const unreadable = fc.oneof(
  caseRoot.map((root): Content => ({ kind: "queen-marked", about: [root], data: { colour: "blue" } })),
  caseRoot.map((root): Content => ({ kind: "finding-recorded", schema: 9, about: [root], data: {} })),
  caseRoot.map((root): Content => ({ kind: "finding-recorded", about: [root], data: { state: "maybe" } })),
  caseRoot.map((root): Content => ({ kind: "finding-recorded", about: [root], data: null })),
);
const content = fc.oneof(
  { weight: 5, arbitrary: finding },
  { weight: 2, arbitrary: flag },
  { weight: 3, arbitrary: beeRead },
  { weight: 1, arbitrary: testResult },
  { weight: 1, arbitrary: withdrawal },
  { weight: 1, arbitrary: erasure },
  { weight: 1, arbitrary: unreadable },
);

interface Fields {
  readonly content: Content;
  readonly replaces?: readonly number[];
  readonly minute?: number;
}

/** An entry as the fold sees it; its hashes are not real, and the fold does not look at them. */
function entryOf(
  number: number,
  { content: { kind, schema = 1, about, data }, replaces = [], minute = 0 }: Fields,
): Entry {
  const header: EntryHeader = {
    id: idOf(number),
    kind,
    schema,
    device: "phone-1",
    seq: number + 1,
    prev: null,
    at: "2026-03-09",
    recordedAt: `2026-03-09T08:${String(minute).padStart(2, "0")}:00.000Z`,
    author: "R. Vale",
    programme: "main",
    about,
    replaces: replaces.map(idOf),
    content: "0".repeat(64),
  };
  return { header, body: data === null ? null : { salt: "0".repeat(32), data } };
}

/** Up to twelve entries; a quarter of them replace others, earlier or later or themselves. */
export const journal = fc
  .array(
    fc.record({
      content,
      replaces: fc.oneof(
        { weight: 3, arbitrary: fc.constant([]) },
        { weight: 1, arbitrary: fc.array(fc.nat({ max: 11 }), { minLength: 1, maxLength: 2 }) },
      ),
      minute: fc.nat({ max: 5 }),
    }),
    { maxLength: 12 },
  )
  .map((all) => all.map((fields, index) => entryOf(index, fields)));

const shuffled = journal.chain((entries) =>
  fc.tuple(fc.constant(entries), fc.shuffledSubarray(entries, { minLength: entries.length })),
);
const withCopies = journal.chain((entries) => fc.tuple(fc.constant(entries), fc.subarray(entries)));
const inSteps = journal.chain((entries) => fc.tuple(fc.constant(entries), fc.nat({ max: 12 }), fc.nat({ max: 12 })));
const withOther = (other: fc.Arbitrary<Content>) => fc.tuple(journal, other);

/** Numbers beyond the journal's own. */
const [fresh, next] = [50, 51];
const settings = { seed: 1921, numRuns: 150 };

/** Each throws when the fold breaks it. */
export const laws: Readonly<Record<string, (folding: Folding) => void>> = {
  "order of arrival": ({ fold }) =>
    fc.assert(
      fc.property(shuffled, ([entries, others]) => {
        expect(fold(others)).toEqual(fold(entries));
      }),
      settings,
    ),
  copies: ({ fold }) =>
    fc.assert(
      fc.property(withCopies, ([entries, copies]) => {
        expect(fold([...entries, ...copies])).toEqual(fold(entries));
      }),
      settings,
    ),
  withdrawal: ({ fold }) =>
    fc.assert(
      fc.property(withOther(finding), ([entries, other]) => {
        const slip = entryOf(fresh, { content: other });
        const withdrawn = entryOf(next, {
          content: { kind: "entry-withdrawn", about: other.about, data: { reason: "a slip" } },
          replaces: [fresh],
        });
        expect(fold([...entries, slip, withdrawn])).toEqual(fold([...entries, withdrawn]));
      }),
      settings,
    ),
  correction: ({ fold }) =>
    fc.assert(
      fc.property(withOther(finding), ([entries, other]) => {
        const slip = entryOf(fresh, { content: other });
        const corrected = entryOf(next, {
          content: { ...other, data: { ...other.data, state: "present" } },
          replaces: [fresh],
        });
        expect(fold([...entries, slip, corrected])).toEqual(fold([...entries, corrected]));
      }),
      settings,
    ),
  "unknown kinds": ({ fold }) =>
    fc.assert(
      fc.property(withOther(unreadable), ([entries, other]) => {
        const [before, after] = [fold(entries), fold([...entries, entryOf(fresh, { content: other })])];
        expect({ ...after, unread: [] }).toEqual({ ...before, unread: [] });
        expect(after.unread).toHaveLength(before.unread.length + 1);
      }),
      settings,
    ),
  "union of roots": ({ fold }) =>
    fc.assert(
      fc.property(journal, (entries) => {
        const roots = [...Map.groupBy(entries, rootOf)];
        const parts = roots.map(([, own]) => fold(own));
        const names = roots.map(([root]) => root);
        expect(fold(entries)).toEqual(withRoots(emptyCasebook, names, parts));
      }),
      settings,
    ),
  "step by step": ({ fold, bySteps }) =>
    fc.assert(
      fc.property(inSteps, ([entries, first, second]) => {
        const [from, to] = [Math.min(first, second), Math.max(first, second)];
        expect(bySteps([entries.slice(0, from), entries.slice(from, to), entries.slice(to)])).toEqual(fold(entries));
      }),
      settings,
    ),
  "no clock decides": ({ fold }) =>
    fc.assert(
      fc.property(journal, (entries) => {
        const atOneTime = entries.map((entry) => ({
          ...entry,
          header: { ...entry.header, recordedAt: "2026-03-09T08:00:00.000Z" },
        }));
        expect(entriesBySlot(fold(atOneTime))).toEqual(entriesBySlot(fold(entries)));
      }),
      settings,
    ),
};

/** Every slot with the ids that stand in it, sorted: what is kept, without when. */
const entriesBySlot = (casebook: Casebook): unknown =>
  mapCandidates(casebook, (candidates) => candidates.map((each) => each.entry).sort());

interface Stamped {
  readonly entry: string;
}

/** The same tree with the list of candidates of each slot changed. */
export function mapCandidates(value: unknown, change: (candidates: readonly Stamped[]) => unknown): unknown {
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.map((each) => mapCandidates(each, change));
  return Object.fromEntries(
    Object.entries(value)
      .filter(([name]) => name !== "recordedAt")
      .map(([name, member]) => [name, name === "candidates" ? change(member) : mapCandidates(member, change)]),
  );
}

type Fault = (sound: Folding) => Folding;

/** A fold that is wrong before or after the sound one. */
const around =
  (
    before: (entries: readonly Entry[]) => readonly Entry[],
    after: (made: Casebook, from: readonly Entry[]) => Casebook,
  ): Fault =>
  ({ fold }) => {
    const wrong = (entries: readonly Entry[]) => after(fold(before(entries)), entries);
    return { fold: wrong, bySteps: (steps) => wrong(steps.flat()) };
  };
const asMade = (made: Casebook): Casebook => made;
const asGiven = (entries: readonly Entry[]): readonly Entry[] => entries;

const withoutReplaces = (entry: Entry): Entry => ({ ...entry, header: { ...entry.header, replaces: [] } });

/** One planted fault for each law, under the law's name: it must break that law and no other. */
export const faults: Readonly<Record<string, Fault>> = {
  "order of arrival": around(asGiven, (made, from) => {
    const arrival = (each: Stamped) => from.findIndex((entry) => entry.header.id === each.entry);
    return mapCandidates(made, (candidates) =>
      candidates.toSorted((one, other) => arrival(one) - arrival(other)),
    ) as Casebook;
  }),
  copies: around((entries) => {
    const met = new Set<string>();
    return entries.map((entry, index) => {
      const isCopy = met.has(entry.header.id);
      met.add(entry.header.id);
      return isCopy ? { ...entry, header: { ...entry.header, id: idOf(100 + index) } } : entry;
    });
  }, asMade),
  withdrawal: around(
    (entries) => entries.map((entry) => (entry.header.kind === "entry-withdrawn" ? withoutReplaces(entry) : entry)),
    asMade,
  ),
  correction: around(
    (entries) => entries.map((entry) => (entry.header.kind === "entry-withdrawn" ? entry : withoutReplaces(entry))),
    asMade,
  ),
  "unknown kinds": around(asGiven, (made) => ({
    ...made,
    unread: made.unread.filter((each) => each.why !== "unknown-kind"),
  })),
  "union of roots": around((entries) => {
    const leaks = entries.flatMap((entry) => entry.header.replaces.map((id) => ({ id, root: rootOf(entry) })));
    return entries.filter((entry) => !leaks.some(({ id, root }) => id === entry.header.id && root !== rootOf(entry)));
  }, asMade),
  "step by step": ({ fold }) => ({
    fold,
    bySteps: (steps) =>
      steps.reduce((made, step) => {
        const roots = [...new Set(step.map(rootOf))];
        return withRoots(made, roots, [fold(step)]);
      }, emptyCasebook),
  }),
  "no clock decides": around(asGiven, (made) => mapCandidates(made, (candidates) => candidates.slice(-1)) as Casebook),
};
