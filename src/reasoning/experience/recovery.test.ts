/** Learning against simulation: cases drawn from true rates that differ from the published ones. */
import { describe, expect, it } from "vitest";
import type { ExperienceUse } from "../../casebook/index.ts";
import { type FindingId, gradeProbability, publishedEvidence } from "../../knowledge/index.ts";
import { drawNormal, randomStream } from "../../numerics/index.ts";
import { closed } from "./cases-for-tests.ts";
import { experienceOf, noCounts, withExperience } from "./index.ts";

const use: ExperienceUse = { frequencies: true, healthyRates: true, priors: false, strength: 1 };

/** True rates of a programme, none of them a published one. Invented. */
const truth: Readonly<Partial<Record<FindingId, number>>> = {
  roar_agitated: 0.2,
  normal_eggs_and_queen: 0.15,
  queen_not_found_no_eggs: 0.5,
  green_hard_mummies: 0.12,
  night_flight: 0.3,
};

function drawnCases(count: number, seed: number) {
  const { next } = randomStream({ seed, stream: 0 });
  return Array.from({ length: count }, (_, index) =>
    closed(
      `case-${index}`,
      ["queenless"],
      Object.fromEntries(
        Object.entries(truth).map(([finding, rate]) => {
          if (next() < 0.25) return [finding, "not-looked"]; // a quarter was not looked for
          return [finding, next() < rate ? "present" : "absent"];
        }),
      ),
    ),
  );
}

describe("true rates", () => {
  const learnt = (count: number) => {
    const { counts } = experienceOf(drawnCases(count, 11), publishedEvidence);
    const evidence = withExperience(publishedEvidence, counts, use);
    return Object.entries(truth).map(([finding, rate]) => {
      const pair = evidence.frequencies.queenless?.[finding] ?? evidence.healthy.autumn[finding];
      if (!pair?.start || !pair.seen) throw new Error(`nothing was learnt of ${finding}`);
      return { finding, rate, value: pair.value, start: pair.start, looked: pair.seen.looked };
    });
  };

  it("[DX168] come out of two thousand cases within their chance and what the start still weighs", () => {
    for (const { finding, rate, value, start, looked } of learnt(2000)) {
      expect(looked, finding).toBeGreaterThan(1400);
      // What the start still weighs is known; about that, four standard errors of the share.
      const weight = looked / (start.looked + looked);
      const expected = (1 - weight) * (start.present / start.looked) + weight * rate;
      expect(Math.abs(value - expected), finding).toBeLessThan(4 * weight * Math.sqrt((rate * (1 - rate)) / looked));
    }
  });

  it("[DX168] come nearer with more cases", () => {
    const error = (count: number) => learnt(count).reduce((sum, { rate, value }) => sum + Math.abs(value - rate), 0);
    const [ten, hundred, thousand] = [error(10), error(100), error(1000)];
    expect(hundred).toBeLessThan(ten);
    expect(thousand).toBeLessThan(hundred);
  });

  it.each(["rare", "occasional", "common", "usual", "typical"] as const)(
    "[DX168] lie in nine of ten 90-in-100 ranges about a start that is %s, after fifteen cases",
    (grade) => {
      const found = Object.entries(publishedEvidence.frequencies).flatMap(([condition, pairs]) =>
        Object.entries(pairs).flatMap(([finding, pair]) =>
          pair.grade === grade && !pair.suppresses ? [{ condition, finding }] : [],
        ),
      );
      const [pair] = found;
      if (pair === undefined) throw new Error(`no pair is ${grade}`);
      const stream = randomStream({ seed: 5, stream: 1 });
      const middle = Math.log(gradeProbability[grade] / (1 - gradeProbability[grade]));
      let held = 0;
      const trials = 1000;
      for (let trial = 0; trial < trials; trial++) {
        const logit = middle + 0.5 * drawNormal(stream); // the law that the draws follow
        const rate = 1 / (1 + Math.exp(-logit));
        const present = Array.from({ length: 15 }, () => stream.next()).filter((u) => u < rate).length;
        const counts = { ...noCounts, frequencies: { [pair.condition]: { [pair.finding]: { present, looked: 15 } } } };
        const value = withExperience(publishedEvidence, counts, use).frequencies[pair.condition]?.[pair.finding];
        const distance = Math.abs(Math.log((value?.value ?? 0) / (1 - (value?.value ?? 0))) - logit);
        if (distance <= 1.645 * (value?.spread ?? 0)) held += 1;
      }
      // Three standard errors of 1000 trials are 0.028; a beta is not quite a normal of log odds: 0.01 more.
      expect(held / trials).toBeGreaterThan(0.9 - 0.038);
      expect(held / trials).toBeLessThan(0.9 + 0.038);
    },
  );
});
