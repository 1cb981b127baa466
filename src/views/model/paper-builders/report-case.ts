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
import { type PaperWords, sentenceOf } from "../../words/index.ts";
import { couldView, fullDraws, isHeeded } from "../could.ts";
import type { Report } from "../paper.ts";
import { checkView, comparators } from "../worked/check.ts";
import { stepRows } from "../worked/steps.ts";
import { answersOf, lateOf } from "./report-answers.ts";
import type { ToRank } from "./report-rank.ts";

/** Causes told of each colony: what fits a page. */
const causesMost = 5;
/** A cause below this share is left out, as on the page before "show all". */
const worthTelling = 0.1;

/** Signs of the place and of each colony: present and absent; colonies that nobody looked at are named together. */
export function reportSigns(casebook: Casebook, state: CaseState, words: PaperWords): Report["signs"] {
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
function diedSays(state: CaseState, key: string, words: PaperWords): readonly string[] {
  const colony = settled(state.colonyStates[key]);
  return colony?.state === "dead" ? [words.paper.deadSince({ on: colony.diedOn ?? null })] : [];
}

/** The leading causes of each colony, from what was answered for it; `answers` in the order of what was to be ranked. */
export function reportCauses(
  toRank: readonly ToRank[],
  answers: readonly (differential.AnyAnswer | null)[],
  {
    evidence,
    isStopped,
    words,
  }: { readonly evidence: Evidence; readonly isStopped: boolean; readonly words: PaperWords },
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
  { today, words }: { readonly today: Day; readonly words: PaperWords },
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
export function reportEffect(casebook: Casebook, state: CaseState, words: PaperWords): Report["effect"] {
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
