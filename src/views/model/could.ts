/**
 * Question 2: the verdict as a sentence, what must not be missed, and the ranked causes with their ranges and reasons.
 *
 * @module views/model
 */
import {
  type ConditionId,
  coexistence,
  conditions,
  type Evidence,
  isConditionId,
  isTestId,
  publishedEvidence,
  type Role,
} from "../../knowledge/index.ts";
import type { differential } from "../../reasoning/index.ts";
import type { Problem } from "../../units/index.ts";
import type { Words } from "../words/index.ts";
import {
  isAboutOthers,
  type MitesSeen,
  mitesSeen,
  provenByDissection,
  reportFirst,
  verdictSentence,
  worthShowing,
} from "./could-verdict.ts";
import { conditionTerm, stepTerm } from "./terms.ts";

type Answer = differential.AnyAnswer;
type Ranked = differential.RankedCondition<string, string>;
type Input = differential.AnyInput;

export interface ReasonView {
  /** Id of the finding or test. */
  readonly id: string;
  /** As it stands within a sentence. */
  readonly term: string;
  readonly bits: number;
  /** Ticks to draw, one for half a bit, at least one. */
  readonly ticks: number;
  /** It parts this cause from the ones ranked beside it. */
  readonly parts: boolean;
  /** A sign that was seen and speaks against this cause only because another one explains it. */
  readonly elsewhere: boolean;
}

export interface CauseView {
  readonly id: string;
  readonly term: string;
  readonly latin: string | null;
  readonly role: Role;
  /** Why it is shown although it stands lower, or what its chance does not say; null for the others. */
  readonly shownFor: string | null;
  readonly posterior: number;
  readonly low: number;
  readonly high: number;
  /** Twenty values, each 1 in 20 of how the answer could fall; null where only the range is known. */
  readonly dots: readonly number[] | null;
  readonly number: string;
  readonly range: string;
  readonly word: string;
  /** The count that proves it, in words; null while nothing does. */
  readonly proof: string | null;
  readonly for: readonly ReasonView[];
  readonly against: readonly ReasonView[];
  readonly and: string;
}

export interface NoticeView {
  readonly key: string;
  readonly condition: ConditionId;
  readonly why: string;
  readonly head: string;
  readonly act: string;
  readonly report: boolean;
}

export interface CouldView {
  readonly answer: string;
  readonly because: string;
  readonly notices: readonly NoticeView[];
  /** Likeliest first. */
  readonly causes: readonly CauseView[];
  /** Shown before "show all": the likeliest, then what signs speak for and signs alone cannot name. */
  readonly first: readonly CauseView[];
  readonly moreAtMost: number;
  readonly nothingWrong: string;
  readonly judged: string;
  /** Words of the fixed scale that the shown causes use. */
  readonly scaleSays: string;
}

/** Causes shown at first: those of 1 in 10 or more, five at least, eight at most. */
const [fewest, most] = [5, 8];
/** A finding parts two causes when it moves one by a bit more than the other: doubles the odds between them. */
const partingBits = 1;
const ticksInBit = 2;
/** Draws of the doubt in the grades for a range that is shown as final. */
export const fullDraws = 400;
const reasonsShown = { for: 4, against: 3 } as const;

/** The view of an answer to `input`, whose ranges were drawn `draws` times. */
export function couldView(asked: {
  readonly answer: Answer;
  readonly input: Input;
  /** What the answer was reckoned with; the published evidence when left out. */
  readonly evidence?: Evidence;
  readonly draws: number;
  /** Twenty points of each condition; null where they are not reckoned yet. */
  readonly dots: Readonly<Record<string, readonly number[]>> | null;
  /** A stop stands for the apiary, whoever answered what it follows from. */
  readonly isStopped?: boolean;
  readonly words: Words;
}): CouldView {
  const { input, evidence = publishedEvidence, draws, dots, words } = asked;
  const answer = asked.isStopped ? reportFirst(asked.answer) : asked.answer;
  const ranked = answer.conditions;
  const mites = mitesSeen(input);
  const shown = Math.min(most, Math.max(fewest, ranked.filter((each) => each.posterior >= worthShowing).length));
  const causes = ranked.map((each, index) =>
    causeView({
      each,
      beside: neighbours(ranked, index),
      dots: dots?.[each.id] ?? null,
      input,
      mites,
      evidence,
      words,
    }),
  );
  const first = [
    ...causes.slice(0, shown),
    ...causes
      .slice(shown)
      .filter((each) => each.proof !== null || isOpenToSigns(each, input, evidence) || livesUnseen(each.id, input))
      .map((each) => (isOpenToSigns(each, input, evidence) ? { ...each, shownFor: words.could.signsAlone } : each)),
  ];
  return {
    answer: verdictSentence(answer, { words, mites, evidence }),
    because: mites && !isAboutOthers(answer) ? words.could.seenItself : words.could.because[answer.verdict.because],
    notices: answer.mustNotMiss.map((notice) => noticeView(notice, evidence, words)),
    causes,
    first,
    moreAtMost: ranked[shown]?.posterior ?? 0,
    nothingWrong: words.could.nothingWrong({ share: answer.nothingWrong }),
    judged: words.could.judged({ share: answer.knowledge.judgedShare, version: answer.knowledge.version, draws }),
    scaleSays: words.could.scaleSays({ words: [...new Set(first.map((cause) => cause.word))] }),
  };
}

/** What was assumed or left out that must be read with the answer, and not after it. */
export const isHeeded = ({ code, severity }: Problem): boolean => severity === "warned" || code === "mites-in-sister";

/** Whether signs speak for what only opened breathing tubes can show, and none was opened yet. */
const isOpenToSigns = ({ id, for: reasons }: CauseView, { findings, tests = [] }: Input, evidence: Evidence): boolean =>
  id === provenByDissection &&
  !tests.some(isDissection) &&
  reasons.some(
    ({ id: finding, bits }) =>
      findings[finding] === "present" && evidence.findings[finding]?.kind === "sign" && bits >= 1 / ticksInBit,
  );

const isDissection = ({ test }: differential.TestInput): boolean => test === "tracheal-dissection";

/** Whether it is what opened breathing tubes show, lives around, and no tube of this colony was opened. */
const livesUnseen = (id: string, { region, tests = [] }: Input): boolean =>
  id === provenByDissection && region?.acarapisWoodi === "found" && !tests.some(isDissection);

const neighbours = (ranked: readonly Ranked[], index: number): readonly Ranked[] =>
  [ranked[index - 1], ranked[index + 1]].filter((each) => each !== undefined);

interface Placed {
  readonly each: Ranked;
  readonly beside: readonly Ranked[];
  readonly dots: readonly number[] | null;
  readonly input: Input;
  readonly mites: MitesSeen | null;
  readonly evidence: Evidence;
  readonly words: Words;
}

function causeView({ each, beside, dots, input, mites, evidence, words }: Placed): CauseView {
  const say = words.could;
  const proof = mites && each.id === provenByDissection ? say.proof(mites) : null;
  const suppressed = (finding: string) => evidence.frequencies[each.id]?.[finding]?.suppresses === true;
  const view = (reason: differential.Reason<string>): ReasonView => ({
    id: reason.finding,
    term: reasonTerm({
      id: reason.finding,
      isAbsent: input.findings[reason.finding] === "absent",
      tests: input.tests ?? [],
      ...{ evidence, words },
    }),
    elsewhere:
      reason.bits < 0 &&
      input.findings[reason.finding] === "present" &&
      evidence.findings[reason.finding]?.kind === "sign" &&
      !suppressed(reason.finding),
    bits: reason.bits,
    ticks: Math.max(1, Math.round(Math.abs(reason.bits) * ticksInBit)),
    parts:
      beside.length > 0 &&
      beside.every((other) => Math.abs(reason.bits - bitsOf(other, reason.finding)) >= partingBits),
  });
  return {
    id: each.id,
    term: conditionTerm(evidence, each.id),
    latin: isConditionId(each.id) ? conditions[each.id].scientificName : null,
    role: each.role,
    shownFor: livesUnseen(each.id, input) ? say.asCause : null,
    posterior: each.posterior,
    low: each.low,
    high: each.high,
    dots,
    number: say.inTen({ share: each.posterior }),
    range: say.range({ low: each.low, high: each.high }),
    word: proof === null ? say.word({ share: each.posterior }) : say.provenBy({ proof }),
    proof,
    for: each.for.slice(0, reasonsShown.for).map(view),
    against: each.against.slice(0, reasonsShown.against).map(view),
    and: andOf(each.id, words),
  };
}

const bitsOf = (other: Ranked, finding: string): number =>
  [...other.for, ...other.against].find((reason) => reason.finding === finding)?.bits ?? 0;

/** The name of what was found or tested; a finding that was looked for and is absent carries its "no". */
function reasonTerm(reason: {
  readonly id: string;
  readonly isAbsent: boolean;
  readonly tests: NonNullable<Input["tests"]>;
  readonly evidence: Evidence;
  readonly words: Words;
}): string {
  const { id, isAbsent, tests, evidence, words } = reason;
  const term = stepTerm(evidence, id);
  if (isTestId(id)) return words.could.testReason({ term, isPositive: tests.some(isFind(id)) });
  return isAbsent ? words.could.absentReason({ term }) : words.could.reason({ term });
}

/** Whether a result of this test found something. */
const isFind =
  (id: string) =>
  ({ test, result, positive = 0, mites = 0, sporesMillionsPerBee = 0 }: differential.TestInput): boolean =>
    test === id && (result === "found" || positive + mites + sporesMillionsPerBee > 0);

function andOf(id: string, words: Words): string {
  const others = new Set<ConditionId>();
  for (const pair of coexistence) {
    if (pair.first === id) for (const other of pair.others) others.add(other);
    else if (isConditionId(id) && pair.others.includes(id)) others.add(pair.first);
  }
  return others.size === 0
    ? words.could.noPairing
    : words.could.withOthers({ others: [...others].map((other) => conditions[other].term) });
}

function noticeView(notice: differential.Notice, evidence: Evidence, words: Words): NoticeView {
  const condition = conditionTerm(evidence, notice.condition);
  const terms = notice.findings.map((id) => stepTerm(evidence, id));
  return {
    condition: notice.condition,
    key: `${notice.condition} ${notice.findings.join(" ")}`,
    head: notice.report ? words.could.noticeStop : words.could.noticeHeed({ condition }),
    why: words.could.noticeWhy({ findings: terms, condition }),
    act: [notice.act, ...notice.doNot].join(" "),
    report: notice.report,
  };
}
