/** How well past answers did: scores by hand from what the differential states, limits, and what is left out. */
import { describe, expect, it } from "vitest";
import { type ExperienceUse, emptyCasebook, evidenceOf, experienceUnused } from "../../casebook/index.ts";
import { wilsonInterval } from "../../numerics/index.ts";
import { type AnyInput, posteriorsUnder } from "../differential/index.ts";
import { closed } from "./cases-for-tests.ts";
import { countsWithout, evidenceInUse, fewestScored, scoreOf, withExperience } from "./index.ts";

const used: ExperienceUse = { frequencies: true, healthyRates: true, priors: false, strength: 1 };
const programme = (experience: ExperienceUse) => {
  const start = evidenceOf(emptyCasebook);
  return { ...start, settings: { ...start.settings, experience } };
};

const queenless = { roar_agitated: "present", no_brood_in_season: "present" } as const;
const starved = { stores_exhausted: "present", heads_in_cells: "present" } as const;
const cases = [
  ...Array.from({ length: 6 }, (_, index) => closed(`q${index}`, ["queenless"], queenless)),
  ...Array.from({ length: 4 }, (_, index) => closed(`s${index}`, ["starvation"], starved)),
  closed("odd", ["mouse_disturbance"], queenless),
  closed("mixed", ["queenless", "mouse_disturbance"], queenless),
];

const scoresIn = (score: ReturnType<typeof scoreOf>) => {
  if (!score.scores.ok) throw new Error(JSON.stringify(score.scores.problems));
  return score.scores.value;
};

describe("scores of past answers", () => {
  const inUse = evidenceInUse(programme(experienceUnused), cases);
  const score = scoreOf(cases, inUse);
  const stated = (findings: AnyInput["findings"]) => {
    const answer = posteriorsUnder({ season: "autumn", findings });
    if (!answer.ok) throw new Error("not answered");
    return new Map(answer.value.ids.map((id, at) => [id, answer.value.posterior[at] ?? 0]));
  };

  it("[DX170] Brier and logarithm are the means that a hand reckons", () => {
    const [q, s] = [stated(queenless), stated(starved)];
    const brier = (of: ReadonlyMap<string, number>, ...held: readonly string[]) =>
      [...of].reduce((sum, [id, p]) => sum + (held.includes(id) ? 1 - p : p) ** 2, 0);
    const log = (of: ReadonlyMap<string, number>, ...held: readonly string[]) =>
      held.reduce((sum, id) => sum - Math.log(of.get(id) ?? 0), 0) / held.length;
    const sum = (of: typeof brier) =>
      6 * of(q, "queenless") +
      4 * of(s, "starvation") +
      of(q, "mouse_disturbance") +
      of(q, "queenless", "mouse_disturbance");
    const { brier: scored, logScore, clip, held } = scoresIn(score);
    expect(scored.value).toBeCloseTo(sum(brier) / 12, 12);
    expect(logScore.value).toBeCloseTo(sum(log) / 12, 12);
    expect({ clip, held }).toEqual({ clip: 1e-15, held: 0 });
    expect(scored.low).toBeLessThan(scored.value);
    expect(scored.high).toBeGreaterThan(scored.value);
    expect(scored.n).toBe(12);
  });

  it("[DX170] limits repeat for a seed, and more cases of the same sort bring them together", () => {
    expect(scoreOf(cases, inUse)).toEqual(score);
    const many = Array.from({ length: 10 }, (_, round) =>
      cases.map((each) => ({ ...each, id: `${each.id}-${round}` })),
    );
    const wide = scoresIn(score).logScore;
    const narrow = scoresIn(scoreOf(many.flat(), evidenceInUse(programme(experienceUnused), many.flat()))).logScore;
    expect(narrow.value).toBeCloseTo(wide.value, 12);
    // Ten times the cases: limits nearer by √10 = 3.2, less what 2000 samples scatter.
    expect((wide.high - wide.low) / (narrow.high - narrow.low)).toBeGreaterThan(2.5);
  });

  it("[DX171] a case is put to what the others taught, never to what it taught", () => {
    const learning = evidenceInUse(programme(used), cases);
    const learnt = scoreOf(cases, learning);
    expect(learnt.leftOut).toBe(true);
    const odd = learnt.scored.find((each) => each.case === "odd");
    const others = withExperience(learning.start, countsWithout(learning.experience.lessons, "odd"), used);
    const answer = posteriorsUnder({ season: "autumn", findings: queenless }, others);
    const at = others.conditionIds.indexOf("mouse_disturbance");
    expect(odd?.given).toEqual([answer.ok ? answer.value.posterior[at] : null]);
    const itself = posteriorsUnder({ season: "autumn", findings: queenless }, learning.evidence);
    expect(itself.ok && itself.value.posterior[at]).not.toBe(odd?.given[0]);
  });

  it("[DX172] first and first three are shares with Wilson's limits; a mixed case counts by its highest cause", () => {
    const { topOne, topThree } = scoresIn(score);
    const ranks = new Map(score.scored.map((each) => [each.case, each.rank]));
    expect(ranks.get("mixed")).toBe(ranks.get("q0"));
    expect(ranks.get("odd")).toBeGreaterThan(3);
    const x = score.scored.filter(({ rank }) => rank === 1).length;
    expect(x).toBeGreaterThan(0);
    expect(topOne).toMatchObject({ value: x / 12, ...wilsonInterval({ x, n: 12, level: 0.95 }) });
    expect(topThree.value).toBe(score.scored.filter(({ rank }) => rank <= 3).length / 12);
  });

  it("[DX172] a cause level with others stands last among them", () => {
    // Nothing looked for: conditions of equal priors are given the same.
    const none = stated({});
    const level = [...none].filter(([id, p]) => [...none].some(([other, q]) => other !== id && q === p));
    const [first] = level;
    if (first === undefined) throw new Error("no two conditions are level");
    const place = [...none.values()].filter((p) => p >= first[1]).length;
    const one = [closed("level", [first[0]], {})];
    expect(scoreOf(one, evidenceInUse(programme(experienceUnused), one)).scored[0]?.rank).toBe(place);
  });

  it("[DX173] fewer than ten cases give no score; cases with nothing before the result are told", () => {
    const few = [...cases.slice(0, fewestScored - 1), closed("late", ["queenless"], queenless, { before: null })];
    const { scores, scored, notScored } = scoreOf(few, evidenceInUse(programme(experienceUnused), few));
    expect(scores).toMatchObject({
      ok: false,
      problems: [{ code: "too-few-scored", slots: { cases: 9, needed: 10 } }],
    });
    expect(scored).toHaveLength(9);
    expect(notScored).toMatchObject([{ code: "nothing-before-result", slots: { case: "late" } }]);
  });

  it("[DX174] every pair of a case and a condition lies in one bin", () => {
    const { bins } = scoresIn(score);
    expect(bins.reduce((sum, bin) => sum + bin.n, 0)).toBe(12 * 45);
    const confirmed = bins.reduce((sum, bin) => sum + bin.n * bin.observed.value, 0);
    expect(confirmed).toBeCloseTo(13, 9);
  });
});
