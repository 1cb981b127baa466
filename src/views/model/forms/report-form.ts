/**
 * What was typed when an authority was told of stops, and the entries it becomes: the report, and that the case waits
 * on whom was told.
 *
 * @module views/model
 */
import type { CaseState } from "../../../casebook/index.ts";
import type { BodyOf, EntryDraft } from "../../../journal/index.ts";
import { type Day, isDay, problem, type Result } from "../../../units/index.ts";
import { type StopAct, stopSince } from "../done/stop-acts.ts";
import { handOnDraft } from "../drafts.ts";
import { type Fields, present, readForm } from "../form.ts";
import { happenedOn } from "../happened.ts";

type Told = BodyOf<"stop-reported">;

/** Reads the form; it tells of every own stop that stands. The day told is today unless said otherwise. */
export function readTold(
  fields: Fields,
  { stops, today }: { readonly stops: readonly Pick<StopAct, "answers">[]; readonly today: Day },
): Result<Told> {
  const form = readForm(fields);
  const on = happenedOn(form, "toldOn", today);
  const due = form.day("answerBy");
  if (isDay(due) && isDay(on) && due < on)
    form.complain(problem("due-before-told", "blocked", "answerBy", { given: due, slots: { given: due, told: on } }));
  const since = stops.map(stopSince).sort().at(-1) ?? "";
  if (isDay(on) && on < since)
    form.complain(problem("told-before-seen", "blocked", "toldOn", { given: on, slots: { given: on, seen: since } }));
  const answers = [...new Set(stops.flatMap((stop) => stop.answers.map(({ entry }) => entry)))];
  return form.result(
    present({ toldWhom: form.text("toldWhom"), on, due, reference: form.maybeText("reference"), answers }),
  );
}

/** The report, and whom the case waits on from then. */
export const toldDrafts = (state: CaseState, data: Told): readonly EntryDraft[] => [
  { kind: "stop-reported", at: data.on, about: [state.id], data },
  handOnDraft(state, { waitsOn: data.toldWhom, due: data.due }, data.on),
];
