/** The fold: entries become the casebook, the same one in whatever order and however often they arrive. */
import type { Entry } from "../journal/index.ts";
import { type Ledger, ledgerOf, noLedger, standing } from "./ledger.ts";
import type { Casebook } from "./state.ts";
import { assemble } from "./states.ts";

/** Raised whenever the fold gives another casebook for the same entries: kept states are then made anew. */
export const foldVersion = 5;

/** The casebook of no entries. */
export const emptyCasebook: Casebook = {
  apiaries: {},
  cases: {},
  specimens: {},
  plans: {},
  labelRecords: {},
  programmes: {},
  unread: [],
};

/** The root an entry belongs to: the first id it is about. */
export const rootOf = (entry: Entry): string => entry.header.about[0] ?? "";

/** A casebook that can take further entries without reading the earlier ones again. */
export interface Folded {
  /** What was met, by root. In memory only: it is made anew from the entries. */
  readonly ledgers: ReadonlyMap<string, Ledger>;
  readonly casebook: Casebook;
}

/** Where `advance` starts. */
export const nothingFolded: Folded = { ledgers: new Map(), casebook: emptyCasebook };

/**
 * What these entries amount to. The union of the folds of each root; the order of arrival, copies and the clock
 * change nothing.
 */
export const fold = (entries: readonly Entry[]): Casebook => advance(nothingFolded, entries).casebook;

/** The same casebook as `fold` of all entries so far; only the roots that the new ones are about are put together again. */
export function advance(folded: Folded, entries: readonly Entry[]): Folded {
  if (entries.length === 0) return folded;
  const ledgers = new Map(folded.ledgers);
  const parts: Casebook[] = [];
  for (const [root, own] of Map.groupBy(entries, rootOf)) {
    const ledger = ledgerOf(ledgers.get(root) ?? noLedger, own);
    ledgers.set(root, ledger);
    parts.push(assemble(root, standing(ledger)));
  }
  return { ledgers, casebook: withRoots(folded.casebook, [...Map.groupBy(entries, rootOf).keys()], parts) };
}

/** The part of the casebook that one root makes up. Entries of other roots have no effect on it. */
export function foldRoot(root: string, entries: readonly Entry[]): Casebook {
  return assemble(
    root,
    standing(
      ledgerOf(
        noLedger,
        entries.filter((entry) => rootOf(entry) === root),
      ),
    ),
  );
}

/** The casebook with these roots replaced by their new parts: how a store puts kept root states together. */
export function withRoots(casebook: Casebook, roots: readonly string[], parts: readonly Casebook[]): Casebook {
  const outdated = new Set(roots);
  const together = <State>(
    pick: (from: Casebook) => Readonly<Record<string, State>>,
  ): Readonly<Record<string, State>> =>
    sorted([
      ...Object.entries(pick(casebook)).filter(([id]) => !outdated.has(id)),
      ...parts.flatMap((part) => Object.entries(pick(part))),
    ]);
  return {
    apiaries: together((from) => from.apiaries),
    cases: together((from) => from.cases),
    specimens: together((from) => from.specimens),
    plans: together((from) => from.plans),
    labelRecords: together((from) => from.labelRecords),
    programmes: together((from) => from.programmes),
    unread: [
      ...casebook.unread.filter((each) => !outdated.has(each.root)),
      ...parts.flatMap((part) => part.unread),
    ].sort((one, other) => compareText(one.entry, other.entry)),
  };
}

const compareText = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

const sorted = <State>(pairs: readonly (readonly [string, State])[]): Readonly<Record<string, State>> =>
  Object.fromEntries(pairs.toSorted(([one], [other]) => compareText(one, other)));
