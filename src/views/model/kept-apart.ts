/**
 * An entry that the service keeps apart, beside the one that stands under its number, in plain words.
 *
 * @module views/model
 */
import {
  type Casebook,
  type Decision,
  decisionOn,
  type KeptApart,
  type Settling,
  settled,
  settlingDrafts,
  stateOf,
} from "../../casebook/index.ts";
import type { Entry, EntryDraft, Hash } from "../../journal/index.ts";
import type { Result } from "../../units/index.ts";
import type { apartWords } from "../words/index.ts";
import { type Fields, readForm } from "./form.ts";

type Say = typeof apartWords;

/** One entry, as a person reads it. */
export interface ApartSide {
  readonly title: string;
  /** Its kind in plain words. */
  readonly what: string;
  readonly author: string;
  /** Instant at which it was written down, by the clock of its device. */
  readonly recordedAt: string;
  readonly says: readonly ApartLine[];
  readonly note: string | null;
}

/** One value, and whether the other side does not say the same. */
export interface ApartLine {
  readonly name: string;
  readonly value: string;
  readonly differs: boolean;
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
  const side = (title: string, of: Entry, other: Entry | null): ApartSide => {
    const others = other && new Map(linesOf(casebook, other, say));
    return {
      ...{ title, what: of.header.kind.replaceAll("-", " "), author: of.header.author },
      recordedAt: of.header.recordedAt,
      says: linesOf(casebook, of, say).map(([name, value]) => ({ name, value, differs: others?.get(name) !== value })),
      note: of.body === null ? say.withoutWords : null,
    };
  };
  return {
    head: say.head({ seq, device }),
    kept: side(say.kept, entry, standing),
    standing: standing && side(say.standing, standing, entry),
  };
}

/** Reads the form: the decision, which nobody but the person makes, and its reason. */
export function readSettling(
  fields: Fields,
  kept: KeptApart,
  { choices, programme, on }: { readonly choices: readonly Decision[] } & Pick<Settling, "programme" | "on">,
): Result<readonly EntryDraft[]> {
  const form = readForm(fields);
  const [decision, reason] = [form.oneOf("decision", choices), form.text("reason")];
  const read = form.result({ decision, reason, programme, on });
  return read.ok ? settlingDrafts(kept, read.value) : read;
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

type Line = readonly [name: string, value: string];

/** When and where, and all that it says. */
const linesOf = (casebook: Casebook, { header, body }: Entry, say: Say): readonly Line[] => [
  [say.happened, header.at.slice(0, 16).replace("T", " ")],
  [say.where, nameOf(casebook, header.about[0] ?? "")],
  ...within(casebook, body?.data ?? {}, say),
];

/** Each value with its name; what lies within a value under both names. */
function within(casebook: Casebook, value: unknown, say: Say, name = ""): readonly Line[] {
  if (Array.isArray(value) && value.some((each) => typeof each === "object" && each !== null))
    return value.flatMap((each, index) => within(casebook, each, say, `${name} ${index + 1}`.trim()));
  if (Array.isArray(value)) return [[name, value.map((each) => textOf(casebook, each, say)).join(", ") || say.nothing]];
  if (typeof value !== "object" || value === null) return [[name, textOf(casebook, value, say)]];
  return Object.entries(value).flatMap(([key, each]) => within(casebook, each, say, `${name} ${plain(key)}`.trim()));
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
