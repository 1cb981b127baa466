/**
 * Which colonies the report ranks, and the questions to be asked for them.
 *
 * @module views/model
 */
import { type Casebook, coloniesOf } from "../../../casebook/index.ts";
import type { differential } from "../../../reasoning/index.ts";
import { fullDraws } from "../could.ts";
import { type AskedDifferential, differentialInput } from "../differential-input.ts";
import { specimensFound } from "../found/specimens.ts";
import { toldDissections } from "../found/told-dissections.ts";
import { ownReckoning } from "../own-evidence.ts";
import { countRedFlags, redFlags } from "../red-flags.ts";
import { answersOf } from "./report-answers.ts";

/** Colonies whose causes are ranked on the paper: what fits a page. */
const ranksMost = 6;
/** Bees that were read or told say as much as so many signs of which colony belongs on the paper. Judgement. */
const readCounts = 5;

/** A colony whose causes the report ranks, and the question to be asked for it. */
export interface ToRank {
  readonly colony: string;
  readonly input: differential.AnyInput;
  readonly season: AskedDifferential["season"];
  readonly notes: AskedDifferential["notes"];
}

/**
 * The colonies with most to go by, each with the input and the draws of the page; none while red flags are open or
 * nothing was looked for, as on the page.
 */
export function reportToRank(casebook: Casebook, caseId: string): readonly ToRank[] {
  const state = casebook.cases[caseId];
  if (!state) return [];
  const { evidence, settings } = ownReckoning(casebook, null);
  const read = new Set([
    ...specimensFound(casebook, state.id).flatMap((each) => (each.estimate ? each.label.colony : [])),
    ...toldDissections(state).map(({ colony }) => colony),
  ]);
  const isReady =
    countRedFlags(redFlags(state)).complete &&
    Object.keys(state.findings).some(
      (key) => answersOf(state, key, "present").length + answersOf(state, key, "absent").length > 0,
    );
  if (!isReady) return [];
  return coloniesOf(casebook, state.id)
    .map(({ id, code }) => ({ id, code: code ?? id, signs: answersOf(state, id, "present").length }))
    .filter(({ id, signs }) => signs > 0 || read.has(id))
    .map((each) => ({ ...each, told: each.signs + (read.has(each.id) ? readCounts : 0) }))
    .sort((one, other) => other.told - one.told || one.code.localeCompare(other.code))
    .slice(0, ranksMost)
    .map(({ id, code }) => {
      const { input, season, notes } = differentialInput(casebook, state, id, evidence);
      return { colony: code, input: { ...input, ...settings, draws: fullDraws }, season, notes };
    });
}
