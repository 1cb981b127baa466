/**
 * What was typed when a case was opened, as the journal keeps it.
 *
 * @module views/model
 */
import type { BodyOf } from "../../../journal/index.ts";
import { addDays, type Day, type Result } from "../../../units/index.ts";
import { type Fields, present, readForm } from "../form.ts";
import { newCode } from "./apiary-form.ts";

/** Days until a new case is due, when nothing else is said: a week. Judgement. */
export const daysUntilDue = 7;

export interface CaseForm {
  readonly body: Omit<BodyOf<"case-opened">, "colonies">;
  /** How many colonies the caller has trouble with; each gets a code unless it has one. */
  readonly colonies: number;
}

/** Body of `case-opened` without its colonies, and how many of those to register. */
export function readCaseForm(fields: Fields, taken: readonly string[], today: Day): Result<CaseForm> {
  const form = readForm(fields);
  return form.result({
    body: present({
      code: newCode(form, "code", taken),
      openedOn: form.maybeDay("openedOn") ?? today,
      question: form.text("question"),
      story: form.maybeText("story"),
      alreadyDone: form.maybeText("alreadyDone"),
      waitsOn: form.maybeText("waitsOn"),
      due: form.maybeDay("due") ?? addDays(today, daysUntilDue),
    }),
    colonies: form.maybeNumber("newColonies", { min: 0, max: 200, whole: true }) ?? 0,
  });
}
