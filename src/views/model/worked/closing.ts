/**
 * Outcomes of colonies and the closing of a case.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, settled } from "../../../casebook/index.ts";
import type { BodyOf, EntryDraft } from "../../../journal/index.ts";
import { conditions, isOwnId } from "../../../knowledge/index.ts";
import { blocked, type Day, problem, type Result } from "../../../units/index.ts";
import type { Words } from "../../words/index.ts";
import { colonyCode } from "../bench/worklist.ts";
import type { StopAct } from "../done/stop-acts.ts";
import { stopName } from "../done/stops.ts";
import { type Fields, present, readForm } from "../form.ts";
import { happenedOn } from "../happened.ts";
import { checkView, comparators } from "./check.ts";
import { stepRows } from "./steps.ts";

export interface OutcomeRow {
  readonly key: string;
  readonly colony: string;
  readonly on: Day;
  readonly says: string;
  readonly note: string | null;
}

/** Outcomes of the colonies, newest first. */
export function outcomeRows(casebook: Casebook, state: CaseState, words: Words): readonly OutcomeRow[] {
  return Object.entries(state.outcomes)
    .flatMap(([colony, days]) =>
      Object.entries(days).flatMap(([on, kept]) => {
        const value = settled(kept);
        return [
          {
            key: `${colony} ${on}`,
            colony: colonyCode(casebook, state.id, colony),
            on,
            says: value === null ? words.worked.conflict : value.survived ? words.worked.alive : words.worked.lost,
            note: value?.note ?? null,
          },
        ];
      }),
    )
    .sort((one, other) => other.on.localeCompare(one.on) || one.colony.localeCompare(other.colony));
}

/** Body of `outcome-recorded` from the form. */
export function readOutcome(fields: Fields, today: Day): Result<BodyOf<"outcome-recorded">> {
  const form = readForm(fields);
  return form.result(
    present({
      colony: form.text("colony"),
      on: happenedOn(form, "on", today),
      survived: form.oneOf("survived", ["yes", "no"]) === "yes",
      note: form.maybeText("note"),
    }),
  );
}

/** The outcome of a colony; it replaces what stands for that day. */
export const outcomeDraft = (state: CaseState, data: BodyOf<"outcome-recorded">): EntryDraft => ({
  kind: "outcome-recorded",
  at: data.on,
  about: [state.id, data.colony],
  replaces: state.outcomes[data.colony]?.[data.on]?.candidates.map((each) => each.entry) ?? [],
  data,
});

/** Body of `case-closed` from the form; a confirmed cause needs who or what confirmed it. */
export function readClosing(
  fields: Fields,
  asked: {
    readonly today: Day;
    readonly causes: readonly Confirmable[];
    /** The case's own stops that stand while nobody is recorded as told. */
    readonly untold: readonly StopAct[];
  },
): Result<BodyOf<"case-closed">> {
  const { today, causes: known, untold } = asked;
  const form = readForm(fields);
  if (untold.length > 0)
    form.complain(
      problem("closing-under-stop", "blocked", "outcome", { slots: { what: untold.map(stopName).join("; ") } }),
    );
  const causes = [...new Set([fields.cause1, fields.cause2, fields.cause3])].flatMap((id) =>
    known.some((each) => each.id === id) && id ? [id] : [],
  );
  const outcome = form.oneOf("outcome", ["answered", "without-answer"]);
  const confirmedBy = form.maybeText("confirmedBy");
  const read = form.result(
    present({
      on: today,
      outcome,
      confirmedCauses: outcome === "answered" ? causes : [],
      confirmedBy,
      learnt: form.maybeText("learnt"),
    }),
  );
  if (read.ok && read.value.confirmedCauses.length > 0 && confirmedBy === undefined)
    return blocked(problem("field-empty", "blocked", "confirmedBy", { given: "" }));
  return read;
}

/** The case is closed; it replaces every closing that stands. */
export const closingDraft = (state: CaseState, data: BodyOf<"case-closed">, today: Day): EntryDraft => ({
  kind: "case-closed",
  at: today,
  about: [state.id],
  replaces: state.closed?.candidates.map((each) => each.entry) ?? [],
  data,
});

export interface Confirmable {
  readonly id: string;
  readonly term: string;
}

/** Conditions that can be confirmed, published or the programme's own, in order of their names. */
export const confirmable = (casebook: Casebook): readonly Confirmable[] =>
  [...Object.values(conditions).map(({ id, term }) => ({ id, term })), ...ownConditions(casebook)].sort((one, other) =>
    one.term.localeCompare(other.term),
  );

/** Conditions that the programme added, by the names it gave them. */
function ownConditions({ programmes }: Casebook): readonly Confirmable[] {
  const changes = Object.values(programmes).flatMap((state) => Object.values(state.changes));
  return changes.flatMap((slot) => {
    const change = settled(slot)?.change;
    return change?.what === "condition" && isOwnId(change.condition)
      ? [{ id: change.condition, term: change.term }]
      : [];
  });
}

/** The answer of question 6. */
export function workedAnswer(
  casebook: Casebook,
  state: CaseState,
  { today, words }: { readonly today: Day; readonly words: Words },
): string {
  const say = words.worked;
  const closed = settled(state.closed);
  if (closed)
    return say.answerClosed({
      answered: closed.outcome === "answered",
      causes: closed.confirmedCauses.map((id) => confirmable(casebook).find((each) => each.id === id)?.term ?? id),
      on: closed.on,
    });
  const control = comparators(casebook, state)[0]?.id ?? null;
  const check = checkView(casebook, state, { control, scored: "any-mite", words });
  if (check?.outcome.efficacy)
    return say.answerEffect({ ...check.outcome.efficacy, apparent: check.outcome.apparentFall.value });
  if (check)
    return say.answerNoComparator({
      before: check.treated.before.infested / check.treated.before.examined,
      after: check.treated.after.infested / check.treated.after.examined,
      colonies: check.treated.colonies,
    });
  const rows = stepRows(casebook, state, { today, words });
  if (rows.length === 0) return say.answerNoPlan;
  const open = rows.filter((row) => row.state === "waits" || row.state === "overdue");
  return say.answerSteps({
    open: open.length,
    overdue: rows.filter((row) => row.state === "overdue").length,
    next: open[0]?.step.on ?? null,
  });
}
