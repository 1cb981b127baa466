/**
 * What the report tells of the case beside the specimens: the signs, the causes they point to, what was done, whether
 * it worked.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, coloniesOf, settled, wholeApiary } from "../../../casebook/index.ts";
import type { Evidence } from "../../../knowledge/index.ts";
import type { differential } from "../../../reasoning/index.ts";
import type { Day } from "../../../units/index.ts";
import { sentenceOf, type WholeWords } from "../../words/index.ts";
import { couldView, fullDraws, isHeeded } from "../could.ts";
import { type AskedDifferential, differentialInput } from "../differential-input.ts";
import { askedFindings, cellState } from "../findings-grid.ts";
import { specimensFound } from "../found/specimens.ts";
import { toldDissections } from "../found/told-dissections.ts";
import { ownReckoning } from "../own-evidence.ts";
import type { Report } from "../paper.ts";
import { countRedFlags, redFlags } from "../red-flags.ts";
import { seenAfterDeath } from "../seen-after-death.ts";
import { checkView, comparators } from "../worked/check.ts";
import { stepRows } from "../worked/steps.ts";

/** Colonies whose causes are ranked on the paper, and causes told of each: what fits a page. */
const [ranksMost, causesMost] = [4, 5];
/** A cause below this share is left out, as on the page before "show all". */
const worthTelling = 0.1;

/** Terms of the findings with this answer, of a colony that was alive then. */
function answersOf(state: CaseState, key: string, answer: "present" | "absent"): readonly string[] {
  const { findings: late } = seenAfterDeath(state, key);
  return askedFindings
    .filter(({ id }) => cellState(state, key, id) === answer && !late.includes(id))
    .map((finding) => finding.term);
}

/** Terms of the findings that were answered for a day after the colony had died. */
function lateOf(state: CaseState, key: string): readonly string[] {
  const { findings: late } = seenAfterDeath(state, key);
  return askedFindings.filter(({ id }) => late.includes(id)).map((finding) => finding.term);
}

/** Signs of the place and of each colony: present and absent; colonies that nobody looked at are named together. */
export function reportSigns(casebook: Casebook, state: CaseState, words: WholeWords): Report["signs"] {
  const say = words.paper;
  const places = [
    { id: wholeApiary, code: words.seen.apiaryWide },
    ...coloniesOf(casebook, state.id).map(({ id, code }) => ({ id, code: code ?? id })),
  ].map(({ id, code }) => ({
    id,
    code,
    present: answersOf(state, id, "present"),
    absent: answersOf(state, id, "absent"),
    late: lateOf(state, id),
    died: diedSays(state, id, words),
  }));
  const looked = places.filter(
    ({ present, absent, late, died }) => present.length + absent.length + late.length + died.length > 0,
  );
  const others = places.filter((each) => each.id !== wholeApiary && !looked.includes(each)).map(({ code }) => code);
  return [
    ...looked.map(({ code, died, ...signs }) => ({ colony: code, says: [...died, say.signs(signs)].join(" ") })),
    ...(looked.length > 0 && others.length > 0
      ? [{ colony: say.others, says: say.notLooked({ colonies: others }) }]
      : []),
  ];
}

/** That the colony is dead, with the day where it is known. */
function diedSays(state: CaseState, key: string, words: WholeWords): readonly string[] {
  const colony = settled(state.colonyStates[key]);
  return colony?.state === "dead" ? [words.paper.deadSince({ on: colony.diedOn ?? null })] : [];
}

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
    .sort((one, other) => other.signs - one.signs || one.code.localeCompare(other.code))
    .slice(0, ranksMost)
    .map(({ id, code }) => {
      const { input, season, notes } = differentialInput(casebook, state, id, evidence);
      return { colony: code, input: { ...input, ...settings, draws: fullDraws }, season, notes };
    });
}

/** The leading causes of each colony, from what was answered for it; `answers` in the order of what was to be ranked. */
export function reportCauses(
  toRank: readonly ToRank[],
  answers: readonly (differential.AnyAnswer | null)[],
  {
    evidence,
    isStopped,
    words,
  }: { readonly evidence: Evidence; readonly isStopped: boolean; readonly words: WholeWords },
): Report["causes"] {
  return toRank.flatMap(({ colony, input, season, notes }, index) => {
    const answer = answers[index];
    if (!answer) return [];
    const view = couldView({ answer, input, evidence, isStopped, draws: fullDraws, dots: null, words });
    return [
      {
        colony,
        season: words.paper.seasonOf(season),
        verdict: view.answer.replaceAll("**", ""),
        notes: notes
          .filter(isHeeded)
          .map((each) => words.paper.notes[each.code]?.(each.slots) ?? sentenceOf(each, words)),
        rows: view.causes
          .filter((each) => each.posterior >= worthTelling)
          .slice(0, causesMost)
          .map(({ term, number, range, word }) => ({ term, number, range, word })),
      },
    ];
  });
}

/** Steps of plans that were marked, with the dose as it was given. */
export function reportDone(
  casebook: Casebook,
  state: CaseState,
  { today, words }: { readonly today: Day; readonly words: WholeWords },
): Report["done"] {
  return stepRows(casebook, state, { today, words })
    .filter((row) => row.state === "done" || row.state === "not-done")
    .map((row) => {
      const marked = settled(row.plan.done[row.step.step]);
      const grams = row.state === "done" ? (marked?.gramsInAll ?? row.step.gramsInAll) : null;
      const colonies = coloniesOf(casebook, state.id)
        .filter(({ id }) => row.body.colonies.includes(id))
        .map(({ id, code }) => code ?? id);
      return {
        day: marked?.on ?? row.step.on,
        on: words.case.day({ day: marked?.on ?? row.step.on }),
        what: words.paper.didStep({
          what: row.what,
          done: row.state === "done",
          colonies,
          grams,
          asPlanned: marked?.gramsInAll === undefined,
          more: [row.deviation ?? "", ...row.heed].filter(Boolean),
        }),
      };
    })
    .sort((one, other) => one.day.localeCompare(other.day))
    .map(({ on, what }) => ({ on, what }));
}

/** Before and after, beside the first colony that can be compared with; null without a recheck. */
export function reportEffect(casebook: Casebook, state: CaseState, words: WholeWords): Report["effect"] {
  const control = comparators(casebook, state)[0]?.id ?? null;
  const check = checkView(casebook, state, { control, scored: "any-mite", words });
  if (!check) return null;
  const say = words.worked;
  const groups = [
    { name: say.groups.treated, of: check.treated },
    ...(check.control ? [{ name: say.groups.control, of: check.control }] : []),
  ];
  return {
    groups: groups.map(({ name, of }) => ({
      name: words.paper.group({ name, colonies: of.colonies }),
      before: words.paper.counted({ ...of.before, on: of.beforeOn }),
      after: words.paper.counted({ ...of.after, on: of.afterOn }),
    })),
    methods: check.methods.map(({ name, value, range, rule }) => ({ name, value, range, rule })),
    says: [check.expected ?? say.refusal, ...check.notes, say.trace],
  };
}
