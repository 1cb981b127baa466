/** What sentences about a season read from the slots of a problem. */
import { day } from "../numbers.ts";
import type { Slots } from "./index.ts";

/** A number among the slots. */
export const n = (slots: Slots, name: string): number => Number(slots[name] ?? 0);
/** A share, of 100. */
export const per100 = (share: number): string => `${Number((100 * share).toFixed(1))}`.replaceAll("-", "−");
/** A day among the slots. */
export const date = (slots: Slots, name: string): string => day(String(slots[name] ?? ""));

const actions: Readonly<Record<string, string>> = {
  menthol: "Menthol",
  formic: "Formic acid",
  "oil-patty": "An oil patty",
  requeen: "A new queen",
  unite: "Uniting",
  "brood-break": "A brood break",
};
/** An action at the head of a sentence. */
export const seasonAction = (slots: Slots, name: string): string => actions[String(slots[name])] ?? String(slots[name]);
