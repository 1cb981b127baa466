/** A command for each verb of the reasoning: flags and JSON in, a table or JSON out. */
import { type Evidence, publishedEvidence } from "../../knowledge/index.ts";
import {
  differential,
  type dynamics,
  evidenceFrom,
  type OwnEvidence,
  type Reply,
  replyBody,
  type Verb,
} from "../../reasoning/index.ts";
import { jsonTrouble, type Problem, problem } from "../../units/index.ts";
import { withTerms } from "../model/index.ts";
import { openSeasonThreads, usefulThreads } from "../service/index.ts";
import { problemSentence, seasonWords } from "../words/index.ts";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { comparisonForPeople } from "./compare-table.ts";
import { differentialForPeople } from "./differential-table.ts";
import { flagsOf, onlyInJson, withFlag } from "./flags.ts";
import { verbHelp } from "./help.ts";
import type { Io } from "./io.ts";
import { idLists } from "./lists.ts";
import { ownEvidenceFlag, takesEvidence, withOwnEvidence } from "./own-evidence.ts";
import { choicesForPeople, daysTable, seasonForPeople } from "./season-table.ts";
import { answerForPeople, cell, withNotices } from "./table.ts";

export function reasoningCommand(verb: Verb): Command {
  const more = takesEvidence(verb) ? [ownEvidenceFlag] : [];
  return {
    name: verb.name,
    summary: verb.summary,
    operand: null,
    flags: [...flagsOf(verb.inputShape), ...more],
    onlyInJson: onlyInJson(verb.inputShape).map(([name]) => name),
    help: () => verbHelp(verb, idLists(verb.name), more),
    run: (given, io) => answer(verb, given, io),
  };
}

async function answer(verb: Verb, given: Given, io: Io): Promise<ExitStatus> {
  const input = await readInputFile(given, io);
  if (!("value" in input)) return reportUnfit([input.problem], verb.name, given.json, io);
  const asked = given.flags
    .filter(({ flag }) => flag !== ownEvidenceFlag)
    .reduce<unknown>((before, { flag, words }) => withFlag(asObject(before), flag, words), input.value);
  const question = takesEvidence(verb) && isObject(asked) ? await withOwnEvidence(asked, given, io) : null;
  if (question?.ok === false) return reportUnfit(question.problems, verb.name, given.json, io);
  const threaded = await overThreads(verb, question?.value ?? asked, io);
  if (threaded?.kind === "stopped") return tellStopped(threaded, asObject(question?.value ?? asked), given, io);
  const reply = threaded ?? verb.ask(question?.value ?? asked);
  if (reply.kind === "unfit") return reportUnfit(reply.problems, verb.name, given.json, io);
  const evidence = evidenceOfQuestion(question?.value ?? asked);
  const body = replyBody({ ...reply, problems: [...(question?.problems ?? []), ...reply.problems] }, (each) =>
    problemSentence(withTerms(each, evidence)),
  );
  io.out(
    given.json
      ? `${JSON.stringify(body)}\n`
      : forPeople(verb.name, body, {
          evidence,
          asked: asObject(question?.value ?? asked),
          isRefused: reply.kind === "refused",
        }),
  );
  return 0;
}

/** Draws from which a season is worth its threads: fewer are reckoned before these have started. Judgement. */
const drawsForThreads = 5000;

/** What stood when the person ended it: days of a forecast, or choices. */
interface Stopped {
  readonly kind: "stopped";
  readonly days: readonly dynamics.ForecastDay[];
  readonly choices: readonly dynamics.ChoiceOutcome[];
}

/** The reply of a verb that is reckoned over threads, or what stood when it was ended; null for any other, and for little work. */
async function overThreads(verb: Verb, asked: unknown, io: Io): Promise<Reply | Stopped | null> {
  const { draws } = asObject(asked);
  const count = usefulThreads();
  if (count < 2 || typeof draws !== "number" || draws < drawsForThreads) return null;
  const threads = openSeasonThreads(count);
  const progress = progressOn(io);
  let [isStopped, days] = [false, [] as readonly dynamics.ForecastDay[]];
  const choices: dynamics.ChoiceOutcome[] = [];
  const forget = io.whenInterrupted(() => {
    isStopped = true;
  });
  const reply = await threads.ask(verb.name, asked, {
    tell: progress.tell,
    isStopped: () => isStopped,
    tellDays: (told) => {
      days = told;
    },
    choice: (outcome) => choices.push(outcome),
  });
  forget();
  progress.done();
  await threads.close();
  return reply === null && isStopped ? { kind: "stopped", days, choices } : reply;
}

/** Tells what stood when it was ended, marked as unfinished. */
function tellStopped({ days, choices }: Stopped, asked: Asked, { json }: Given, io: Io): ExitStatus {
  const isForecast = !Array.isArray(asked.choices);
  if (json) {
    const own = choices.map(({ name, at, difference, moreBees }) => ({ name, at, difference, moreBees }));
    io.out(`${JSON.stringify({ unfinished: true, ...(isForecast ? { days } : { choices: own }) })}\n`);
    return 1;
  }
  const all = isForecast ? 1 : (asked.choices as readonly unknown[]).length + 1;
  const last = days.at(-1);
  if (isForecast ? last === undefined : choices.length === 0) io.err(`${seasonWords.stoppedEarly}\n`);
  else if (last !== undefined && isForecast)
    io.out(`${seasonWords.stoppedDays({ to: last.date })}\n\n${daysTable(days)}`);
  else io.out(`${seasonWords.stopped({ reckoned: choices.length, all })}\n\n${choicesForPeople({ choices }, asked)}`);
  return 1;
}

/** Tells on a terminal how far it is, in place; elsewhere nothing. */
function progressOn(io: Io) {
  let told = -1;
  return {
    tell: (share: number): void => {
      const percent = Math.floor(100 * share);
      if (!io.isTerminal || percent === told) return;
      told = percent;
      io.err(`\r${seasonWords.working({ share })}`);
    },
    done: (): void => {
      if (told >= 0) io.err("\n");
    },
  };
}

/** A refusal by the verb's rules comes first, in words. A verb's own list of refused days stays a table. */
function forPeople(
  verb: string,
  body: object,
  {
    evidence,
    asked,
    isRefused,
  }: {
    readonly evidence: Evidence;
    readonly asked: Readonly<Record<string, unknown>>;
    readonly isRefused: boolean;
  },
): string {
  const { refused, ...rest } = body as Readonly<Record<string, unknown>>;
  if (verb === "differential")
    return withNotices(
      differentialForPeople(
        body as Parameters<typeof differentialForPeople>[0],
        { findings: {}, ...asked } as unknown as differential.AnyInput,
      ),
      body,
    );
  if (verb === "season" && !isRefused)
    return withNotices(seasonForPeople(body as Parameters<typeof seasonForPeople>[0], asked), body);
  if (verb === "season-choices" && !isRefused)
    return withNotices(choicesForPeople(body as Parameters<typeof choicesForPeople>[0], asked), body);
  if (verb === "compare-causes")
    return withNotices(
      comparisonForPeople(body as Parameters<typeof comparisonForPeople>[0], evidence, isToReport(asked, evidence)),
      body,
    );
  if (!isRefused || !Array.isArray(refused)) return answerForPeople(body as Readonly<Record<string, unknown>>);
  return refused.map(({ reason }) => `Refused: ${cell(reason)}\n`).join("") + answerForPeople(rest);
}

/** Whether what two causes are compared for must be reported first. */
function isToReport(asked: Readonly<Record<string, unknown>>, evidence: Evidence): boolean {
  const { first: _, second: __, evidence: ___, ...given } = asked;
  const reply = differential.differential({ ...given, draws: 40 } as unknown as differential.AnyInput, evidence);
  return reply.ok && reply.value.mustNotMiss.some(({ report }) => report);
}

/** The evidence that a question brings along, for its names; the published one where it brings none that can be read. */
function evidenceOfQuestion(asked: unknown): Evidence {
  if (!isObject(asked) || !isObject(asked.evidence)) return publishedEvidence;
  try {
    return evidenceFrom(asked.evidence as OwnEvidence).evidence;
  } catch {
    return publishedEvidence;
  }
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);
type Asked = Readonly<Record<string, unknown>>;
const asObject = (value: unknown): Asked => (isObject(value) ? value : {});

type Input = { readonly value: unknown } | { readonly problem: Problem };

/** What `--input` names; an empty object when only flags were given. */
async function readInputFile({ input }: Given, io: Io): Promise<Input> {
  if (input === null) return { value: {} };
  let text: string;
  try {
    text = await io.read(input);
  } catch {
    return {
      problem: problem("input-unreadable", "blocked", "--input", {
        given: input,
        expected: "a file that can be read, or -",
      }),
    };
  }
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    const where = error instanceof Error ? error.message : String(error);
    return { problem: problem("input-not-json", "blocked", "--input", { given: input, expected: `JSON; ${where}` }) };
  }
  const expected = jsonTrouble(value);
  if (expected === null) return { value };
  return { problem: problem("field-unfit", "blocked", "--input", { given: input, expected }) };
}
