/** What people do to a colony: vapours, patties, new queens; plans that cannot be. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  type Action,
  colonyCourse,
  formic,
  formicWindow,
  inUse,
  measuresOf,
  menthol,
  mentholHazard,
  mentholRate,
  noMeasures,
  pattyReduction,
  requeen,
  warmthTroubles,
} from "./index.ts";
import { courseOf, november } from "./runs-for-tests.ts";

const forms = JSON.parse(readFileSync("tests/golden/season/closed-forms.json", "utf8"));
const plan = (actions: readonly Action[], days = 730) =>
  measuresOf({
    ...{ actions, stockSusceptibility: 1 },
    warmth: {
      ...{ from: "2025-11-01", days, formicLeastCelsius: inUse.formicLeastCelsius },
      highs: { method: "measured", on: () => 20 },
    },
  });
const codes = (actions: readonly Action[]) => plan(actions).problems.map(({ code, field }) => `${code} ${field}`);

describe("vapours", () => {
  it.each(forms.mentholHazard as { highCelsius: number; perDay: number }[])(
    "[SE30] high of $highCelsius °C",
    ({ highCelsius, perDay }) => {
      expect(Math.abs(mentholHazard(highCelsius) - perDay)).toBeLessThan(0.50001e-4);
    },
  );

  it.each(forms.mentholRate as { celsius: number; ratio: number }[])(
    "[SE30] at $celsius °C crystals leave at $ratio of 33 °C",
    ({ celsius, ratio }) => {
      expect(Math.abs(mentholRate(celsius) - ratio)).toBeLessThan(0.50001e-3);
    },
  );

  it("[SE30] nothing is left to act once the grams are gone, the sooner the hotter", () => {
    const acting = (high: number) => {
      const measures = noMeasures(60);
      menthol(measures, 10, () => high);
      return measures.clearing.filter((each) => each > 0).length;
    };
    expect(acting(20)).toBe(28);
    // 50 g at 2.86 g a day and the rate at the top bars (34.6 °C for a high of 35): the 16th day takes the last.
    expect(acting(35)).toBe(Math.ceil(50 / (2.86 * mentholRate(0.4 * 34 + 0.6 * 35))));
  });

  it.each(forms.mentholStart as { start: string; infestedPerHundred: number }[])(
    "[SE31] menthol from $start",
    ({ start, infestedPerHundred }) => {
      const course = courseOf({
        ...november,
        actions: [{ kind: "menthol", from: `2026-${start}` }],
        until: "2026-12-01",
      });
      expect(Math.abs(100 * (course.at(-1)?.infestedShare ?? -1) - infestedPerHundred)).toBeLessThan(0.50001e-3);
    },
  );

  it("[SE32] fifteen days at 0.2 leave e⁻³, on the days after each dose", () => {
    const measures = noMeasures(40);
    formic(measures, 3, { highOn: () => 20, least: 10 });
    const sum = measures.clearing.reduce((total, each) => total + each, 0);
    expect(Math.abs(sum - 3)).toBeLessThan(1e-12); // fifteen sums of 0.2
    expect([...measures.clearing.entries()].filter(([, each]) => each > 0).map(([day]) => day)).toEqual([
      3, 4, 5, 6, 7, 10, 11, 12, 13, 14, 17, 18, 19, 20, 21,
    ]);
  });

  it("[SE146] the vapour of formic acid does nothing on days under its window, but as specified acts on any", () => {
    const measures = noMeasures(40);
    formic(measures, 3, { highOn: (day) => (day < 12 ? 9.9 : 10), least: formicWindow.least });
    expect([...measures.clearing.entries()].filter(([, each]) => each > 0).map(([day]) => day)).toEqual([
      12, 13, 14, 17, 18, 19, 20, 21,
    ]);
    const winter = { ...november, actions: [{ kind: "formic", from: "2025-12-20" }], until: "2026-03-31" } as const;
    const left = (question: typeof november) => courseOf(question).at(-1)?.infestedShare ?? Number.NaN;
    const without = left({ ...winter, actions: [], parameters: inUse });
    expect(left({ ...winter, parameters: inUse })).toBe(without);
    expect(left(winter)).toBeLessThan(0.1 * without);
  });

  it("[SE146] days outside the window are told, with how many, when and the farthest high", () => {
    const tells = (highs: (day: number) => number, from: string, days = 40) => {
      const warmth = {
        ...{ from: "2026-09-01", days, formicLeastCelsius: inUse.formicLeastCelsius },
        highs: { method: "assumed", on: highs },
      } as const;
      return warmthTroubles({ kind: "formic", from }, "actions[0]", warmth).map(({ code, severity, field, slots }) => [
        ...[code, severity, field],
        slots,
      ]);
    };
    expect(tells((day) => (day === 9 ? 10 : 29.4), "2026-09-03")).toEqual([]);
    const field = "actions[0].from";
    expect(tells((day) => 12 - day / 4, "2026-09-03")).toEqual([
      [
        ...["season-formic-cold", "warned", field],
        { date: "2026-09-10", last: "2026-09-21", days: 10, of: 15, high: 7, bound: 10, highs: "assumed" },
      ],
    ]);
    expect(tells((day) => 31 - day, "2026-09-01", 6)).toEqual([
      [
        ...["season-formic-hot", "warned", field],
        { date: "2026-09-01", last: "2026-09-02", days: 2, of: 5, high: 31, bound: 29.4, highs: "assumed" },
      ],
    ]);
    // Nothing is told of days after the run.
    expect(tells(() => 0, "2026-10-11")).toEqual([]);
  });

  it("[SE147] a new queen and a uniting on a cold day are told of, in a course and in a choice at its own field", () => {
    const requeening = { kind: "requeen", from: "2026-01-10", susceptibility: 0.7 } as const;
    const codesOf = (from: string) =>
      colonyCourse({ ...november, actions: [{ ...requeening, from }] }).problems.flatMap(({ code, field, severity }) =>
        severity === "warned" ? [`${code} ${field}`] : [],
      );
    expect(codesOf("2026-01-10")).toContain("season-opened-in-cold actions[0].from");
    expect(codesOf("2026-07-10")).not.toContain("season-opened-in-cold actions[0].from");
  });
});

describe("patties and queens", () => {
  it("[SE33] no eggs for ten days; the first of the new stock emerge on day 31", () => {
    const measures = noMeasures(60);
    requeen(measures, 5, { susceptibility: 0.7, gapDays: 10 });
    expect([4, 5, 14, 15].map((day) => measures.laying[day])).toEqual([1, 0, 0, 1]);
    expect([35, 36, 59].map((day) => measures.emerging[day])).toEqual([1, 0.7, 0.7]);
  });

  it("[SE33] the new stock shows within the summer, not at once", () => {
    const actions = [{ kind: "requeen", from: "2026-07-01", susceptibility: 0.7 }] as const;
    const [with_, without] = [courseOf({ ...november, actions }), courseOf(november)];
    const share = (course: typeof with_, day: number) => course[day]?.infestedShare ?? Number.NaN;
    // The two runs hold a different number of ages: equal but for the order of sums.
    expect(Math.abs(share(with_, 242 + 9) / share(without, 242 + 9) - 1)).toBeLessThan(1e-12);
    expect(share(with_, 365)).toBeLessThan(0.5 * share(without, 365));
  });

  it("[SE33] a patty is there from its first to its last day", () => {
    const answer = plan([{ kind: "oil-patty", from: "2025-11-03", to: "2025-11-05" }]);
    const contact = answer.ok ? [...answer.value.contact.slice(0, 6)] : [];
    expect(contact).toEqual([1, 1, 1 - pattyReduction, 1 - pattyReduction, 1 - pattyReduction, 1]);
  });
});

describe("plans that cannot be", () => {
  it("[SE34] one kind twice at once, and two vapours at once, are refused", () => {
    expect(
      codes([
        { kind: "menthol", from: "2026-09-01" },
        { kind: "menthol", from: "2026-09-28" },
      ]),
    ).toEqual(["season-actions-overlap actions[1].from"]);
    expect(
      codes([
        { kind: "menthol", from: "2026-09-01" },
        { kind: "menthol", from: "2026-09-29" },
      ]),
    ).toEqual([]);
    expect(
      codes([
        { kind: "menthol", from: "2026-09-10" },
        { kind: "formic", from: "2026-09-01" },
      ]),
    ).toEqual(["season-actions-overlap actions[1].from"]);
    expect(
      codes([
        { kind: "formic", from: "2026-09-01" },
        { kind: "menthol", from: "2026-09-22" },
      ]),
    ).toEqual([]);
  });

  it("[SE34] a patty beside a vapour, and a queen beside either, are allowed", () => {
    expect(
      codes([
        { kind: "oil-patty", from: "2026-08-01", to: "2026-10-01" },
        { kind: "menthol", from: "2026-09-01" },
        { kind: "requeen", from: "2026-09-01", susceptibility: 0.7 },
      ]),
    ).toEqual([]);
  });

  it("[SE35] before the first day: refused; after the last: told, and nothing changes", () => {
    expect(codes([{ kind: "formic", from: "2025-10-31" }])).toEqual(["season-action-before-start actions[0].from"]);
    const late = { ...november, actions: [{ kind: "menthol", from: "2027-11-01" }] as const };
    expect(codes(late.actions)).toEqual(["season-action-after-end actions[0].from"]);
    expect(courseOf(late)).toEqual(courseOf(november));
  });

  it("[SE52] an action with no day, an end before its start, a reduction or a stock out of range is refused by name", () => {
    expect(codes([{ kind: "menthol", from: "2026-02-30" }])).toEqual(["season-day-unknown actions[0].from"]);
    expect(codes([{ kind: "oil-patty", from: "2026-03-01", to: "soon" }])).toEqual([
      "season-day-unknown actions[0].to",
    ]);
    expect(codes([{ kind: "oil-patty", from: "2026-03-02", to: "2026-03-01" }])).toEqual([
      "season-action-ends-early actions[0].to",
    ]);
    expect(codes([{ kind: "oil-patty", from: "2026-03-01", to: "2026-03-02", reduction: 1.2 }])).toEqual([
      "season-reduction-out-of-range actions[0].reduction",
    ]);
    expect(codes([{ kind: "requeen", from: "2026-03-01", susceptibility: Number.NaN }])).toEqual([
      "season-stock-out-of-range actions[0].susceptibility",
    ]);
  });
});

describe("a brood break", () => {
  const within = { kind: "brood-break", from: "2026-07-01", to: "2026-07-20" } as const;

  it("[SE121] lays nothing from its first to its last day, and leaves the rest of the year as it was", () => {
    const brood = (course: ReturnType<typeof courseOf>, date: string) =>
      course.find((day) => day.date === date)?.brood ?? Number.NaN;
    const [kept, alone] = [courseOf({ ...november, actions: [within] }), courseOf(november)];
    expect(brood(kept, "2026-07-01")).toBe(brood(alone, "2026-07-01"));
    // On the morning after twenty days without an egg, brood of one age is left: that laid on 30 June.
    expect(brood(kept, "2026-07-21")).toBeLessThan(0.06 * brood(alone, "2026-07-21"));
    expect(brood(kept, "2026-08-11")).toBeGreaterThan(0.8 * brood(alone, "2026-08-11"));
  });

  it("[SE121] one that ends before it begins, begins before the run or on no day, or meets another, is refused by name", () => {
    const refused = (from: string, to: string) => codes([{ ...within, from, to }]);
    expect(refused("2026-07-02", "2026-07-01")).toEqual(["season-action-ends-early actions[0].to"]);
    expect(refused("2026-02-30", "2026-07-01")).toEqual(["season-day-unknown actions[0].from"]);
    expect(refused("2026-07-01", "later")).toEqual(["season-day-unknown actions[0].to"]);
    expect(refused("2025-10-01", "2026-07-01")).toEqual(["season-action-before-start actions[0].from"]);
    expect(codes([within, { ...within, from: "2026-07-20", to: "2026-08-01" }])).toEqual([
      "season-actions-overlap actions[1].from",
    ]);
    expect(codes([within, { ...within, from: "2026-07-21", to: "2026-08-01" }])).toEqual([]);
  });

  it("[SE121] beside a vapour, a patty or a new queen it is allowed", () => {
    expect(
      codes([
        within,
        { kind: "formic", from: "2026-07-05" },
        { kind: "oil-patty", from: "2026-07-05", to: "2026-08-05" },
        { kind: "requeen", from: "2026-07-10", susceptibility: 0.7 },
      ]),
    ).toEqual([]);
  });
});
