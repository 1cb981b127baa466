/**
 * What weakens or strengthens one specimen: readings, bees outside the count, sides, season, earlier treatments.
 *
 * @module views/model
 */
import { thresholds } from "../../../knowledge/index.ts";
import { bench, sampling } from "../../../reasoning/index.ts";
import type { Problem } from "../../../units/index.ts";
import { sentenceOf, type Words } from "../../words/index.ts";
import type { SpecimenFound } from "./specimens.ts";

export interface QualityNote {
  readonly kind: "good" | "weak";
  readonly says: string;
  /** A further specimen is wanted. */
  readonly resample?: true;
}

/** Where the class changes that leads to another act: the line at which damage becomes likely. */
const border = (thresholds["tracheal-thirty"].figure.value ?? 30) / 100;

/** Notes on a specimen, the good ones first. */
export function qualityNotes(specimen: SpecimenFound, words: Words): readonly QualityNote[] {
  const say = words.found.quality;
  const notes: QualityNote[] = [...readingNotes(specimen, words), ...outsideNotes(specimen, words)];
  const weak = (says: string) => notes.push({ kind: "weak", says });
  const { received } = specimen;
  if (received?.acceptance === "accepted-with-limits")
    notes.push({ kind: "weak", says: say.limits({ reason: received.reason ?? "" }), resample: true });
  else if (received && received.condition >= 2)
    weak(
      say.condition({
        score: received.condition,
        says: words.bench.conditions[received.condition as 0 | 1 | 2 | 3],
      }),
    );
  if (received && !received.aliveWhenTaken) weak(say.dead);
  for (const problem of [...zeroProblems(specimen), ...specimen.problems]) weak(sentenceOf(problem, words));
  if (specimen.season === null && specimen.estimate) weak(say.notInSeason);
  return [...notes.filter((note) => note.kind === "good"), ...notes.filter((note) => note.kind === "weak")];
}

function readingNotes(specimen: SpecimenFound, words: Words): readonly QualityNote[] {
  const say = words.found.quality;
  const [first, second] = specimen.readings;
  if (!first || first.tally.read === 0) return [];
  const notes: QualityNote[] = [];
  if (second && second.tally.read > 0) {
    const compared = bench.compareReadings({ first: countsOf(first), second: countsOf(second), border });
    const trouble = compared.problems[0];
    notes.push(
      trouble
        ? { kind: "weak", says: sentenceOf(trouble, words) }
        : {
            kind: "good",
            says: say.twice({ first: words.found.of(first.tally), second: words.found.of(second.tally) }),
          },
    );
  } else notes.push({ kind: "weak", says: say.once });
  return [...notes, ...sidesNotes(first.tally, words)];
}

const countsOf = ({ tally }: SpecimenFound["readings"][number]) => ({
  positive: tally.positive,
  examined: tally.read,
});

function sidesNotes(tally: bench.Tally, words: Words): readonly QualityNote[] {
  const { bothSidesRead } = tally;
  if (bothSidesRead.infested === 0) return [];
  const checked = bench.sidesCheck(bothSidesRead);
  return checked.problems.length === 0
    ? [{ kind: "good", says: words.found.quality.sides }]
    : checked.problems.map((problem) => ({ kind: "weak", says: sentenceOf(problem, words) }));
}

function outsideNotes(specimen: SpecimenFound, words: Words): readonly QualityNote[] {
  const say = words.found.quality;
  const first = specimen.readings[0];
  if (!first) return [];
  const { tally } = first;
  const outside = tally.partlyRead + tally.unreadable + tally.lost;
  const notes: QualityNote[] = [];
  if (outside > 0)
    notes.push({
      kind: "weak",
      says: say.outside({
        received: specimen.received?.beesReceived ?? tally.read + outside,
        partly: tally.partlyRead,
        unreadable: tally.unreadable,
        lost: tally.lost,
      }),
    });
  if (tally.partlyRead + tally.unreadable > 0 && tally.bestCase !== null && tally.worstCase !== null)
    notes.push({ kind: "weak", says: say.bounds({ best: tally.bestCase, worst: tally.worstCase }) });
  if (tally.darkNoMite > 0) notes.push({ kind: "weak", says: say.darkNoMite({ bees: tally.darkNoMite }) });
  if (first.inConflict > 0) notes.push({ kind: "weak", says: say.conflict({ bees: first.inConflict }) });
  return notes;
}

/** What makes a zero weak: summer, an earlier treatment, too few bees. */
export function zeroProblems(specimen: SpecimenFound): readonly Problem[] {
  const tally = specimen.readings[0]?.tally;
  if (!tally || tally.read === 0 || tally.positive > 0) return [];
  return weakZero({ ...specimen, examined: tally.read });
}

/** What makes a zero weak in so many bees of a season; nothing where the season is not known. */
export const weakZero = ({
  examined,
  season,
  treatmentDaysAgo,
}: Pick<SpecimenFound, "season" | "treatmentDaysAgo"> & { readonly examined: number }): readonly Problem[] =>
  season === null
    ? []
    : sampling.zeroFound({ examined, level: 0.95, sensitivity: 1, season, treatmentDaysAgo, designPrevalence: 0.05 })
        .problems;
