import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import {
  type Casebook,
  type CaseState,
  caseList,
  evidenceOf,
  fold,
  type Kept,
  openQuestion,
  type SpecimenState,
  settled,
} from "../../../src/casebook/index.ts";
import { decodeJournal, type Entry, encodeJournal, kinds, verifyChain } from "../../../src/journal/index.ts";
import apart from "./apart-1.expected.json" with { type: "json" };
import file from "./file-1.expected.json" with { type: "json" };
import programme from "./programme-1.expected.json" with { type: "json" };
import first from "./schema-1.expected.json" with { type: "json" };
import second from "./schema-2.expected.json" with { type: "json" };
import stop from "./stop-1.expected.json" with { type: "json" };

const folder = import.meta.dirname;
const textOf = (name: string): string => readFileSync(path.join(folder, name), "utf8");

function entriesOf(name: string): readonly Entry[] {
  const read = decodeJournal(textOf(name));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

/** The same record with each member changed. */
const each = <From, To>(record: Readonly<Record<string, From>>, change: (from: From) => To): Record<string, To> =>
  Object.fromEntries(Object.entries(record).map(([name, member]) => [name, change(member)]));
const values = <T>(kept: Kept<T>): readonly T[] => kept.candidates.map((candidate) => candidate.value);

/** The casebook boiled down to what the hand-written file tells. */
function told(casebook: Casebook) {
  return {
    unread: casebook.unread.map(({ kind, root, why }) => ({ kind, root, why })),
    apiaries: each(casebook.apiaries, (apiary) => ({
      code: settled(apiary.record)?.code,
      colonies: Object.values(apiary.colonies).map((colony) => settled(colony.record)?.code),
      monthlyMeans: settled(apiary.weather)?.monthlyMeanCelsius?.length,
      tracheal: settled(apiary.region)?.acarapisWoodi,
      flows: each(apiary.flows, (flow) => settled(flow)?.name),
      supers: each(apiary.supers, (supers) => settled(supers)?.on),
      treatments: each(apiary.treatments, (treatment) => settled(treatment)?.activeIngredient),
    })),
    cases: each(casebook.cases, caseTold),
    specimens: each(casebook.specimens, specimenTold),
    plans: each(casebook.plans, (plan) => ({
      case: plan.case,
      steps: settled(plan.record)?.steps.map((step) => step.step),
      done: each(plan.done, (step) => settled(step)?.state),
    })),
    labelRecords: each(casebook.labelRecords, ({ record }) => ({
      activeIngredient: settled(record)?.activeIngredient,
      invented: settled(record)?.invented,
    })),
    openQuestion: openQuestion(casebook, "case-1"),
    conflicts: caseList(casebook, "2026-06-03")[0]?.conflicts,
  };
}

const caseTold = (state: CaseState) => ({
  apiary: state.apiary,
  code: settled(state.record)?.code,
  waitsOn: settled(state.handedOn)?.waitsOn,
  redFlags: each(state.redFlags, (flag) => values(flag).map((answer) => answer.state)),
  findings: each(state.findings, (own) => each(own, values)),
  colonyStates: each(state.colonyStates, (colony) => settled(colony)?.state),
  steps: each(state.steps, (step) => settled(step)?.state),
  samplePlans: each(state.samplePlans, (plan) => settled(plan)?.beesPerColony),
  tests: Object.values(state.tests).map(({ value: { test, mites, bees, kept } }) => ({ test, mites, bees, kept })),
  decision: settled(state.decision)?.choice,
  outcomes: each(state.outcomes, (own) => each(own, (outcome) => settled(outcome)?.survived)),
  closed: settled(state.closed)?.outcome,
});

const specimenTold = (specimen: SpecimenState) => ({
  case: specimen.case,
  colony: specimen.colony,
  code: settled(specimen.label)?.code,
  beesReceived: settled(specimen.received)?.beesReceived,
  readings: each(specimen.readings, (reading) => ({
    target: settled(reading.started)?.target,
    bees: each(reading.bees as Record<string, (typeof reading.bees)[number]>, (bee) =>
      values(bee).map(({ lost, left, right }) => (lost ? "lost" : `${left} ${right}`)),
    ),
    stop: settled(reading.finished)?.stop,
  })),
});

describe.each([
  ["schema-1.jsonl", first],
  ["schema-2.jsonl", second],
])("the journal of every kind in %s", (name, expected) => {
  const entries = entriesOf(name);

  it("is intact, and of the size told", () => {
    const report = verifyChain(entries);
    expect(report).toMatchObject({ isIntact: true, missingBodies: [{ why: "erased" }] });
    expect(Object.fromEntries(report.heads.map((head) => [head.device, head.seq]))).toEqual(expected.entriesByDevice);
  });

  it("amounts to what the hand-written file tells", () => {
    const { source, locator, read, note, entriesByDevice, ...facts } = expected;
    expect([source, locator, read, note, entriesByDevice].every(Boolean)).toBe(true);
    expect(told(fold(entries))).toEqual(facts);
  });

  it("is written again byte for byte", () => {
    expect(encodeJournal(entries)).toBe(textOf(name));
  });
});

describe("the journal of a programme's own evidence in programme-1.jsonl", () => {
  const entries = entriesOf("programme-1.jsonl");

  it("is intact, and is written again byte for byte", () => {
    const report = verifyChain(entries);
    expect(report).toMatchObject({ isIntact: true, missingBodies: [] });
    expect(report.heads.map((head) => head.seq)).toEqual([programme.entries]);
    expect(encodeJournal(entries)).toBe(textOf("programme-1.jsonl"));
  });

  it("amounts to what the hand-written file tells", () => {
    const casebook = fold(entries);
    const { evidence, settings, problems } = evidenceOf(casebook);
    expect(casebook.unread).toEqual([]);
    expect(problems).toEqual([]);
    expect(Object.keys(casebook.programmes.main?.changes ?? {})).toEqual(programme.places);
    expect({
      roarWhenQueenless: evidence.frequencies.queenless?.roar_agitated?.value,
      robbingInAutumn: evidence.priors.robbing?.autumn.value,
      crawlersInSpring: evidence.healthy.spring.crawlers?.value,
      flooded: evidence.conditions.own_flooded_stand?.term,
      waterLineWhenFlooded: evidence.frequencies.own_flooded_stand?.own_water_line?.value,
      leading: settings.thresholds.leading,
      learnsFrequencies: settings.experience.frequencies,
    }).toEqual(programme.amountsTo);
  });
});

describe("the journal of a lifted stop in stop-1.jsonl", () => {
  const entries = entriesOf("stop-1.jsonl");

  it("is intact, and is written again byte for byte", () => {
    expect(verifyChain(entries)).toMatchObject({ isIntact: true, missingBodies: [] });
    expect(entries).toHaveLength(stop.entries);
    expect(encodeJournal(entries)).toBe(textOf("stop-1.jsonl"));
  });

  it("amounts to what the hand-written file tells", () => {
    const casebook = fold(entries);
    const state = casebook.cases["case-1"];
    expect(casebook.unread).toEqual([]);
    const { answers, role, liftedBy, laboratoryReference } =
      settled(state?.stopsLifted["rope-american-foulbrood"]) ?? expect.fail("no lift");
    const ropes = Object.entries(state?.findings ?? {}).filter(([, own]) => settled(own.ropy_thread) === "present");
    const told = Object.values(state?.stopsReported ?? {}).map(({ value }) => value.toldWhom);
    expect({ told, liftedBy, role, laboratoryReference, answers: answers.length, ropes: ropes.map(([key]) => key) }).toEqual(
      stop.amountsTo,
    );
  });
});

describe("the journal of attached files in file-1.jsonl", () => {
  const entries = entriesOf("file-1.jsonl");

  it("is intact, and is written again byte for byte", () => {
    expect(verifyChain(entries)).toMatchObject({ isIntact: true, missingBodies: [] });
    expect(entries).toHaveLength(file.entries);
    expect(encodeJournal(entries)).toBe(textOf("file-1.jsonl"));
  });

  it("amounts to what the hand-written file tells", () => {
    const casebook = fold(entries);
    expect(casebook.unread).toEqual([]);
    const files = Object.values(casebook.cases["case-1"]?.files ?? {}).map(({ value }) => value);
    expect(files.map(({ sha256: _, bytes: __, ...each }) => each)).toEqual(file.amountsTo);
  });
});

describe("the journal of a programme's members in members-1.jsonl", () => {
  const entries = entriesOf("members-1.jsonl");

  it("is intact, is written again byte for byte, and amounts to no record of bees", () => {
    expect(verifyChain(entries)).toMatchObject({ isIntact: true, missingBodies: [] });
    expect(encodeJournal(entries)).toBe(textOf("members-1.jsonl"));
    expect(fold(entries)).toEqual({ ...fold([]), unread: [] });
    expect(entries.map(({ body }) => body?.data.act)).toEqual(["member-admitted", "invited", "device-lost"]);
  });
});

describe("the journal of settled entries in apart-1.jsonl", () => {
  const entries = entriesOf("apart-1.jsonl");

  it("is intact, and is written again byte for byte", () => {
    expect(verifyChain(entries)).toMatchObject({ isIntact: true, missingBodies: [] });
    expect(entries).toHaveLength(apart.entries);
    expect(encodeJournal(entries)).toBe(textOf("apart-1.jsonl"));
  });

  it("amounts to what the hand-written file tells", () => {
    const casebook = fold(entries);
    expect(casebook.unread).toEqual([]);
    const settlements = Object.values(casebook.programmes.main?.settlements ?? {});
    const told = settlements.map((kept) => values(kept).map(({ device, decision }) => `${device} ${decision}`));
    const bee = casebook.specimens["specimen-1"]?.readings["reading-1"]?.bees["1"];
    expect({
      settlements: Object.fromEntries(told.map((all) => [all[0]?.split(" ")[0], all])),
      firstBee: bee ? values(bee).map(({ left }) => left).toSorted() : [],
    }).toEqual(apart.amountsTo);
  });
});

it("holds every schema of every kind in one of the files", () => {
  const files = readdirSync(folder).filter((name) => name.endsWith(".jsonl"));
  const held = new Set(files.flatMap(entriesOf).map(({ header }) => `${header.kind} ${header.schema}`));
  const wanted = Object.entries(kinds).flatMap(([kind, { schema }]) =>
    Array.from({ length: schema }, (_, index) => `${kind} ${index + 1}`),
  );
  expect([...held].toSorted()).toEqual(wanted.toSorted());
});
