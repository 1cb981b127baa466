/** `skepsis experience`: what closed cases taught, how well past answers did, and how signs drift. */
import type { Casebook } from "../../casebook/index.ts";
import type { NotedChange } from "../../knowledge/index.ts";
import { changesFrom, type experience, problemLine } from "../../reasoning/index.ts";
import { answered, blocked, type Estimate, type Problem, problem, type Result } from "../../units/index.ts";
import {
  codesOf,
  experienceTold,
  questionUnder,
  type TrialOutcome,
  trialOf,
  withCode,
  withTerms,
} from "../model/index.ts";
import { problemSentence } from "../words/index.ts";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp, programmeFlag, programmeOf, valueFlag, wordsOf } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { withRecords } from "./records.ts";
import { cell, table } from "./table.ts";
import { readText } from "./verify-command.ts";

const flags = [
  programmeFlag,
  valueFlag(
    "changes",
    "JSON file with changes of the evidence to try: which past answers would they change? Nothing is written.",
  ),
];

export const experienceCommand: Command = {
  name: "experience",
  summary: "What closed cases of the records teach, how well answers did, how signs drift.",
  operand: null,
  flags,
  help: () =>
    handHelp(
      "experience: what closed cases of the records teach, how well answers did, how signs drift.",
      flags,
      "Only cases with a cause that a test, a laboratory or a named person confirmed count; the others\n" +
        "are named as refused. Counts are shown whether or not the programme's settings use them. With\n" +
        "--json the member question holds what differential --programme adds to a question.\n",
    ),
  run,
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const programme = programmeOf(given);
  if (typeof programme !== "string") return reportUnfit([programme], "experience", given.json, io);
  const states = await withRecords(programme, io, (store) => store.states());
  if (!states.ok) return reportUnfit(states.problems, "experience", given.json, io);
  const changes = await changesOf(given, io);
  if (!changes.ok) return reportUnfit(changes.problems, "experience", given.json, io);
  const casebook = states.value;
  const tried = changes.value === null ? null : trialAnswer(casebook, trialOf(casebook, { changes: changes.value }));
  if (tried !== null) {
    io.out(given.json ? `${JSON.stringify(tried)}\n` : trialForPeople(tried));
    return 0;
  }
  const answer = answerOf(casebook);
  io.out(given.json ? `${JSON.stringify(answer)}\n` : forPeople(answer));
  return 0;
}

/** The changes to try; null where none were given. */
async function changesOf(given: Given, io: Io): Promise<Result<readonly NotedChange[] | null>> {
  const file = wordsOf(given, "changes");
  if (file === null) return answered(null);
  const text = await readText(file, "--changes", io);
  if (!text.ok) return text;
  try {
    return changesFrom(JSON.parse(text.value));
  } catch (error) {
    const expected = `JSON; ${error instanceof Error ? error.message : String(error)}`;
    return blocked(problem("input-not-json", "blocked", "--changes", { given: file, expected }));
  }
}

function trialAnswer(casebook: Casebook, { answers, problems }: TrialOutcome) {
  const codes = codesOf(casebook);
  return {
    compared: answers.compared,
    changed: answers.changed.map((each) => ({ ...each, code: codes[each.case] ?? each.case })),
    notices: [...problems, ...answers.problems].map((each) => line(withCode(each, codes))),
  };
}

function trialForPeople({ compared, changed, notices }: ReturnType<typeof trialAnswer>): string {
  const said = ({ verdict, likeliest, posterior }: experience.AnswerInShort) =>
    `${verdict.condition ?? verdict.group ?? "cannot tell"}; ${likeliest} ${cell(posterior)}`;
  const rows = changed.map((each) => [`${each.code} ${each.colony ?? ""}`.trim(), said(each.before), said(each.after)]);
  return [
    `${changed.length} of ${compared} past answers would change.\n`,
    ...(rows.length > 0 ? [table(["case", "before", "after"], rows)] : []),
    ...(notices.length > 0 ? [notices.map(({ message }) => `- ${message}\n`).join("")] : []),
  ].join("\n");
}

const line = (each: Problem) => problemLine(each, problemSentence);

function answerOf(casebook: Casebook) {
  const { closed, inUse, values, score, drift, codes, problems } = experienceTold(casebook);
  const told = (each: Problem) => line(withTerms(withCode(each, codes), inUse.evidence));
  const { scored, scores, notScored, leftOut } = score;
  return {
    closed,
    learntFrom: inUse.experience.lessons.length,
    refused: inUse.experience.refused.map(told),
    settings: inUse.settings,
    values,
    score: {
      cases: scored.length,
      leftOut,
      ...(scores.ok ? { ...scores.value } : { withheld: scores.problems.map(told) }),
      list: scored,
      notScored: notScored.map(told),
    },
    drift: drift.map(({ finding, years, trend }) => ({
      finding,
      years,
      ...(trend.ok ? { trend: trend.value } : { withheld: trend.problems.map(told) }),
    })),
    question: questionUnder(casebook, inUse),
    notices: problems.map(told),
  };
}

type Answer = ReturnType<typeof answerOf>;

/** That healthy rates and priors are counted while nothing uses them; nothing where all are shown. */
function idleCounts(values: Answer["values"]): readonly string[] {
  const idle = values.filter(({ kind, inUse, start }) => kind !== "frequency" && inUse === start);
  const of = (kind: string) => idle.filter((row) => row.kind === kind).length;
  if (idle.length === 0) return [];
  return [
    `${of("healthy-rate")} healthy rates and ${of("prior")} priors are counted and not in use; --json lists them.\n`,
  ];
}

/** Rows of each kind shown to people; --json has them all. */
const shown = 12;

/** Values beside their start, those looked for most often first. */
function rowsShown(values: Answer["values"]): readonly string[] {
  if (values.length === 0) return [];
  const rows = values
    .toSorted((one, other) => other.looked - one.looked || other.present - one.present)
    .slice(0, shown)
    .map((row) => [row.kind, row.of, row.by, row.published, row.start, `${row.present} of ${row.looked}`, row.inUse]);
  const more = values.length > shown ? `${values.length - shown} more; --json lists them all.\n` : "";
  return [table(["kind", "of", "by", "published", "start", "seen", "inUse"], rows) + more];
}

const range = ({ value, low, high }: Estimate) => `${cell(value)} (${cell(low)} to ${cell(high)})`;

type Scored = Exclude<Answer["score"], { readonly withheld: unknown }>;

/** Scores with their limits, then what was stated against what came true. */
function scoreForPeople({ cases, leftOut, brier, logScore, topOne, topThree, clip, held, bins }: Scored) {
  const taught = leftOut ? ", each by what the others taught" : "";
  const clipped =
    held > 0 ? ` In ${held} the confirmed cause had been given less than ${clip}, which counts as that.` : "";
  return [
    `${cases} cases scored${taught}. Brier ${range(brier)}, logarithm ${range(logScore)}, first ${range(topOne)}, first three ${range(topThree)}.${clipped}\n`,
    table(
      ["pairs", "stated", "observed", "low", "high"],
      bins.map(({ n, meanStated, observed }) => [n, meanStated, observed.value, observed.low, observed.high]),
    ),
  ];
}

function forPeople({ closed, learntFrom, refused, values, score, drift, notices }: Answer): string {
  const trends = drift.flatMap((each) => ("trend" in each ? [{ finding: each.finding, ...each.trend }] : []));
  return [
    `${closed} closed, ${learntFrom} teach, ${refused.length} refused.\n${refused.map(({ message }) => `- ${message}\n`).join("")}`,
    ...["frequency", "healthy-rate", "prior"].flatMap((kind) =>
      // Frequencies are shown before anyone says yes; the rest, every finding and cause of it, once it is in use.
      rowsShown(values.filter((row) => row.kind === kind && (kind === "frequency" || row.inUse !== row.start))),
    ),
    ...idleCounts(values),
    ...("withheld" in score
      ? [`${(score.withheld ?? []).map(({ message }) => message).join(" ")}\n`]
      : scoreForPeople(score)),
    trends.length > 0
      ? table(
          ["finding", "z", "p", "adjusted"],
          trends.slice(0, shown).map(({ finding, z, pValue, adjusted }) => [finding, z, pValue, adjusted]),
        )
      : "Not enough cases for a trend of any finding.\n",
    ...(notices.length > 0 ? [notices.map(({ message }) => `- ${message}\n`).join("")] : []),
  ].join("\n");
}
