/**
 * The knowledge as records to browse: each with its words, its figures and who says so, and how each was read.
 *
 * @module views/model
 */
import {
  benchFacts,
  type Citation,
  type ConditionFact,
  cautions,
  citationsOf,
  conditions,
  controls,
  type DoseReport,
  destinationRules,
  type Figure,
  type FindingId,
  findings,
  laboratoryTraps,
  mustNotMiss,
  occurrence,
  type ReadMark,
  type SourceFact,
  type SourceKey,
  type Span,
  samplingFacts,
  sources,
  type TestId,
  tests,
  thresholds,
} from "../../../knowledge/index.ts";
import type { WholeWords } from "../../words/index.ts";

export type EvidenceKind = keyof WholeWords["evidence"]["kinds"];

/** One figure in words, with the mark of how it was read. */
export interface FigureLine {
  readonly says: string;
  readonly mark: ReadMark;
}

/** One citation in words. */
export interface CitationLine {
  readonly source: SourceKey | null;
  readonly name: string;
  readonly at: string;
  readonly mark: ReadMark;
}

export interface EvidenceRecord {
  readonly kind: EvidenceKind;
  readonly id: string;
  readonly title: string;
  /** The sentence that stands in a list. */
  readonly says: string;
  readonly parts: readonly { readonly name: string; readonly says: readonly string[] }[];
  readonly figures: readonly FigureLine[];
  readonly citations: readonly CitationLine[];
}

type AnyFigure = Figure | Span | DoseReport;

/** Every record of the knowledge, kind by kind. */
export function evidenceRecords(words: WholeWords): readonly EvidenceRecord[] {
  const make = maker(words);
  const part = words.evidence.parts;
  return [
    ...Object.values(conditions).map((each) => conditionRecord(each, words)),
    ...Object.values(findings).map((each) =>
      make("finding", each.id, each.term, each.question, each, [
        [part.lookFor, each.lookFor],
        [part.tellApart, each.tellApart],
        [part.minutes, String(each.minutes)],
      ]),
    ),
    ...Object.values(tests).map((each) =>
      make("test", each.id, each.term, each.answers, each, [
        [part.specimen, each.specimen],
        [part.sensitivityIs, each.sensitivityIs],
        [part.specificityIs, each.specificityIs],
        [part.seasonCaveat, each.seasonCaveat],
        [part.traps, each.traps],
        [part.days, each.days.low === each.days.high ? String(each.days.low) : `${each.days.low}–${each.days.high}`],
      ]),
    ),
    ...Object.values(controls).map((each) =>
      make("control", each.id, each.term, each.statements[0]?.words ?? "", each, [
        [words.evidence.says, each.statements.map((statement) => statement.words)],
      ]),
    ),
    ...Object.entries(thresholds).map(([id, each]) =>
      make("threshold", id, each.words, each.words, each, [
        [part.season, each.season],
        [part.region, each.region],
        [part.but, each.but],
        [part.bands, each.bands.map((band) => words.found.band(band))],
      ]),
    ),
    ...Object.entries(samplingFacts).map(([id, each]) => make("sampling", id, each.words, each.words, each, [])),
    ...Object.entries(destinationRules).map(([id, each]) =>
      make("laboratory", id, `${each.destination}: ${each.purpose}`, each.keep, each, [
        [part.keep, each.keep],
        [part.pack, each.pack],
      ]),
    ),
    ...Object.entries(benchFacts).map(([id, each]) => make("bench", id, each.words, each.words, each, [])),
    ...Object.entries(laboratoryTraps).map(([id, each]) => make("trap", id, each.term, each.words, each, [])),
    ...Object.entries(mustNotMiss).map(([id, each]) =>
      make("notice", id, conditions[each.condition].term, each.act, each, [
        [part.signs, each.findings.map((finding: FindingId) => findings[finding].term)],
        [part.orTests, each.tests.map((test: TestId) => tests[test].term)],
        [part.act, each.act],
        [part.doNot, each.doNot],
        ...("milder" in each ? [[part.milder, cautions[each.milder.act].words] as const] : []),
      ]),
    ),
    ...Object.entries(cautions).map(([id, each]) => make("caution", id, each.words, each.words, each, [])),
    ...Object.entries(occurrence).map(([id, each]) => make("occurrence", id, each.words, each.words, each, [])),
    ...(Object.entries(sources) as [SourceKey, SourceFact][]).map(([id, each]) =>
      make("source", id, sourceName(each), each.title, each, [
        [part.where, each.where],
        [part.read, each.read],
      ]),
    ),
  ];
}

type PartGiven = readonly [string, string | readonly string[] | null | undefined];

const maker =
  (words: WholeWords) =>
  (
    kind: EvidenceKind,
    id: string,
    title: string,
    says: string,
    record: unknown,
    parts: readonly PartGiven[],
  ): EvidenceRecord => ({
    kind,
    id,
    title,
    says,
    parts: parts.flatMap(([name, given]) => {
      const lines = (typeof given === "string" ? [given] : (given ?? [])).filter((line) => line !== "");
      return lines.length > 0 ? [{ name, says: lines }] : [];
    }),
    figures: figuresIn(record).map((figure) => ({ says: figureSays(figure, words), mark: figure.citation.read })),
    citations: uniqueCitations(kind === "source" ? [] : citationsOf(record)),
  });

function conditionRecord(each: ConditionFact, words: WholeWords): EvidenceRecord {
  const say = words.evidence;
  const part = say.parts;
  const latin = each.scientificName;
  const same = latin?.toLowerCase().startsWith(each.term.toLowerCase()) ?? false;
  const name = latin === null ? each.term : same ? latin : `${each.term} (${latin})`;
  const signs = Object.entries(each.frequencies).map(
    ([finding, frequency]) => `${findings[finding as FindingId].term}: ${say.grades[frequency.grade]}`,
  );
  return maker(words)("condition", each.id, name, each.confirm, each, [
    [part.role, say.roles[each.role]],
    [part.season, each.season],
    [part.onset, each.onset],
    [part.apiaryPattern, each.apiaryPattern],
    [part.confirm, each.confirm],
    [part.lookAlikes, each.lookAlikes.map((other) => `${other.what}: ${other.tellApart}`)],
    [part.management, each.management],
    [part.listing, say.listings[each.listing]],
    [part.humanHazard, each.humanHazard],
    [part.note, each.note],
    [part.prior, say.priorSays(each.priorPercent)],
    [part.signs, signs],
  ]);
}

/** Authors and year of a source, or its title where they were not shown. */
export const sourceName = (source: SourceFact): string =>
  [source.authors ?? source.title, source.year].filter((part) => part !== null).join(" ");

const isFigure = (value: object): value is AnyFigure =>
  "kind" in value &&
  (value.kind === "figure" || value.kind === "span" || value.kind === "dose-report") &&
  "citation" in value;

function figuresIn(value: unknown): readonly AnyFigure[] {
  if (typeof value !== "object" || value === null) return [];
  if (isFigure(value)) return [value];
  return Object.values(value).flatMap(figuresIn);
}

function figureSays(figure: AnyFigure, words: WholeWords): string {
  const say = words.evidence;
  if (figure.kind === "figure") return `${figure.value} ${figure.unit}`;
  const ends =
    figure.high === null
      ? `${figure.low} ${say.openEnd}`
      : figure.low === figure.high || figure.low === null
        ? String(figure.high)
        : `${figure.low} to ${figure.high}`;
  return figure.kind === "dose-report" ? `${ends} ${figure.unit} (${say.dose})` : `${ends} ${figure.unit}`;
}

function uniqueCitations(citations: readonly Citation[]): readonly CitationLine[] {
  const lines = citations.map((citation) => ({
    source: citation.source,
    name: citation.source === null ? "" : sourceName(sources[citation.source]),
    at: citation.at,
    mark: citation.read,
  }));
  const keys = lines.map((line) => `${line.source} ${line.at} ${line.mark}`);
  return lines.filter((_, index) => keys.indexOf(keys[index] ?? "") === index);
}

/** Records in which every word of the search stands, in any of its texts. */
export function searchRecords(
  records: readonly EvidenceRecord[],
  { text, kind }: { readonly text: string; readonly kind: EvidenceKind | null },
): readonly EvidenceRecord[] {
  const wanted = plain(text).split(/\s+/).filter(Boolean);
  return records.filter((record) => {
    if (kind !== null && record.kind !== kind) return false;
    const all = plain(
      [
        record.id,
        record.title,
        record.says,
        ...record.parts.flatMap((part) => part.says),
        ...record.citations.map((citation) => `${citation.name} ${citation.at}`),
      ].join(" "),
    );
    return wanted.every((word) => all.includes(word));
  });
}

const plain = (text: string): string =>
  text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/[_-]/g, " ");
