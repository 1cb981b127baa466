/** The differential for people: the verdict, what must not be missed, then causes by chance with their reasons. */
import { conditions, findings, isConditionId, isFindingId, isTestId, tests } from "../../knowledge/index.ts";
import type { differential, nextStep } from "../../reasoning/index.ts";
import { isAboutOthers, mitesSeen, provenByDissection } from "../model/index.ts";
import { wordsOf } from "../words/index.ts";
import { cell, table } from "./table.ts";

const words = wordsOf("en");

type Answer = differential.DifferentialAnswer & { readonly next: readonly nextStep.NextStep[] };

/** Causes less likely than this are counted, not listed. */
const listedFrom = 0.01;

/** Steps shown; --json has them all. */
const stepsShown = 8;

/** `asked` holds what was put to it: what a dissection proves is said before what is judged. */
export function differentialForPeople(answer: Answer, asked: differential.AnyInput | null = null): string {
  const mites = asked === null ? null : mitesSeen(asked);
  const shown = answer.conditions.filter(({ posterior }) => posterior >= listedFrom);
  const rows = shown.map(({ id, posterior, low, high, for: reasons, against }) => [
    termOf(id),
    percent(posterior),
    `${percent(low)} to ${percent(high)}`,
    reasonsOf(reasons, 1, asked),
    reasonsOf(against, -1, asked),
  ]);
  const rest = answer.conditions.length - shown.length;
  const stopped = answer.mustNotMiss.some(({ report }) => report);
  return [
    ...(mites ? [`${words.could.proven({ term: termOf(provenByDissection), ...mites }).replaceAll("**", "")}\n`] : []),
    // What is proven is the verdict, unless something else is named beside it.
    ...(mites && !isAboutOthers(answer) ? [] : [`${verdictOf(answer)}\n`]),
    ...(answer.mustNotMiss.length > 0 ? [`Must not be missed\n${answer.mustNotMiss.map(noticeOf).join("")}`] : []),
    table(["cause", "chance", "range", "for", "against"], rows) +
      (rest > 0 ? `${rest} more below ${percent(listedFrom)}; --json lists them all.\n` : ""),
    table(
      ["group", "chance", "range"],
      answer.groups.map(({ id, posterior, low, high }) => [
        id.replaceAll("_", " "),
        percent(posterior),
        `${percent(low)} to ${percent(high)}`,
      ]),
    ),
    stopped
      ? words.could.stepsWait
      : `Next\n${table(
          ["step", "kind", "bits", "minutes", "costClass", "because"],
          answer.next
            .slice(0, stepsShown)
            .map(({ step, kind, bits, minutes, cost, because }) => [
              termOf(step),
              kind,
              Number(bits.toPrecision(2)),
              minutes,
              cost,
              because.replaceAll("-", " "),
            ]),
        )}`,
    `Nothing wrong: ${percent(answer.nothingWrong)}. Knowledge ${answer.knowledge.version}; ${percent(answer.knowledge.judgedShare)} of what was used is experts' judgement.\n`,
  ].join("\n");
}

function verdictOf({ verdict, mustNotMiss }: Answer): string {
  const because = verdict.because.replaceAll("-", " ");
  const isToReport = mustNotMiss.some(({ report }) => report);
  if (verdict.kind === "cannot-tell") return isToReport ? "Report first." : `Cannot tell yet (${because}).`;
  const name = verdict.condition ? termOf(verdict.condition) : (verdict.group ?? "").replaceAll("_", " ");
  return `${isToReport ? "Report first. " : ""}Leading: ${name} (${because}).`;
}

const noticeOf = ({ condition, act, doNot, report }: Answer["mustNotMiss"][number]): string =>
  `- ${termOf(condition)}: ${act}${doNot.map((each) => ` ${each}`).join("")}${report ? " Report it." : ""}\n`;

/** The three strongest reasons in this direction, by name. */
function reasonsOf(
  reasons: Answer["conditions"][number]["for"],
  sign: 1 | -1,
  asked: differential.AnyInput | null,
): string {
  const strongest = reasons.filter(({ bits }) => bits * sign >= 0.05).slice(0, 3);
  const told = (id: string): string =>
    asked?.findings[id] === "absent" ? words.could.absentReason({ term: termOf(id) }) : termOf(id);
  return strongest.map(({ finding }) => told(finding)).join("; ");
}

function termOf(id: string): string {
  if (isConditionId(id)) return conditions[id].term;
  if (isFindingId(id)) return findings[id].term;
  return isTestId(id) ? tests[id].term : id;
}

/** Two digits at most; below one in a thousand is said so. */
const percent = (share: number): string =>
  share > 0 && share < 0.001 ? "under 0.1 %" : `${cell(Number((100 * share).toPrecision(2)))} %`;
