/**
 * What to do today and what not to do until the result is in, from the cautions of the knowledge.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, coloniesOf, settled } from "../../../casebook/index.ts";
import {
  type CautionId,
  type CautionTrigger,
  cautions,
  cautionsFor,
  type FindingId,
} from "../../../knowledge/index.ts";
import type { Day } from "../../../units/index.ts";
import type { Words } from "../../words/index.ts";
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

/** Signs that put the queen in question: no new one goes in before a test comb has been given. */
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

/** What a case that waits asks for: what is to be done today first, what cannot wait before all. */
export function untilResult(
  casebook: Casebook,
  state: CaseState,
  { today, words }: { readonly today: Day; readonly words: Words },
): readonly UntilItem[] {
  const dead = coloniesOf(casebook, state.id).filter((colony) => colony.state?.state === "dead");
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const treated = Object.values(apiary?.treatments ?? {}).some((kept) => {
    const treatment = settled(kept);
    return treatment !== null && (treatment.off === null || treatment.off >= today);
  });
  const seen = (signs: readonly FindingId[]) =>
    Object.values(state.findings).some((own) => signs.some((sign) => settled(own[sign]) === "present"));
  const triggers: readonly CautionTrigger[] = [
    ...(dead.length > 0 ? (["dead-hive"] as const) : []),
    ...(seen(poisonSigns) ? (["poisoning-suspicion"] as const) : []),
    "result-waits",
    "brood-or-comb-moved",
    "feeding",
    ...(seen(queenSigns) ? (["requeening"] as const) : []),
    "queen-cells",
    ...(treated ? (["after-treatment"] as const) : []),
  ];
  // Beside a stop nobody has to ask: it says whom to tell.
  const isStopped = stopActs(casebook, state).length > 0;
  const ids = [...new Set(triggers.flatMap((trigger) => cautionsFor(trigger)))].filter(
    (id) => !(isStopped && id === "ask-if-notifiable"),
  );
  const deadCodes = dead.map((colony) => colony.code ?? colony.id);
  const items = ids.map(
    (id): UntilItem => ({
      key: id,
      says: words.done.urgentIn({ colonies: id === "close-dead-hive" ? deadCodes : [], act: cautions[id].words }),
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
