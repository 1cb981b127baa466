/** The differential and its comparison in words: what must be reported, what is proven, what was looked for and absent. */
import { expect, it } from "vitest";
import { said } from "./test-io.ts";

const inWords = async (verb: string, asked: object) =>
  (await said([verb, "--input", "-"], { stdin: JSON.stringify(asked) })).out;
const roping = { season: "summer", findings: { ropy_thread: "present" } };
const causes = { first: "american_foulbrood", second: "european_foulbrood" };

it("advises no step beside what must be reported, in the ranking nor side by side", async () => {
  for (const words of [
    await inWords("differential", roping),
    await inWords("compare-causes", { ...roping, ...causes }),
  ]) {
    expect(words).toContain("Report first");
    expect(words).toContain("No look, test or treatment is advised");
    expect(words).not.toMatch(/^Next$|What would part them/m);
  }
  const crawling = { season: "summer", findings: { crawlers: "present" } };
  expect(await inWords("differential", crawling)).toMatch(/^Next$/m);
  expect(await inWords("compare-causes", { ...crawling, ...causes })).toContain("What would part them");
});

it("names an absent sign as absent", async () => {
  const words = await inWords("differential", { season: "spring", findings: { spotty_brood: "absent" } });
  expect(words).toContain("no spotty brood");
  expect(words).not.toContain("Spotty brood ");
});

it("does not say that it cannot tell under what is proven", async () => {
  const tests = [{ test: "tracheal-dissection", positive: 4, examined: 30 }];
  const words = await inWords("differential", { season: "winter", findings: {}, tests });
  expect(words).toContain("are proven");
  expect(words).not.toContain("Cannot tell");
});

it("answers on tests alone, with no finding named", async () => {
  const wash = await inWords("differential", {
    season: "summer",
    tests: [{ test: "varroa-wash", mites: 9, bees: 300 }],
  });
  expect(wash).toContain("Mite wash");
  const strip = await inWords("differential", { season: "summer", tests: [{ test: "efb-strip", result: "found" }] });
  expect(strip).toContain("Must not be missed");
});
