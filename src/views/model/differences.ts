/**
 * Where two people's words stand side by side, and the entry by which a person settles it.
 *
 * @module views/model
 */
import {
  type Candidate,
  type Casebook,
  type Conflict,
  conflictsOf,
  decisionOn,
  type Settlement,
  settled,
  stateOf,
  wholeApiary,
} from "../../casebook/index.ts";
import { type Entry, type EntryDraft, type EntryId, isKind } from "../../journal/index.ts";
import { type Evidence, findings } from "../../knowledge/index.ts";
import type { WholeWords } from "../words/index.ts";
import { shortHash } from "./kept-apart.ts";
import { stepTerm } from "./terms.ts";

/** One of the values that stand side by side. */
export interface DifferenceSide {
  readonly entry: EntryId;
  readonly author: string;
  /** Instant at which it was written down, by the clock of its device. */
  readonly recordedAt: string;
  readonly device: string;
  /** What it says, where it differs from the others: name and value, name empty for a single word. */
  readonly says: readonly (readonly [name: string, value: string])[];
}

export interface Difference {
  readonly key: string;
  /** The case, apiary, vial or plan. */
  readonly where: string;
  /** What the values are about. */
  readonly what: string;
  /** Where it is seen among the rest; null when it has no page of its own. */
  readonly href: string | null;
  /** Whether choosing a side settles it; what is kept apart has a page of its own, where the choice has consequences. */
  readonly isSettledHere: boolean;
  readonly sides: readonly DifferenceSide[];
}

/** Every slot of the casebook in which people differ, by place and then by what it is about. */
export function differences(casebook: Casebook, words: WholeWords, evidence?: Evidence): readonly Difference[] {
  const roots = [
    casebook.cases,
    casebook.apiaries,
    casebook.specimens,
    casebook.plans,
    casebook.labelRecords,
    casebook.programmes,
  ];
  return roots
    .flatMap((states) => Object.keys(states))
    .flatMap((root) =>
      conflictsOf(casebook, root)
        .filter(areApart)
        .map((conflict) => differenceOf(casebook, conflict, words, evidence)),
    )
    .sort((one, other) => one.where.localeCompare(other.where) || one.what.localeCompare(other.what));
}

/** People who settled an entry kept apart alike do not differ, whatever reason each gave. */
const areApart = ({ slot, candidates }: Conflict): boolean =>
  slot[0] !== "settlements" || decisionOn(candidates as readonly Candidate<Settlement>[]) === null;

function differenceOf(
  casebook: Casebook,
  conflict: Conflict,
  words: WholeWords,
  evidence: Evidence | undefined,
): Difference {
  const { root, slot, candidates } = conflict;
  const isSettlement = slot[0] === "settlements";
  const fields = candidates.map(({ value }) => fieldsOf(value));
  const names = [...new Set(fields.flatMap((each) => [...each.keys()]))];
  const apart = names.filter((name) => new Set(fields.map((each) => each.get(name))).size > 1);
  return {
    key: [root, ...slot].join(" "),
    where: placeOf(casebook, root, words),
    what: slot
      .filter((name) => name !== "findings")
      .map((name) => namedSlot(casebook, root, name, words, evidence))
      .join(", "),
    href: isSettlement ? "/records/apart" : hrefOf(casebook, root),
    isSettledHere: !isSettlement,
    sides: candidates.map(({ entry, author, recordedAt, device }, index) => ({
      ...{ entry, author, recordedAt, device },
      says: apart.map((name) => [plain(name), spelt(fields[index]?.get(name))] as const),
    })),
  };
}

/** A value as names and texts; a single word has the empty name. */
function fieldsOf(value: unknown): ReadonlyMap<string, string> {
  if (typeof value !== "object" || value === null) return new Map([["", String(value)]]);
  return new Map(
    Object.entries(value).map(([name, each]) => [name, typeof each === "string" ? each : JSON.stringify(each)]),
  );
}

const spelt = (text: string | undefined): string => (text === undefined || text === "null" ? "" : text);

/** `handedOn` and `not-looked` as words. */
const plain = (name: string): string =>
  name
    .replace(/([a-z])([A-Z])/g, (_, one: string, other: string) => `${one} ${other.toLowerCase()}`)
    .replaceAll("-", " ");

function placeOf(casebook: Casebook, root: string, words: WholeWords): string {
  const say = words.differences;
  const first = <T>(
    kept: { readonly candidates: readonly { readonly value: T }[] } | null | undefined,
  ): T | undefined => kept?.candidates[0]?.value;
  const kase = first(stateOf(casebook.cases, root)?.record)?.code;
  if (kase !== undefined) return say.ofCase({ code: kase });
  const apiary = first(stateOf(casebook.apiaries, root)?.record)?.name;
  if (apiary !== undefined) return say.ofApiary({ name: apiary });
  const vial = first(stateOf(casebook.specimens, root)?.label)?.code;
  if (vial !== undefined) return say.ofVial({ code: vial });
  return stateOf(casebook.plans, root) ? say.ofPlan : say.ofProgramme;
}

function namedSlot(
  casebook: Casebook,
  root: string,
  name: string,
  words: WholeWords,
  evidence: Evidence | undefined,
): string {
  if (/^[0-9a-f]{64}$/.test(name)) return shortHash(name);
  if (name === wholeApiary) return words.differences.wholeApiary;
  if (evidence && Object.hasOwn(evidence.findings, name)) return stepTerm(evidence, name);
  if (Object.hasOwn(findings, name)) return findings[name as keyof typeof findings].term;
  const apiary = stateOf(casebook.cases, root)?.apiary ?? root;
  const colony = settled(stateOf(casebook.apiaries, apiary)?.colonies[name]?.record)?.code;
  return colony ?? words.differences.slots[name as keyof typeof words.differences.slots] ?? plain(name);
}

/** The page of what this root is; null when it has none here. */
export function hrefOf(casebook: Casebook, root: string): string | null {
  if (stateOf(casebook.cases, root)) return `/cases/${root}`;
  if (stateOf(casebook.apiaries, root)) return `/apiaries/${root}`;
  if (stateOf(casebook.specimens, root)) return `/bench/${root}`;
  const plan = stateOf(casebook.plans, root);
  return plan?.case ? `/cases/${plan.case}` : null;
}

/**
 * The entry that settles a difference: what the chosen side says, in the place of every side. Null when its entry is
 * not here, has lost its body, or is of a kind unknown here.
 */
export function settlingDraft(entries: readonly Entry[], { sides }: Difference, chosen: EntryId): EntryDraft | null {
  const entry = entries.find(({ header }) => header.id === chosen);
  if (!entry?.body || !isKind(entry.header.kind)) return null;
  const { kind, at, about } = entry.header;
  const replaces = sides.map((side) => side.entry);
  return { kind, at, about, replaces, data: entry.body.data } as unknown as EntryDraft;
}
