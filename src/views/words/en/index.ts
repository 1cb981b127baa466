/** English, for readers at school grade 8. Text between two pairs of asterisks is weighted: `**so**`. */
import { apiaries } from "./apiaries.ts";
import { bench } from "./bench.ts";
import { caseWords } from "./case.ts";
import { cases } from "./cases.ts";
import { could } from "./could.ts";
import { differences } from "./differences.ts";
import { done } from "./done.ts";
import { drawings } from "./drawings.ts";
import { evidence } from "./evidence.ts";
import { found } from "./found.ts";
import { labels } from "./labels.ts";
import { own } from "./own.ts";
import { paper } from "./paper.ts";
import { problems } from "./problems/index.ts";
import { reckoner } from "./reckoner.ts";
import { records } from "./records.ts";
import { seen } from "./seen.ts";
import { shell } from "./shell.ts";
import { table } from "./table.ts";
import { tell } from "./tell.ts";
import { worked } from "./worked.ts";

/** All English sentences by area of the tool. */
export const en = {
  shell,
  cases,
  case: caseWords,
  seen,
  could,
  tell,
  apiaries,
  labels,
  bench,
  found,
  done,
  worked,
  drawings,
  evidence,
  own,
  paper,
  reckoner,
  records,
  differences,
  table,
  problems,
};
