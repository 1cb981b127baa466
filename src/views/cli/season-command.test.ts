/** `skepsis season` and `season-choices` for people: a sentence, a row a week; ended on the way, what stood. */
import { availableParallelism } from "node:os";
import { describe, expect, it } from "vitest";
import { said } from "./test-io.ts";

const question = {
  start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08 },
  counts: [{ date: "2026-09-15", infested: 6, examined: 50 }],
  until: "2027-03-01",
};
const choices = [
  { name: "menthol", actions: [{ kind: "menthol", from: "2026-09-20" }] },
  { name: "formic acid", actions: [{ kind: "formic", from: "2026-09-20" }] },
  { name: "patty", actions: [{ kind: "oil-patty", from: "2026-09-20", to: "2026-11-15" }] },
];
const ask = (verb: string, more: object, interruptAt?: number, flags: readonly string[] = []) =>
  said([verb, "--input", "-", ...flags], {
    stdin: JSON.stringify({ ...question, ...more }),
    ...(interruptAt === undefined ? {} : { interruptAt }),
  });

it("a season begins with its sentence and has a row a week, the last day at the end", async () => {
  const { status, out } = await ask("season", { draws: 200 });
  expect(status).toBe(0);
  expect(out).toMatch(
    /^Without action about \d to \d of 10 bees infested on 1 March 2027; it could be \d to \d of 10 bees\.\nAlive on 1 March: /,
  );
  const [rows = ""] = out.split("log likelihood");
  const days = rows.split("\n").flatMap((line) => /^\d{4}-\d\d-\d\d/.exec(line)?.[0] ?? []);
  expect([days[0], days[1], days.at(-2), days.at(-1)]).toEqual([
    ...["2026-08-01", "2026-08-08"],
    ...["2027-02-27", "2027-03-01"],
  ]);
  expect(out).not.toMatch(/just under|\*\*|q05/);
  expect(out).toContain("- No weather of this place is known");
  const done = await ask("season", { draws: 200, actions: [{ kind: "menthol", from: "2026-08-08" }] });
  expect(done.out).toMatch(/^Without further action about /);
});

it("choices stand beside each other in words, with what would settle them", async () => {
  const { out } = await ask("season-choices", { draws: 200, choices, line: 0.15 });
  expect(out).toMatch(/^Without action about /);
  for (const name of ["without action", "menthol", "formic acid", "patty"])
    expect(out).toMatch(new RegExp(`^${name} +\\d+, could be \\d+ to \\d+`, "m"));
  expect(out).toMatch(/^(Settled|Not to be told apart|A count of|No count of)/m);
});

describe.skipIf(availableParallelism() < 2)("ended on the way, over threads", () => {
  it("a season tells the days that stood, as unfinished, and ends with 1", async () => {
    const many = { draws: 8000, counts: [...question.counts, { date: "2026-12-01", infested: 9, examined: 50 }] };
    const { status, out } = await ask("season", many, 60);
    expect(status).toBe(1);
    expect(out).toMatch(/^Stopped: what is told goes to 1 December 2026 and is held to the counts until then\./);
    expect(out).toMatch(/^2026-12-01 /m);
    expect(out).not.toMatch(/^2026-12-0[2-9]|^2027/m);
    const inJson = (await ask("season", many, 60, ["--json"])).json();
    expect(inJson.unfinished).toBe(true);
    expect((inJson.days as { date: string }[]).at(-1)?.date).toBe("2026-12-01");
  });

  it("choices tell those that were reckoned; at once, that nothing was", async () => {
    const { status, out } = await ask("season-choices", { draws: 5000, choices }, 70);
    expect(status).toBe(1);
    expect(out).toMatch(/^Stopped: [23] of 4 reckoned, doing nothing among them\./);
    expect(out).toMatch(/^without action +\d/m);
    expect(out).not.toMatch(/^patty/m);
    const none = await ask("season", { draws: 8000 }, 0);
    expect([none.status, none.out]).toEqual([1, ""]);
    expect(none.err).toContain("Stopped before anything was reckoned.");
  });
});

describe("what can be typed", () => {
  it("a count is a flag; actions are told as JSON alone, in the help and to whoever types them as a flag", async () => {
    const { out } = await said(["help", "season"]);
    const [flags = "", inJson = ""] = out.split("Only as JSON, with --input\n");
    expect(flags).toMatch(/--counts FIELD=VALUE,…/);
    expect(flags).toMatch(
      /Fields: date \([^)]*\); infested \([^)]*\);\s+examined \([^)]*\)\. Only as JSON: stop, oneSided\./s,
    );
    expect(flags).not.toMatch(/^ {2}--actions/m);
    expect(inJson).toMatch(/^ {2}actions$/m);
    const wrong = await said(["season", "--actions", "menthol"]);
    expect([wrong.status, wrong.err.split("\n")[0]]).toEqual([
      2,
      expect.stringContaining("actions as JSON, with --input"),
    ]);
    const flagged = await said([
      ...["season", "--start.date", "2026-08-01", "--start.bees", "30000", "--start.infested-share", "0.08"],
      ...["--counts", "date=2026-09-15,infested=6,examined=50", "--until", "2027-03-01", "--draws", "200"],
    ]);
    expect(flagged.out).toBe((await ask("season", { draws: 200 })).out);
  });
});
