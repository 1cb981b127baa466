/** The report of a case, apart from the other papers because of all that it tells. */
export { caseReport } from "../../model/index.ts";
