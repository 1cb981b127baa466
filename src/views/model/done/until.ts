/**
 * What not to do until the result is in, from the cautions of the knowledge.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, coloniesOf, settled } from "../../../casebook/index.ts";
import { type CautionId, type CautionTrigger, cautions, cautionsFor } from "../../../knowledge/index.ts";
import type { Day } from "../../../units/index.ts";
import type { Words } from "../../words/index.ts";

export interface UntilItem {
  readonly key: string;
  readonly says: string;
}

/** The cautions of a case that waits, dead hives first. */
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
  const triggers: readonly CautionTrigger[] = [
    ...(dead.length > 0 ? (["dead-hive"] as const) : []),
    "brood-or-comb-moved",
    "feeding",
    "queen-cells",
    ...(treated ? (["after-treatment"] as const) : []),
  ];
  const ids = [...new Set(triggers.flatMap((trigger) => cautionsFor(trigger)))];
  const deadCodes = dead.map((colony) => colony.code ?? colony.id);
  return ids.map((id: CautionId) => ({
    key: id,
    says: (id === "close-dead-hive" ? words.done.deadToday({ colonies: deadCodes }) : "") + cautions[id].words,
  }));
}
