/** What to do about a colony, compared: each choice on the same draws, beside doing nothing. */
import { answered, blocked, type Day, isDay, type Problem, type Result } from "../../../units/index.ts";
import { readyRun } from "../course.ts";
import { declineWarnings } from "../decline.ts";
import {
  assumedError,
  type CountTaken,
  countFaults,
  drawsFaults,
  type ForecastDay,
  type ForecastQuestion,
} from "../filter/forecast.ts";
import { cutFor, type Hearing, reckonInThreads, type Threads } from "../filter/in-threads.ts";
import { sizeFaults } from "../filter/sizes.ts";
import { type Cutting, cutHere, reckonHere, type Span, type Steps } from "../filter/steps.ts";
import { type Branch, branchSteps, type Learnt, seenOn, type Trunk, trunkSteps } from "./branch.ts";
import { choiceFaults, decisionDay, largeFaults } from "./faults.ts";
import { type Narrowing, narrowingBy } from "./more-bees.ts";
import { type Paired, pairedOn } from "./paired.ts";
import { choiceProblem } from "./problems.ts";
import { type Choice, type ChoicesQuestion, noAction } from "./question.ts";
import { daysFrom, rowOn, type Settling, settlingOf, usualMoreBees } from "./settling-days.ts";
import { meanOf, middleOf } from "./spread.ts";

/** What one choice leads to. */
export interface ChoiceOutcome {
  readonly name: string;
  /** The days asked for, the last day of all at the end. */
  readonly at: readonly ForecastDay[];
  /** Beside doing nothing, on the same days; null for doing nothing itself. */
  readonly difference: readonly Paired[] | null;
  /** What a further count on the day of the choice would narrow. */
  readonly moreBees: Narrowing;
  /** Mornings from the choice on; empty unless asked for. */
  readonly days: readonly ForecastDay[];
}

export interface Choices {
  readonly decideOn: Day;
  /** Mornings up to the choice, the same for all; empty unless asked for. */
  readonly past: readonly ForecastDay[];
  readonly counts: readonly CountTaken[];
  /** Doing nothing first, then as asked. */
  readonly choices: readonly ChoiceOutcome[];
  readonly settling: Settling | null;
  readonly learnt: Learnt;
}

/** Told on the way. */
export interface Heard {
  readonly past?: (past: readonly ForecastDay[], counts: readonly CountTaken[]) => void;
  /** Each choice as soon as it is reckoned: what a stopped run keeps. */
  readonly choice?: (outcome: ChoiceOutcome) => void;
  /** What earlier questions made, by key: the same key stands for the same question, so it saves time alone. */
  readonly kept?: Kept;
}

/** What is kept between questions. */
export interface Kept {
  readonly get: (key: string) => unknown;
  readonly set: (key: string, made: unknown) => unknown;
}

/** Days between the mornings that are told of past and choices; null for none but the days asked for. */
export interface Telling {
  readonly every: number | null;
}

/** Fewer draws' worth after a further count make its ranges rough. Judgement. */
const thinBelow = 50;

/**
 * Compares choices for a colony that was held to its counts.
 *
 * Model: that of `colonyForecast`. The draws are run once to the day of the choice; each choice then goes on from the
 * same draws with the same noise (common random numbers), so that a difference between two choices is the action's and
 * not chance's. The list of choices changes none of them.
 *
 * Not for choices that the model does not know, nor for telling which choice is lawful: label, local codes and the
 * competent authority come first. Survival rests on little.
 *
 * Blocked for a question that cannot be, by the field of the choice. Warned when the colony is likely lost whatever is
 * done, and when a further count would leave few draws.
 */
export const compareChoices = (
  question: ChoicesQuestion,
  telling: Telling,
  { progress, ...heard }: Heard & { readonly progress?: (share: number) => void } = {},
): Result<Choices> => reckonHere(choiceSteps(question, telling, heard, cutHere(question)), progress);

/**
 * The same over threads, to the byte; null when it was stopped on the way: what was heard until then holds.
 *
 * @throws what a thread throws
 */
export const compareInThreads = (
  question: ChoicesQuestion,
  telling: Telling,
  threads: Threads,
  { tell, isStopped, ...heard }: Heard & Hearing = {},
): Promise<Result<Choices> | null> =>
  reckonInThreads(choiceSteps(question, telling, heard, cutFor(threads)), threads, {
    ...(tell === undefined ? {} : { tell }),
    ...(isStopped === undefined ? {} : { isStopped }),
  });

/** The steps of a comparison: those to the day of the choice, then those of each choice. */
export function* choiceSteps(
  question: ChoicesQuestion,
  { every }: Telling,
  heard: Heard,
  cutting: Cutting,
): Steps<Result<Choices>> {
  const faults = faultsOf(question);
  if (faults.length > 0) return blocked(...faults);
  const decideOn = decisionDay(question);
  const all: readonly Choice[] = [{ name: noAction, actions: [] }, ...question.choices];
  const parts = all.length + 1;
  const alone = withoutChoices(question);
  const colony = JSON.stringify([alone, decideOn, every]);
  const spanOf = (part: number): Span => [part / parts, (part + 1) / parts];
  const trunk = yield* recalled(heard.kept, colony, () =>
    trunkSteps(alone, { decideOn, every, span: spanOf(0) }, cutting),
  );
  if (!trunk.ok) return trunk;
  heard.past?.(trunk.value.past, trunk.value.counts);

  const dates = [...new Set([...(question.dates ?? []), question.until])].sort();
  // A further count could fall on any day, and is of a colony to which nothing was done; its loss is told to the week.
  const daysOfNothing =
    question.line === undefined
      ? [...daysFrom(decideOn, question.until, 7), ...dates]
      : daysFrom(decideOn, question.until, 1);
  const outcomes: ChoiceOutcome[] = [];
  const ends: Float64Array[] = [];
  const notes: Problem[] = [];
  let without: Branch | null = null;
  for (const [place, choice] of all.entries()) {
    const keep = place === 0 ? daysOfNothing : dates;
    const branch = yield* recalled(heard.kept, JSON.stringify([colony, choice.actions, keep]), () =>
      branchSteps(trunk.value, choice.actions, { keep: new Set(keep), every, span: spanOf(place + 1) }, cutting),
    );
    if (!branch.ok) return blocked(...branch.problems.map((each) => inChoice(each, question, place - 1)));
    notes.push(...ownNotes(branch.value.problems, question, place - 1));
    without ??= branch.value;
    // A copy: the row alone would keep all mornings of the choice.
    ends.push(rowOn(branch.value, question.until).infestedShare.slice());
    const outcome = outcomeOf(choice.name, question, { decideOn, branch: branch.value, without, dates });
    outcomes.push(outcome);
    heard.choice?.(outcome);
  }
  const nothing = outcomes[0] as ChoiceOutcome;
  return answered(
    {
      ...{
        decideOn,
        past: trunk.value.past,
        counts: trunk.value.counts,
        choices: outcomes,
        learnt: trunk.value.learnt,
      },
      settling:
        question.line === undefined
          ? null
          : settlingOf(question, { line: question.line, decideOn, without: without as Branch, ends }),
    },
    [
      ...once([...trunk.problems, ...notes]),
      ...declineOf(trunk.value, without as Branch),
      ...thinOf(question, nothing),
    ],
  );
}

/** What is kept under this key, or made and kept. */
function* recalled<Made>(kept: Kept | undefined, key: string, make: () => Steps<Made>): Steps<Made> {
  const known = kept?.get(key);
  if (known !== undefined) return known as Made;
  const made = yield* make();
  kept?.set(key, made);
  return made;
}

/** The forecast behind all choices: what two comparisons of one colony share. */
function withoutChoices(question: ChoicesQuestion): ForecastQuestion {
  const { choices: _, decideOn: _on, dates: _at, line: _line, sure: _sure, moreBees: _more, ...alone } = question;
  return alone;
}

/** The forecast's own faults first: those of choices need sound days. */
function faultsOf(question: ChoicesQuestion): readonly Problem[] {
  const ready = readyRun(question);
  if (!ready.ok) return ready.problems;
  const { sizes = [], start } = question;
  const until = decisionDay(question);
  const own = [
    ...drawsFaults(question),
    ...countFaults(question),
    // Nothing is seen after the choice: as a count, it would have been seen under one choice and not under another.
    ...(isDay(until) ? sizeFaults(sizes, { from: start.date, until }) : []),
  ];
  if (own.length > 0) return own;
  const chosen = choiceFaults(question);
  if (chosen.length > 0) return chosen;
  const larger = largeFaults(question, ready.value);
  if (larger.length > 0) return larger;
  // A choice that cannot be is told before anything is reckoned; of those too large the largest alone.
  const large: Problem[] = [];
  const unfit = question.choices.flatMap(({ actions }, index) => {
    const run = readyRun({ ...question, actions: [...question.actions, ...actions] });
    if (run.ok) large.push(...largeFaults(question, run.value));
    return run.ok ? [] : run.problems.map((each) => inChoice(each, question, index));
  });
  const most = ({ slots }: Problem) => Number(slots.most);
  return unfit.length > 0 ? once(unfit) : large.sort((one, other) => most(one) - most(other)).slice(0, 1);
}

/** A problem of the joined list of actions, told at the action of its choice. */
function inChoice(each: Problem, { actions }: ChoicesQuestion, index: number): Problem {
  const found = /^actions\[(\d+)\](.*)$/.exec(each.field ?? "");
  if (!found || index < 0) return each;
  const place = Number(found[1]) - actions.length;
  return place < 0 ? each : { ...each, field: `choices[${index}].actions[${place}]${found[2]}` };
}

/** Only what is the choice's own, and that its vapour hangs on assumed highs: the rest was told with the trunk. */
const ownNotes = (problems: readonly Problem[], question: ChoicesQuestion, index: number): readonly Problem[] =>
  problems
    .map((each) => inChoice(each, question, index))
    .filter(({ code, field }) => (field ?? "").startsWith("choices[") || code === "season-highs-assumed");

/** What is told in the same words at the same field, by the trunk or by another choice, is told once. */
function once(problems: readonly Problem[]): readonly Problem[] {
  const texts = problems.map((each) => JSON.stringify(each));
  return problems.filter((_, index) => texts.indexOf(texts[index] as string) === index);
}

function outcomeOf(
  name: string,
  { error = assumedError, moreBees = usualMoreBees, until }: ChoicesQuestion,
  of: { readonly decideOn: Day; readonly branch: Branch; readonly without: Branch; readonly dates: readonly Day[] },
): ChoiceOutcome {
  const { decideOn, branch, without, dates } = of;
  const now = rowOn(without, decideOn).infestedShare;
  return {
    name,
    at: dates.map((date) => seenOn(date, rowOn(branch, date))),
    difference:
      branch === without ? null : dates.map((date) => pairedOn(date, rowOn(branch, date), rowOn(without, date))),
    moreBees: narrowingBy(now, rowOn(branch, until).infestedShare, moreBees, error),
    days: branch.days,
  };
}

/** Doing nothing, the colony is likely lost or dwindles: told by the mean of survival and the middle of bees. */
function declineOf({ question, decideOn, alive }: Trunk, { kept }: Branch): readonly Problem[] {
  const ahead = [...kept]
    .filter(([date]) => date > decideOn)
    .sort(([one], [other]) => one.localeCompare(other))
    .map(([date, { bees, survival }]) => ({ date, bees: middleOf(bees), survival: meanOf(survival) }));
  return declineWarnings([...alive, ...ahead], question.start.bees);
}

function thinOf({ draws, moreBees = usualMoreBees }: ChoicesQuestion, outcome: ChoiceOutcome): readonly Problem[] {
  const worth = outcome.moreBees.effectiveShare * draws;
  return worth < thinBelow
    ? [choiceProblem("season-draws-thin", "warned", "draws", { worth: Math.round(worth), bees: moreBees })]
    : [];
}
