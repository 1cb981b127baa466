/** What the highs of its days say against an action: a vapour outside its window, a cluster opened in the cold. */
import { addDays, type Day, daysBetween, type Problem } from "../../../units/index.ts";
import type { Action } from "../actions.ts";
import type { Highs } from "../place.ts";
import { dynamicsProblem } from "../problems.ts";
import { formicWindow, vapourDays } from "./formic.ts";

/** How warm a run is, day by day. */
export interface Warmth {
  /** First day of the run. */
  readonly from: Day;
  readonly days: number;
  readonly highs: Highs;
  /** Formic acid does nothing on days with a lower high, Celsius. */
  readonly formicLeastCelsius: number;
}

/** On days with a lower high a cluster is left alone, Celsius: common practice, no source. */
export const openableFromCelsius = 13;

/** Warned of, at the action's first day; days after the run are not looked at. */
export function warmthTroubles(action: Action, field: string, warmth: Warmth): readonly Problem[] {
  const first = daysBetween(warmth.from, action.from);
  if (first >= warmth.days) return [];
  if (action.kind === "formic") return formicTroubles(first, `${field}.from`, warmth);
  if (action.kind !== "requeen" && action.kind !== "unite") return [];
  const high = warmth.highs.on(first);
  if (high >= openableFromCelsius) return [];
  return [
    dynamicsProblem("season-opened-in-cold", "warned", `${field}.from`, {
      ...{ action: action.kind, date: action.from, high, least: openableFromCelsius },
      highs: known(warmth),
    }),
  ];
}

const known = ({ highs }: Warmth) => (highs.method === "assumed" ? "assumed" : "known");

function formicTroubles(first: number, field: string, warmth: Warmth): readonly Problem[] {
  const { from, days, highs, formicLeastCelsius: least } = warmth;
  const { most } = formicWindow;
  const seen = vapourDays(first)
    .filter((elapsed) => elapsed < days)
    .map((elapsed) => ({ date: addDays(from, elapsed), high: highs.on(elapsed) }));
  const outside = (code: "season-formic-cold" | "season-formic-hot", bound: number, sign: 1 | -1) => {
    const there = seen.filter(({ high }) => sign * (high - bound) > 0);
    const [begun, last] = [there[0], there.at(-1)];
    if (begun === undefined || last === undefined) return [];
    const high = there.reduce((farthest, each) => (sign * (each.high - farthest) > 0 ? each.high : farthest), bound);
    return [
      dynamicsProblem(code, "warned", field, {
        ...{ date: begun.date, last: last.date, days: there.length, of: seen.length, high, bound },
        highs: known(warmth),
      }),
    ];
  };
  return [...outside("season-formic-cold", least, -1), ...outside("season-formic-hot", most, 1)];
}
