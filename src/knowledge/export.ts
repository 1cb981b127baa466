/** The knowledge as text for others: one JSON value and one bibliography. */
import { benchFacts, harm, lifeHistory, twoSides } from "./bench-facts.ts";
import { broodClock } from "./brood-clock.ts";
import { cautions } from "./cautions.ts";
import { coexistence } from "./coexistence.ts";
import { conditions } from "./conditions/index.ts";
import { controls } from "./controls/index.ts";
import type { SourceFact } from "./fact.ts";
import { findings } from "./findings/index.ts";
import { gradeProbability } from "./grade-probability.ts";
import { healthyRates } from "./healthy-rates.ts";
import { laboratoryTraps } from "./laboratory-traps.ts";
import { levels } from "./levels.ts";
import { mustNotMiss, redFlags } from "./must-not-miss.ts";
import { occurrence } from "./occurrence.ts";
import { nothingWrongShare, regionAdjustments } from "./priors.ts";
import { beesFor, destinationRules, samplingFacts } from "./sampling-facts.ts";
import { sources } from "./sources.ts";
import { tests } from "./tests/index.ts";
import { thresholds } from "./thresholds.ts";
import { vapourFacts } from "./vapour-facts.ts";
import { knowledgeVersion } from "./version.ts";

/** All records, as they are exported. */
export const allRecords = {
  version: knowledgeVersion,
  licence: "CC BY 4.0, https://creativecommons.org/licenses/by/4.0/",
  conditions,
  findings,
  gradeProbability,
  healthyRates,
  nothingWrongShare,
  regionAdjustments,
  tests,
  levels,
  mustNotMiss,
  redFlags,
  coexistence,
  laboratoryTraps,
  cautions,
  thresholds,
  controls,
  samplingFacts,
  beesFor,
  destinationRules,
  benchFacts,
  twoSides,
  lifeHistory,
  harm,
  broodClock,
  vapourFacts,
  occurrence,
  sources,
} as const;

const width = 120;

/** JSON with two spaces; a list of plain values stays on its line where it fits. */
function jsonLines(value: unknown, indent: string, used: number): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return "[]";
    const plain = value.every((each) => typeof each !== "object" || each === null);
    const line = `[${value.map((each) => JSON.stringify(each)).join(", ")}]`;
    if (plain && used + line.length + 1 <= width) return line;
    return `[\n${value.map((each) => `${deeper}${jsonLines(each, deeper, deeper.length)}`).join(",\n")}\n${indent}]`;
  }
  const lines = Object.entries(value).map(([key, each]) => {
    const start = `${deeper}${JSON.stringify(key)}: `;
    return `${start}${jsonLines(each, deeper, start.length)}`;
  });
  return lines.length === 0 ? "{}" : `{\n${lines.join(",\n")}\n${indent}}`;
}

/** The whole knowledge as JSON text, the same each time for the same records. */
export const knowledgeJson = (): string => `${jsonLines(allRecords, "", 0)}\n`;

const entryKind: Readonly<Record<SourceFact["kind"], string>> = {
  article: "article",
  "book-section": "incollection",
  leaflet: "misc",
  manual: "manual",
  standard: "misc",
  report: "techreport",
  instructions: "misc",
  page: "misc",
};
const placeField: Readonly<Record<SourceFact["kind"], string>> = {
  article: "journal",
  "book-section": "booktitle",
  leaflet: "howpublished",
  manual: "organization",
  standard: "howpublished",
  report: "institution",
  instructions: "howpublished",
  page: "howpublished",
};
const escaped = (text: string): string => text.replace(/[&%#_$]/g, (sign) => `\\${sign}`);
const person = /^(.+) ((?:[A-Z]\.[ -]?)+)$/;

/** Persons as "Surname, I." joined by "and"; a body keeps its name whole in braces. */
function names(authors: string): string {
  const parts = authors.replace(/ and others$/, ", others").split(", ");
  return parts.every((part) => part === "others" || person.test(part))
    ? parts.map((part) => part.replace(person, "$1, $2")).join(" and ")
    : `{${authors}}`;
}

function bibEntry(key: string, source: SourceFact): string {
  const fields: readonly (readonly [string, string])[] = [
    ...(source.authors === null ? [] : [["author", names(source.authors)] as const]),
    ["title", source.title],
    ...(source.year === null ? [] : [["year", String(source.year)] as const]),
    [placeField[source.kind], source.where],
    ["note", `Our reading: ${source.read}`],
  ];
  const body = fields.map(([name, text]) => `  ${name} = {${escaped(text)}},`).join("\n");
  return `@${entryKind[source.kind]}{${key},\n${body}\n}\n`;
}

/** All sources as BibTeX, in the order of their keys. */
export const bibliography = (): string =>
  Object.entries(sources as Readonly<Record<string, SourceFact>>)
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([key, source]) => bibEntry(key, source))
    .join("\n");
