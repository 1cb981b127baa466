/**
 * The vials of the bench: what is being read, what waits, what has not come, what is held because two carry one code.
 *
 * @module views/model
 */
import { type Casebook, type SpecimenState, settled } from "../../../casebook/index.ts";
import type { BodyOf } from "../../../journal/index.ts";
import type { Words } from "../../words/index.ts";

/** Where a vial stands. */
export type VialState = "reading" | "waits" | "held" | "to-arrive" | "read" | "rejected";

export interface VialRow {
  readonly id: string;
  readonly code: string;
  readonly caseId: string;
  readonly place: string;
  readonly colony: string;
  readonly from: string;
  readonly keptIn: string;
  readonly state: VialState;
  readonly says: string;
}

export interface BenchListView {
  readonly answer: string;
  readonly groups: readonly { readonly key: VialState; readonly title: string; readonly rows: readonly VialRow[] }[];
  readonly isEmpty: boolean;
}

const order: readonly VialState[] = ["reading", "waits", "held", "to-arrive", "read", "rejected"];

/** The label of a vial as first written, or as settled since; null when it has none. */
export const labelOf = (specimen: SpecimenState): BodyOf<"specimen-labelled"> | null =>
  settled(specimen.label) ?? specimen.label?.candidates[0].value ?? null;

/** The receipt of a vial; where two people differ, the first, until it is settled. */
export const receiptOf = (specimen: SpecimenState): BodyOf<"specimen-received"> | null =>
  settled(specimen.received) ?? specimen.received?.candidates[0].value ?? null;

/**
 * The code of a colony of a case, or its id when it has no record. Empty where the case is not here: whoever reads blind
 * is not told the colony by its id either.
 */
export function colonyCode(casebook: Casebook, caseId: string | null, colony: string | null): string {
  if (colony === null || (caseId !== null && casebook.cases[caseId] === undefined)) return "";
  const apiary = caseId === null ? null : casebook.cases[caseId]?.apiary;
  const record = apiary ? casebook.apiaries[apiary]?.colonies[colony]?.record : undefined;
  return record?.candidates[0].value.code ?? colony;
}

/** The name of the place of a case; empty when nobody recorded it. */
export function placeName(casebook: Casebook, caseId: string | null): string {
  const apiary = caseId === null ? null : casebook.cases[caseId]?.apiary;
  return (apiary ? settled(casebook.apiaries[apiary]?.record)?.name : null) ?? "";
}

/** Specimens that carry the code of another one: nobody can tell them apart by their labels. */
export function doubledCodes(casebook: Casebook): ReadonlySet<string> {
  const seen = new Map<string, number>();
  for (const specimen of Object.values(casebook.specimens)) {
    const code = labelOf(specimen)?.code;
    if (code) seen.set(code, (seen.get(code) ?? 0) + 1);
  }
  return new Set([...seen].filter(([, count]) => count > 1).map(([code]) => code));
}

/** Where one vial stands. */
export function vialState(specimen: SpecimenState, doubled: ReadonlySet<string>): VialState {
  const received = receiptOf(specimen);
  const readings = Object.values(specimen.readings);
  if (received === null) return doubled.has(labelOf(specimen)?.code ?? "") ? "held" : "to-arrive";
  if (received.acceptance === "rejected") return "rejected";
  if (readings.some((reading) => reading.started !== null && reading.finished === null)) return "reading";
  return readings.some((reading) => reading.finished !== null) ? "read" : "waits";
}

/** All vials on record, in groups; codes in order. */
export function benchList(casebook: Casebook, words: Words): BenchListView {
  const doubled = doubledCodes(casebook);
  const rows = Object.values(casebook.specimens)
    .flatMap((specimen) => vialRow(casebook, specimen, { doubled, words }) ?? [])
    .sort((one, other) => one.code.localeCompare(other.code, "en", { numeric: true }));
  const of = (state: VialState) => rows.filter((row) => row.state === state);
  return {
    answer:
      rows.length === 0
        ? words.bench.none
        : words.bench.answer({
            reading: of("reading").length,
            waits: of("waits").length,
            toArrive: of("to-arrive").length + of("held").length,
          }),
    groups: order
      .map((key) => ({ key, title: words.bench.groups[key], rows: of(key) }))
      .filter((group) => group.rows.length > 0),
    isEmpty: rows.length === 0,
  };
}

function vialRow(
  casebook: Casebook,
  specimen: SpecimenState,
  { doubled, words }: { readonly doubled: ReadonlySet<string>; readonly words: Words },
): VialRow | null {
  const label = labelOf(specimen);
  if (label === null) return null;
  const state = vialState(specimen, doubled);
  return {
    id: specimen.id,
    code: label.code,
    caseId: label.case,
    place: placeName(casebook, label.case),
    colony: colonyCode(casebook, label.case, label.colony),
    from: words.bench.from[label.from],
    keptIn: words.bench.keptIn[label.preservative],
    state,
    says: saysOf(specimen, state, words),
  };
}

function saysOf(specimen: SpecimenState, state: VialState, words: Words): string {
  const say = words.bench.states;
  const received = receiptOf(specimen);
  const readings = Object.values(specimen.readings);
  switch (state) {
    case "reading": {
      const open = readings.find((reading) => reading.finished === null);
      return say.reading({
        bees: Object.keys(open?.bees ?? {}).length,
        target: open?.started?.candidates[0].value.target ?? 0,
      });
    }
    case "waits":
      return say.waits({
        bees: received?.beesReceived ?? 0,
        condition: words.bench.conditions[(received?.condition ?? 0) as 0 | 1 | 2 | 3],
      });
    case "held":
      return say.held;
    case "to-arrive":
      return say.toArrive({ takenOn: labelOf(specimen)?.takenOn ?? null });
    case "read":
      return say.read({ readings: readings.filter((reading) => reading.finished !== null).length });
    case "rejected":
      return say.rejected({ reason: received?.reason ?? "" });
  }
}
