/** Evidence as an argument: a programme's changes are reckoned like what is published, and what does not fit is told. */
import { describe, expect, it } from "vitest";
import {
  changedEvidence,
  conditions,
  type Evidence,
  type EvidenceChange,
  evidenceSeasons,
  gradeProbability,
  type NotedChange,
  type OwnCitation,
  publishedEvidence,
} from "../../knowledge/index.ts";
import { trigamma } from "../../numerics/index.ts";
import type { Season } from "../../units/index.ts";
import { caseModel } from "./case-model.ts";
import { differential, startCounts } from "./index.ts";
import type { AnyInput } from "./input.ts";
import { readInput } from "./read-input.ts";
import { statedPosterior } from "./reasons.ts";

const ownNumbers: OwnCitation = { source: null, at: "own numbers, invented for this test", read: "judgement" };
const noted = (change: EvidenceChange, citation = ownNumbers): NotedChange => ({
  ...{ change, citation, entry: "entry-1", author: "reader 1", on: "2026-03-02" },
});
const under = (...changes: readonly EvidenceChange[]): Evidence => {
  const { evidence, problems } = changedEvidence(
    publishedEvidence,
    changes.map((change) => noted(change)),
  );
  expect(problems.filter(({ severity }) => severity !== "noted")).toEqual([]);
  return evidence;
};
const answerTo = (input: AnyInput, evidence: Evidence) => {
  const answer = differential({ draws: 40, ...input }, evidence);
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.value;
};
const of = (answer: ReturnType<typeof answerTo>, id: string) => {
  const found = answer.conditions.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
};
const bySeason = (make: (season: Season) => number) =>
  Object.fromEntries(evidenceSeasons.map((season) => [season, make(season)])) as Record<Season, number>;

const input: AnyInput = {
  season: "autumn",
  findings: {
    deformed_wings: "present",
    few_dead_depopulated: "present",
    no_mite_control: "present",
    crawlers: "absent",
  },
};

describe("the evidence in use", () => {
  it("[DX150] left out is the published one, to the last bit", () => {
    const plain = differential({ ...input, findings: { deformed_wings: "present" } });
    const given = differential({ ...input, findings: { deformed_wings: "present" } }, publishedEvidence);
    expect(given).toEqual(plain);
  });

  it("[DX150] is another value after a change; the published one stays and stands beside the new", () => {
    const before = JSON.stringify(publishedEvidence);
    const changed = under({
      what: "frequency",
      condition: "queenless",
      finding: "crawlers",
      rate: 0.5,
      suppresses: false,
    });
    expect(JSON.stringify(publishedEvidence)).toBe(before);
    expect(changed.frequencies.queenless?.crawlers).toMatchObject({
      value: 0.5,
      published: 0.02,
      change: { value: 0.5 },
    });
    const again = under({ what: "prior", condition: "queenless", season: "autumn", rate: 0.2 });
    expect(again.priors.queenless?.autumn).toMatchObject({
      value: 0.2,
      published: conditions.queenless.priorPercent.autumn / 100,
      change: { entry: "entry-1", author: "reader 1", on: "2026-03-02", citation: ownNumbers },
    });
  });

  it("[DX151] one sign of one cause follows Bayes' rule by hand after each kind of change", () => {
    // All other conditions are made as good as impossible, so that two states are left: nothing, and starvation.
    const alone = publishedEvidence.conditionIds
      .filter((id) => id !== "starvation")
      .map((condition): EvidenceChange => ({ what: "prior", condition, season: "winter", rate: 1e-12 }));
    const evidence = under(
      ...alone,
      { what: "prior", condition: "starvation", season: "winter", rate: 0.3 },
      { what: "frequency", condition: "starvation", finding: "crawlers", rate: 0.7, suppresses: false },
      { what: "healthy-rate", finding: "crawlers", season: "winter", rate: 0.2 },
    );
    const read = readInput({ season: "winter", findings: { crawlers: "present" }, nothingWrong: 0.7 }, evidence);
    if (!read.ok) throw new Error("the case does not fit");
    const posterior = statedPosterior(caseModel(read.value, [], evidence));
    const at = evidence.conditionIds.indexOf("starvation");
    // 0.3 × 0.7 / (0.3 × 0.7 + 0.7 × 0.2); the 44 impossible ones leave less than 1e-9.
    expect(posterior?.condition[at]).toBeCloseTo(0.21 / 0.35, 9);
  });

  it("[DX152] a copy of a published condition has the posterior of the original, and draws of its own", () => {
    const facts = conditions.acute_poisoning;
    const prior = bySeason((season) => facts.priorPercent[season] / 100);
    const { term, role, rollUp, urgency } = facts;
    const evidence = under(
      { what: "condition", condition: "own_twin", term, role, rollUp, urgency, prior },
      ...Object.entries(facts.frequencies).map(
        ([finding, { grade, suppresses = false }]): EvidenceChange => ({
          ...{ what: "frequency", condition: "own_twin", finding, rate: gradeProbability[grade], suppresses },
        }),
      ),
    );
    const answer = answerTo(
      {
        season: "summer",
        findings: { recent_spray: "present", dead_heap: "present", tongue_out: "present" },
        draws: 2000,
      },
      evidence,
    );
    expect(answer.conditions).toHaveLength(46);
    const [own, twin] = [of(answer, "own_twin"), of(answer, "acute_poisoning")];
    expect(own.posterior).toBeCloseTo(twin.posterior, 12);
    expect(own.for).toEqual(twin.for);
    expect(own.low).not.toBe(twin.low);
    // Ends from 2000 draws of the same law: twice their own scatter.
    expect(Math.abs(own.low - twin.low)).toBeLessThan(0.04);
    expect(Math.abs(own.high - twin.high)).toBeLessThan(0.04);
  });

  it("[DX152] an own sign and an own circumstance move what they are said to move", () => {
    const healthy = bySeason(() => 0.05);
    const finding = { term: "t", question: "q", lookFor: "l", minutes: 1, group: null, healthy } as const;
    const evidence = under(
      { what: "finding", finding: "own_sign", kind: "sign", ...finding },
      { what: "finding", finding: "own_event", kind: "circumstance", ...finding },
      { what: "frequency", condition: "starvation", finding: "own_sign", rate: 0.8, suppresses: false },
      { what: "frequency", condition: "robbing", finding: "own_event", rate: 0.8, suppresses: false },
    );
    const asked = (findings: AnyInput["findings"]) => answerTo({ season: "spring", findings }, evidence);
    const [none, sign, event] = [asked({}), asked({ own_sign: "present" }), asked({ own_event: "present" })];
    expect(of(sign, "starvation").posterior).toBeGreaterThan(2 * of(none, "starvation").posterior);
    expect(of(sign, "starvation").for.map(({ finding: id }) => id)).toContain("own_sign");
    expect(of(event, "robbing").posterior).toBeGreaterThan(2 * of(none, "robbing").posterior);
    expect(event.verdict.because).toBe("no-sign-or-test");
    const unknown = differential({ season: "spring", findings: { own_sign: "present" } } as never);
    expect(unknown).toMatchObject({ ok: false, problems: [{ code: "unknown-finding" }] });
  });

  const bad: readonly (readonly [string, NotedChange, object])[] = [
    [
      "a condition that is not there",
      noted({ what: "frequency", condition: "own_gone", finding: "crawlers", rate: 0.2, suppresses: false }),
      { code: "evidence-id-missing", slots: { place: "frequency own_gone crawlers", id: "own_gone" } },
    ],
    [
      "a rate that is none",
      noted({ what: "prior", condition: "robbing", season: "spring", rate: 1.2 }),
      { code: "evidence-rate-out-of-range", slots: { place: "prior robbing spring", rate: 1.2 } },
    ],
    [
      "a source that is not there",
      noted(
        { what: "healthy-rate", finding: "crawlers", season: "spring", rate: 0.2 },
        { ...ownNumbers, source: "gone" },
      ),
      { code: "evidence-source-missing", slots: { place: "healthy-rate crawlers spring", source: "gone" } },
    ],
    [
      "a new condition without priors",
      noted({
        ...{ what: "condition", condition: "own_new", term: "t", role: "cause", rollUp: null, urgency: "next-season" },
      }),
      { code: "evidence-rates-missing", slots: { place: "condition own_new", id: "own_new" } },
    ],
    [
      "a rate that no start can be made of",
      noted({ what: "prior", condition: "robbing", season: "spring", rate: 1e-300 }),
      { code: "evidence-rate-out-of-range", slots: { rate: 1e-300 } },
    ],
    [
      "a thousandth of a colony looked at",
      noted({ what: "prior", condition: "robbing", season: "spring", rate: 0.2, outOf: 0.001 }),
      { code: "evidence-count-out-of-range", slots: { outOf: 0.001 } },
    ],
    [
      "two colonies for a share of one in a thousand",
      noted({ what: "prior", condition: "robbing", season: "spring", rate: 0.001, outOf: 2 }),
      { code: "evidence-count-out-of-range", slots: { outOf: 2 } },
    ],
    [
      "a sign made a circumstance",
      noted({
        ...{ what: "finding", finding: "deformed_wings", term: "t", kind: "circumstance", group: null },
        ...{ question: "q", lookFor: "l", minutes: 1 },
      }),
      { code: "evidence-kind-fixed", slots: { kind: "sign" } },
    ],
    [
      "no colonies looked at",
      noted({ what: "prior", condition: "robbing", season: "spring", rate: 0.2, outOf: 0 }),
      { code: "evidence-count-out-of-range", slots: { outOf: 0 } },
    ],
  ];

  it.each(bad)("[DX153] %s is told, and the rest stays", (_, change, expected) => {
    const good = noted({ what: "prior", condition: "queenless", season: "spring", rate: 0.2 });
    const { evidence, problems } = changedEvidence(publishedEvidence, [change, good]);
    expect(problems).toMatchObject([expected]);
    const alone = changedEvidence(publishedEvidence, [good]);
    expect(evidence).toEqual(alone.evidence);
  });

  it("[DX153] the order of changes does not matter, and two of one place are for a person to settle", () => {
    const source = { what: "source", source: "own-survey", title: "t", where: "w", read: "read in full" } as const;
    const cites = noted(
      { what: "prior", condition: "queenless", season: "spring", rate: 0.2 },
      { source: "own-survey", at: "table 1", read: "seen" },
    );
    const first = changedEvidence(publishedEvidence, [cites, noted(source)]);
    expect(first.problems).toEqual([]);
    expect(first).toEqual(changedEvidence(publishedEvidence, [noted(source), cites]));
    const twice = changedEvidence(publishedEvidence, [noted(source), cites, { ...cites, entry: "entry-2" }]);
    expect(twice.problems).toMatchObject([{ code: "evidence-in-conflict", slots: { changes: 2 } }]);
    expect(twice.evidence.priors).toEqual(publishedEvidence.priors);
  });

  it("[DX153] of sources that cite each other in a row all stand, whatever their names", () => {
    const source = (key: string, cites: string | null) =>
      noted(
        { what: "source", source: key, title: "t", where: "w", read: "read in full" },
        { source: cites, at: "p. 2", read: "seen" },
      );
    const row = [source("a", "b"), source("b", "c"), source("c", null)];
    const { evidence, problems } = changedEvidence(publishedEvidence, row);
    expect(problems).toEqual([]);
    expect(evidence.sources.a?.change?.citation.source).toBe("b");
    const ring = changedEvidence(publishedEvidence, [source("a", "b"), source("b", "a"), source("c", "c")]);
    expect(ring.problems).toMatchObject([{ code: "evidence-source-missing", slots: { source: "b" } }, {}]);
    expect(Object.hasOwn(ring.evidence.sources, "c")).toBe(true);
  });

  it.each(Object.entries(gradeProbability))(
    "[DX154] the grade %s as counts keeps its mean and its width",
    (_, value) => {
      const { present, looked } = startCounts(value, 0.5);
      expect(present / looked).toBeCloseTo(value, 12);
      expect(trigamma(present) + trigamma(looked - present)).toBeCloseTo(0.25, 10);
    },
  );

  it("[DX154] a source that looked at many colonies narrows the range, one that looked at few widens it", () => {
    const width = (outOf: number | undefined) => {
      const evidence = under({
        what: "frequency",
        condition: "varroa_pms",
        finding: "deformed_wings",
        rate: 0.65,
        suppresses: false,
        outOf,
      });
      const { low, high } = of(
        answerTo({ season: "autumn", findings: { deformed_wings: "present" }, draws: 1000 }, evidence),
        "varroa_pms",
      );
      return high - low;
    };
    const [few, usual, many] = [width(4), width(undefined), width(10_000)];
    expect(few).toBeGreaterThan(usual);
    expect(many).toBeLessThan(usual);
  });
});
