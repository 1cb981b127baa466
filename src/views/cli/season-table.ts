/** A season for people: the sentence first, then a row a week; choices beside each other. */
import type { dynamics } from "../../reasoning/index.ts";
import { choiceRow, endsOf, settledSays, weekly, wideOf } from "../model/index.ts";
import { seasonWords } from "../words/index.ts";
import { answerForPeople, table } from "./table.ts";

const say = seasonWords;
const plain = (text: string): string => `${text.replaceAll("**", "")}\n`;

/** Headings of tables begin small here. */
const headed = (name: string): string => name.replace(/^./, (first) => first.toLowerCase());

/** What was asked, as far as the words need it. */
type Asked = Readonly<Record<string, unknown>>;
const hasActions = ({ actions }: Asked): boolean => Array.isArray(actions) && actions.length > 0;

type SeasonBody = { readonly days: readonly dynamics.ForecastDay[] } & Readonly<Record<string, unknown>>;

/** A whole forecast. */
export function seasonForPeople({ days, notices: _, ...rest }: SeasonBody, asked: Asked): string {
  const end = days.at(-1);
  if (end === undefined) return answerForPeople(rest);
  return [
    plain(say.answer({ ...endsOf(end.infestedShare), on: end.date, afterDone: hasActions(asked) })) +
      plain(say.survival({ on: end.date, without: wideOf(end.survival), choice: null })),
    daysTable(days),
    answerForPeople(rest),
  ].join("\n");
}

/** A row a week, the last day at the end. */
export function daysTable(days: readonly dynamics.ForecastDay[]): string {
  const { date, q05, q25, q50, q75, q95, bees, aliveFrom, aliveTo } = say.columns;
  return table([date, q05, q25, q50, q75, q95, bees, aliveFrom, aliveTo].map(headed), weekly(days));
}

type Outcome = Pick<dynamics.ChoiceOutcome, "name" | "at" | "difference">;

/** Choices beside each other, doing nothing first; `settling` where it is told. */
export function choicesForPeople(
  {
    choices,
    settling = null,
    counts,
  }: {
    readonly choices: readonly Outcome[];
    readonly settling?: dynamics.Settling | null;
    readonly counts?: unknown;
  },
  asked: Asked,
): string {
  const end = choices[0]?.at.at(-1);
  if (end === undefined) return "";
  const afterDone = hasActions(asked);
  const rows = choices.map((each, place) => choiceRow(each, place === 0 ? say.without(afterDone) : each.name));
  const columns = say.choiceColumns;
  return [
    plain(say.answer({ ...endsOf(end.infestedShare), on: end.date, afterDone })),
    table(
      [
        ...[columns.choice, columns.infested({ on: end.date }), columns.difference],
        ...[columns.better, columns.bees, columns.alive],
      ].map(headed),
      rows.map(({ name, infested, difference, better, bees, alive }) => [
        ...[name, infested, difference, better, bees, alive],
      ]),
    ),
    ...(settling === null || choices.length < 2 ? [] : [plain(settledSays(settling, rows))]),
    ...(counts === undefined ? [] : [answerForPeople({ counts })]),
  ].join("\n");
}
