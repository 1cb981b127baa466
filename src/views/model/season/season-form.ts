/**
 * The form behind a forecast: what stands in it at first, and what it says when it is sent.
 *
 * @module views/model
 */
import { thresholds } from "../../../knowledge/index.ts";
import { dynamics } from "../../../reasoning/index.ts";
import { addDays, type Day, daysBetween, isDay, problem, type Result, yearOf } from "../../../units/index.ts";
import { type Fields, parseNumber, readForm } from "../form.ts";
import { type ColonySeason, usedCounts } from "./colony-season.ts";
import { doneFrom, startWith } from "./season-done.ts";
import { countLine, countsIn, type ReadLine, sizesIn } from "./season-lines.ts";

/** A season's question without its choices. */
export interface SeasonAsk
  extends Required<
    Pick<
      dynamics.ChoicesQuestion,
      | "site"
      | "start"
      | "actions"
      | "counts"
      | "sizes"
      | "until"
      | "decideOn"
      | "stockSusceptibility"
      | "line"
      | "moreBees"
      | "draws"
      | "seed"
    >
  > {}

/** Best guess before any count, bees in 100: the one the ranges were tried with; assumed, no source. */
export const usualShare = 8;
/** Draws behind the ranges. */
export const seasonDraws = 1000;
/** Fewest days that a forecast is worth looking at. */
const shortest = 120;

/** What stands in the fields at first: from the colony, or for today. */
export function seasonFields(colony: ColonySeason | null, today: Day): Fields {
  const counts = colony === null ? [] : usedCounts(colony);
  const start = startWith(colony?.done ?? [], addDays(counts[0]?.date ?? today, -1));
  const bees = dynamics.usualBees(colony?.site ?? {}, start);
  return {
    start,
    bees: bees.ok ? String(100 * Math.round(bees.value / 100)) : "",
    share: String(usualShare),
    brood: "usual",
    stock: "1",
    counts: counts.map(countLine).join("\n"),
    sizes: "",
    decideOn: today,
    until: endOfWinter(today, (colony?.site.latitude ?? 0) < 0),
    line: String(thresholds["tracheal-thirty"].figure.value),
    moreBees: "50",
    latitude: "",
    means: "",
  };
}

/** The last day of the winter to come, at least four months away. */
export function endOfWinter(today: Day, southern: boolean): Day {
  const end = southern ? "09-30" : "03-31";
  const years = [0, 1, 2].map((more) => `${yearOf(today) + more}-${end}`);
  return years.find((day) => daysBetween(today, day) >= shortest) ?? `${yearOf(today) + 1}-${end}`;
}

/** The question from the fields; place and what was done come from the colony where there is one. */
export function readSeason(fields: Fields, colony: ColonySeason | null): Result<SeasonAsk> {
  const form = readForm(fields);
  const start = form.day("start");
  const seenIn = <Seen>(field: "counts" | "sizes", read: (typed: string) => readonly ReadLine<Seen>[]) =>
    read(fields[field] ?? "").flatMap(({ line, given, seen }) => {
      if (seen !== null) return [seen];
      const code = field === "counts" ? "season-count-line-unread" : "season-size-line-unread";
      form.complain(problem(code, "blocked", field, { given, slots: { line, given } }));
      return [];
    });
  const counts = seenIn("counts", countsIn);
  const sizes = seenIn("sizes", sizesIn);
  const means = colony ? undefined : meansIn(fields.means ?? "");
  if (means === null)
    form.complain(
      problem("season-means-incomplete", "blocked", "means", {
        given: fields.means ?? "",
        slots: { found: numbersIn(fields.means ?? "").length },
      }),
    );
  const latitude = colony ? undefined : form.maybeNumber("latitude", { min: -90, max: 90, unit: "°" });
  return form.result({
    site: colony
      ? colony.site
      : {
          ...(means ? { monthlyMeanCelsius: means } : {}),
          ...(latitude === undefined ? {} : { latitude }),
        },
    start: {
      date: start,
      bees: form.number("bees", { min: dynamics.startBees.least, max: dynamics.startBees.most }),
      infestedShare: form.number("share", { min: 0, max: 100 }) / 100,
      brood: form.oneOf("brood", ["usual", "none"]),
    },
    stockSusceptibility: form.number("stock", { min: dynamics.stockRange.least, max: dynamics.stockRange.most }),
    actions: isDay(start) ? doneFrom(colony?.done ?? [], start).actions : [],
    counts,
    sizes,
    decideOn: form.day("decideOn"),
    until: form.day("until"),
    line: form.number("line", { min: 0, max: 100 }) / 100,
    moreBees: form.number("moreBees", { min: 1, max: dynamics.mostMoreBees, whole: true }),
    draws: seasonDraws,
    seed: 1,
  });
}

const numbersIn = (typed: string): readonly number[] =>
  typed.split(/[\s;]+|,\s+/).flatMap((each) => parseNumber(each) ?? []);

/** Undefined when nothing is typed, null when it is not twelve numbers. */
function meansIn(typed: string): readonly number[] | undefined | null {
  if (typed.trim() === "") return undefined;
  const parts = typed
    .trim()
    .split(/[\s;]+|,\s+/)
    .filter(Boolean);
  const numbers = numbersIn(typed);
  return parts.length === 12 && numbers.length === 12 ? numbers : null;
}
