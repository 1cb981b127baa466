/**
 * What is on record of an apiary: its colonies, weather, forage, supers, treatments and cases.
 *
 * @module views/model
 */
import { type Casebook, type Kept, settled } from "../../casebook/index.ts";
import type { BodyOf, EntryDraft } from "../../journal/index.ts";
import type { Day } from "../../units/index.ts";
import type { ColonyRef } from "./findings-grid.ts";

/** The colonies registered at an apiary, in order of code. */
export function coloniesOfApiary(casebook: Casebook, apiary: string | null): readonly ColonyRef[] {
  const state = apiary === null ? undefined : casebook.apiaries[apiary];
  return Object.values(state?.colonies ?? {}).map((colony) => ({
    id: colony.id,
    code: colony.record.candidates[0].value.code,
  }));
}

/** A value with the id of its slot; two values in one slot are both listed, marked as a conflict. */
export interface Listed<T> {
  readonly id: string;
  readonly value: T;
  readonly entries: readonly string[];
  readonly inConflict: boolean;
}

const listed = <T>(slots: Readonly<Record<string, Kept<T>>>): readonly Listed<T>[] =>
  Object.entries(slots).flatMap(([id, kept]) =>
    kept.candidates.map((candidate) => ({
      id,
      value: candidate.value,
      entries: kept.candidates.map((each) => each.entry),
      inConflict: kept.candidates.length > 1,
    })),
  );

export interface ApiaryView {
  readonly id: string;
  readonly record: BodyOf<"apiary-registered"> | null;
  /** Entries that a new record replaces. */
  readonly recordEntries: readonly string[];
  readonly colonies: readonly ColonyRef[];
  readonly weather: BodyOf<"weather-year-recorded"> | null;
  /** Entries that a new weather year replaces. */
  readonly weatherEntries: readonly string[];
  readonly region: BodyOf<"region-recorded"> | null;
  /** Entries that a new word on the region replaces. */
  readonly regionEntries: readonly string[];
  readonly flows: readonly Listed<BodyOf<"flow-recorded">>[];
  readonly supers: readonly Listed<BodyOf<"supers-recorded">>[];
  readonly treatments: readonly Listed<BodyOf<"treatment-recorded">>[];
  readonly cases: readonly {
    readonly id: string;
    readonly code: string;
    readonly openedOn: string;
    readonly question: string;
  }[];
}

/** A flow, supers or a treatment is taken back, with every value that stands in its place; the entries stay. */
export const takeBackDraft = (
  apiary: string,
  row: Pick<Listed<unknown>, "id" | "entries">,
  { reason, today }: { readonly reason: string; readonly today: Day },
): EntryDraft => ({
  kind: "entry-withdrawn",
  at: today,
  about: [apiary, row.id],
  replaces: row.entries,
  data: { reason },
});

/** One apiary; null when it is not on record. Spans stand in order of their first day. */
export function apiaryView(casebook: Casebook, id: string): ApiaryView | null {
  const state = casebook.apiaries[id];
  if (!state) return null;
  return {
    id,
    record: settled(state.record),
    recordEntries: state.record?.candidates.map((each) => each.entry) ?? [],
    colonies: coloniesOfApiary(casebook, id),
    weather: settled(state.weather),
    weatherEntries: state.weather?.candidates.map((each) => each.entry) ?? [],
    region: settled(state.region),
    regionEntries: state.region?.candidates.map((each) => each.entry) ?? [],
    flows: [...listed(state.flows)].sort((one, other) => one.value.from.localeCompare(other.value.from)),
    supers: [...listed(state.supers)].sort((one, other) => one.value.on.localeCompare(other.value.on)),
    treatments: [...listed(state.treatments)].sort((one, other) => one.value.on.localeCompare(other.value.on)),
    cases: Object.values(casebook.cases)
      .filter((each) => each.apiary === id)
      .flatMap((each) => {
        const opened = each.record?.candidates[0].value;
        return opened ? [{ id: each.id, code: opened.code, openedOn: opened.openedOn, question: opened.question }] : [];
      })
      .sort((one, other) => one.openedOn.localeCompare(other.openedOn)),
  };
}

/** All apiaries with a record, in order of name. */
export function apiaryList(casebook: Casebook): readonly ApiaryView[] {
  return Object.keys(casebook.apiaries)
    .flatMap((id) => apiaryView(casebook, id) ?? [])
    .sort((one, other) => (one.record?.name ?? "").localeCompare(other.record?.name ?? ""));
}
