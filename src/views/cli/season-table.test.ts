/** A season on the command line, in words: the sentence first, a row a week, choices beside each other. */
import { expect, it } from "vitest";
import { said } from "./test-io.ts";

const asked = {
  start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" },
  counts: [{ date: "2026-08-20", infested: 4, examined: 50 }],
  until: "2026-10-30",
  draws: 200,
};
const inWords = async (verb: string, more: object = {}) =>
  (await said([verb, "--input", "-"], { stdin: JSON.stringify({ ...asked, ...more }) })).out;

it("a forecast begins with its sentence and tells a row a week, the days of counts and the last one", async () => {
  const words = await inWords("season");
  expect(words).toMatch(/^Without action about .* infested on 30 October 2026; it could be /);
  const days = [...words.matchAll(/^2026-\d\d-\d\d/gm)].map(([date]) => date);
  expect(days.slice(0, 4)).toEqual(["2026-08-01", "2026-08-08", "2026-08-15", "2026-08-20"]);
  expect(days.at(-1)).toBe("2026-10-30");
  expect(days.length).toBeLessThan(17);
  expect(words).not.toContain("q05");
  const menthol = await inWords("season", { actions: [{ kind: "menthol", from: "2026-08-25" }] });
  expect(menthol).toMatch(/^With menthol from 25 August about /);
});

it("choices stand beside each other by name, with what would settle them", async () => {
  const choices = [{ name: "menthol early", actions: [{ kind: "menthol", from: "2026-08-25" }] }];
  const words = await inWords("season-choices", { choices, line: 0.2 });
  expect(words).toMatch(/^no action .*\d/m);
  expect(words).toMatch(/^menthol early .*\(\d/m);
  expect(words).toMatch(/would settle|Settled|Not to be told apart/);
});
