/** Entries that the service keeps apart: what a person decided on them, and the entries by which a person does. */
import {
  type BodyOf,
  type Entry,
  type EntryDraft,
  type EntryId,
  type Hash,
  hasItsContent,
  readEntry,
  type UnreadReason,
  wasRead,
} from "../journal/index.ts";
import { answered, blocked, type Problem, problem, type Result } from "../units/index.ts";
import type { Candidate } from "./state.ts";

export type Settlement = BodyOf<"kept-apart-settled">;
export type Decision = Settlement["decision"];

/**
 * What was decided; null when nothing was, or people differ.
 * @example
 * decisionOn([])  // → null
 */
export function decisionOn(settlements: readonly Candidate<Settlement>[]): Decision | null {
  const [first, ...others] = new Set(settlements.map(({ value }) => value.decision));
  return others.length === 0 ? (first ?? null) : null;
}

/** An entry kept apart, with all that a person needs to judge it. */
export interface KeptApart {
  /** Of its header: what a settlement names. */
  readonly hash: Hash;
  readonly entry: Entry;
  /** Another entry has its number, or its device was reported lost. */
  readonly why: "number-taken" | "from-lost";
  /** The entry that stands under its number; null when none does. */
  readonly standing: Entry | null;
  /** The entry of the journal that says the same in its place: its device wrote it again, or it was taken in. */
  readonly cameInAs: EntryId | null;
  /** What came in for entries kept apart that it replaces: to take it in replaces them too. */
  readonly earlierCameInAs: readonly EntryId[];
  /** The withdrawal in the journal that names it; what is withdrawn already is not written again. */
  readonly withdrawnBy: EntryId | null;
  /** Whether its id is that of an entry in the journal: then nothing may say that it replaces that id. */
  readonly isIdTaken: boolean;
  /** What stands of what was decided; more than one where people decided without knowing of each other. */
  readonly settlements: readonly Candidate<Settlement>[];
}

export interface Settling {
  readonly decision: Decision;
  readonly reason: string;
  readonly programme: string;
  /** Calendar day of the decision. */
  readonly on: string;
}

/**
 * The entries by which a person settles an entry kept apart: the settlement, after the content where it is taken in and
 * has not come in already. None when it is settled so already. Blocked, in words, when this version cannot read the
 * content, or it has come in and would be left out.
 */
export function settlingDrafts(kept: KeptApart, settling: Settling): Result<readonly EntryDraft[]> {
  const { entry, hash, settlements, cameInAs } = kept;
  const { decision, reason, programme, on } = settling;
  if (decisionOn(settlements) === decision) return answered([]);
  if (reason.trim() === "") return blocked(problem("apart-no-reason", "blocked", "reason"));
  const { id, device, seq } = entry.header;
  const settlement: EntryDraft = {
    ...{ kind: "kept-apart-settled", at: on, about: [programme] },
    replaces: settlements.map((each) => each.entry),
    data: { hash, entry: id, device, seq, decision, reason },
  };
  if (decision === "left-out") {
    const wasTakenIn = settlements.some(({ value }) => value.decision === "taken-in") && cameInAs !== null;
    return wasTakenIn
      ? blocked(problem("apart-came-in", "blocked", null, { slots: { entry: cameInAs } }))
      : answered([settlement]);
  }
  if (cameInAs !== null || kept.withdrawnBy !== null) return answered([settlement]);
  const copy = copyOf(kept);
  return copy.ok ? answered([copy.value, settlement]) : copy;
}

/** Why its content cannot come in; null when it can. */
export function takingInTrouble(kept: KeptApart): Problem | null {
  const copy = kept.cameInAs === null && kept.withdrawnBy === null ? copyOf(kept) : null;
  return copy === null || copy.ok ? null : (copy.problems[0] ?? null);
}

const unreadCodes: Readonly<Record<UnreadReason, string>> = {
  "unknown-kind": "apart-of-newer-version",
  "newer-schema": "apart-of-newer-version",
  "body-does-not-fit": "apart-does-not-fit",
  withheld: "apart-without-body",
  erased: "apart-without-body",
};

/** The same words, time and ids, in the newest shape of its kind; it replaces what the kept entry did, and that one. */
function copyOf({ entry, isIdTaken, earlierCameInAs }: KeptApart): Result<EntryDraft> {
  const { id, kind, at, about, replaces } = entry.header;
  const reading = readEntry(entry);
  if (!wasRead(reading)) return blocked(problem(unreadCodes[reading.unread], "blocked", null, { slots: { kind } }));
  if (!hasItsContent(entry)) return blocked(problem("apart-changed", "blocked", null));
  if (kind === "access-noted") return blocked(problem("apart-of-service", "blocked", null));
  if (kind === "content-erased") return blocked(problem("apart-erases", "blocked", null));
  if (kind === "file-attached") return blocked(problem("apart-names-file", "blocked", null));
  const draft = {
    kind,
    at,
    about,
    replaces: [...new Set([...replaces, ...earlierCameInAs, ...(isIdTaken ? [] : [id])])],
  };
  if (kind === "entry-withdrawn" && draft.replaces.length === 0)
    return blocked(problem("apart-does-not-fit", "blocked", null, { slots: { kind } }));
  return answered({ ...draft, data: reading.data } as unknown as EntryDraft);
}
