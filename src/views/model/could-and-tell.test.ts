/** Ranked causes, looks, tests and labelled vials, from the case as it is on record. */
import { describe, expect, it } from "vitest";
import { answerFlags, colony, following, opened, see, today } from "../../../tests/case-story.ts";
import { demonstrationCasebook } from "../../../tests/casebook-of.ts";
import type { EntryDraft } from "../../journal/index.ts";
import { differential, nextStep } from "../../reasoning/index.ts";
import { sentenceOf, wordsOf } from "../words/index.ts";
import { casebookBefore } from "./as-of.ts";
import {
  coloniesToSample,
  colonyStateDraft,
  couldView,
  differentialInput,
  findingDrafts,
  mostTroubled,
  readCode,
  readDiedOn,
  readRegionForm,
  readSeenOn,
  samplePlanView,
  samplingDrafts,
  specimensFound,
  spineView,
  stepDraft,
  tellView,
  vialsOf,
} from "./index.ts";

const words = wordsOf("en");

describe("what could it be", () => {
  it("asks for the colony with most signs, with its own and the shared findings, on the day of the last look", () => {
    const start = opened();
    const second = colony(following(start).casebook, 2);
    const { casebook, state } = following(
      start,
      answerFlags(start.caseId),
      see(start.caseId, second, "crawlers", "present"),
    );
    expect(mostTroubled(casebook, state)).toBe(second);
    const { input, notes } = differentialInput(casebook, state, second);
    expect(input).toMatchObject({ date: today, latitude: 45, findings: { crawlers: "present" } });
    expect(notes).toEqual([]);
  });

  it("ranks for the season of the latest day anything was looked at, not for that of the visit to the page", () => {
    const start = opened();
    const second = colony(following(start).casebook, 2);
    const on = (day: string, finding: "crawlers" | "k_wing", answer: "present" | "not-looked") =>
      ((book) =>
        findingDrafts({
          state: book.cases[start.caseId] as never,
          key: second,
          finding,
          exclusiveWith: null,
          answer,
          on: day,
        })) satisfies Parameters<typeof following>[1];
    const seen = following(start, on("2025-07-14", "crawlers", "present"), on("2026-02-20", "k_wing", "not-looked"));
    const asked = differentialInput(seen.casebook, seen.state, second);
    expect(asked.input.date).toBe("2025-07-14");
    expect(asked.season).toEqual({ season: "summer", on: "2025-07-14", latitude: 45 });
    expect(words.could.season(asked.season)).toContain("Season: **summer**, from 14 July at 45° north");
    const south = opened({ latitude: "-38.2" });
    const there = following(south);
    const unseen = differentialInput(there.casebook, there.state, "").season;
    expect(words.could.season(unseen)).toContain("Season: **autumn**, from 2 March at 38° south");
    expect(readSeenOn("", today)).toMatchObject({ ok: true, value: today });
    expect(readSeenOn("2026-03-03", today).problems.map((trouble) => trouble.code)).toEqual(["day-to-come"]);
  });

  it("says that the season is assumed when no latitude is known", () => {
    const start = opened({ latitude: "" });
    const { casebook, state } = following(start);
    expect(differentialInput(casebook, state, colony(casebook, 1)).notes.map((note) => note.code)).toEqual([
      "no-latitude",
    ]);
  });

  it("counts with the region as it was written down for the apiary, and says when nobody did", () => {
    const start = opened();
    const asked = (...more: Parameters<typeof following>[1][]) => {
      const { casebook, state } = following(start, ...more);
      return differentialInput(casebook, state, colony(casebook, 2));
    };
    const unsaid = asked();
    expect(unsaid.region).toBeNull();
    expect(unsaid.input).not.toHaveProperty("region");
    expect(words.could.region(unsaid)).toContain("not described");
    const told = { varroa: "absent", acarapisWoodi: "found", smallHiveBeetle: "endemic", vespa: "absent" } as const;
    const read = readRegionForm({ ...told, tropilaelaps: "absent", source: "survey of 2024" });
    const body = read.ok ? read.value : null;
    expect(body).toMatchObject(told);
    const described = asked(() =>
      body ? [{ kind: "region-recorded", at: today, about: [following(start).state.apiary ?? ""], data: body }] : [],
    );
    expect(described.input.region).toEqual({ ...told, tropilaelaps: "absent" });
    expect(words.could.region(described)).toBe(
      "Region: tracheal mites **found in the last ten years**, small hive beetle **here for good**, none of the others.",
    );
    const odds = ({ input }: typeof unsaid) => {
      const reply = differential.differential({ ...input, draws: 50 });
      return reply.ok ? reply.value.conditions.find(({ id }) => id === "small_hive_beetle")?.posterior : undefined;
    };
    expect(odds(described)).toBeGreaterThan(100 * (odds(unsaid) ?? 1));
    expect(readRegionForm({ ...told, tropilaelaps: "absent", source: "" })).toMatchObject({
      ok: false,
      problems: [{ field: "source" }],
    });
  });

  it("never lets signs alone name tracheal mites, and shows number, range and word in that order of thought", () => {
    const start = opened();
    const first = colony(following(start).casebook, 1);
    const { casebook, state } = following(
      start,
      answerFlags(start.caseId),
      see(start.caseId, first, "crawlers", "present"),
      see(start.caseId, first, "k_wing", "present"),
    );
    const { input } = differentialInput(casebook, state, first);
    const answer = differential.differential({ ...input, draws: 60 });
    if (!answer.ok) throw new Error("no answer");
    const view = couldView({ answer: answer.value, input, draws: 60, dots: null, words });
    expect(view.answer).toMatch(/^\*\*Cannot tell yet\.\*\*/);
    expect(view.causes).toHaveLength(45);
    expect(view.causes.map((cause) => cause.posterior)).toEqual(
      view.causes.map((cause) => cause.posterior).toSorted((one, other) => other - one),
    );
    const mites = view.causes.find((cause) => cause.id === "tracheal_mites");
    expect(mites?.for.map((reason) => reason.term)).toContain("K-wing");
    expect(mites?.and).toContain("nosema");
  });
});

describe("what stands beside the ranking", () => {
  const asked = (findings: differential.DifferentialInput["findings"], tests: differential.TestInput[] = []) => {
    const input = { season: "spring", findings, tests, draws: 60 } as const;
    const answer = differential.differential(input);
    if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
    return couldView({ answer: answer.value, input, draws: 60, dots: null, words });
  };
  const signs = { crawlers: "present", k_wing: "present", weak_for_season: "present" } as const;
  const rank = (view: ReturnType<typeof couldView>) => view.causes.findIndex(({ id }) => id === "tracheal_mites");

  it("shows tracheal mites on their signs, however low they stand, until the tubes are opened", () => {
    const low = { ...signs, hairless_black: "present", trembling: "present", faeces_inside: "present" } as const;
    const view = asked(low);
    expect(rank(view)).toBeGreaterThan(view.first.length - 2);
    expect(view.first.at(-1)).toMatchObject({ id: "tracheal_mites", shownFor: words.could.signsAlone });
    expect(view.first.slice(0, -1)).toEqual(view.causes.slice(0, view.first.length - 1));
    const opened = asked(low, [{ test: "tracheal-dissection", positive: 0, examined: 50 }]);
    expect(opened.first).toEqual(opened.causes.slice(0, opened.first.length));
    expect(asked({ spotty_brood: "present" }).first.map(({ id }) => id)).not.toContain("tracheal_mites");
  });

  it("shows them where they live, and says that the chance is not of being carried", () => {
    const input = {
      season: "spring",
      findings: { spotty_brood: "present" },
      region: { acarapisWoodi: "found" },
      draws: 60,
    } as const;
    const answer = differential.differential(input);
    if (!answer.ok) throw new Error("no answer");
    const view = couldView({ answer: answer.value, input, draws: 60, dots: null, words });
    expect(view.first.at(-1)).toMatchObject({ id: "tracheal_mites", shownFor: words.could.asCause });
    const opened = { ...input, tests: [{ test: "tracheal-dissection", positive: 0, examined: 50 }] };
    const clear = couldView({ answer: answer.value, input: opened, draws: 60, dots: null, words });
    expect(clear.first.map(({ id }) => id)).not.toContain("tracheal_mites");
  });

  it("says of a sign that was seen and speaks against a cause that another one explains it", () => {
    const { causes } = asked({ ...signs, deformed_wings: "present", normal_eggs_and_queen: "absent" });
    const against = causes.flatMap((cause) => cause.against.map((reason) => ({ ...reason, cause: cause.id })));
    expect(against.filter(({ elsewhere }) => elsewhere).map(({ id }) => id)).toContain("deformed_wings");
    expect(against.filter(({ id }) => id === "normal_eggs_and_queen").every(({ elsewhere }) => !elsewhere)).toBe(true);
  });
});

describe("what a colony's neighbours and its death say", () => {
  const start = opened();
  const book = following(start).casebook;
  const [first, second] = [colony(book, 1), colony(book, 2)];
  const dissected = (key: string, positive: number, on = today): EntryDraft => ({
    kind: "test-result-recorded",
    at: today,
    about: [start.caseId],
    data: { test: "tracheal-dissection", colony: key, on, positive, examined: 50 },
  });

  it("mites found in one colony are around the others, and not around itself", () => {
    const { casebook, state } = following(start, () => [dissected(first, 7)]);
    expect(differentialInput(casebook, state, first).input.region).toBeUndefined();
    const sister = differentialInput(casebook, state, second);
    expect(sister.input.region).toEqual({ acarapisWoodi: "found" });
    expect(sister.notes.map(({ code, slots }) => [code, slots])).toEqual([
      ["mites-in-sister", { colony: "WB-01", on: today }],
    ]);
    const none = following(start, () => [dissected(first, 0)]);
    expect(differentialInput(none.casebook, none.state, second).input.region).toBeUndefined();
  });

  it("a find of more than a year before the last look, or written down later than is asked for, tells nothing", () => {
    const around = ({ casebook, state }: Pick<ReturnType<typeof following>, "casebook" | "state">) =>
      differentialInput(casebook, state, second).input.region;
    const looked = see(start.caseId, second, "crawlers", "present");
    expect(around(following(start, looked, () => [dissected(first, 7, "2025-03-01")]))).toEqual({
      acarapisWoodi: "found",
    });
    expect(around(following(start, looked, () => [dissected(first, 7, "2025-02-28")]))).toBeUndefined();
    const data = { code: "two", openedOn: today, question: "And these?", waitsOn: "inspector 2", due: today };
    const other = ({ apiary }: { readonly apiary: string | null }): readonly EntryDraft[] => [
      { kind: "case-opened", at: today, about: ["case-two", apiary ?? ""], data: { ...data, colonies: [] } },
      { ...dissected(first, 7), about: ["case-two"] },
    ];
    const { casebook } = following(start, looked, ({ cases }) => other(cases[start.caseId] ?? expect.fail("no case")));
    const at = (instant: string) => {
      const before = casebookBefore(casebook, start.caseId, instant);
      return around({ casebook: before, state: before.cases[start.caseId] ?? expect.fail("no case") });
    };
    expect(at("2100-01-01T00:00:00.000Z")).toEqual({ acarapisWoodi: "found" });
    expect(at("2020-01-01T00:00:00.000Z")).toBeUndefined();
  });

  it("the day of a death is not after the day it was seen, not to come, and need not be known", () => {
    const read = (typed: string) =>
      readDiedOn(typed, { today, seenDeadOn: "2026-02-25" }).problems.map(({ code }) => code);
    expect(read("2026-02-25")).toEqual([]);
    expect(read("2026-02-26")).toEqual(["died-after-seen-dead"]);
    expect(read("2027-03-01")).toContain("day-to-come");
    expect(readDiedOn("", { today, seenDeadOn: "2026-02-25" })).toMatchObject({ ok: true, value: {} });
  });

  it("what only live bees show counts of a dead colony when it was seen before", () => {
    const seen =
      (on: string): Parameters<typeof following>[1] =>
      (casebook) =>
        findingDrafts({
          ...{
            state: casebook.cases[start.caseId] as never,
            key: first,
            finding: "roar_agitated",
            exclusiveWith: null,
          },
          ...{ answer: "present", on },
        });
    const died: Parameters<typeof following>[1] = (casebook) => [
      colonyStateDraft(casebook.cases[start.caseId] as never, first, {
        state: "dead",
        on: today,
        diedOn: "2026-02-20",
      }),
    ];
    const late = following(start, seen(today), died);
    const asked = differentialInput(late.casebook, late.state, first);
    expect(asked.input.findings).toEqual({});
    expect(asked.input.colony).toEqual({ state: "dead", daysSinceDeath: 10 });
    expect(asked.notes.map(({ code, slots }) => [code, slots])).toEqual([
      ["seen-after-death", { findings: "Roaring, restless bees", on: "2026-02-20" }],
    ]);
    const early = following(start, seen("2026-02-19"), died);
    expect(differentialInput(early.casebook, early.state, first).input.findings).toEqual({ roar_agitated: "present" });
  });
});

describe("what a dissection has seen", () => {
  const demonstration = demonstrationCasebook();
  const state = demonstration.cases["demonstration-case-tv-26-014"] ?? expect.fail("no case");
  const view = (tests: differential.DifferentialInput["tests"]) => {
    const [counted] = specimensFound(demonstration, state.id).filter((each) => (each.estimate?.value ?? 0) > 0);
    const { input } = differentialInput(demonstration, state, counted?.label.colony ?? "");
    const asked = { ...input, tests: tests ?? input.tests ?? [] };
    const answer = differential.differential({ ...asked, draws: 60 });
    if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
    return couldView({ answer: answer.value, input: asked, draws: 60, dots: null, words });
  };
  const mites = (tests?: differential.DifferentialInput["tests"]) =>
    view(tests).causes.find((cause) => cause.id === "tracheal_mites");
  const dissected = (positive: number) => [{ test: "tracheal-dissection", positive, examined: 50 }];

  it("is told as proven by its count, not as a judgement", () => {
    expect(view(dissected(12)).answer).toMatch(/^\*\*Tracheal mites are proven\*\*: mites in 12 of 50 bees\./);
    expect(view(dissected(12)).answer).not.toContain("could be");
    expect(mites(dissected(12))).toMatchObject({
      proof: "mites in 12 of 50 bees",
      word: "proven: mites in 12 of 50 bees",
    });
    expect(mites()?.proof).toMatch(/^mites in \d+ of \d+ bees$/);
  });

  it("proves nothing when none was found", () => {
    expect(mites(dissected(0))?.proof).toBeNull();
    expect(view(dissected(0)).answer).not.toContain("proven");
  });
});

describe("what would tell", () => {
  it("lists looks apart from tests and remembers what was chosen", () => {
    const start = opened();
    const first = colony(following(start).casebook, 1);
    const { casebook, state } = following(start, see(start.caseId, first, "crawlers", "present"), (book) => [
      stepDraft(
        book.cases[start.caseId] as never,
        { step: "tracheal-dissection", kind: "test", state: "planned" },
        today,
      ),
    ]);
    const steps = nextStep.nextSteps(differentialInput(casebook, state, first).input);
    if (!steps.ok) throw new Error("no steps");
    const view = tellView(steps.value.next, state, words);
    expect(view.looks.length).toBeGreaterThan(10);
    expect(view.tests.find((step) => step.id === "tracheal-dissection")).toMatchObject({ chosen: "planned" });
    expect(view.looks.every((step) => step.kind === "look")).toBe(true);
    expect(spineView(casebook, start.caseId, words)?.questions[2]?.says).toBe("1 test");
  });

  it("plans a sample, says what it could miss, and labels one vial a colony with a code that reads back", () => {
    const start = opened();
    const { casebook, state } = following(start);
    const colonies = [colony(casebook, 1), colony(casebook, 2)];
    const { plan } = samplePlanView({
      casebook,
      state,
      form: {
        purpose: "detect",
        colonies,
        designPrevalence: 0.05,
        confidence: 0.95,
        sensitivity: 1,
        preservative: "frozen",
        laboratory: "",
      },
      today,
      words,
    });
    // 59 bees for 5 in 100 at 95 in 100: Pirk et al. 2013, section 2.2
    expect(plan?.body.beesPerColony).toBe(59);
    expect(plan?.couldMiss).toBe("If 5 bees in 100 have mites, 59 bees show none 5 times in 100.");
    expect(plan?.missed.curve.at(0)).toMatchObject({ prevalence: 0, missed: 1 });
    expect(plan?.missed.main).toMatchObject({ prevalence: 0.05, at: "5 in 100 infested:" });
    if (!plan) return;
    const sampled = following(start, () =>
      samplingDrafts({ caseId: start.caseId, plan: plan.body, codes: plan.codes, today, newId: start.newId }),
    );
    const vials = vialsOf(sampled.casebook, sampled.state, words);
    expect(vials.map((vial) => vial.colony)).toEqual(["WB-01", "WB-02"]);
    expect(vials.map((vial) => vial.code.slice(0, 9))).toEqual(["TV26-0001", "TV26-0002"]);
    expect(vials.every((vial) => readCode(vial.code).ok)).toBe(true);
    expect(spineView(sampled.casebook, start.caseId, words)).toMatchObject({ open: 1 });
  });

  it("proposes the living colonies with most signs, in order of code", () => {
    const start = opened();
    const book = following(start).casebook;
    const [one, two, three, four, five] = [1, 2, 3, 4, 5].map((number) => colony(book, number));
    const dead: Parameters<typeof following>[1] = (casebook) => [
      colonyStateDraft(casebook.cases[start.caseId] as never, two ?? "", { state: "dead", on: today }),
    ];
    const told = following(
      start,
      see(start.caseId, five ?? "", "crawlers", "present"),
      see(start.caseId, two ?? "", "crawlers", "present"),
      see(start.caseId, one ?? "", "stores_ample", "present"),
      dead,
    );
    expect(coloniesToSample(told.casebook, told.state)).toEqual([one, three, four, five]);
    const many = following(start, see(start.caseId, five ?? "", "k_wing", "present"));
    expect(coloniesToSample(many.casebook, many.state)).toContain(five);
    expect(coloniesToSample(many.casebook, many.state)).toHaveLength(4);
  });

  it("warns when a test in the kit asks other bees of the same vial", () => {
    const start = opened();
    const kit =
      (step: string, state: "planned" | "done"): Parameters<typeof following>[1] =>
      (book) => [stepDraft(book.cases[start.caseId] as never, { step, kind: "test", state }, today)];
    const planned = (...acts: readonly Parameters<typeof following>[1][]) => {
      const { casebook, state } = following(start, ...acts);
      const form = {
        purpose: "detect",
        colonies: [colony(casebook, 1)],
        designPrevalence: 0.05,
        confidence: 0.95,
        sensitivity: 1,
        preservative: "frozen",
        laboratory: "",
      } as const;
      const { plan } = samplePlanView({ casebook, state, form, today, words });
      return (plan?.problems ?? []).filter(({ code }) => code === "one-vial-two-questions");
    };
    const asked = planned(kit("spore-count", "planned"), kit("tracheal-dissection", "planned"));
    expect(asked.map((each) => sentenceOf(each, words))).toEqual([
      "One vial cannot answer both: the test for nosema spores takes old foragers. Take a second vial.",
    ]);
    expect(planned(kit("spore-count", "done"))).toEqual([]);
    expect(planned()).toEqual([]);
  });

  it("says what stands in the way when no colony is chosen", () => {
    const start = opened();
    const { casebook, state } = following(start);
    const form = {
      purpose: "detect",
      colonies: [],
      designPrevalence: 0.05,
      confidence: 0.95,
      sensitivity: 1,
      preservative: "frozen",
      laboratory: "",
    } as const;
    const { plan, problems } = samplePlanView({ casebook, state, form, today, words });
    expect(plan).toBeNull();
    expect(problems.map((trouble) => trouble.code)).toEqual(["no-colony-chosen"]);
  });
});
