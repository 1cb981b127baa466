/** What the methods of sequential reading say and draw, for answers that their examples do not give. */
import { describe, expect, it } from "vitest";
import { verbNamed } from "../../../../reasoning/index.ts";
import { methodViewOf, type PictureView } from "../../index.ts";

function shown(name: string, question: object): { readonly says: string; readonly pictures: readonly PictureView[] } {
  const [verb, view] = [verbNamed(name), methodViewOf(name)];
  if (!verb || !view) throw new Error(name);
  const reply = verb.ask(question);
  if (reply.kind !== "answered") return { says: reply.problems.map(({ code }) => code).join(", "), pictures: [] };
  return { says: view.says(reply.value), pictures: view.pictures(reply.value) };
}

const plan = { lowPrevalence: 0.05, highPrevalence: 0.2, errors: "nominal", maxBees: 50 };

describe("a sample read against a plan", () => {
  it("none found is never a zero alone", () => {
    const { says } = shown("sequential-reading", { ...plan, examined: 13, positive: 0 });
    expect(says).toMatch(
      /^\*\*Low: the plan stops at 0 with mites of 13 bees\.\*\* None found in 13; it could be 0 to/,
    );
  });

  it("still open, it says what would stop it and gives no range", () => {
    const { says, pictures } = shown("sequential-reading", { ...plan, results: [0, 1, 0] });
    expect(says).toBe(
      "**Read on.** After 1 with mites of 3 bees neither line is crossed. If no more is found: low at 22 bees. If every next bee has mites: high at 4 bees.",
    );
    expect(pictures.map(({ kind }) => kind)).toEqual(["curves", "curves"]);
  });

  it("undecided at the last bee is said, with a range", () => {
    const open = { ...plan, atEnd: "undecided", maxBees: 10, minBees: 10 };
    expect(shown("sequential-reading", { ...open, examined: 10, positive: 1 }).says).toMatch(
      /^\*\*Undecided: the plan stops at 1 with mites of 10 bees\.\*\* Best guess/,
    );
  });

  it("of bees read past the stop it says whether they hold, and draws them as a third range", () => {
    const past = { ...plan, examined: 23, positive: 4, allExamined: 50, allPositive: 6 };
    const planned = shown("sequential-reading", { ...past, setBeforehand: 50 });
    expect(planned.says).toContain("All 50 bees say 4.53 to 24.3 in 100, which holds too");
    expect(shown("sequential-reading", past).says).toContain("which may hold too rarely.");
    expect(planned.pictures.find(({ kind }) => kind === "ranges")).toMatchObject({
      rows: [{ name: "Knows of the stop" }, { name: "Forgets the stop" }, { name: "All bees, as planned" }],
    });
  });

  it("draws the path of the bees beside the stops", () => {
    const [stops] = shown("sequential-reading", { ...plan, results: [1, 1] }).pictures;
    expect(stops).toMatchObject({
      series: [
        { style: "steps" },
        { style: "steps" },
        {
          name: "This sample",
          points: [
            [0, 0],
            [1, 1],
            [2, 2],
          ],
        },
      ],
      marks: [{ x: 2, y: 2, says: "2 of 2" }],
    });
  });
});

describe("a plan", () => {
  it("says what it saves, or that it reads more than a fixed number", () => {
    expect(shown("sequential-plan", plan).says).toMatch(/A number fixed beforehand would be 32 bees: .* are saved\.$/);
    const near = { ...plan, lowPrevalence: 0.1, highPrevalence: 0.101, maxBees: 200 };
    expect(shown("sequential-plan", near).says).toMatch(/No fixed number of up to 10,000 bees keeps the errors/);
  });

  it("that may stay undecided says how often", () => {
    expect(shown("sequential-plan", { ...plan, atEnd: "undecided" }).says).toMatch(/It stays undecided [\d.]+ and/);
  });

  it("out of reach is refused", () => {
    expect(shown("sequential-plan", { ...plan, errors: "actual", maxBees: 20 }).says).toBe(
      "sequential-plan-needs-more-bees",
    );
  });

  it("with looks only in batches draws its stops at the looks", () => {
    const [stops] = shown("sequential-plan", { ...plan, minBees: 20, batch: 10 }).pictures;
    if (stops?.kind !== "curves") return expect.fail("no picture");
    expect(stops.series[0]?.points.map(([bees]) => bees)).toEqual([20, 30, 40, 50]);
  });
});

it("three answers leave out undecided where none stays so", () => {
  const bands = { lightShare: 0.05, moderateFrom: 0.15, moderateTo: 0.25, severeShare: 0.4, maxBees: 60 };
  const names = (question: object) => {
    const picture = shown("three-way-plan", question).pictures[1];
    return picture?.kind === "curves" ? picture.series.map(({ name }) => name) : [];
  };
  expect(names(bands)).toEqual(["Light", "Moderate", "Severe"]);
  expect(names({ ...bands, atEnd: "undecided" })).toEqual(["Light", "Moderate", "Severe", "Undecided"]);
});
