/** All English sentences: the common ones, and those that few pages need and bring along. */
import { differences } from "./differences.ts";
import { drawings } from "./drawings.ts";
import { evidence } from "./evidence.ts";
import { en } from "./index.ts";
import { labels } from "./labels.ts";
import { own } from "./own.ts";
import { apartProblems } from "./problems/apart.ts";
import { backupProblems } from "./problems/backups.ts";
import { regionProblems } from "./problems/colonies-and-regions.ts";
import { copyProblems } from "./problems/copies.ts";
import { databaseProblems } from "./problems/databases.ts";
import { fileProblems } from "./problems/files.ts";
import { importProblems } from "./problems/imports.ts";
import { problems } from "./problems/index.ts";
import { memberProblems } from "./problems/members.ts";
import { reckonerProblems } from "./problems/reckoner-only.ts";
import { seasonProblems } from "./problems/season.ts";
import { seasonChoiceProblems } from "./problems/season-choices.ts";
import { surveyProblems } from "./problems/surveys.ts";
import { records } from "./records.ts";
import { table } from "./table.ts";

/** Everything that is said in English. */
export const whole = {
  ...en,
  own,
  evidence,
  records,
  labels,
  drawings,
  table,
  differences,
  problems: {
    ...problems,
    ...regionProblems,
    ...backupProblems,
    ...memberProblems,
    ...apartProblems,
    ...copyProblems,
    ...databaseProblems,
    ...fileProblems,
    ...importProblems,
    ...surveyProblems,
    ...reckonerProblems,
    ...seasonProblems,
    ...seasonChoiceProblems,
  } as typeof problems,
};
