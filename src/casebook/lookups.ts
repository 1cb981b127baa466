/** Looking things up: a state by id, the colonies of a case, and where people disagree. */
import type { BodyOf } from "../journal/index.ts";
import { compareCodes } from "./order.ts";
import {
  type Candidate,
  type Casebook,
  type CaseState,
  type Colony,
  isInConflict,
  type Kept,
  type RootState,
  settled,
} from "./state.ts";

/** The state kept under an id; null when there is none. */
export const stateOf = <State>(states: Readonly<Record<string, State>>, id: string | null): State | null =>
  id !== null && Object.hasOwn(states, id) ? (states[id] ?? null) : null;

/** A colony as a case knows it. */
export interface CaseColony {
  readonly id: string;
  /** Null when the colony has no record of its own, or people disagree on it. */
  readonly code: string | null;
  readonly record: Colony | null;
  /** Null when nobody recorded it, or people disagree. */
  readonly state: BodyOf<"colony-state-recorded"> | null;
}

/**
 * The colonies of a case, in order of code. A case that names none is about all that its apiary has on record;
 * where two records of the case disagree, those of either are listed.
 */
export function coloniesOf(casebook: Casebook, caseId: string): readonly CaseColony[] {
  const state = stateOf(casebook.cases, caseId);
  if (!state) return [];
  const records = stateOf(casebook.apiaries, state.apiary)?.colonies ?? {};
  const named = new Set(state.record?.candidates.flatMap((candidate) => candidate.value.colonies) ?? []);
  const ids = named.size > 0 ? [...named] : Object.keys(records);
  return ids.map((id) => caseColony(id, state, records)).sort((one, other) => compareCodes(nameOf(one), nameOf(other)));
}

function caseColony(id: string, state: CaseState, records: Readonly<Record<string, Colony>>): CaseColony {
  const record = stateOf(records, id);
  return {
    id,
    code: settled(record?.record)?.code ?? null,
    record,
    state: settled(stateOf(state.colonyStates, id)),
  };
}

const nameOf = (colony: CaseColony): string => colony.code ?? colony.id;

/** Open and closed cases at an apiary, in order of id. Kept for as long as the cases are the same object. */
export function casesAt({ cases }: Casebook, apiary: string): readonly CaseState[] {
  const known = atApiaries.get(cases);
  const index = known ?? Map.groupBy(Object.values(cases), (each) => each.apiary);
  if (known === undefined) atApiaries.set(cases, index);
  return index.get(apiary) ?? [];
}

const atApiaries = new WeakMap<Casebook["cases"], ReadonlyMap<string | null, readonly CaseState[]>>();

/** A slot in which two or more people's values stand side by side. */
export interface Conflict {
  readonly root: string;
  /** Names of the members that lead to the slot, such as findings, colony id, finding id. */
  readonly slot: readonly string[];
  readonly candidates: readonly Candidate<unknown>[];
}

/** All conflicts of a root: for a person to settle by an entry that replaces every candidate it saw. */
export function conflictsOf(casebook: Casebook, root: string): readonly Conflict[] {
  return statesOfRoot(casebook, root).flatMap((state) => conflictsIn(root, [], state));
}

const statesOfRoot = (casebook: Casebook, root: string): readonly RootState[] =>
  [
    stateOf(casebook.apiaries, root),
    stateOf(casebook.cases, root),
    stateOf(casebook.specimens, root),
    stateOf(casebook.plans, root),
    stateOf(casebook.labelRecords, root),
    stateOf(casebook.programmes, root),
  ].filter((state) => state !== null);

function conflictsIn(root: string, slot: readonly string[], value: unknown): readonly Conflict[] {
  if (typeof value !== "object" || value === null || isSingle(value)) return [];
  if (isKept(value)) return isInConflict(value) ? [{ root, slot, candidates: value.candidates }] : [];
  return Object.entries(value).flatMap(([name, member]) => conflictsIn(root, [...slot, name], member));
}

const isKept = (value: object): value is Kept<unknown> => "candidates" in value && Array.isArray(value.candidates);
/** Values that stand by themselves (test results) are no slots. */
const isSingle = (value: object): boolean => "entry" in value && "recordedAt" in value;
