/**
 * An entry that the service keeps apart, beside the one that stands under its number, in plain words.
 *
 * @module views/model
 */
import { type Casebook, decisionOn, type KeptApart, rootOf, settled, stateOf } from "../../casebook/index.ts";
import type { Entry, Hash } from "../../journal/index.ts";
import type { apartWords } from "../words/index.ts";

type Say = typeof apartWords;

/** One entry, as a person reads it. */
export interface ApartSide {
  readonly title: string;
  /** Its kind in plain words. */
  readonly what: string;
  readonly author: string;
  /** Instant at which it was written down, by the clock of its device. */
  readonly recordedAt: string;
  /** Name and value of all it says; whole where it has no words. */
  readonly says: readonly (readonly [name: string, value: string])[];
  readonly note: string | null;
}

export interface ApartView {
  readonly head: string;
  readonly kept: ApartSide;
  /** Null when nothing stands under its number. */
  readonly standing: ApartSide | null;
}

/** The two sides of an entry kept apart. Ids that are on record here are told by their code or name. */
export function apartView(casebook: Casebook, { entry, standing }: KeptApart, say: Say): ApartView {
  const { seq, device } = entry.header;
  const side = (title: string, of: Entry): ApartSide => ({
    ...{ title, what: of.header.kind.replaceAll("-", " "), author: of.header.author },
    recordedAt: of.header.recordedAt,
    says: [
      [say.happened, of.header.at.slice(0, 16).replace("T", " ")],
      [say.where, nameOf(casebook, rootOf(of))],
      ...linesOf(casebook, of.body?.data ?? {}, say),
    ],
    note: of.body === null ? say.withoutWords : null,
  });
  return {
    head: say.head({ seq, device }),
    kept: side(say.kept, entry),
    standing: standing && side(say.standing, standing),
  };
}

/** What the casebook here says of settlements goes before what the service said: it may not have been sent yet. */
export function withOwnSettlements<Kept extends KeptApart>(
  casebook: Casebook,
  programme: string,
  apart: readonly Kept[],
): readonly Kept[] {
  const here = stateOf(casebook.programmes, programme)?.settlements ?? {};
  return apart.map((kept) => ({ ...kept, settlements: stateOf(here, kept.hash)?.candidates ?? kept.settlements }));
}

/** Whether nobody, or not everybody alike, decided on it. */
export const isWaiting = ({ settlements }: KeptApart): boolean => decisionOn(settlements) === null;

/** By the first digits that tell a hash from all others here. */
export const shortHash = (hash: Hash): string => hash.slice(0, 12);

/** Each value with its name; what lies within a value under both names. */
function linesOf(
  casebook: Casebook,
  value: unknown,
  say: Say,
  name = "",
): readonly (readonly [name: string, value: string])[] {
  if (Array.isArray(value) && value.some((each) => typeof each === "object" && each !== null))
    return value.flatMap((each, index) => linesOf(casebook, each, say, `${name} ${index + 1}`.trim()));
  if (Array.isArray(value)) return [[name, value.map((each) => textOf(casebook, each, say)).join(", ") || say.nothing]];
  if (typeof value !== "object" || value === null) return [[name, textOf(casebook, value, say)]];
  return Object.entries(value).flatMap(([key, each]) => linesOf(casebook, each, say, `${name} ${plain(key)}`.trim()));
}

function textOf(casebook: Casebook, value: unknown, say: Say): string {
  if (value === null || value === undefined || value === "") return say.nothing;
  if (typeof value === "boolean") return value ? say.yes : say.no;
  return typeof value === "string" ? nameOf(casebook, value) : String(value);
}

/** `handedOn` as words. */
const plain = (name: string): string =>
  name.replace(/([a-z])([A-Z])/g, (_, one: string, other: string) => `${one} ${other.toLowerCase()}`);

/** The code or name of what has this id; the id itself when it is of nothing on record here. */
function nameOf(casebook: Casebook, id: string): string {
  const kase = settled(stateOf(casebook.cases, id)?.record)?.code;
  const apiary = settled(stateOf(casebook.apiaries, id)?.record)?.name;
  const vial = settled(stateOf(casebook.specimens, id)?.label)?.code;
  const colonies = Object.values(casebook.apiaries).flatMap((each) => stateOf(each.colonies, id) ?? []);
  return kase ?? apiary ?? vial ?? settled(colonies[0]?.record)?.code ?? id;
}
