/** English, for readers at school grade 8. Text between two pairs of asterisks is weighted: `**so**`. */
import { apiaries } from "./apiaries.ts";
import { bench } from "./bench.ts";
import { caseWords } from "./case.ts";
import { cases } from "./cases.ts";
import { could } from "./could.ts";
import { labels } from "./labels.ts";
import { problems } from "./problems/index.ts";
import { seen } from "./seen.ts";
import { shell } from "./shell.ts";
import { tell } from "./tell.ts";

/** All English sentences by area of the tool. */
export const en = { shell, cases, case: caseWords, seen, could, tell, apiaries, labels, bench, problems };
