/**
 * Question 4: the answer, a row for each specimen with its interval, and what one specimen can and cannot tell.
 *
 * @module views/model
 */
import { type Casebook, coloniesOf } from "../../../casebook/index.ts";
import { thresholds } from "../../../knowledge/index.ts";
import type { Day, Estimate } from "../../../units/index.ts";
import type { Words } from "../../words/index.ts";
import { type TreatedSpan, treatedSpan } from "../worked/check.ts";
import { otherTests } from "./other-tests.ts";
import { type SpecimenFound, specimensFound } from "./specimens.ts";

export interface FoundRow {
  readonly id: string;
  readonly colony: string;
  readonly code: string;
  readonly from: string;
  readonly withMites: string;
  /** So many bees in 100 as text; empty when nothing is read. */
  readonly inHundred: string;
  readonly range: string;
  readonly estimate: Estimate | null;
  readonly isLimited: boolean;
  readonly isInfested: boolean;
  /** The class in words, and what qualifies it. */
  readonly reading: string;
  readonly note: string;
}

export interface FoundGroup {
  readonly takenOn: Day | null;
  readonly title: string;
  readonly rows: readonly FoundRow[];
}

export interface FoundView {
  readonly answer: string;
  /** Newest day first; highest share first. */
  readonly groups: readonly FoundGroup[];
  /** The specimen to show at first: the highest of the newest day. */
  readonly first: string | null;
  readonly specimens: readonly SpecimenFound[];
  /** Bands of the handbooks in percent, lowest first, and in words. */
  readonly bands: readonly { readonly from: number; readonly to: number | null; readonly means: string }[];
  readonly bandsSay: string;
  /** End of the scale, bees in 100. */
  readonly scaleEnd: number;
}

/** So many told results stand in the answer itself. */
export const toldInAnswer = 2;

const bands = thresholds["tracheal-bands"].bands;

/** What was found in a case. */
export function foundView(casebook: Casebook, caseId: string, words: Words): FoundView {
  const specimens = specimensFound(casebook, caseId);
  const days = [...new Set(specimens.map((each) => each.takenOn))].sort((one, other) =>
    (other ?? "").localeCompare(one ?? ""),
  );
  const groups = days.map((takenOn) => {
    const own = specimens.filter((each) => each.takenOn === takenOn);
    return {
      takenOn,
      title:
        takenOn === null
          ? words.found.noDay
          : words.found.takenOn({ day: takenOn, recheck: own.every((each) => each.label.purpose === "recheck") }),
      rows: [...own]
        .sort((one, other) => (other.estimate?.value ?? -1) - (one.estimate?.value ?? -1))
        .map((each) => rowOf(each, words)),
    };
  });
  const highest = Math.max(0, ...specimens.map((each) => 100 * (each.estimate?.high ?? 0)));
  return {
    answer: answerOf(casebook, caseId, { specimens, words }),
    groups,
    first: groups.flatMap((group) => group.rows).find((row) => row.estimate !== null)?.id ?? null,
    specimens,
    bands,
    bandsSay: words.found.bandsHead({ bands: bands.map((band) => words.found.band(band)).join(", ") }),
    scaleEnd: Math.max(60, Math.ceil(highest / 10) * 10),
  };
}

function answerOf(
  casebook: Casebook,
  caseId: string,
  { specimens, words }: { readonly specimens: readonly SpecimenFound[]; readonly words: Words },
): string {
  const say = words.found;
  const state = casebook.cases[caseId];
  const read = specimens.filter((each) => each.estimate !== null);
  if (read.length === 0) {
    const told = state ? otherTests(casebook, state, words) : [];
    if (told.length > 0)
      return say.toldOnly({
        results: told.length,
        first: told.slice(0, toldInAnswer),
        vials: specimens.length,
      });
    return specimens.length === 0 ? say.none : say.nothingRead({ vials: specimens.length });
  }
  const sampled = new Set(read.map((each) => each.label.colony));
  const infested = new Set(read.filter(isInfested).map((each) => each.label.colony));
  const unsampled = coloniesOf(casebook, caseId).filter((colony) => !sampled.has(colony.id)).length;
  const head =
    infested.size > 0
      ? say.answerMites({ infested: infested.size, sampled: sampled.size })
      : say.answerNone({
          bees: read.reduce((sum, each) => sum + (each.estimate?.n ?? 0), 0),
          colonies: sampled.size,
        });
  const span = state ? treatedSpan(casebook, state) : null;
  return head + worstOf(read, { span, words }) + say.answerUnsampled({ colonies: unsampled });
}

/**
 * The colony with the highest sound estimate of the newest day, or that it cannot be said. When that day lies after a
 * treatment: the highest of the treated, and the highest of the others.
 */
function worstOf(
  read: readonly SpecimenFound[],
  { span, words }: { readonly span: TreatedSpan | null; readonly words: Words },
): string {
  const newest =
    read
      .map((each) => each.takenOn ?? "")
      .sort()
      .at(-1) ?? "";
  const own = read
    .filter((each) => (each.takenOn ?? "") === newest)
    .sort((one, other) => (other.estimate?.value ?? 0) - (one.estimate?.value ?? 0));
  const sounds = own.filter((each) => !each.isLimited);
  if (span && newest > span.to) {
    const told = (isTreated: boolean) => {
      const first = sounds.find((each) => span.colonies.includes(each.label.colony) === isTreated);
      return first?.estimate ? { colony: first.colony, ...first.estimate } : null;
    };
    const treated = told(true);
    if (treated) return words.found.answerTreated({ treated, untreated: told(false) });
  }
  const [sound] = sounds;
  const shown = sound ?? own[0];
  if (!shown?.estimate) return "";
  const { value, low, high } = shown.estimate;
  return sound
    ? words.found.answerWorst({ colony: shown.colony, value, low, high, only: own.length === 1 })
    : words.found.answerLimited({ colony: shown.colony, read: shown.estimate.n ?? 0 });
}

const isInfested = (specimen: SpecimenFound): boolean => (specimen.readings[0]?.tally.positive ?? 0) > 0;

function rowOf(specimen: SpecimenFound, words: Words): FoundRow {
  const say = words.found;
  const { estimate, label } = specimen;
  const tally = specimen.readings[0]?.tally;
  return {
    id: specimen.id,
    colony: specimen.colony,
    code: label.code,
    from: words.bench.from[label.from],
    withMites: tally && estimate ? say.of({ positive: tally.positive, read: tally.read }) : say.notRead,
    inHundred: estimate ? say.value({ share: estimate.value }) : "",
    range: estimate ? say.range(estimate) : "",
    estimate,
    isLimited: specimen.isLimited,
    isInfested: isInfested(specimen),
    ...meaningOf(specimen, words),
  };
}

function meaningOf(specimen: SpecimenFound, words: Words): { readonly reading: string; readonly note: string } {
  const say = words.found;
  const { estimate, state, meaning } = specimen;
  const tally = specimen.readings[0]?.tally;
  if (!estimate || !tally) {
    if (tally)
      return {
        reading: say.cannotSay,
        note: say.readable({ read: 0, received: specimen.received?.beesReceived ?? 0 }),
      };
    return {
      reading: state === "read" ? say.notRead : say.waiting[state],
      note: state === "reading" ? say.beesSoFar({ bees: specimen.beesSoFar }) : (specimen.received?.reason ?? ""),
    };
  }
  if (specimen.isLimited)
    return {
      reading: say.cannotSay,
      note: say.readable({ read: tally.read, received: specimen.received?.beesReceived ?? tally.read }),
    };
  if (!meaning) return { reading: "", note: tally.positive === 0 ? say.noneFound({ read: tally.read }) : "" };
  const reading = meaning.band?.means ?? say.between;
  if (tally.positive === 0) return { reading, note: say.noneFound({ read: tally.read }) };
  const others = meaning.bandsCrossed.filter((band) => band.means !== meaning.band?.means);
  const reached = others.at(-1);
  return { reading, note: reached ? say.reaches({ band: reached.means }) : say.withinBand };
}
