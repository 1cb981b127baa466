/** A season for people: a sentence first, then week by week; choices side by side on their last day. */
import type { dynamics } from "../../reasoning/index.ts";
import { settledSays } from "../model/index.ts";
import { seasonWords as say } from "../words/index.ts";
import { table } from "./table.ts";

type Day = dynamics.ForecastDay;
type Asked = Readonly<Record<string, unknown>>;

const plain = (text: string): string => text.replaceAll("**", "");
const ends = ({ q05, q25, q75, q95 }: dynamics.Range) => ({
  middle: { low: q25, high: q75 },
  wide: { low: q05, high: q95 },
});
const shareOf = ({ q05, q50, q95 }: dynamics.Range): string => say.middleAndRange({ middle: q50, low: q05, high: q95 });
const beesOf = ({ q05, q50, q95 }: dynamics.Range): string => say.beesRange({ middle: q50, low: q05, high: q95 });

/** Days between two rows of the table. */
const week = 7;

/** The forecast of one colony. */
export function seasonForPeople(
  { days, counts }: { readonly days: readonly Day[]; readonly counts: readonly dynamics.CountTaken[] },
  asked: Asked,
): string {
  const last = days.at(-1);
  if (last === undefined) return "";
  const actions = (Array.isArray(asked.actions) ? asked.actions : []) as readonly dynamics.Action[];
  const told = { ...ends(last.infestedShare), on: last.date };
  const counted = new Set(counts.map(({ date }) => date));
  const rows = days.filter(({ date }, at) => at % week === 0 || at === days.length - 1 || counted.has(date));
  return [
    `${plain(
      actions.length === 0
        ? say.answer({ ...told, afterDone: false })
        : say.answerOf({ ...told, name: say.choiceName({ actions: actions.map(say.actionWhen) }) }),
    )}\n`,
    table(
      [say.columns.date, say.columns.infested, say.choiceColumns.bees, say.columns.alive],
      rows.map(({ date, infestedShare, bees, survival }) => [
        date,
        shareOf(infestedShare),
        beesOf(bees),
        Math.round(100 * survival.mean),
      ]),
    ),
    ...(counts.length === 0 ? [] : [`${counts.map((count) => `- ${plain(say.countSays(count))}\n`).join("")}`]),
  ].join("\n");
}

/** Choices beside each other. */
export function choicesForPeople({ choices, settling }: Pick<dynamics.Choices, "choices" | "settling">): string {
  const columns = say.choiceColumns;
  const on = choices[0]?.at.at(-1)?.date ?? "";
  const best = new Map(settling?.best.map(({ name, chance }) => [name, chance] as const));
  const rows = choices.map(({ name, at }) => {
    const end = at.at(-1);
    return { name, infested: end === undefined ? "" : shareOf(end.infestedShare) };
  });
  return [
    table(
      [
        columns.choice,
        columns.infested({ on }),
        columns.difference,
        columns.bees,
        say.columns.alive,
        say.bestColumns.chance,
      ],
      choices.map(({ name, at, difference }, place) => {
        const end = at.at(-1);
        const less = difference?.at(-1)?.infestedShare;
        const chance = best.get(name);
        return [
          name,
          rows[place]?.infested,
          less === undefined ? "" : say.lessBy({ middle: -less.q50, low: -less.q95, high: -less.q05 }),
          end === undefined ? "" : beesOf(end.bees),
          end === undefined ? "" : Math.round(100 * end.survival.mean),
          chance === undefined ? "" : Math.round(100 * chance),
        ];
      }),
    ),
    ...(settling === null || choices.length < 2 ? [] : [`${plain(settledSays(settling, rows))}\n`]),
  ].join("\n");
}
