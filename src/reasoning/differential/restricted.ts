/** A case without the groups of findings in which nothing was looked for: they do not bear on the posterior. */
import type { CaseModel } from "./case-model.ts";

/** The smaller case, and which finding of the whole network each of its findings is. */
export function restricted(model: CaseModel): {
  readonly model: CaseModel;
  readonly originalFinding: readonly number[];
} {
  const { network, present, absent } = model;
  const groupOf = (finding: number) => network.findings[finding]?.group ?? `alone ${finding}`;
  const looked = new Set([...present, ...absent].map(groupOf));
  const originalFinding = [...network.findings.keys()].filter((each) => looked.has(groupOf(each)));
  const place = new Map(originalFinding.map((finding, index) => [finding, index]));
  const moved = (finding: number) => place.get(finding) ?? 0;
  return {
    originalFinding,
    model: {
      ...model,
      network: {
        ...network,
        findings: originalFinding.flatMap((finding) => network.findings[finding] ?? []),
        pairs: network.pairs
          .filter(({ finding }) => place.has(finding))
          .map((pair) => ({ ...pair, finding: moved(pair.finding) })),
      },
      present: present.map(moved),
      absent: absent.map(moved),
    },
  };
}
