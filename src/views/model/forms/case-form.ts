/**
 * What was typed when a case was opened, and the entries it becomes.
 *
 * @module views/model
 */
import type { BodyOf } from "../../../journal/index.ts";
import { addDays, type Day, type Result } from "../../../units/index.ts";
import { type Fields, present, readForm } from "../form.ts";
import { newCode } from "./apiary-form.ts";

/** Days until a new case is due, when nothing else is said: a week. Judgement. */
export const daysUntilDue = 7;

/** A case about to be opened. */
export interface Opening {
  readonly author: string;
  readonly case: Omit<BodyOf<"case-opened">, "colonies">;
  /** An apiary on record, or the body of a new one. */
  readonly apiary: { readonly id: string } | { readonly body: BodyOf<"apiary-registered"> };
  /** Colonies on record that have the trouble. */
  readonly colonies: readonly string[];
  /** How many further colonies to register. */
  readonly newColonies: number;
}

/** Reads the form. `apiary`: id of the one chosen, null for a new one, whose fields are then needed. */
export function readOpening(input: {
  readonly fields: Fields;
  readonly apiary: string | null;
  readonly takenApiaries: readonly string[];
  readonly takenCases: readonly string[];
  readonly today: Day;
}): Result<Opening> {
  const { fields, apiary, takenApiaries, takenCases, today } = input;
  const form = readForm(fields);
  const newApiary = () => ({
    body: present({
      name: form.text("apiaryName"),
      code: newCode(form, "apiaryCode", takenApiaries),
      place: form.text("district"),
      latitude: form.maybeNumber("latitude", { min: -90, max: 90, unit: "°" }),
    }),
  });
  return form.result({
    apiary: apiary === null ? newApiary() : { id: apiary },
    case: present({
      code: newCode(form, "code", takenCases),
      openedOn: today,
      question: form.text("question"),
      story: form.maybeText("story"),
      alreadyDone: form.maybeText("alreadyDone"),
      waitsOn: form.maybeText("waitsOn"),
      due: form.maybeDay("due") ?? addDays(today, daysUntilDue),
    }),
    colonies: Object.keys(fields).flatMap((name) => (name.startsWith("colony:") ? [name.slice("colony:".length)] : [])),
    newColonies: form.maybeNumber("newColonies", { min: 0, max: 200, whole: true }) ?? 0,
    author: form.text("author"),
  });
}

/** Body of `case-handed-on`. */
export function readHandOn(fields: Fields): Result<BodyOf<"case-handed-on">> {
  const form = readForm(fields);
  return form.result({ waitsOn: form.text("waitsOn"), due: form.day("due") });
}
