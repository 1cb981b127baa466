/** Sentences of the apiaries: colonies, weather, forage, supers, treatments. */
import { capital, day, dayAndMonth, list, monthNames, some } from "./numbers.ts";

/** What somebody wrote down of a region. */
export interface RegionTold {
  readonly varroa?: "present" | "absent";
  readonly acarapisWoodi?: "unknown" | "found" | "absent";
  readonly smallHiveBeetle?: "absent" | "present" | "endemic";
  readonly tropilaelaps?: "absent" | "present" | "endemic";
  readonly vespa?: "absent" | "established";
}

const regionOf = {
  varroa: "varroa mites",
  acarapisWoodi: "tracheal mites",
  smallHiveBeetle: "small hive beetle",
  tropilaelaps: "Tropilaelaps mites",
  vespa: "yellow-legged hornet",
} as const;

const regionStates = {
  present: "here",
  absent: "not here",
  unknown: "not known",
  found: "found in the last ten years",
  endemic: "here for good",
  established: "here for good",
} as const;

/** The region in one line: every pest with its word, or only what is there or may be. */
export function regionSays(told: RegionTold, which: "all" | "what is there" = "all"): string {
  const pests = Object.keys(regionOf) as (keyof RegionTold)[];
  const said = pests.filter((pest) => told[pest] !== undefined && (which === "all" || told[pest] !== "absent"));
  const rest =
    said.length < pests.length ? [said.length > 0 ? "none of the others" : "none of the pests asked for"] : [];
  return [...said.map((pest) => `${regionOf[pest]} **${regionStates[told[pest] ?? "unknown"]}**`), ...rest].join(", ");
}

export const apiaries = {
  title: "Apiaries",
  none: "**No apiaries yet.** Register one here, or open a case: it registers its place.",
  answer: (slots: { readonly apiaries: number; readonly colonies: number }) =>
    `**${some(slots.apiaries, "apiary", "apiaries")}**, ${some(slots.colonies, "colony", "colonies")}.`,
  columns: { name: "Name", district: "District", colonies: "Colonies", weather: "Weather year", cases: "Cases" },
  has: "on record",
  hasNot: "missing",
  toLabels: "Label records of treatments",
  registerHead: "Register an apiary",
  register: "Register the apiary",
  changeRecord: "Change the record",
  keepRecord: "Keep the change",
  offToday: "Off today",
  takeBack: "Take it back",
  takenBack: "taken back by the one who wrote it",
  name: "Name of the place",
  code: "Short code",
  codeHint: "Stands on every label.",
  district: "District",
  districtHint: "Coarse: a valley, a county.",
  latitude: "Latitude",
  latitudeHint: "South of the equator with a minus. It tells the season and the length of days.",
  longitude: "Longitude",
  elevation: "Height above the sea",
  registration: "Registration number",
  registrationHint: "Where the law asks for one.",
  page: (slots: { readonly name: string; readonly colonies: number; readonly cases: number }) =>
    `**${slots.name}.** ${some(slots.colonies, "colony", "colonies")}, ${some(slots.cases, "case", "cases")}.`,
  missing: "**There is no such apiary here.** It may not have arrived on this device yet.",
  toApiaries: "To the apiaries",
  label: "Apiary label",
  north: (slots: { readonly degrees: number }) =>
    `${Math.abs(slots.degrees)}° ${slots.degrees < 0 ? "south" : "north"}`,
  noLatitude: "no latitude",
  metres: (slots: { readonly metres: number }) => `${slots.metres} m`,
  openCase: "Open a case here",
  coloniesHead: "Colonies",
  noColonies: "No colonies on record. Say how many stand here; each gets a code.",
  addColonies: "How many more stand here?",
  add: "Register",
  regionHead: "What lives in the region",
  noRegion: "Not described. The ranking takes the usual: varroa here, tracheal mites not known, no pests of elsewhere.",
  regionSays: (told: RegionTold & { readonly source: string }) =>
    `${capital(regionSays(told))}. Source: ${told.source}.`,
  tellRegion: "Describe it",
  changeRegion: "Change it",
  keepRegion: "Keep this",
  pest: (slots: { readonly name: keyof RegionTold }) => capital(regionOf[slots.name]),
  regionStates,
  regionSourceHint: "The authority’s list, a survey, or who says so and when.",
  weatherHead: "Weather of an ordinary year",
  weatherHint:
    "Twelve means of day and night together, from the nearest station or your own. The plan needs them to find warm enough days.",
  noWeather: "No weather on record. Type twelve monthly means.",
  weatherSays: (slots: { readonly coldest: string; readonly warmest: string; readonly source: string }) =>
    `Coldest month ${slots.coldest}, warmest ${slots.warmest}. Source: ${slots.source}.`,
  chart: "Mean temperature of each month",
  month: (slots: { readonly month: number }) => monthNames[slots.month - 1] ?? "",
  monthShort: (slots: { readonly month: number }) => (monthNames[slots.month - 1] ?? "").slice(0, 3),
  source: "Source",
  sourceHint: "Whose figures, and of which years.",
  station: "Station",
  keepWeather: "Keep these means",
  changeWeather: "Type other means",
  flowsHead: "Nectar flows of an ordinary year",
  noFlows: "No flows on record. The plan then cannot keep treatments away from honey.",
  flowName: "What flowers",
  from: "From",
  to: "To",
  addFlow: "Add the flow",
  supersHead: "Honey supers",
  noSupers: "No supers on record. Say when they go on and come off.",
  on: "On",
  off: "Off",
  offHint: "Leave empty while they are on.",
  addSupers: "Add",
  treatmentsHead: "What was put into the hives",
  noTreatments: "No treatments on record.",
  ingredient: "Active ingredient",
  ingredientHint: "Such as menthol, formic acid, thymol. Never a brand.",
  amount: "Amount a colony",
  amountSays: (slots: { readonly amount: string; readonly unit: string }) => `${slots.amount} ${slots.unit} a colony`,
  inColonies: (slots: { readonly colonies: readonly string[] }) => `in ${list(slots.colonies)}`,
  addTreatment: "Add the treatment",
  span: (slots: { readonly from: string; readonly to: string | null }) =>
    slots.to === null ? `since ${day(slots.from)}` : `${day(slots.from)} to ${day(slots.to)}`,
  spanInYear: (slots: { readonly from: string; readonly to: string }) =>
    `${dayAndMonth(slots.from)} to ${dayAndMonth(slots.to)}`,
  inConflict: "two people differ",
  casesHead: "Cases here",
  noCases: "No case here yet.",
  unitsHead: "Units",
  celsius: "°C",
  fahrenheit: "°F",
  grams: "grams",
  ounces: "ounces",
  degrees: (slots: { readonly degrees: string; readonly unit: string }) => `${slots.degrees} ${slots.unit}`,
};
