/**
 * A saved copy of a journal, before it is taken in: whether it is whole, and what of it is new here.
 *
 * @module views/model
 */
import { type ChainFault, decodeJournal, type Entry, type Head, headerHash, verifyChain } from "../../journal/index.ts";
import { answered, blocked, problem, type Result } from "../../units/index.ts";

/** What a check of entries found. */
export interface ChainCheck {
  readonly checked: number;
  readonly devices: number;
  readonly faults: readonly ChainFault[];
  /** Entries without a body, erased or withheld: lawful, and said. */
  readonly bodiless: number;
  /** Stretches of other devices' chains that were not given to this member: lawful, and said. */
  readonly holes: number;
  readonly heads: readonly Head[];
}

/** A copy, and what it would bring. */
export interface CopyCheck {
  readonly check: ChainCheck;
  /** Entries that are not here, in the order of the copy. */
  readonly fresh: readonly Entry[];
  readonly known: number;
}

/**
 * Whether every chain among these entries is whole. A member who is given only a part of the records holds chains with
 * holes; then only the chain of his own device must have none, and a hole and a head noted elsewhere are no fault.
 */
export function checkChains(entries: readonly Entry[], onlyWhole: string | null = null): ChainCheck {
  const { checked, faults, missingBodies, heads } = verifyChain(entries);
  const isHole = ({ device, reason }: ChainFault) =>
    onlyWhole !== null && device !== onlyWhole && (reason === "gap" || reason === "head-missing");
  return {
    ...{ checked, devices: heads.length, faults: faults.filter((each) => !isHole(each)) },
    ...{ bodiless: missingBodies.length, holes: faults.filter(isHole).length, heads },
  };
}

/** The text of a copy against what is here; a copy of another programme, or one that cannot be read, is refused. */
export function checkCopy(text: string, here: readonly Entry[], programme: string): Result<CopyCheck> {
  const journal = decodeJournal(text);
  if (!journal.ok) return journal;
  const [first] = journal.value;
  if (first === undefined) return blocked(problem("copy-empty", "blocked", "copy"));
  const other = journal.value.find(({ header }) => header.programme !== programme);
  if (other)
    return blocked(
      problem("copy-of-another-programme", "blocked", "copy", {
        given: other.header.programme,
        slots: { programme: other.header.programme, here: programme },
      }),
    );
  const known = new Set(here.map(({ header }) => headerHash(header)));
  const fresh = journal.value.filter(({ header }) => !known.has(headerHash(header)));
  return answered({ check: checkChains(journal.value), fresh, known: journal.value.length - fresh.length });
}
