/** What someone typed into a form and has not sent yet, kept for this tab: going away and coming back loses nothing. */
import { type FormEvent, useEffect, useRef } from "react";
import type { Fields } from "../../model/index.ts";

/** Names of the forms of question 5 and of Season, each of one case. */
export const typingOf = {
  weighing: (caseId: string) => `weighing ${caseId}`,
  decision: (caseId: string) => `decision ${caseId}`,
  plan: (caseId: string) => `plan ${caseId}`,
  season: (caseId: string, colony: string) => `season ${caseId} ${colony}`,
} as const;

const slotOf = (key: string) => `typed ${key}`;

/** The fields that were touched, by name; empty when nothing is kept or the browser keeps nothing. */
export function typedBefore(key: string): Fields {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(slotOf(key)) ?? "{}");
    return typeof kept === "object" && kept !== null ? (kept as Fields) : {};
  } catch {
    return {};
  }
}

/** Keeps fields, or nothing any more. */
export function keepTyping(key: string, fields: Fields | null): void {
  try {
    if (fields === null) sessionStorage.removeItem(slotOf(key));
    else sessionStorage.setItem(slotOf(key), JSON.stringify(fields));
  } catch {
    // A browser that keeps nothing: the form works, and what was typed goes with the page.
  }
}

/** Puts touched fields back when the form appears; `keepAll` and `forget` when it was sent. A tick is kept as `on` or empty. */
export function useKeptTyping(key: string) {
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    for (const [name, value] of Object.entries(typedBefore(key))) {
      const field = form.current?.elements.namedItem(name);
      if (field instanceof HTMLInputElement && field.type === "checkbox") field.checked = value === "on";
      else if (
        field instanceof HTMLInputElement ||
        field instanceof HTMLTextAreaElement ||
        (field instanceof HTMLSelectElement && [...field.options].some((option) => option.value === value))
      )
        field.value = value;
    }
  }, [key]);
  const onInput = (event: FormEvent<HTMLFormElement>) => {
    const field = event.target;
    if (field instanceof HTMLInputElement && field.type === "checkbox")
      keepTyping(key, { ...typedBefore(key), [field.name]: field.checked ? "on" : "" });
    else if (
      field instanceof HTMLInputElement ||
      field instanceof HTMLTextAreaElement ||
      field instanceof HTMLSelectElement
    )
      keepTyping(key, { ...typedBefore(key), [field.name]: field.value });
  };
  return { form, onInput, keepAll: (fields: Fields) => keepTyping(key, fields), forget: () => keepTyping(key, null) };
}
