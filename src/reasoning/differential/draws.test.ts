/** Ranges from a list of sets against ranges from all of them. */
import { expect, it } from "vitest";
import type { FindingId } from "../../knowledge/index.ts";
import { caseModel } from "./case-model.ts";
import { rangesOf } from "./draws.ts";
import { readInput } from "./read-input.ts";
import { statedPosterior } from "./reasons.ts";

const crawling: readonly FindingId[] = [
  "crawlers",
  "k_wing",
  "faecal_streaks_front",
  "bloated_abdomen",
  "small_cluster",
  "weak_for_season",
  "spotty_brood",
  "queen_not_found_no_eggs",
  "loose_cluster",
  "dead_emerging",
];
const sickBrood: readonly FindingId[] = [
  "spotty_brood",
  "foul_odour",
  "twisted_discoloured_larva",
  "chalk_mummies",
  "varroa_on_adults",
  "deformed_wings",
  "chewed_or_bald_pupae",
  "weak_for_season",
  "crawlers",
  "dead_emerging",
];

it.each([
  ["winter", crawling],
  ["summer", sickBrood],
] as const)("[DX129] a list of sets gives the ranges of all sets: ten signs in %s", (season, present) => {
  const read = readInput({
    season,
    draws: 120,
    findings: Object.fromEntries(present.map((finding) => [finding, "present" as const])),
  });
  if (!read.ok) return expect.fail("not read");
  const model = caseModel(read.value);
  const posterior = statedPosterior(model) ?? expect.fail("cannot be");
  const [listed, all] = [rangesOf(model, posterior), rangesOf(model, posterior, Number.POSITIVE_INFINITY)];
  let compared = 0;
  for (const kind of ["condition", "group"] as const)
    for (const [index, { low, high }] of all[kind].entries()) {
      if (high <= 0.1) continue;
      compared += 1;
      const own = listed[kind][index];
      expect(Math.abs((own?.high ?? 0) - high)).toBeLessThan(0.03);
      if (low > 0.1) expect(Math.abs((own?.low ?? 0) - low)).toBeLessThan(0.03);
    }
  expect(compared).toBeGreaterThan(4);
  expect(listed).not.toEqual(all);
});
