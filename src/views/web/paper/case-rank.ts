/** What the report is ranked for, apart from the report: it is asked for first, and takes other facts. */
export { reportToRank } from "../../model/index.ts";
