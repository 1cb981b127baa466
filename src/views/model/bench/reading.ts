/**
 * One vial on the bench: its label, its receipt, the reading under way, and what has been read so far.
 *
 * @module views/model
 */
import { type Candidate, type Casebook, type ReadingState, specimensOf } from "../../../casebook/index.ts";
import type { BodyOf } from "../../../journal/index.ts";
import { bench } from "../../../reasoning/index.ts";
import type { Words } from "../../words/index.ts";
import type { ReadBee } from "./keys.ts";
import { colonyCode, doubledCodes, labelOf, placeName, receiptOf, type VialState, vialState } from "./worklist.ts";

/** A bee as it stands in the records. */
export interface StoredBee {
  readonly bee: number;
  /** Every entry that stands for this bee; more than one when two devices read it. */
  readonly entries: readonly string[];
  readonly recordedAt: string;
  readonly read: ReadBee;
  readonly what: string;
}

export interface OpenReading {
  readonly id: string;
  readonly started: BodyOf<"reading-started">;
  readonly isBlind: boolean;
  readonly bees: readonly StoredBee[];
  /** Number of the bee to be read next. */
  readonly next: number;
  readonly last: StoredBee | null;
  readonly tally: bench.Tally;
  readonly finished: BodyOf<"reading-finished"> | null;
  /** The bees that count have reached the number wanted. */
  readonly isTargetReached: boolean;
  /** As many bees as were received are read. */
  readonly isVialEmpty: boolean;
}

export interface RackVial {
  readonly id: string;
  readonly code: string;
  readonly state: VialState;
  readonly says: string;
  readonly isHere: boolean;
}

export interface BenchView {
  readonly id: string;
  readonly label: BodyOf<"specimen-labelled">;
  readonly labelEntries: readonly string[];
  readonly caseId: string;
  readonly colony: string;
  readonly place: string;
  readonly from: string;
  readonly state: VialState;
  readonly received: BodyOf<"specimen-received"> | null;
  readonly receivedEntries: readonly string[];
  /** The reading that is not locked yet; null when none is under way. */
  readonly open: OpenReading | null;
  readonly locked: readonly OpenReading[];
  /** Bees the newest plan of a sample asks for in this colony; null where none does. */
  readonly plannedBees: number | null;
  /** The vials of the case that are here. */
  readonly rack: readonly RackVial[];
}

/** A bee of a `bee-read` entry as the keys know it. */
export const readBee = (body: BodyOf<"bee-read">): ReadBee => ({
  lost: body.lost,
  left: body.left,
  right: body.right,
  flagged: body.flagged ?? false,
});

/** The bees of a reading that can be counted: where two people differ on a bee it is left out until settled. */
export const beesOf = (reading: ReadingState): readonly BodyOf<"bee-read">[] =>
  Object.values(reading.bees).flatMap((kept) => (kept.candidates.length === 1 ? [kept.candidates[0].value] : []));

/** A vial on the bench; null when it is not on record. */
export function benchView(casebook: Casebook, id: string, words: Words): BenchView | null {
  const specimen = casebook.specimens[id];
  const label = specimen ? labelOf(specimen) : null;
  if (!specimen || !label) return null;
  const doubled = doubledCodes(casebook);
  const received = receiptOf(specimen);
  const readings = Object.values(specimen.readings)
    .flatMap((reading) => openReading(reading, received, words) ?? [])
    .sort((one, other) => one.started.on.localeCompare(other.started.on));
  return {
    id,
    label,
    labelEntries: specimen.label?.candidates.map((each) => each.entry) ?? [],
    caseId: label.case,
    colony: colonyCode(casebook, label.case, label.colony),
    place: placeName(casebook, label.case),
    from: words.bench.from[label.from],
    state: vialState(specimen, doubled),
    received,
    receivedEntries: specimen.received?.candidates.map((each) => each.entry) ?? [],
    open: readings.find((reading) => reading.finished === null) ?? null,
    plannedBees: plannedBees(casebook, label),
    locked: readings.filter((reading) => reading.finished !== null),
    rack: specimensOf(casebook, label.case).flatMap((each) => rackVial(each, { id, doubled, words }) ?? []),
  };
}

function plannedBees(casebook: Casebook, label: BodyOf<"specimen-labelled">): number | null {
  const plans = Object.values(casebook.cases[label.case]?.samplePlans ?? {})
    .map((kept) => kept.candidates[0].value)
    .filter((plan) => plan.colonies.includes(label.colony) && plan.purpose === label.purpose)
    .sort((one, other) => one.on.localeCompare(other.on));
  return plans.at(-1)?.beesPerColony ?? null;
}

function openReading(
  reading: ReadingState,
  received: BodyOf<"specimen-received"> | null,
  words: Words,
): OpenReading | null {
  const started = reading.started?.candidates[0].value;
  if (!started) return null;
  const bees = Object.entries(reading.bees)
    .map(([bee, kept]) => storedBee(Number(bee), kept.candidates, words))
    .sort((one, other) => one.bee - other.bee);
  const last = bees.at(-1) ?? null;
  const tally = bench.tally(beesOf(reading));
  return {
    id: reading.id,
    started,
    isBlind: started.blindNumber !== undefined,
    bees,
    next: (last?.bee ?? 0) + 1,
    last,
    tally,
    finished: reading.finished?.candidates[0].value ?? null,
    isTargetReached: tally.read >= started.target,
    isVialEmpty: received !== null && bees.length >= received.beesReceived,
  };
}

function storedBee(
  bee: number,
  candidates: readonly [Candidate<BodyOf<"bee-read">>, ...Candidate<BodyOf<"bee-read">>[]],
  words: Words,
): StoredBee {
  const newest = candidates.at(-1) ?? candidates[0];
  const read = readBee(newest.value);
  return {
    bee,
    entries: candidates.map((each) => each.entry),
    recordedAt: newest.recordedAt,
    read,
    what: whatOf(read, words),
  };
}

/** A bee in words: both trunks, lost, flagged. */
export function whatOf(bee: ReadBee, words: Words): string {
  const say = words.bench;
  const what = bee.lost || !bee.left || !bee.right ? say.lost : say.what({ left: bee.left, right: bee.right });
  return bee.flagged ? `${what}, ${say.flagged}` : what;
}

function rackVial(
  specimen: Casebook["specimens"][string],
  { id, doubled, words }: { readonly id: string; readonly doubled: ReadonlySet<string>; readonly words: Words },
): RackVial | null {
  const label = labelOf(specimen);
  const state = vialState(specimen, doubled);
  if (!label || (state !== "reading" && state !== "waits" && state !== "read")) return null;
  const open = Object.values(specimen.readings).find((reading) => reading.finished === null);
  const next = Math.max(0, ...Object.keys(open?.bees ?? {}).map(Number)) + 1;
  return {
    id: specimen.id,
    code: label.code,
    state,
    says: state === "reading" ? words.bench.rackBee({ bee: next }) : words.bench.rackStates[state],
    isHere: specimen.id === id,
  };
}
