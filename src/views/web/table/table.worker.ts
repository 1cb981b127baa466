/** Reads and tries tables away from the page's own thread. One question a worker. */
import { findings } from "../../../knowledge/index.ts";
import {
  agreed,
  dryRun,
  type ImportAnswer,
  type Reading,
  readGiven,
  suggestUses,
  suggestWords,
  wordsOf,
} from "../../../transfer/index.ts";
import type { OpenedTable, TableQuestion } from "./messages.ts";

self.onmessage = ({ data }: MessageEvent<TableQuestion>) => self.postMessage(answerTo(data));

function answerTo(question: TableQuestion): unknown {
  if (question.kind === "open") return opened(question.given, question.reading);
  if (question.kind === "try") return dryRun(question);
  const table = readGiven(question.given, question.mapping);
  return table.ok ? agreed(question.mapping, question.problem, table.value, question.reason) : null;
}

function opened(given: Uint8Array, reading: Reading): ImportAnswer<OpenedTable> {
  const table = readGiven(given, reading);
  if (!table.ok) return table;
  const terms = Object.entries(findings).map(([id, { term }]) => [id, term] as const);
  const { header, rows } = table.value;
  const byColumn = <T>(of: (column: string) => T) => new Map(header.map((column) => [column, of(column)]));
  const value: OpenedTable = {
    ...{ header, rows: rows.length },
    first: byColumn((column) => wordsOf(table.value, column).slice(0, mostWords)),
    uses: suggestUses(table.value, Object.fromEntries(terms)),
    words: byColumn((column) => suggestWords(table.value, column)),
    findings: terms.toSorted(([, one], [, other]) => one.localeCompare(other, "en")),
  };
  return { ...table, value };
}

/** Different texts of a column that the page is told: places beyond are named by a mapping file. */
const mostWords = 200;
