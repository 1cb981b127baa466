/** The differential on cases drawn from it: what the full run of the bench holds to 0.88–0.92, with fewer cases. */
import { beforeAll, describe, expect, it } from "vitest";
import { drawnCauses, drawnFindings } from "../../benchmarks/calibration/drawn-case.ts";
import { coverageOf, reliabilityOf, worthSaying } from "../../benchmarks/calibration/figures.ts";
import { testedRules } from "../../benchmarks/calibration/group-rules.ts";
import { signsLooked } from "../../benchmarks/calibration/looks.ts";
import { hardestPairs, primaryCauses, separation } from "../../benchmarks/calibration/separation.ts";
import { separationPicture } from "../../benchmarks/calibration/separation-picture.ts";
import { type Saying, simulated } from "../../benchmarks/calibration/simulated.ts";
import { conditions } from "../../src/knowledge/index.ts";
import { randomStream } from "../../src/numerics/index.ts";
import { caseModel } from "../../src/reasoning/differential/case-model.ts";
import { expand } from "../../src/reasoning/differential/expansion.ts";
import { findingsOnly } from "../../src/reasoning/differential/network.ts";
import { signIds } from "../../src/reasoning/differential/network-for.ts";
import { parametersOf } from "../../src/reasoning/differential/parameters.ts";
import { readInput } from "../../src/reasoning/differential/read-input.ts";
import { termsOf } from "../../src/reasoning/differential/terms.ts";

describe("cases drawn from the model", () => {
  it("[DX122] show each pattern of signs as often as its probability says", () => {
    const read = readInput({ season: "winter", findings: {} });
    if (!read.ok) throw new Error("the empty case does not fit");
    const { network } = caseModel(read.value);
    const parameters = parametersOf(network);
    // Two signs of one group, one that something suppresses, one that stands alone.
    const looked = (["small_cluster", "weak_for_season", "dead_pile_floor", "stores_ample"] as const).map((id) =>
      signIds.indexOf(id),
    );
    const draws = 10_000;
    const seen = new Float64Array(2 ** looked.length);
    const stream = randomStream({ seed: 5, stream: 0 });
    for (let draw = 0; draw < draws; draw++) {
      const present = drawnFindings(parameters, drawnCauses(network.nothingWrong, parameters, stream), stream);
      const pattern = looked.reduce((bits, sign, at) => bits + (present[sign] ? 2 ** at : 0), 0);
      seen[pattern] = (seen[pattern] ?? 0) + 1;
    }
    const weigh = (present: readonly number[], absent: readonly number[]) =>
      expand(parameters, termsOf(parameters, findingsOnly(network, present, absent))).total;
    for (const [pattern, count] of seen.entries()) {
      const present = looked.filter((_, at) => (pattern >> at) & 1);
      const p =
        weigh(
          present,
          looked.filter((sign) => !present.includes(sign)),
        ) / weigh([], []);
      // Four standard errors: a seed of its own among sixteen patterns stays within them.
      expect(Math.abs(count / draws - p)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / draws));
    }
  });

  describe("and looked at by 25 signs", () => {
    let sayings: readonly Saying[] = [];
    beforeAll(() => {
      const drawing = { seed: 1763, signs: signsLooked, draws: 60, dependence: null, wrongGrades: 0 };
      sayings = simulated({ ...drawing, cases: 80 }).flat();
    }, 20_000);

    it("[DX123] lie within their 90 % ranges about 90 times in 100", () => {
      const conditionsOnly = sayings.filter(({ isGroup }) => !isGroup);
      // Beyond chance: 80 cases of 45 conditions that hang together, standard error about 0.01.
      expect(coverageOf(conditionsOnly).covered).toBeGreaterThan(0.87);
      expect(coverageOf(conditionsOnly).covered).toBeLessThan(0.93);
      const worth = coverageOf(conditionsOnly.filter(({ stated }) => stated >= worthSaying)).covered;
      expect(worth).toBeGreaterThan(0.84);
      expect(worth).toBeLessThan(0.95);
    });

    it("[DX124] hold as often as was stated", () => {
      const all = sayings.filter(({ isGroup }) => !isGroup);
      expect(reliabilityOf(all).error).toBeLessThan(0.005);
      expect(reliabilityOf(all.filter(({ stated }) => stated >= worthSaying)).error).toBeLessThan(0.03);
    });
  });

  it("[DX125] whose groups go together by a shared normal part lose fewer bits under the joint rule than sign by sign", () => {
    const found = testedRules({ cases: 200, seed: 1763, signs: 69, correlation: 0.6 });
    const lost = new Map(found.map(({ rule, bitsLost }) => [rule, bitsLost]));
    expect(lost.get("the joint rule")).toBeLessThan(lost.get("independent") ?? 0);
  });

  it("[DX126] tell nosema, amoeba, dysentery, bad feed and tracheal mites apart least often, and the picture shows every cause", () => {
    const found = separation({ looks: 12, seed: 1763 });
    const hard = [
      "nosema_apis",
      "nosema_ceranae",
      "amoeba",
      "tracheal_mites",
      "dysentery_confinement",
      "feed_toxicity",
    ];
    expect(hardestPairs(found, 2).every(({ one, other }) => hard.includes(one) && hard.includes(other))).toBe(true);
    const picture = separationPicture(found);
    expect(primaryCauses.filter((id) => !picture.includes(`>${conditions[id].term}<`))).toEqual([]);
  });
});
