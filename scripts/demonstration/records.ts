/** Small moves that every invented case repeats: findings, specimens, readings bee by bee. */
import type { Trunk } from "../../src/journal/index.ts";
import type { Place } from "./places.ts";
import type { Writer } from "./writer.ts";

type State = "present" | "absent" | "not-looked";

/** Records several findings of one colony, or of the apiary when colony is null. */
export function writeFindings(
  writer: Writer,
  kase: string,
  on: string,
  colony: string | null,
  findings: Readonly<Record<string, State>>,
): Written {
  const written = Object.entries(findings).map(([finding, state]): [string, string] => {
    const entry = writer.write("inspector 2", {
      kind: "finding-recorded",
      at: on,
      about: colony ? [kase, colony] : [kase],
      data: { colony, finding, state, on, knownFrom: "seen" },
    });
    return [finding, entry.header.id];
  });
  return Object.fromEntries(written);
}

/** Entries by the finding or red flag that they answer. */
type Written = Readonly<Record<string, string>>;

/** Answers red flags; those left out are not asked. */
export function writeRedFlags(
  writer: Writer,
  kase: string,
  on: string,
  flags: Readonly<Record<string, State>>,
): Written {
  const written = Object.entries(flags).map(([flag, state]): [string, string] => {
    const data = { flag, state, on };
    const entry = writer.write("specialist 1", { kind: "red-flag-answered", at: on, about: [kase, flag], data });
    return [flag, entry.header.id];
  });
  return Object.fromEntries(written);
}

export interface Vial {
  readonly code: string;
  readonly colony: string;
  readonly from: "S" | "E";
  readonly purpose: "detect" | "estimate" | "recheck";
}

/** Labels a vial and returns the specimen's id. */
export function writeLabel(writer: Writer, kase: string, on: string, vial: Vial): string {
  const specimen = writer.id(`specimen-${vial.code.toLowerCase()}`);
  writer.write("inspector 2", {
    kind: "specimen-labelled",
    at: on,
    about: [specimen, kase, vial.colony],
    data: {
      code: vial.code,
      case: kase,
      colony: vial.colony,
      takenOn: on,
      from: vial.from,
      preservative: "frozen",
      purpose: vial.purpose,
      collector: "inspector 2",
    },
  });
  return specimen;
}

export interface Reading {
  readonly specimen: string;
  readonly takenOn: string;
  readonly receivedOn: string;
  readonly on: string;
  readonly bees: number;
  readonly target: number;
  /** Invented share of bees infested, from which each bee is drawn. */
  readonly share: number;
  /** Exact number of bees with mites, when the story needs it. */
  readonly positive?: number;
  readonly unreadable?: number;
  readonly condition: 0 | 1 | 2 | 3;
  /** Bees read; fewer than the target leaves the reading open. */
  readonly read: number;
}

/** Receives a vial and reads it bee by bee; finishes only when the target was reached or the bees ran out. */
export function writeReading(writer: Writer, reading: Reading): void {
  const { specimen, on } = reading;
  const isSoft = reading.condition >= 2;
  writer.write("bench", {
    kind: "specimen-received",
    at: reading.receivedOn,
    about: [specimen],
    data: {
      on: reading.receivedOn,
      takenOn: reading.takenOn,
      condition: reading.condition,
      beesReceived: reading.bees,
      aliveWhenTaken: true,
      acceptance: isSoft ? "accepted-with-limits" : "accepted",
      ...(isSoft ? { reason: "soft bees, few can be read" } : {}),
    },
  });
  const id = `${specimen}-reading-1`;
  const about = [specimen, id];
  writer.write("reader 1", {
    kind: "reading-started",
    at: on,
    about,
    data: {
      reading: id,
      reader: "reader 1",
      on,
      method: "both prothoracic trunks, bee by bee",
      target: reading.target,
    },
  });
  const outcomes = drawBees(writer, reading);
  outcomes.forEach(([left, right], index) => {
    writer.write("reader 1", {
      kind: "bee-read",
      at: on,
      about,
      data: { reading: id, bee: index + 1, lost: false, left, right },
    });
  });
  if (reading.read >= reading.target || reading.read >= reading.bees) {
    writer.write("reader 1", {
      kind: "reading-finished",
      at: on,
      about,
      data: { reading: id, on, stop: reading.read >= reading.target ? "target-reached" : "no-more-bees" },
    });
  }
}

const withMites: readonly Trunk[] = ["mites", "mites-blotches", "mites-dark"];

/** Sides are drawn apart from each other, as mites fall on either side alike; positions of infested bees are drawn. */
function drawBees(
  writer: Writer,
  { read, share, positive, unreadable = 0 }: Reading,
): readonly (readonly [Trunk, Trunk])[] {
  const { next } = writer.stream;
  const readable = read - unreadable;
  const trunkShare = 1 - Math.sqrt(1 - share);
  const infested = new Set<number>();
  if (positive === undefined) {
    for (let bee = 0; bee < readable; bee += 1) if (next() < share) infested.add(bee);
  } else {
    while (infested.size < positive) infested.add(Math.floor(next() * readable));
  }
  const mites = (): Trunk => withMites[Math.min(2, Math.floor(next() * 3.2))] ?? "mites";
  const bees = Array.from({ length: readable }, (_, bee): readonly [Trunk, Trunk] => {
    if (!infested.has(bee)) return ["clear", "clear"];
    const both = next() < (trunkShare * trunkShare) / share;
    if (both) return [mites(), mites()];
    return next() < 0.5 ? [mites(), "clear"] : ["clear", mites()];
  });
  return [...bees, ...Array.from({ length: unreadable }, (): readonly [Trunk, Trunk] => ["unreadable", "unreadable"])];
}

/** Opens a case for some colonies of a place. */
export function openCase(
  writer: Writer,
  where: Place,
  code: string,
  on: string,
  told: {
    readonly question: string;
    readonly story: string;
    readonly alreadyDone?: string;
    readonly colonies: readonly string[];
    readonly waitsOn: string;
    readonly due: string;
  },
): string {
  const kase = writer.id(`case-${code.toLowerCase()}`);
  writer.write("specialist 1", {
    kind: "case-opened",
    at: on,
    about: [kase, where.apiary],
    data: {
      code,
      openedOn: on,
      ...told,
      colonies: [...told.colonies],
      coloniesInApiary: where.colonies.length,
      mayBeCounted: true,
    },
  });
  return kase;
}
