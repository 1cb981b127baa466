/**
 * Wait, test first or act now: from what was counted and from the reader's own prices.
 *
 * @module views/model
 */
import type { Casebook } from "../../../casebook/index.ts";
import { bench, decision } from "../../../reasoning/index.ts";
import {
  answered,
  blocked,
  type Day,
  type Estimate,
  type Problem,
  problem,
  type Result,
} from "../../../units/index.ts";
import { sentenceOf, type Words } from "../../words/index.ts";
import { colonyCode } from "../bench/worklist.ts";
import { type Fields, readForm } from "../form.ts";
import { specimensFound } from "../found/specimens.ts";
import { toldDissections } from "../found/told-dissections.ts";

/** A colony with a count that a choice can be reckoned from. */
export interface CountedColony {
  readonly id: string;
  readonly code: string;
  readonly positive: number;
  readonly examined: number;
  readonly estimate: Estimate;
  readonly isLimited: boolean;
}

/** A count of a colony with its day. */
interface DatedCount extends CountedColony {
  readonly on: Day;
}

/**
 * The newest count of each colony, read here or told; a sound one before a limited one of the same day, one read here
 * before one told.
 */
export function countedColonies(casebook: Casebook, caseId: string): readonly CountedColony[] {
  const newest = new Map<string, DatedCount>();
  for (const each of [...countsRead(casebook, caseId), ...countsTold(casebook, caseId)]) {
    const before = newest.get(each.id);
    const sounder = before?.on === each.on && before.isLimited && !each.isLimited;
    if (!before || each.on > before.on || sounder) newest.set(each.id, each);
  }
  return [...newest.values()].sort((one, other) => other.estimate.value - one.estimate.value);
}

const countsRead = (casebook: Casebook, caseId: string): readonly DatedCount[] =>
  specimensFound(casebook, caseId).flatMap(({ label, colony, takenOn, readings, estimate, isLimited }) => {
    const tally = readings[0]?.tally;
    if (!estimate || !tally) return [];
    const { positive, read: examined } = tally;
    return [{ id: label.colony, code: colony, positive, examined, estimate, isLimited, on: takenOn ?? "" }];
  });

/** Dissections that came from elsewhere, of a colony. */
function countsTold(casebook: Casebook, caseId: string): readonly DatedCount[] {
  return toldDissections(casebook.cases[caseId]).flatMap(({ colony, positive, examined, aliveWhenTaken, on }) => {
    const estimate = bench.prevalence({ positive, examined });
    if (!estimate.ok) return [];
    const code = colonyCode(casebook, caseId, colony);
    return [
      { id: colony, code, positive, examined, estimate: estimate.value, isLimited: aliveWhenTaken === false, on },
    ];
  });
}

/** What the reader says things are worth and what the test is. */
export interface Weighing {
  readonly prices: decision.Prices;
  readonly currency: string;
  readonly test: decision.BenchTest;
  /** Colony id, or `own` for a judgement without a count. */
  readonly about: string;
  readonly belief: decision.BetaBelief;
}

/** Prices, test and belief from the form; nothing has a default price. */
export function readWeighing(fields: Fields, colonies: readonly CountedColony[]): Result<Weighing> {
  const form = readForm(fields);
  const money = (name: string) => form.number(name, { min: 0, max: 1e7 });
  const about = form.text("about");
  const colony = colonies.find((each) => each.id === about);
  const believed = colony ? 0 : form.number("believed", { min: 0, max: 100 });
  const sure = colony ? 1 : form.number("sure", { min: 1, max: 10_000 });
  const share = Math.min(Math.max(believed / 100, 0.001), 0.999);
  const currency = form.text("currency");
  const prices = {
    colonyValue: money("colonyValue"),
    actCost: money("actCost"),
    testCost: money("testCost"),
    residualShare: form.number("residual", { min: 0, max: 100 }) / 100,
  };
  const test = {
    bees: form.number("bees", { min: 1, max: 1000, whole: true }),
    sensitivity: form.number("finds", { min: 1, max: 100 }) / 100,
    specificity: 1,
  };
  const read = form.result({
    prices,
    currency,
    test,
    about: colony?.id ?? "own",
    belief: colony
      ? decision.beliefFromCounts({ positive: colony.positive, examined: colony.examined })
      : { a: share * sure, b: (1 - share) * sure },
  });
  if (!read.ok || prices.colonyValue > 0) return read;
  return blocked(
    problem("field-out-of-range", "blocked", "colonyValue", {
      given: 0,
      slots: { given: 0, min: 0.01, max: 1e7, unit: currency },
    }),
  );
}

export interface StripPart {
  readonly from: number;
  readonly to: number;
  readonly best: decision.Action;
  readonly name: string;
  readonly range: string;
}

export interface ChoiceView {
  readonly best: decision.Action;
  readonly losses: readonly {
    readonly action: decision.Action;
    readonly name: string;
    readonly value: string;
    readonly note: string;
    readonly isBest: boolean;
  }[];
  readonly secondBy: number;
  readonly currency: string;
  readonly parts: readonly StripPart[];
  /** Right end of the strip, share infested. */
  readonly end: number;
  readonly here: {
    readonly value: number;
    readonly low: number;
    readonly high: number;
    readonly says: string;
    readonly aside: string;
    /** How the count enters the reckoning; null for a judgement. */
    readonly how: string | null;
  };
  readonly label: string;
  readonly flips: readonly string[];
  readonly actFrom: string;
  readonly readings: string;
  readonly notes: readonly string[];
  readonly table: {
    readonly columns: readonly string[];
    readonly rows: readonly (readonly (string | number)[])[];
  };
}

const actions: readonly decision.Action[] = ["wait", "test-first", "act-now"];
/** A difference below this share of the best loss is "by a little". Our choice of words, no source. */
const little = 0.1;

/** The choice weighed; blocked with `decision-withheld` for a sample with limits unless asked for anyway. */
export function choiceView(
  weighing: Weighing,
  asked: { readonly colonies: readonly CountedColony[]; readonly anyway: boolean; readonly words: Words },
): Result<ChoiceView> {
  const { colonies, anyway, words } = asked;
  const colony = colonies.find((each) => each.id === weighing.about);
  const compared = decision.compareActions({
    belief: weighing.belief,
    prices: weighing.prices,
    test: weighing.test,
    acceptance: colony?.isLimited ? "accepted-with-limits" : "accepted",
    decideAnyway: anyway,
  });
  if (!compared.ok) return compared;
  const view = describe(weighing, compared.value, {
    words,
    name: colony?.code ?? words.done.own,
    counted: colony ?? null,
    highest: Math.max(0, ...colonies.map((each) => each.estimate.high)),
    problems: compared.problems,
  });
  return answered(view, compared.problems);
}

function describe(
  { currency, test }: Weighing,
  compared: decision.ActionComparison,
  {
    words,
    name,
    counted,
    highest,
    problems,
  }: {
    readonly words: Words;
    readonly name: string;
    /** The colony whose count it is; null for a judgement. */
    readonly counted: CountedColony | null;
    readonly highest: number;
    readonly problems: readonly Problem[];
  },
): ChoiceView {
  const say = words.done;
  const value = { wait: compared.wait, "test-first": compared.testFirst, "act-now": compared.actNow };
  const others = actions.filter((action) => action !== compared.best).map((action) => compared.margins[action]);
  const secondBy = Math.min(...others);
  const isClose = secondBy < little * Math.max(value[compared.best], 1e-9);
  const { centre, range } = compared.here;
  // What was counted is shown as it stands in question 4; the losses are reckoned from the belief it leaves.
  const shown = counted?.estimate ?? { value: centre, low: range?.low ?? centre, high: range?.high ?? centre };
  const { value: at, low, high } = shown;
  const turns = compared.strip.slice(0, -1).map((part) => part.to);
  const end = Math.min(
    1,
    Math.max(0.5, Math.ceil(Math.max(high, highest, ...turns.filter((turn) => turn < 0.7)) * 10) / 10),
  );
  const parts = compared.strip
    .filter((part) => part.from < end)
    .map((part, index, all) => ({
      ...part,
      to: Math.min(part.to, end),
      name: say.choices[part.best],
      range:
        all.length === 1
          ? say.always
          : index === 0
            ? say.below({ to: part.to })
            : index === all.length - 1
              ? say.above({ from: part.from })
              : say.between(part),
    }));
  const here = say.here({ value: at });
  const aside = say.hereAside({ colony: name, low, high });
  return {
    best: compared.best,
    losses: actions.map((action) => ({
      action,
      name: say.choices[action],
      value: say.loss({ value: value[action] }),
      note:
        action === compared.best
          ? isClose
            ? say.leastBy
            : say.least
          : say.moreBy({ margin: compared.margins[action] }),
      isBest: action === compared.best,
    })),
    secondBy,
    currency,
    parts,
    end,
    here: {
      value: at,
      low,
      high,
      says: here,
      aside,
      how: counted ? say.hereHow({ bees: counted.examined, middle: centre, share: at }) : null,
    },
    label: say.stripLabel({
      parts: parts.map((part) => say.stripPart(part)).join(", "),
      here: `${here}, ${aside}`,
    }),
    flips: compared.flips.map((flip) =>
      say.flip({ input: flip.input, at: flip.at, up: flip.direction === "up", becomes: flip.becomes }),
    ),
    actFrom: compared.actFrom === null ? say.actNever : say.actFrom({ positives: compared.actFrom, bees: test.bees }),
    readings: say.readings(compared.readings),
    notes: problems.filter((each) => each.code !== "loss-readings-disagree").map((each) => sentenceOf(each, words)),
    table: {
      columns: [say.stripColumns.choice, say.stripColumns.from, say.stripColumns.to],
      rows: parts.map((part) => [part.name, 100 * part.from, 100 * part.to]),
    },
  };
}
