/** The report of a case, apart from the other papers because of what it reckons with. */
export { caseReport } from "../../model/index.ts";
