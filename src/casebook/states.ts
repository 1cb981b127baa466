/** Puts the states of one root together from its standing entries: each value goes to its slot. */
import { placeOfChange } from "../knowledge/index.ts";
import { isRead, type Standing } from "./ledger.ts";
import { compareCodes } from "./order.ts";
import { agreed, type ByKind, byKind, grouped, hasAny, itemsOf, keep, slotOf, slotsBy } from "./slots.ts";
import {
  type ApiaryState,
  type Casebook,
  type CaseState,
  type Colony,
  type LabelRecordState,
  type PlanState,
  type ProgrammeState,
  type ReadingState,
  type SpecimenState,
  wholeApiary,
} from "./state.ts";

/** The part of the casebook that these entries, all of one root, make up. */
export function assemble(root: string, standing: readonly Standing[]): Casebook {
  const entries = byKind(standing.filter(isRead));
  const only = <State>(state: State | null): Readonly<Record<string, State>> => (state ? { [root]: state } : {});
  return {
    apiaries: only(apiaryState(root, entries)),
    cases: only(caseState(root, entries)),
    specimens: only(specimenState(root, entries)),
    plans: only(planState(root, entries)),
    labelRecords: only(labelRecordState(root, entries)),
    programmes: only(programmeState(root, entries)),
    unread: standing.flatMap(({ entry: { header }, reading }) =>
      "unread" in reading ? [{ entry: header.id, root, kind: header.kind, why: reading.unread }] : [],
    ),
  };
}

function apiaryState(id: string, entries: ByKind): ApiaryState | null {
  const ownKinds = [
    "apiary-registered",
    "colony-registered",
    "weather-year-recorded",
    "region-recorded",
    "flow-recorded",
    "supers-recorded",
    "treatment-recorded",
  ] as const;
  if (!hasAny(entries, ownKinds)) return null;
  const colonies = Object.entries(slotsBy(itemsOf(entries, "colony-registered"), secondId))
    .map(([colony, record]): Colony => ({ id: colony, record }))
    .sort((one, other) => compareCodes(codeOf(one), codeOf(other)));
  return {
    root: "apiary",
    id,
    record: slotOf(entries, "apiary-registered"),
    colonies: Object.fromEntries(colonies.map((colony) => [colony.id, colony])),
    weather: slotOf(entries, "weather-year-recorded"),
    region: slotOf(entries, "region-recorded"),
    flows: slotsBy(itemsOf(entries, "flow-recorded"), secondId),
    supers: slotsBy(itemsOf(entries, "supers-recorded"), secondId),
    treatments: slotsBy(itemsOf(entries, "treatment-recorded"), secondId),
  };
}

const secondId = (item: { readonly about: readonly string[] }): string => item.about[1] ?? "";
const codeOf = (colony: Colony): string => colony.record.candidates[0].value.code;

function caseState(id: string, entries: ByKind): CaseState | null {
  const ownKinds = [
    "case-opened",
    "case-handed-on",
    "red-flag-answered",
    "finding-recorded",
    "colony-state-recorded",
    "step-planned",
    "sampling-planned",
    "test-result-recorded",
    "stop-reported",
    "stop-lifted",
    "decision-recorded",
    "outcome-recorded",
    "case-closed",
    "file-attached",
  ] as const;
  if (!hasAny(entries, ownKinds)) return null;
  const opened = itemsOf(entries, "case-opened");
  return {
    root: "case",
    id,
    apiary: agreed(opened.map(secondId)),
    record: slotOf(entries, "case-opened"),
    handedOn: slotOf(entries, "case-handed-on"),
    redFlags: slotsBy(itemsOf(entries, "red-flag-answered"), (item) => item.candidate.value.flag),
    findings: findings(entries),
    colonyStates: slotsBy(itemsOf(entries, "colony-state-recorded"), (item) => item.candidate.value.colony),
    steps: slotsBy(itemsOf(entries, "step-planned"), (item) => item.candidate.value.step),
    samplePlans: slotsBy(itemsOf(entries, "sampling-planned"), secondId),
    tests: Object.fromEntries(
      itemsOf(entries, "test-result-recorded").map(({ candidate }) => [candidate.entry, candidate]),
    ),
    stopsReported: Object.fromEntries(
      itemsOf(entries, "stop-reported").map(({ candidate }) => [candidate.entry, candidate]),
    ),
    stopsLifted: slotsBy(itemsOf(entries, "stop-lifted"), (item) => item.candidate.value.stop),
    decision: slotOf(entries, "decision-recorded"),
    outcomes: grouped(
      itemsOf(entries, "outcome-recorded"),
      (item) => item.candidate.value.colony,
      (own) => slotsBy(own, (item) => item.candidate.value.on),
    ),
    closed: slotOf(entries, "case-closed"),
    files: Object.fromEntries(itemsOf(entries, "file-attached").map(({ candidate }) => [candidate.entry, candidate])),
  };
}

function findings(entries: ByKind): CaseState["findings"] {
  return grouped(
    itemsOf(entries, "finding-recorded"),
    (item) => item.candidate.value.colony ?? wholeApiary,
    (own) =>
      grouped(
        own,
        (item) => item.candidate.value.finding,
        ([first, ...more]) => {
          const state = (item: typeof first) => ({ ...item.candidate, value: item.candidate.value.state });
          return { candidates: [state(first), ...more.map(state)] };
        },
      ),
  );
}

function specimenState(id: string, entries: ByKind): SpecimenState | null {
  const ownKinds = [
    "specimen-labelled",
    "specimen-received",
    "reading-started",
    "bee-read",
    "reading-finished",
  ] as const;
  if (!hasAny(entries, ownKinds)) return null;
  const labels = itemsOf(entries, "specimen-labelled");
  return {
    root: "specimen",
    id,
    case: agreed(labels.map((item) => item.candidate.value.case)),
    colony: agreed(labels.map((item) => item.candidate.value.colony)),
    label: slotOf(entries, "specimen-labelled"),
    received: slotOf(entries, "specimen-received"),
    readings: readings(entries),
  };
}

function readings(entries: ByKind): SpecimenState["readings"] {
  const started = itemsOf(entries, "reading-started");
  const bees = itemsOf(entries, "bee-read");
  const finished = itemsOf(entries, "reading-finished");
  return grouped(
    [...started, ...bees, ...finished],
    (item) => item.candidate.value.reading,
    (_, id): ReadingState => {
      const isOwn = (item: { readonly candidate: { readonly value: { readonly reading: string } } }) =>
        item.candidate.value.reading === id;
      return {
        id,
        started: keep(started.filter(isOwn).map((item) => item.candidate)),
        bees: slotsBy(bees.filter(isOwn), (item) => String(item.candidate.value.bee)),
        finished: keep(finished.filter(isOwn).map((item) => item.candidate)),
      };
    },
  );
}

function planState(id: string, entries: ByKind): PlanState | null {
  if (!hasAny(entries, ["plan-made", "plan-step-done"])) return null;
  return {
    root: "plan",
    id,
    case: agreed(itemsOf(entries, "plan-made").map((item) => item.candidate.value.case)),
    record: slotOf(entries, "plan-made"),
    done: slotsBy(itemsOf(entries, "plan-step-done"), (item) => item.candidate.value.step),
  };
}

function labelRecordState(id: string, entries: ByKind): LabelRecordState | null {
  const record = slotOf(entries, "label-record-loaded");
  return record ? { root: "label-record", id, record } : null;
}

function programmeState(id: string, entries: ByKind): ProgrammeState | null {
  if (!hasAny(entries, ["evidence-changed", "reasoning-set", "kept-apart-settled"])) return null;
  return {
    root: "programme",
    id,
    changes: slotsBy(itemsOf(entries, "evidence-changed"), (item) => placeOfChange(item.candidate.value.change)),
    settings: slotOf(entries, "reasoning-set"),
    settlements: slotsBy(itemsOf(entries, "kept-apart-settled"), (item) => item.candidate.value.hash),
  };
}
