/** Which entries a member is given: whole, the header with its body withheld, or not at all; and which a member may add. */
import type { Entry, Kind } from "../journal/index.ts";
import { isKind } from "../journal/index.ts";
import { type Problem, problem } from "../units/index.ts";
import type { Role } from "./roles.ts";

/** Kinds that are treated alike. */
export type Group =
  | "place"
  | "apiary"
  | "call"
  | "handing"
  | "case"
  /** A photo may show where it was taken, a voice note may hold a caller's words. */
  | "file"
  | "label"
  | "reading"
  | "result"
  | "plan"
  | "label-record"
  | "evidence"
  /** Lifts a stop: for whom the law lets, not for keepers. */
  | "lift"
  | "withdrawal"
  | "erasure"
  | "heads"
  /** What was decided on entries kept apart: its reason may tell of a case. */
  | "settling"
  | "access"
  | "unknown";

const groups: Readonly<Record<Kind, Group>> = {
  "apiary-registered": "place",
  "colony-registered": "apiary",
  "weather-year-recorded": "apiary",
  "region-recorded": "apiary",
  "flow-recorded": "apiary",
  "supers-recorded": "apiary",
  "treatment-recorded": "apiary",
  "case-opened": "call",
  "case-handed-on": "handing",
  "red-flag-answered": "case",
  "finding-recorded": "case",
  "colony-state-recorded": "case",
  "step-planned": "case",
  "sampling-planned": "case",
  "test-result-recorded": "result",
  "stop-reported": "case",
  "stop-lifted": "lift",
  "decision-recorded": "case",
  "outcome-recorded": "case",
  "case-closed": "case",
  "file-attached": "file",
  "specimen-labelled": "label",
  "specimen-received": "label",
  "reading-started": "reading",
  "bee-read": "reading",
  "reading-finished": "reading",
  "label-record-loaded": "label-record",
  "plan-made": "plan",
  "plan-step-done": "plan",
  "entry-withdrawn": "withdrawal",
  "content-erased": "erasure",
  "heads-noted": "heads",
  "kept-apart-settled": "settling",
  "access-noted": "access",
  "evidence-changed": "evidence",
  "reasoning-set": "evidence",
};

/** The group of a kind; a kind of a newer version is of none that is known. */
export const groupOf = (kind: string): Group => (isKind(kind) ? groups[kind] : "unknown");

/** Whose an entry is, as the service knows it from devices and apiaries, never from what the entry says. */
export type Whose =
  /** Written on a device of the member, or about a case or apiary of the member. */
  | "own"
  /** Another member's. */
  | "other"
  /** About what belongs to the whole programme: its evidence, a label record. */
  | "common";

/** What a member is given of an entry. */
export type Share = "whole" | "withheld" | "none";

type Shares = Readonly<Partial<Record<Group, Share>>>;

/** What every member is given of what belongs to the programme. Who did what to members is for the administrator. */
const common: Shares = {
  evidence: "whole",
  "label-record": "whole",
  withdrawal: "whole",
  erasure: "whole",
  unknown: "whole",
};

/**
 * Everything but the programme's book of members and what was settled; their headers go along, so that the chain can be
 * checked.
 */
const all: Shares = {
  ...{ place: "whole", apiary: "whole", call: "whole", handing: "whole", case: "whole", lift: "whole", label: "whole" },
  file: "whole",
  ...{ reading: "whole", result: "whole", plan: "whole", "label-record": "whole", evidence: "whole" },
  ...{ withdrawal: "whole", erasure: "whole", heads: "whole", unknown: "whole", access: "withheld" },
  settling: "withheld",
};

/** And what was settled, for those who settle. */
const settled: Shares = { ...all, settling: "whole" };

/** Places, callers, photos and voice notes are withheld until exact places are granted. */
const regional: Shares = { ...all, place: "withheld", call: "withheld", file: "withheld", unknown: "withheld" };

/** What is needed at the bench, and no earlier determination. */
const blind: Shares = {
  ...{ label: "whole", reading: "withheld", withdrawal: "withheld", erasure: "whole" },
};

const given: Readonly<Record<Role, Readonly<Record<Whose, Shares>>>> = {
  keeper: { own: { ...all, access: "none", heads: "none", settling: "none" }, other: {}, common },
  reader: { own: { ...all, access: "none", heads: "none", settling: "none" }, other: blind, common },
  manager: {
    own: all,
    other: regional,
    common: { ...common, heads: "whole", access: "withheld", settling: "withheld" },
  },
  inspector: { own: all, other: all, common: all },
  reviewer: { own: settled, other: settled, common: settled },
  administrator: {
    own: { ...settled, access: "whole" },
    other: { ...settled, access: "whole" },
    common: { ...settled, access: "whole" },
  },
};

/** Who asks. */
export interface Asker {
  readonly role: Role;
  /** Whether exact places were granted to this member. */
  readonly hasExactPlaces: boolean;
}

/**
 * What a member is given of an entry.
 * @example
 * shareOf({ role: "keeper", hasExactPlaces: false }, "finding-recorded", "other")  // → "none"
 */
export function shareOf({ role, hasExactPlaces }: Asker, kind: string, whose: Whose): Share {
  const shares = role === "manager" && hasExactPlaces && whose === "other" ? all : given[role][whose];
  return shares[groupOf(kind)] ?? "none";
}

/** The entry as the member may see it; null when not at all. */
export function shared(entry: Entry, asker: Asker, whose: Whose): Entry | null {
  const share = shareOf(asker, entry.header.kind, whose);
  if (share === "none") return null;
  return share === "whole" || entry.body === null ? entry : { header: entry.header, body: null };
}

/** Whether a role is given nothing of other members' cases, so that a pull need not look at them. */
export const seesOnlyOwn = (role: Role): boolean => role === "keeper";

/**
 * Whether a case or apiary that belongs to the member makes the entries about it the member's own. Not at the bench:
 * who labelled a vial may not see how others read it.
 */
export const ownsByRoot = (role: Role): boolean => role !== "reader";

type Groups = readonly Group[];

const atHome: Groups = [
  ...(["place", "apiary", "call", "handing", "case", "label", "reading", "result", "plan"] as const),
  ...(["file", "label-record", "withdrawal"] as const),
];
/** For those whom the law lets lift a stop, too. */
const inOffice: Groups = [...atHome, "lift"];
const atBench: Groups = ["label", "reading", "withdrawal"];
const heads: Groups = ["heads"];

/** Groups that a role may add to: to what is its own or new, to another's, to what is the programme's. */
const added: Readonly<Record<Role, Readonly<Record<Whose, Groups>>>> = {
  keeper: { own: atHome, other: [], common: heads },
  reader: { own: atBench, other: atBench, common: heads },
  manager: { own: ["handing"], other: ["handing"], common: heads },
  inspector: { own: inOffice, other: inOffice, common: [...heads, "label-record", "withdrawal"] },
  reviewer: {
    own: inOffice,
    other: inOffice,
    common: [...heads, "label-record", "withdrawal", "evidence", "settling"],
  },
  administrator: {
    own: [...inOffice, "erasure", "unknown"],
    other: [...inOffice, "erasure", "unknown"],
    common: [...heads, "label-record", "withdrawal", "evidence", "settling", "erasure", "unknown"],
  },
};

/** Whether a role may add an entry of this kind to something that stands so to the member. */
export const mayAdd = (role: Role, kind: string, whose: Whose): boolean => added[role][whose].includes(groupOf(kind));

/** Whether a role may add an entry of this kind to anything at all: what a page asks before it writes. */
export const mayEverAdd = (role: Role, kind: string): boolean =>
  (["own", "other", "common"] as const).some((whose) => mayAdd(role, kind, whose));

/** The words for a kind that a role may not add. */
export const notAddable = (role: Role, kind: string): Problem =>
  problem("entry-not-allowed", "blocked", "header.kind", { given: kind, slots: { kind, role } });

/** What the service knows of an entry that a member sends. */
export interface Sent {
  readonly entry: Entry;
  /** Whose the root is; new roots are the sender's own. */
  readonly root: Whose;
  /** Whose the other cases, apiaries and vials are that it names. */
  readonly named: readonly Whose[];
  /** Whether every entry it replaces was written on a device of the sender. */
  readonly replacesOwn: boolean;
}

/** Why a member may not add an entry; null when it may be added. */
export function addingTrouble(role: Role, { entry, root, named, replacesOwn }: Sent): Problem | null {
  const { kind } = entry.header;
  const refused = notAddable(role, kind);
  if (!mayAdd(role, kind, root)) return refused;
  // Whatever replaces a settlement or a change of the evidence undoes it.
  const isOfProgramme = entry.header.about[0] === entry.header.programme;
  if (isOfProgramme && entry.header.replaces.length > 0 && !mayAdd(role, "kept-apart-settled", "common"))
    return refused;
  // A keeper's new case may not hang on another's apiary, nor a new vial on another's case.
  if (role === "keeper" && (named.includes("other") || !bodyNamesItsAbout(entry))) return refused;
  if (role === "reader" && ["reading", "withdrawal"].includes(groupOf(kind)) && !replacesOwn) return refused;
  return null;
}

/** A vial and a plan name their case twice, and the two must agree: ownership goes by the header. */
function bodyNamesItsAbout({ header: { about }, body }: Entry): boolean {
  const named = body?.data.case;
  return named === undefined || named === about[1];
}
