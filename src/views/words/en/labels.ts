/** Sentences of the label records. */
import { day } from "./numbers.ts";

export const labels = {
  title: "Labels",
  none: "**No label records yet.** A plan that uses a treatment needs one.",
  answer: (slots: { readonly count: number }) =>
    `**${slots.count === 1 ? "One label record" : `${slots.count} label records`}.** A plan takes its dose, days and temperatures from here and from nowhere else.`,
  under:
    "Type every figure from the printed label in your hand, the one that is valid where the hives stand. This tool brings no label and guesses none.",
  formHead: "Type a label",
  whatHead: "Which label",
  jurisdiction: "Valid in",
  jurisdictionHint: "Country or state whose authority approved it.",
  activeIngredient: "Active ingredient",
  activeIngredientHint: "Such as menthol, formic acid, thymol. Never a brand.",
  concentration: "Strength",
  concentrationHint: "As printed, such as 98 % crystals.",
  registrationNumber: "Registration number",
  doseHead: "Dose",
  dose: "Dose for one colony, one application",
  applications: "Applications",
  daysBetween: "Days between applications",
  daysBetweenHint: "0 when there is one.",
  duration: "Days in the hive",
  placement: "Where it is placed",
  limitsHead: "Limits",
  lowest: "Lowest daily high",
  highest: "Highest daily high",
  supersAllowed: "With honey supers on?",
  no: "not allowed",
  yes: "allowed",
  daysBeforeSupers: "Days to wait before supers go on",
  protective: "Protective equipment",
  sourceHead: "Where this comes from",
  source: "Source",
  sourceHint: "Such as: printed label, revision and date.",
  readOn: "Read on",
  readOnHint: "Today unless you say otherwise.",
  daysUnit: "days",
  keep: "Keep this label record",
  kept: (slots: { readonly ingredient: string; readonly jurisdiction: string }) =>
    `**Kept.** ${slots.ingredient}, ${slots.jurisdiction}: it stands in the list above, and plans can be made from it.`,
  row: (slots: { readonly jurisdiction: string; readonly readOn: string }) =>
    `${slots.jurisdiction}, read ${day(slots.readOn)}`,
  invented: "Invented for the demonstration. Not a label.",
  doseRow: "Dose",
  limitsRow: "Daily high",
  timeRow: "Days in the hive",
  supersRow: "Honey supers",
  placementRow: "Placed",
  protectiveRow: "Wear",
  sourceRow: "Source",
  range: (slots: { readonly low: string; readonly high: string; readonly unit: string }) =>
    `${slots.low} to ${slots.high} ${slots.unit}`,
  doseSays: (slots: {
    readonly amount: string;
    readonly unit: string;
    readonly applications: number;
    readonly between: number;
  }) =>
    slots.applications === 1
      ? `${slots.amount} ${slots.unit} a colony, once`
      : `${slots.amount} ${slots.unit} a colony, ${slots.applications} times, ${slots.between} days apart`,
  daysSays: (slots: { readonly days: number }) => (slots.days === 1 ? "1 day" : `${slots.days} days`),
  supersSays: (slots: { readonly allowed: boolean; readonly days: number }) =>
    slots.allowed ? "allowed" : `off; ${slots.days} days before they go on`,
};
