/** The evidence that a question brings to a worker, made once and kept while questions bring the same. */
import { type Evidence, publishedEvidence } from "../../../knowledge/index.ts";
import { evidenceFrom, type OwnEvidence } from "../../../reasoning/index.ts";

let kept: { readonly text: string; readonly evidence: Evidence } | null = null;

/** The evidence in use; the published one when the question brings none. */
export function evidenceOfQuestion(own: OwnEvidence | null): Evidence {
  if (own === null) return publishedEvidence;
  const text = JSON.stringify(own);
  if (kept?.text !== text) kept = { text, evidence: evidenceFrom(own).evidence };
  return kept.evidence;
}
