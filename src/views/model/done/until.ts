/**
 * What to do today and what not to do until the result is in, from the cautions of the knowledge.
 *
 * @module views/model
 */
import {
  type ApiaryState,
  type Casebook,
  type CaseColony,
  type CaseState,
  coloniesOf,
  settled,
  wholeApiary,
} from "../../../casebook/index.ts";
import {
  type CautionId,
  type CautionTrigger,
  cautions,
  cautionsFor,
  type FindingId,
} from "../../../knowledge/index.ts";
import { addDays, type Day } from "../../../units/index.ts";
import type { Words } from "../../words/index.ts";
import { milderNotices, presentIn } from "./on-record.ts";
import { stopActs } from "./stop-acts.ts";
import { urgentActs } from "./urgent.ts";

export interface UntilItem {
  readonly key: string;
  readonly says: string;
  /** To be done today, or to be left until the result is in. */
  readonly when: "today" | "not-yet";
}

/** Cautions that ask for something; the others forbid. */
const asks: readonly CautionId[] = [
  "close-dead-hive",
  "mask-for-dead-bees",
  "poison-call-today",
  "poisoned-bees-gloves",
  "ask-if-notifiable",
];

/** Signs that put the queen in question, unless eggs were seen on a later day. */
const queenSigns: readonly FindingId[] = [
  "queen_not_found_no_eggs",
  "no_brood_in_season",
  "multiple_eggs_per_cell",
  "drone_brood_in_worker_cells",
  "emergency_or_supersedure_cells",
  "sealed_brood_only",
  "roar_agitated",
];
/** Signs that could be poison: hives and site stay as they are. */
const poisonSigns: readonly FindingId[] = ["dead_heap", "tongue_out", "wet_regurgitating", "recent_spray"];

/** Bees may crawl of a treatment for so many days after its end: one label period and the bees' turnover. Judgement, no source. */
const crawlingAfterDays = 42;

/** Under a stop nothing is moved, so nothing is said of how to give or move comb. */
const asidesOfStop: readonly CautionId[] = ["ask-if-notifiable", "check-brood-first", "test-frame-before-queen"];

/**
 * Of the living colonies those in which no queen is known to lay well: seen in the colony itself, disputed by nobody, and
 * with no later sign against it, of the colony or of all, whoever saw it.
 */
function withoutLayingQueen(casebook: Casebook, state: CaseState): readonly CaseColony[] {
  const daysOf = (key: string, sign: FindingId): readonly Day[] =>
    presentIn(state.findings[key]?.[sign]).map(({ at }) => at.slice(0, 10));
  return coloniesOf(casebook, state.id).filter(({ id, state: colony }) => {
    const eggs = state.findings[id]?.normal_eggs_and_queen;
    const laidOn = eggs?.candidates.every(({ value }) => value === "present")
      ? daysOf(id, "normal_eggs_and_queen").toSorted().at(-1)
      : undefined;
    const against = queenSigns.flatMap((sign) => [...daysOf(id, sign), ...daysOf(wholeApiary, sign)]);
    const isKnown = laidOn !== undefined && against.every((on) => on < laidOn);
    return colony?.state !== "dead" && !isKnown;
  });
}

/** Whether a treatment is in the hives, or was until lately, so that bees may crawl of it. */
function treatmentOf(apiary: ApiaryState | undefined, today: Day): "after-treatment" | "treatment-ended" | null {
  const ends = Object.values(apiary?.treatments ?? {}).flatMap(({ candidates }) =>
    candidates.map(({ value }) => value.off ?? today),
  );
  const last = ends.sort().at(-1);
  if (last === undefined || last < addDays(today, -crawlingAfterDays)) return null;
  return last >= today ? "after-treatment" : "treatment-ended";
}

/** What a case that waits asks for: what is to be done today first, what cannot wait before all. */
export function untilResult(
  casebook: Casebook,
  state: CaseState,
  { today, words }: { readonly today: Day; readonly words: Words },
): readonly UntilItem[] {
  const colonies = coloniesOf(casebook, state.id);
  const dead = colonies.filter((colony) => colony.state?.state === "dead");
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const treatment = treatmentOf(apiary, today);
  const queenOpen = withoutLayingQueen(casebook, state);
  const seen = (signs: readonly FindingId[]) =>
    Object.values(state.findings).some((own) => signs.some((sign) => settled(own[sign]) === "present"));
  const triggers: readonly CautionTrigger[] = [
    ...(dead.length > 0 ? (["dead-hive"] as const) : []),
    ...(seen(poisonSigns) ? (["poisoning-suspicion"] as const) : []),
    "result-waits",
    "brood-or-comb-moved",
    "feeding",
    ...(queenOpen.length > 0 || colonies.length === 0 ? (["requeening"] as const) : []),
    "queen-cells",
    ...(treatment === null ? [] : [treatment]),
  ];
  // Beside a stop nobody has to ask either: it says whom to tell.
  const isStopped = stopActs(casebook, state).length > 0;
  // What may be of a treatment says itself when the authority is to be called.
  const heapAlone = milderNotices(casebook, state).length > 0;
  const ids = [...new Set(triggers.flatMap((trigger) => cautionsFor(trigger)))].filter(
    (id) => !(isStopped && asidesOfStop.includes(id)) && !(heapAlone && id === "poison-call-today"),
  );
  const codes = (some: readonly CaseColony[]) => some.map(({ code, id }) => code ?? id);
  // Colonies are named where it is not all of them.
  const named: Readonly<Partial<Record<CautionId, readonly string[]>>> = {
    "close-dead-hive": codes(dead),
    "test-frame-before-queen": queenOpen.length < colonies.length ? codes(queenOpen) : [],
  };
  const items = ids.map(
    (id): UntilItem => ({
      key: id,
      says: words.done.urgentIn({ colonies: named[id] ?? [], act: cautions[id].words }),
      when: asks.includes(id) ? "today" : "not-yet",
    }),
  );
  const urgent = urgentActs(casebook, state).map(
    ({ key, colonies, act }): UntilItem => ({
      key,
      says: words.done.urgentIn({ colonies, act }),
      when: "today",
    }),
  );
  const of = (when: UntilItem["when"]) => items.filter((item) => item.when === when);
  return [...urgent, ...of("today"), ...of("not-yet")];
}
