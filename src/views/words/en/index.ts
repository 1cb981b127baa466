/** English, for readers at school grade 8. Text between two pairs of asterisks is weighted: `**so**`. */
import { apiaries } from "./apiaries.ts";
import { bench } from "./bench.ts";
import { caseWords } from "./case.ts";
import { cases } from "./cases.ts";
import { could } from "./could.ts";
import { done } from "./done.ts";
import { found } from "./found.ts";
import { problems } from "./problems/index.ts";
import { reckoner } from "./reckoner.ts";
import { seen } from "./seen.ts";
import { shell } from "./shell.ts";
import { tell } from "./tell.ts";
import { worked } from "./worked.ts";

/** The English sentences that every page may need, by area of the tool. */
export const en = {
  shell,
  cases,
  case: caseWords,
  seen,
  could,
  tell,
  apiaries,
  bench,
  found,
  done,
  worked,
  reckoner,
  problems,
};
