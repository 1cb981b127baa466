/**
 * The labelled vials of a case: where each stands, which still wait, and taking a label back before its vial came.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, type SpecimenState, settled, specimensOf } from "../../casebook/index.ts";
import type { EntryDraft } from "../../journal/index.ts";
import type { Day } from "../../units/index.ts";
import type { Words } from "../words/index.ts";
import {
  colonyCode,
  doubledCodes,
  labelOf,
  placeName,
  receiptOf,
  type VialState,
  vialState,
} from "./bench/worklist.ts";

export interface VialView {
  readonly id: string;
  readonly code: string;
  readonly colonyId: string;
  readonly colony: string;
  readonly place: string;
  readonly from: string;
  readonly preservative: string;
  readonly state: VialState;
  /** Where it stands, in words. */
  readonly says: string;
  /** When the bees were taken, by the receipt or else by the label; null while nobody said. */
  readonly takenOn: Day | null;
  /** Entries of the label that can be taken back; empty once the vial came. */
  readonly takeBack: readonly string[];
}

/** The labelled vials of a case, in order of code. */
export function vialsOf(casebook: Casebook, state: CaseState, words: Words): readonly VialView[] {
  const doubled = doubledCodes(casebook);
  return specimensOf(casebook, state.id).flatMap((specimen) => {
    const label = labelOf(specimen);
    if (!label) return [];
    const say = words.tell.plan;
    const where = vialState(specimen, doubled);
    const takenOn = receiptOf(specimen)?.takenOn ?? label.takenOn;
    return [
      {
        id: specimen.id,
        code: label.code,
        colonyId: label.colony,
        colony: colonyCode(casebook, label.case, label.colony),
        place: placeName(casebook, label.case),
        from: say.from[label.from],
        preservative: say.preservatives[label.preservative],
        state: where,
        says: say.vialStates[where],
        takenOn,
        takeBack: hasCome(specimen) ? [] : (specimen.label?.candidates.map((each) => each.entry) ?? []),
      },
    ];
  });
}

const hasCome = (specimen: SpecimenState): boolean =>
  specimen.received !== null || Object.keys(specimen.readings).length > 0;

/** Of `colonies`, the vials that are labelled and have not come: more of them are hardly meant. */
export const vialsAwaited = (vials: readonly VialView[], colonies: readonly string[]): readonly VialView[] =>
  vials.filter((vial) => vial.takeBack.length > 0 && colonies.includes(vial.colonyId));

/** Takes a label back. The entries stay in the journal; the vial no longer counts. */
export const takeBackVialDraft = (vial: Pick<VialView, "id" | "takeBack">, today: Day): EntryDraft => ({
  kind: "entry-withdrawn",
  at: today,
  about: [vial.id],
  replaces: vial.takeBack,
  data: { reason: "label taken back before the vial came" },
});

/** Whether any vial of the case has a settled label. */
export const hasVials = (casebook: Casebook, state: CaseState): boolean =>
  specimensOf(casebook, state.id).some((specimen) => settled(specimen.label) !== null);
