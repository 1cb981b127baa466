/** What another evidence would change, before it is accepted. */
import { describe, expect, it } from "vitest";
import { changedEvidence, publishedEvidence } from "../../knowledge/index.ts";
import { differential } from "../differential/index.ts";
import { askedUnder, changesUnder, type PastCase, type Reckoning } from "./index.ts";

const plain: Reckoning = { evidence: publishedEvidence, settings: { thresholds: {}, nothingWrong: null } };
const under = (settings: Partial<Reckoning["settings"]>): Reckoning => ({
  ...plain,
  settings: { ...plain.settings, ...settings },
});
const cases: readonly PastCase[] = [
  {
    id: "mites",
    colony: "A-1",
    input: {
      season: "winter",
      findings: { crawlers: "present", k_wing: "present" },
      region: { acarapisWoodi: "found" },
      tests: [{ test: "tracheal-dissection", positive: 17, examined: 50 }],
      draws: 100,
    },
  },
  { id: "crawlers", colony: null, input: { season: "spring", findings: { crawlers: "present" }, draws: 100 } },
];

describe("what would change", () => {
  it("[DX180] is nothing under the same evidence", () => {
    expect(changesUnder(plain, plain, cases)).toEqual({ compared: 2, changed: [], problems: [] });
  });

  it("[DX180] is the case whose likeliest condition moves, with both answers", () => {
    const { evidence } = changedEvidence(publishedEvidence, [
      {
        change: { what: "prior", condition: "tracheal_mites", season: "spring", rate: 0.9 },
        ...{
          citation: { source: null, at: "own numbers", read: "judgement" },
          entry: "e",
          author: "a",
          on: "2026-01-01",
        },
      },
    ]);
    const { changed, compared } = changesUnder(plain, { ...plain, evidence }, cases);
    expect(compared).toBe(2);
    expect(changed).toHaveLength(1);
    const [one] = changed;
    const before = differential({ season: "spring", findings: { crawlers: "present" } });
    expect(one?.case).toBe("crawlers");
    expect(before.ok && before.value.conditions[0]).toMatchObject({
      id: one?.before.likeliest,
      posterior: one?.before.posterior,
    });
    expect(one?.after.likeliest).toBe("tracheal_mites");
  });

  it("[DX181] a bar that is almost out of reach names nothing; the question's own bar stands", () => {
    const answer = differential((cases[0] as PastCase).input, publishedEvidence);
    const low = answer.ok ? (answer.value.conditions[0]?.low ?? 1) : 1;
    const high = under({ thresholds: { leading: (1 + low) / 2 } });
    const { changed } = changesUnder(plain, high, cases);
    expect(changed).toMatchObject([
      {
        case: "mites",
        before: { verdict: { kind: "leading", condition: "tracheal_mites" } },
        after: { verdict: { kind: "cannot-tell" } },
      },
    ]);
    const itself = cases.map((each) => ({ ...each, input: { ...each.input, thresholds: { leading: 0.5 } } }));
    expect(changesUnder(plain, high, itself).changed).toEqual([]);
  });

  it("[DX181] the share with nothing wrong is the programme's unless the question says its own", () => {
    const input = { season: "spring", findings: {} } as const;
    expect(askedUnder(input, under({ nothingWrong: 0.4 }))).toMatchObject({ nothingWrong: 0.4 });
    expect(askedUnder({ ...input, nothingWrong: 0.2 }, under({ nothingWrong: 0.4 }))).toMatchObject({
      nothingWrong: 0.2,
    });
  });

  it("[DX180] a case that cannot be answered is told and not compared", () => {
    const torn = { id: "torn", colony: null, input: { season: "spring", findings: { moon: "present" } } } as const;
    expect(changesUnder(plain, plain, [torn])).toMatchObject({
      compared: 0,
      changed: [],
      problems: [{ code: "case-unreadable", slots: { case: "torn", why: "unknown-finding" } }],
    });
  });
});
