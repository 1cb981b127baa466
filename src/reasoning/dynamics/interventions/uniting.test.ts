/** Two colonies made one: nothing appears or vanishes but what is said to, mites come along, a stop forbids it. */
import { describe, expect, it } from "vitest";
import type { Action } from "../actions.ts";
import { type CourseQuestion, colonyCourse, readyRun } from "../course.ts";
import { colonyForecast, type ForecastQuestion } from "../filter/forecast.ts";
import { joiningSteps } from "../filter/joining.ts";
import { cutHere, reckonHere } from "../filter/steps.ts";
import { at, broodDays, classes, type Layout } from "../layout.ts";
import { specified } from "../parameters.ts";
import { compareChoices } from "../what-if/choices.ts";
import { type Uniting, unite, unitingFigures } from "./uniting.ts";

const start = { date: "2026-08-01", bees: 20_000, infestedShare: 0.05, brood: "usual" } as const;
const uniting = (more: Partial<Uniting["donor"]["start"]> = {}, lost?: number): Uniting => ({
  kind: "unite",
  from: "2026-09-10",
  donor: { start: { date: "2026-08-20", bees: 9000, infestedShare: 0.2, brood: "usual", ...more } },
  ...(lost === undefined ? {} : { lost }),
});
const question = (actions: readonly Action[] = [uniting()]): CourseQuestion => ({
  site: {},
  start,
  actions,
  until: "2027-03-01",
});
const courseOf = (asked: CourseQuestion) => {
  const course = colonyCourse(asked);
  return course.ok ? course.value : expect.fail(JSON.stringify(course.problems));
};
const recordOf = (asked: CourseQuestion) => {
  const ready = readyRun(asked);
  return ready.ok ? { state: ready.value.colony, layout: ready.value.model.layout } : expect.fail("not ready");
};
/** Bees by class, and brood. */
function counted(state: Float64Array, layout: Layout) {
  const bees = new Array<number>(classes).fill(0);
  for (let cell = layout.summer; cell < layout.length; cell += classes)
    for (let each = 0; each < classes; each++) bees[each] = (bees[each] as number) + (state[cell + each] as number);
  const brood = state.subarray(layout.brood, layout.brood + broodDays).reduce((sum, each) => sum + each, 0);
  return [...bees, brood];
}

describe("uniting", () => {
  it("[SE122] neither bees nor mites nor brood appear or vanish beyond the loss that is stated", () => {
    for (const kept of [1, 0.9, 0]) {
      const { state, layout } = recordOf(question([]));
      const donor = recordOf({ ...question([]), start: { ...start, bees: 9000, infestedShare: 0.3 } }).state;
      const [own, other] = [counted(state, layout), counted(donor, layout)];
      unite(state, 0, layout, { states: donor, start: 0, kept });
      for (const [each, sum] of counted(state, layout).entries()) {
        const stays = each === classes ? 1 : kept;
        // Sums of some hundred numbers of up to 10⁴.
        expect(Math.abs(sum - ((own[each] as number) + stays * (other[each] as number)))).toBeLessThan(1e-8);
      }
      expect(state[at.bees]).toBeCloseTo(20_000 + kept * 9000, 6);
      expect(state[at.infested]).toBeCloseTo(20_000 * 0.05 + kept * 9000 * 0.3, 6);
    }
  });

  it("[SE122] the course holds the other colony's bees from the next morning on, by age and mite", () => {
    // Nobody dies, nothing is laid: what is added is all that changes.
    const still = { ...specified, hiveMortality: 0, foragingMortality: 0, winterMortality: 0, springMortality: 0 };
    const none = { brood: "none" } as const;
    const asked = (actions: readonly Action[]) => ({
      ...question(actions),
      parameters: { ...still, layingMaximum: 0 },
      start: { ...start, ...none },
    });
    const at = (course: ReturnType<typeof courseOf>, date: string) =>
      course.find((each) => each.date === date) ?? expect.fail(date);
    for (const lost of [undefined, 0, 0.25]) {
      const course = courseOf(asked([uniting(none, lost)]));
      expect(at(course, "2026-09-10").bees).toBeCloseTo(20_000, 6);
      expect(at(course, "2026-09-11").bees).toBeCloseTo(20_000 + 9000 * (1 - (lost ?? unitingFigures.lost)), 6);
      expect(at(course, "2027-03-01").bees).toBeCloseTo(at(course, "2026-09-11").bees, 6);
    }
  });

  it("[SE123] more mites in the other colony never mean fewer afterwards, on any morning", () => {
    const courses = [0, 0.05, 0.1, 0.2, 0.3].map((infestedShare) => courseOf(question([uniting({ infestedShare })])));
    courses.slice(1).forEach((more, index) => {
      more.forEach(({ bees, infestedShare }, day) => {
        const less = courses[index]?.[day] ?? expect.fail("no day");
        expect(infestedShare).toBeGreaterThanOrEqual(less.infestedShare);
        if (day > 45 && day < 120) expect(bees * infestedShare).toBeGreaterThan(less.bees * less.infestedShare);
      });
    });
  });

  it("[SE123] a clean colony that is added dilutes, and where neither has mites none come", () => {
    const without = courseOf(question([]));
    const clean = courseOf(question([uniting({ infestedShare: 0 })]));
    expect(clean[45]?.infestedShare).toBeLessThan(without[45]?.infestedShare ?? 0);
    const both = { ...question([uniting({ infestedShare: 0 })]), start: { ...start, infestedShare: 0 } };
    expect(Math.max(...courseOf(both).map(({ infestedShare }) => infestedShare))).toBe(0);
  });

  it("[SE124] something to be reported forbids it, in a course, a forecast and a choice", () => {
    const asked: ForecastQuestion = { ...question(), counts: [], draws: 100, seed: 1, isStopped: true };
    const codes = (result: {
      readonly problems: readonly { readonly code: string; readonly field: string | null }[];
    }) => result.problems.map(({ code, field }) => `${code} ${field}`);
    const refused = ["season-uniting-stopped actions[0].from"];
    expect(codes(colonyCourse(asked))).toEqual(refused);
    expect(codes(colonyForecast(asked))).toEqual(refused);
    const choosing = { ...asked, actions: [], choices: [{ name: "unite", actions: [uniting()] }] };
    expect(codes(compareChoices(choosing, { every: null }))).toEqual([
      "season-uniting-stopped choices[0].actions[0].from",
    ]);
    expect(colonyForecast({ ...asked, isStopped: false }).ok).toBe(true);
    // What else is done is not uniting.
    expect(colonyForecast({ ...asked, actions: [{ kind: "formic", from: "2026-09-10" }] }).ok).toBe(true);
  });

  it("[SE125] what the other colony cannot be is refused by name, at the uniting", () => {
    const codes = (action: Uniting) =>
      colonyCourse(question([action])).problems.map(({ code, field }) => `${code} ${field}`);
    const donor = "actions[0].donor";
    expect(codes(uniting({ date: "2026-09-10" }))).toEqual([`season-donor-too-late ${donor}.start.date`]);
    expect(codes(uniting({ date: "x" }))).toEqual([`season-day-unknown ${donor}.start.date`]);
    expect(codes(uniting({ bees: 20 }))).toEqual([`season-bees-out-of-range ${donor}.start.bees`]);
    expect(codes(uniting({ infestedShare: 0.99 }))).toEqual([`season-share-out-of-range ${donor}.start.infestedShare`]);
    expect(codes(uniting({}, 1.5))).toEqual(["season-lost-out-of-range actions[0].lost"]);
    expect(codes(uniting({ bees: Number.NaN }))).toEqual([`season-bees-out-of-range ${donor}.start.bees`]);
    const badly = {
      ...uniting(),
      donor: { ...uniting().donor, counts: [{ date: "2026-08-25", infested: 9, examined: 5 }] },
    };
    const forecast = colonyForecast({ ...question([badly]), counts: [], draws: 100, seed: 1 });
    expect(forecast.problems.map(({ code, field }) => `${code} ${field}`)).toEqual([
      `season-count-impossible ${donor}.counts[0].infested`,
    ]);
  });

  it("[SE144] the other colony of an own uniting is the same, whatever a choice unites before it", () => {
    const asked: ForecastQuestion = { ...question([uniting()]), counts: [], draws: 100, seed: 1 };
    const donorsOf = (actions: readonly Uniting[]) => {
      const joint = { ...asked, actions };
      const ready = readyRun(joint);
      if (!ready.ok) throw new Error(JSON.stringify(ready.problems));
      const joined = reckonHere(joiningSteps(joint, ready.value, { from: 0, share: 0 }, cutHere(asked)));
      return joined.ok ? joined.value : expect.fail("not joined");
    };
    const [alone] = donorsOf([uniting()]);
    const [chosen, own] = donorsOf([uniting(), { ...uniting(), from: "2026-09-05" }]);
    expect(own?.morning).toBe(alone?.morning);
    expect(own?.states).toEqual(alone?.states);
    // The chosen one has chances of its own.
    expect(chosen?.morning).toBeLessThan(own?.morning ?? 0);
    expect(chosen?.states).not.toEqual(donorsOf([{ ...uniting(), from: "2026-09-05" }])[0]?.states);
  });

  it("[SE126] the other colony is held to its own counts, and a count it could hardly give is told", () => {
    const asked: ForecastQuestion = { ...question(), counts: [], draws: 400, seed: 1 };
    const counting = (infested: number): Uniting => ({
      ...uniting(),
      donor: { ...uniting().donor, counts: [{ date: "2026-09-01", infested, examined: 50 }] },
    });
    const seenAfter = (action: Uniting, on = "2026-09-11") => {
      const forecast = colonyForecast({ ...asked, actions: [action] });
      return forecast.ok ? forecast.value.days.find(({ date }) => date === on) : expect.fail("no forecast");
    };
    const [few, many] = [seenAfter(counting(1)), seenAfter(counting(20))];
    expect(many?.infestedShare.q50).toBeGreaterThan(few?.infestedShare.q50 ?? 1);
    // Until then it is another colony: nothing of it is seen here.
    expect(seenAfter(counting(20), "2026-09-10")).toEqual(seenAfter(counting(1), "2026-09-10"));
    const odd = colonyForecast({ ...asked, actions: [counting(50)] });
    expect(odd.problems.map(({ code, field }) => `${code} ${field}`)).toContain(
      "season-count-contradicts actions[0].donor.counts",
    );
  });
});
