/** What a case says of each finding: present, absent, or nothing. */
import type { Evidence } from "../../knowledge/index.ts";
import type { ReadCase } from "../differential/index.ts";

/** A finding that was settled, and how. */
export interface Settled {
  readonly finding: string;
  readonly isPresent: boolean;
}

/**
 * Every finding that the case settles. Of an exclusive pair the one that is present settles the other as absent: the
 * differential leaves that out, since it adds nothing there, but a share of cases must count it.
 */
export function settledFindings({ present, absent }: Pick<ReadCase, "present" | "absent">, evidence: Evidence) {
  const excluded = present.flatMap((finding) => evidence.findings[finding]?.exclusiveWith ?? []);
  const missing = new Set<string>([...absent, ...excluded]);
  return [
    ...present.map((finding): Settled => ({ finding, isPresent: true })),
    ...[...missing].map((finding): Settled => ({ finding, isPresent: false })),
  ];
}
