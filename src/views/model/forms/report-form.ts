/**
 * What was typed when an authority was told of a stop, and the entry it becomes: the case waits on whom was told.
 *
 * @module views/model
 */
import type { CaseState } from "../../../casebook/index.ts";
import type { BodyOf, EntryDraft } from "../../../journal/index.ts";
import { type Day, isDay, problem, type Result } from "../../../units/index.ts";
import type { Words } from "../../words/index.ts";
import { handOnDraft } from "../drafts.ts";
import { type Fields, present, readForm } from "../form.ts";
import { happenedOn } from "../happened.ts";
import { reportsTold } from "./reports-told.ts";

/** Who was told, when, under which reference, and when an answer is due. */
export interface Told {
  readonly who: string;
  readonly on: Day;
  readonly reference?: string;
  readonly due: Day;
}

/** Reads the form; the day told is today unless said otherwise. */
export function readTold(fields: Fields, today: Day): Result<Told> {
  const form = readForm(fields);
  const on = happenedOn(form, "toldOn", today);
  const due = form.day("answerBy");
  if (isDay(due) && isDay(on) && due < on)
    form.complain(problem("due-before-told", "blocked", "answerBy", { given: due, slots: { given: due, told: on } }));
  return form.result(present({ who: form.text("toldWhom"), on, reference: form.maybeText("reference"), due }));
}

/** The entry: the case waits on whom was told; the note says it in words, below the notes of earlier reports. */
export function toldDraft(state: CaseState, told: Told, words: Words): EntryDraft {
  const note = [...reportsTold(state), words.case.stop.note(told)].join("\n");
  const data: BodyOf<"case-handed-on"> = { waitsOn: told.who, due: told.due, note };
  return handOnDraft(state, data, told.on);
}
