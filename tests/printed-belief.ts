/** The printed reference network as a belief over all its sets, for tests of what a look is worth. */
import { publishedEvidence } from "../src/knowledge/index.ts";
import type { Belief } from "../src/reasoning/differential/index.ts";
import golden from "./golden/noisy-or-network.json" with { type: "json" };

/** The reference network as a belief: all 32 sets, weighed by the evidence of a printed case. */
export function printedBelief(evidence: Readonly<Record<string, number>>): {
  belief: Belief;
  absent: (f: number) => Float64Array;
} {
  const n = golden.prior.length;
  const parent = [-1];
  const added = [-1];
  for (let set = 1; set < 2 ** n; set++) {
    const highest = Math.floor(Math.log2(set));
    parent.push(set - 2 ** highest);
    added.push(highest);
  }
  const has = (set: number, condition: number) => ((set >> condition) & 1) === 1;
  const absent = (finding: number) =>
    Float64Array.from(parent, (_, set) =>
      golden.link.reduce(
        (product, row, condition) => product * (has(set, condition) ? 1 - (row[finding] ?? 0) : 1),
        1 - (golden.leak[finding] ?? 0),
      ),
    );
  const weight = Float64Array.from(parent, (_, set) =>
    golden.prior.reduce((product, prior, condition) => product * (has(set, condition) ? prior : 1 - prior), 1),
  ).map((prior, set) =>
    Object.entries(evidence).reduce((product, [finding, state]) => {
      const none = absent(Number(finding))[set] ?? 0;
      return product * (state === 1 ? 1 - none : none);
    }, prior),
  );
  const total = weight.reduce((sum, each) => sum + each, 0);
  const sets = { count: 2 ** n, parent: Int32Array.from(parent), added: Int32Array.from(added), weight, total };
  const belief: Belief = {
    setting: {
      season: "spring",
      colonyState: "alive",
      nothingWrong: 0.15,
      region: {
        varroa: "present",
        acarapisWoodi: "unknown",
        smallHiveBeetle: "absent",
        tropilaelaps: "absent",
        vespa: "absent",
      },
    },
    evidence: publishedEvidence,
    conditions: ["tracheal_mites", "varroa_pms", "starvation", "queenless", "robbing"],
    sets,
    probability: weight.map((each) => each / total),
    uncovered: 0,
    candidates: [],
  };
  return { belief, absent };
}
