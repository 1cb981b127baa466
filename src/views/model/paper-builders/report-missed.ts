/**
 * What the bees of a report could have missed.
 *
 * @module views/model
 */
import type { Casebook, CaseState } from "../../../casebook/index.ts";
import { sampling } from "../../../reasoning/index.ts";
import type { Problem } from "../../../units/index.ts";
import { type PaperWords, sentenceOf } from "../../words/index.ts";
import { colonyCode } from "../bench/worklist.ts";
import { weakZero, zeroProblems } from "../found/quality.ts";
import { type SpecimenFound, seasonAt, treatmentBefore } from "../found/specimens.ts";
import { type ToldDissection, toldDissections } from "../found/told-dissections.ts";

/** Bees of one colony that were opened, here or elsewhere. */
interface Opened {
  readonly colony: string;
  readonly bees: number;
  readonly positive: number;
  /** What weakens a zero beside the number of bees. */
  readonly weak: readonly string[];
}

/** A sentence for each zero; where there is none, one for the fewest bees; where no bee was counted, that. */
export function reportMissed(
  casebook: Casebook,
  state: CaseState,
  { read, words }: { readonly read: readonly SpecimenFound[]; readonly words: PaperWords },
): readonly string[] {
  const say = words.paper;
  const opened: readonly Opened[] = [
    ...read.map((each) => openedHere(each, words)),
    ...toldDissections(state).map((told) => openedElsewhere(casebook, state, told, words)),
  ];
  if (opened.length === 0) return [Object.keys(state.tests).length > 0 ? say.missedElsewhere : say.nothingMissed];
  const zeros = opened.filter(({ positive }) => positive === 0);
  if (zeros.length > 0)
    return zeros.map(({ colony, bees, weak }) =>
      [say.missedZero(colony, bees, missedOf(bees, 0.05), missedOf(bees, 0.02)), ...weak].join(" "),
    );
  const fewest = Math.min(...opened.map(({ bees }) => bees));
  return [say.missedAny(fewest, missedOf(fewest, 0.05))];
}

/** How often so many bees show none at this share, if reading is perfect. */
const missedOf = (bees: number, prevalence: number): number =>
  1 - sampling.detectionProbability({ bees, designPrevalence: prevalence, sensitivity: 1 });

function openedElsewhere(casebook: Casebook, state: CaseState, told: ToldDissection, words: PaperWords): Opened {
  const { colony, on, positive, examined, aliveWhenTaken } = told;
  const season = seasonAt(casebook, state.id, on);
  const treatmentDaysAgo = treatmentBefore(casebook, { case: state.id, colony }, on);
  return {
    colony: words.paper.elsewhere({ colony: colonyCode(casebook, state.id, colony) }),
    bees: examined,
    positive,
    weak:
      positive > 0
        ? []
        : [
            ...(aliveWhenTaken === false ? [words.found.quality.dead.replaceAll("**", "")] : []),
            ...sentences(weakZero({ examined, season, treatmentDaysAgo }), words),
          ],
  };
}

const openedHere = (specimen: SpecimenFound, words: PaperWords): Opened => ({
  colony: specimen.colony,
  bees: specimen.estimate?.n ?? 0,
  positive: specimen.readings[0]?.tally.positive ?? 1,
  weak: sentences(zeroProblems(specimen), words),
});

/** Of what weakens a zero; that the bees are few the sentence of the zero says already. */
const sentences = (problems: readonly Problem[], words: PaperWords): readonly string[] =>
  problems.filter(({ code }) => code !== "too-few-for-design").map((problem) => sentenceOf(problem, words));
