/** The papers of a case that can be printed from where one stands. */
import { Link } from "wouter";
import { words } from "../words.ts";

type Paper = keyof typeof words.case.papers;

export function PaperLinks({ caseId, papers }: { readonly caseId: string; readonly papers: readonly Paper[] }) {
  return papers.map((paper) => (
    <Link key={paper} className="act" href={`/cases/${caseId}/paper/${paper}`}>
      {words.case.papers[paper]}
    </Link>
  ));
}
