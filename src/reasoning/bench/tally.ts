/** From the bees as read, trunk by trunk, to counts: who is positive, who counts, who stays outside. */
import { ensure } from "../../units/index.ts";

/** One prothoracic trunk as read; the codes of the bench sheet. */
export type Trunk = "clear" | "mites" | "mites-blotches" | "mites-dark" | "dark-no-mite" | "unreadable";

/** One bee as read: the part of a `bee-read` entry that counts. */
export interface BeeReading {
  readonly lost: boolean;
  /** Null: this side was not read. */
  readonly left: Trunk | null;
  readonly right: Trunk | null;
  /** Mites counted in both trunks together, when someone counted. */
  readonly mites?: number | undefined;
}

/** Positive: mites in either trunk. Clear: both trunks read, none in either. Lost, unreadable, partly read: outside. */
export type BeeResult = "positive" | "clear" | "partly-read" | "unreadable" | "lost";

export interface Tally {
  /** The denominator: positive + clear. */
  readonly read: number;
  readonly positive: number;
  readonly clear: number;
  /** One trunk read without mites, the other not readable: outside the denominator. */
  readonly partlyRead: number;
  readonly unreadable: number;
  readonly lost: number;
  /** Of the clear bees, those with a dark trunk: dark without a mite is no positive. */
  readonly darkNoMite: number;
  readonly leftInfested: number;
  readonly rightInfested: number;
  readonly bothInfested: number;
  /** Bees with both trunks read: those the comparison of sides may use. */
  readonly bothSidesRead: SideCounts;
  /** Mites in all bees read; null unless every positive bee was counted. */
  readonly mites: number | null;
  /** Mites of each bee read, in order; null unless every positive bee was counted. */
  readonly mitesPerBee: readonly number[] | null;
  /** Bees whose mite count contradicts their trunks: no mites in a positive bee, or mites in a clear one. */
  readonly contradictions: number;
  /** Share positive if every bee that could not be decided were clear; null when no bee was set out. */
  readonly bestCase: number | null;
  /** Share positive if every bee that could not be decided were positive; null when no bee was set out. */
  readonly worstCase: number | null;
}

export interface SideCounts {
  readonly examined: number;
  readonly infested: number;
  readonly left: number;
  readonly right: number;
  readonly both: number;
}

const hasMites = (trunk: Trunk | null): boolean =>
  trunk === "mites" || trunk === "mites-blotches" || trunk === "mites-dark";
const isReadable = (trunk: Trunk | null): boolean => trunk !== null && trunk !== "unreadable";

/**
 * What one bee amounts to.
 *
 * @source order of reading of the COLOSS BEEBOOK, tracheal mite methods, section 3.3; the rule for partly read
 * bees is our convention
 *
 * @example
 * beeResult({ lost: false, left: "mites", right: "unreadable" })  // → positive
 * beeResult({ lost: false, left: "dark-no-mite", right: "clear" })  // → clear
 * beeResult({ lost: false, left: "clear", right: "unreadable" })  // → partly-read
 */
export function beeResult({ lost, left, right }: BeeReading): BeeResult {
  if (lost) return "lost";
  if (hasMites(left) || hasMites(right)) return "positive";
  const readable = [left, right].filter(isReadable).length;
  return readable === 2 ? "clear" : readable === 1 ? "partly-read" : "unreadable";
}

/**
 * Counts of a reading.
 *
 * A bee is positive when either trunk holds mites, clear only when both were read. A bee with one clear and one
 * unreadable trunk stays outside the denominator; the best and the worst case say what it could have meant.
 *
 * @throws DomainError when a mite count is not a whole number ≥ 0
 * @source conventions of this bench, SPEC BE1–BE3
 *
 * @example
 * tally([{ lost: false, left: "mites", right: "clear" }, { lost: false, left: "clear", right: "clear" }]).positive  // → 1
 */
export function tally(bees: readonly BeeReading[]): Tally {
  const results = bees.map(beeResult);
  const count = (wanted: BeeResult) => results.filter((result) => result === wanted).length;
  const [positive, clear] = [count("positive"), count("clear")];
  const [partlyRead, unreadable, lost] = [count("partly-read"), count("unreadable"), count("lost")];
  const read = positive + clear;
  const setOut = read + partlyRead + unreadable;
  const decided = bees.filter((_, i) => results[i] === "positive" || results[i] === "clear");
  for (const { mites } of bees) {
    ensure(mites === undefined || (Number.isInteger(mites) && mites >= 0), "mites", mites, "a whole number ≥ 0");
  }
  const counted = decided.every((bee) => beeResult(bee) === "clear" || bee.mites !== undefined);
  const mitesPerBee = counted && read > 0 ? decided.map((bee) => bee.mites ?? 0) : null;
  return {
    read,
    positive,
    clear,
    partlyRead,
    unreadable,
    lost,
    darkNoMite: bees.filter((bee, i) => results[i] === "clear" && [bee.left, bee.right].includes("dark-no-mite"))
      .length,
    leftInfested: decided.filter((bee) => hasMites(bee.left)).length,
    rightInfested: decided.filter((bee) => hasMites(bee.right)).length,
    bothInfested: decided.filter((bee) => hasMites(bee.left) && hasMites(bee.right)).length,
    bothSidesRead: sideCounts(decided),
    mites: mitesPerBee?.reduce((sum, each) => sum + each, 0) ?? null,
    mitesPerBee,
    contradictions: bees.filter(
      (bee, i) => bee.mites !== undefined && results[i] !== "lost" && (results[i] === "positive") !== bee.mites > 0,
    ).length,
    bestCase: setOut === 0 ? null : positive / setOut,
    worstCase: setOut === 0 ? null : (positive + partlyRead + unreadable) / setOut,
  };
}

/** Bees with mites of those read. */
interface BeesOfRead {
  readonly infested: number;
  readonly examined: number;
}

/**
 * The bees of a reading by how much of them could be read: both trunks, or one alone. A bee with mites in the one trunk
 * that could be read stands beside those that were clear in it: counted with the whole ones, the infested would be kept
 * and the clear left out.
 *
 * @example
 * bySidesRead(tally([{ lost: false, left: "mites", right: "unreadable" }, { lost: false, left: "clear", right: "clear" }])).oneSided.infested  // → 1
 */
export function bySidesRead({ read, positive, partlyRead, bothSidesRead }: Tally): {
  readonly whole: BeesOfRead;
  readonly oneSided: BeesOfRead;
} {
  const { infested, examined } = bothSidesRead;
  return {
    whole: { infested, examined },
    oneSided: { infested: positive - infested, examined: read - examined + partlyRead },
  };
}

function sideCounts(decided: readonly BeeReading[]): SideCounts {
  const whole = decided.filter((bee) => isReadable(bee.left) && isReadable(bee.right));
  const left = whole.filter((bee) => hasMites(bee.left)).length;
  const right = whole.filter((bee) => hasMites(bee.right)).length;
  const both = whole.filter((bee) => hasMites(bee.left) && hasMites(bee.right)).length;
  return { examined: whole.length, infested: left + right - both, left, right, both };
}
