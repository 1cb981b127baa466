/**
 * What was typed when a case was opened, and the entries it becomes.
 *
 * @module views/model
 */
import type { BodyOf } from "../../../journal/index.ts";
import { addDays, type Day, isDay, problem, type Result } from "../../../units/index.ts";
import { type Fields, type FormReader, present, readForm } from "../form.ts";
import { happenedOn, heedDay } from "../happened.ts";
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

/** What the field of the apiary holds while none is chosen. */
export const noApiaryChosen = "";

/**
 * Reads the form. `apiary`: id of the one chosen, null for a new one, whose fields are then needed, `noApiaryChosen`
 * while nobody chose. The call is of today unless a day is given; the case is due a week from today.
 */
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
  if (apiary === noApiaryChosen) form.complain(problem("field-not-chosen", "blocked", "apiary", { given: "" }));
  const openedOn = happenedOn(form, "openedOn", today);
  return form.result({
    apiary: apiary === null ? newApiary() : { id: apiary },
    case: present({
      code: newCode(form, "code", takenCases),
      openedOn,
      beganOn: noticedOn(form, { call: openedOn, today }),
      question: form.text("question"),
      story: form.maybeText("story"),
      alreadyDone: form.maybeText("alreadyDone"),
      waitsOn: form.maybeText("waitsOn"),
      due: dueOn(form, { call: openedOn, today }),
    }),
    colonies: Object.keys(fields).flatMap((name) => (name.startsWith("colony:") ? [name.slice("colony:".length)] : [])),
    newColonies: form.maybeNumber("newColonies", { min: 0, max: 200, whole: true }) ?? 0,
    author: form.text("author"),
  });
}

interface Days {
  readonly call: Day;
  readonly today: Day;
}

/** When the trouble was first noticed: not after the call. */
function noticedOn(form: FormReader, { call, today }: Days): Day | undefined {
  const day = form.maybeDay("beganOn");
  if (day === undefined) return undefined;
  heedDay(form, "beganOn", { day, today });
  if (isDay(day) && day <= today && day > call)
    form.complain(problem("noticed-after-call", "blocked", "beganOn", { given: day, slots: { given: day, call } }));
  return day;
}

/** When the case is due: not before the call. */
function dueOn(form: FormReader, { call, today }: Days): Day {
  const day = form.maybeDay("due");
  if (day === undefined) return addDays(today, daysUntilDue);
  if (isDay(day) && day < call)
    form.complain(problem("day-before-call", "blocked", "due", { given: day, slots: { given: day, call } }));
  return day;
}

/** Body of `case-handed-on`. */
export function readHandOn(fields: Fields): Result<BodyOf<"case-handed-on">> {
  const form = readForm(fields);
  return form.result({ waitsOn: form.text("waitsOn"), due: form.day("due") });
}
