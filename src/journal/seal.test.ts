import { describe, expect, it } from "vitest";
import * as z from "zod";
import { apartStory } from "../../tests/journals/apart-story.ts";
import { bee, everyKind, ids } from "../../tests/journals/every-kind.ts";
import { fileStory } from "../../tests/journals/file-story.ts";
import { membersStory } from "../../tests/journals/members-kinds.ts";
import { programmeStory } from "../../tests/journals/programme-kinds.ts";
import { stopStory } from "../../tests/journals/stop-story.ts";
import { writer } from "../../tests/journals/writer.ts";
import { DomainError } from "../units/index.ts";
import {
  contentHash,
  type Entry,
  type EntryDraft,
  entryMisfit,
  headerHash,
  kinds,
  readEntry,
  registry,
  sealEntry,
  type Upcaster,
} from "./index.ts";

const place = {
  device: "phone-1",
  seq: 1,
  prev: null,
  programme: "main",
  author: "R. Vale",
  recordedAt: "2026-03-09T08:00:00.000Z",
};
const chance = { id: "017f22e2-79b0-7cc3-98c4-dc0c0c07398f", salt: "0".repeat(32) };
const withdrawal: EntryDraft = {
  kind: "entry-withdrawn",
  at: "2026-03-09",
  about: [ids.case],
  replaces: [chance.id],
  data: { reason: "a slip" },
};

describe("sealing", () => {
  it("[JN5] keeps what it hashed: trimmed, whole characters, nothing undefined", () => {
    const draft = {
      kind: "case-handed-on",
      at: "2026-03-09",
      about: [ids.case],
      data: { waitsOn: "  bench \ud800", due: "2026-03-20", note: undefined },
    } as unknown as EntryDraft;
    const { header, body } = sealEntry(draft, place, chance);
    expect(body?.data).toStrictEqual({ waitsOn: "bench \ufffd", due: "2026-03-20" });
    expect(header.content).toBe(contentHash(body ?? { salt: "", data: {} }));
  });

  it("[JN5] shares nothing with the draft it came from", () => {
    const about: string[] = [ids.case];
    const { header } = sealEntry({ ...withdrawal, about }, place, chance);
    about.push("another");
    expect(header.about).toEqual([ids.case]);
  });

  it.each<[string, EntryDraft, Partial<typeof place>]>([
    ["a body that does not fit", { ...bee(1), data: { ...bee(1).data, left: "purple" } } as unknown as EntryDraft, {}],
    ["a member nobody knows", { ...withdrawal, data: { reason: "", mood: "calm" } } as EntryDraft, {}],
    ["an id too few", { ...bee(1), about: [ids.specimen] }, {}],
    ["no root", { ...withdrawal, about: [] }, {}],
    ["a withdrawal of nothing", { ...withdrawal, replaces: [] }, {}],
    ["a replaced id that is none", { ...withdrawal, replaces: ["the other one"] }, {}],
    ["a day that is none", { ...withdrawal, at: "2026-02-30" }, {}],
    ["an instant without an offset", { ...withdrawal, at: "2026-02-20T10:00:00" }, {}],
    ["number 0", withdrawal, { seq: 0 }],
    ["number 2 without the one before", withdrawal, { seq: 2 }],
    ["a time without milliseconds", withdrawal, { recordedAt: "2026-03-09T08:00:00Z" }],
    ["a programme that cannot name a file", withdrawal, { programme: "../main" }],
    ["nobody", withdrawal, { author: "" }],
  ])("[JN6] refuses %s", (_, draft, change) => {
    expect(() => sealEntry(draft, { ...place, ...change }, chance)).toThrow(DomainError);
  });

  it("[JN6] takes instants with any offset, and days", () => {
    for (const at of ["2026-02-20", "2026-02-20T10:00Z", "2026-02-20T10:00:05.5-05:00"]) {
      expect(sealEntry({ ...withdrawal, at }, place, chance).header.at).toBe(at);
    }
  });

  it("[JN7] continues from the head", () => {
    const entries = writer().write(bee(1), bee(2), bee(3));
    expect(entries.map((entry) => entry.header.seq)).toEqual([1, 2, 3]);
    expect(entries.map((entry) => entry.header.prev)).toEqual([
      null,
      ...entries.slice(0, 2).map((entry) => headerHash(entry.header)),
    ]);
  });
});

describe("reading", () => {
  const [entry] = writer().write(bee(1)) as [Entry];

  it("[JN8] reads every kind of the story", () => {
    const own = [...programmeStory(), ...membersStory(), ...apartStory()];
    const story = [...everyKind(), ...own, ...fileStory(), ...stopStory()];
    expect([...new Set(story.map((each) => each.header.kind))].toSorted()).toEqual(Object.keys(kinds).toSorted());
    const unread = story.filter((each) => "unread" in readEntry(each));
    expect(unread.map((each) => each.body)).toEqual([null]);
  });

  it.each([
    ["unknown-kind", { ...entry, header: { ...entry.header, kind: "queen-marked" } }],
    ["unknown-kind", { ...entry, header: { ...entry.header, kind: "constructor" } }],
    ["newer-schema", { ...entry, header: { ...entry.header, schema: 2 } }],
    ["withheld", { ...entry, body: null }],
    ["body-does-not-fit", { ...entry, header: { ...entry.header, about: [ids.specimen] } }],
    ["body-does-not-fit", { ...entry, body: { salt: "0".repeat(32), data: {} } }],
  ] as const)("[JN8] says why it was not read: %s", (unread, given) => {
    const before = structuredClone(given);
    expect(readEntry(given)).toEqual({ unread });
    expect(given).toEqual(before);
  });

  const lifting = (upcasters: Readonly<Record<number, Upcaster>>) => ({
    kinds: { "bee-read": { ...kinds["bee-read"], schema: 3 } },
    upcasters: { "bee-read": upcasters },
  });
  const older = {
    header: entry.header,
    body: { salt: "0".repeat(32), data: { reading: ids.reading, number: 4, sides: ["clear", "mites"] } },
  };
  const renamed: Upcaster = ({ number, ...data }) => ({ ...data, bee: number, lost: false });
  const split: Upcaster = ({ sides, ...data }) => {
    const [left, right] = sides as readonly string[];
    return { ...data, left, right };
  };

  it("[JN9] lifts an older body one schema at a time", () => {
    expect(readEntry(older, lifting({ 1: renamed, 2: split }))).toEqual({
      kind: "bee-read",
      data: { reading: ids.reading, bee: 4, lost: false, left: "clear", right: "mites" },
    });
  });

  it("[JN9] leaves it unread when a step is missing", () => {
    expect(readEntry(older, lifting({ 1: renamed }))).toEqual({ unread: "body-does-not-fit" });
  });

  it("[JN10] every kind has a step from each older schema", () => {
    for (const [kind, { schema }] of Object.entries(registry.kinds)) {
      const steps = Object.keys(registry.upcasters[kind] ?? {}).map(Number);
      expect(steps, kind).toEqual(Array.from({ length: schema - 1 }, (_, index) => index + 1));
    }
  });

  it("[JN11] the outer shape asks nothing of the kind, and keeps members it does not know", () => {
    const newer = { header: { ...entry.header, kind: "queen-marked", colour: "blue" }, body: entry.body };
    expect(entryMisfit(newer)).toBeNull();
    expect(headerHash(newer.header)).not.toBe(headerHash({ ...entry.header, kind: "queen-marked" }));
    expect(entryMisfit({ ...entry, extra: 1 })).not.toBeNull();
    expect(entryMisfit({ ...entry, header: { ...entry.header, seq: "1" } })).toMatchObject({ path: "header.seq" });
  });
});

describe("kinds", () => {
  const fits = (kind: keyof typeof kinds, data: unknown) => kinds[kind].body.safeParse(data).success;

  it("each has a JSON schema to publish", () => {
    for (const [kind, { body }] of Object.entries(kinds)) {
      expect(z.toJSONSchema(body), kind).toMatchObject({ type: "object", additionalProperties: false });
    }
  });

  it("[JN23] a bee has both trunks or is lost, and mites only where a trunk shows them", () => {
    const read = { reading: "r", bee: 1, lost: false, left: "clear", right: "mites" };
    expect(fits("bee-read", read)).toBe(true);
    expect(fits("bee-read", { ...read, mites: 3 })).toBe(true);
    expect(fits("bee-read", { ...read, mites: 0 })).toBe(false);
    expect(fits("bee-read", { ...read, right: "dark-no-mite", mites: 2 })).toBe(false);
    expect(fits("bee-read", { ...read, right: null })).toBe(false);
    expect(fits("bee-read", { ...read, lost: true })).toBe(false);
    expect(fits("bee-read", { ...read, lost: true, left: null, right: null })).toBe(true);
    expect(fits("bee-read", { ...read, bee: 0 })).toBe(false);
  });

  it("[JN24] a test result holds a count or a word that fit together", () => {
    const result = { colony: null, test: "varroa-wash", on: "2026-03-09" };
    expect(fits("test-result-recorded", result)).toBe(false);
    expect(fits("test-result-recorded", { ...result, result: "none-found" })).toBe(true);
    expect(fits("test-result-recorded", { ...result, positive: 3, examined: 2 })).toBe(false);
    expect(fits("test-result-recorded", { ...result, positive: 0, examined: 50 })).toBe(true);
    expect(fits("test-result-recorded", { ...result, examined: 50 })).toBe(false);
    expect(fits("test-result-recorded", { ...result, mites: 9 })).toBe(false);
    expect(fits("test-result-recorded", { ...result, mites: 400, bees: 300 })).toBe(true);
    expect(fits("test-result-recorded", { ...result, sporesMillionsPerBee: 0 })).toBe(true);
  });

  it("[JN25] a weather year holds what its kind says", () => {
    const means = Array.from({ length: 12 }, () => 5);
    const highs = [{ date: "2026-03-09", value: 11 }];
    const weather = (data: object) => fits("weather-year-recorded", { source: "station", ...data });
    expect(weather({ kind: "monthly-means", monthlyMeanCelsius: means })).toBe(true);
    expect(weather({ kind: "monthly-means", monthlyMeanCelsius: means.slice(1) })).toBe(false);
    expect(weather({ kind: "monthly-means", dailyMaxCelsius: highs })).toBe(false);
    expect(weather({ kind: "daily-highs", dailyMaxCelsius: highs })).toBe(true);
    expect(weather({ kind: "daily-highs", dailyMaxCelsius: [] })).toBe(false);
    expect(weather({ kind: "daily-highs", dailyMaxCelsius: highs, monthlyMeanCelsius: means })).toBe(false);
  });

  it("[JN26] a label's temperatures are in order", () => {
    const label = everyKind().find((each) => each.header.kind === "label-record-loaded")?.body?.data;
    expect(fits("label-record-loaded", label)).toBe(true);
    expect(fits("label-record-loaded", { ...label, minDailyHighCelsius: 30 })).toBe(false);
  });

  it("[JN31] a settlement names a kept entry by its hash, a decision and a reason", () => {
    const body = {
      hash: "a".repeat(64),
      entry: "entry-1",
      device: "phone-1",
      seq: 1,
      decision: "left-out",
      reason: "so",
    };
    expect(fits("kept-apart-settled", body)).toBe(true);
    expect(fits("kept-apart-settled", { ...body, hash: "a".repeat(63) })).toBe(false);
    expect(fits("kept-apart-settled", { ...body, decision: "deleted" })).toBe(false);
    expect(fits("kept-apart-settled", { ...body, reason: "  " })).toBe(false);
    expect(fits("kept-apart-settled", { ...body, seq: 0 })).toBe(false);
  });

  it("[JN27] a change of the evidence holds one thing with rates that can be reckoned with, and a citation", () => {
    const prior = { what: "prior", condition: "robbing", season: "autumn", rate: 0.1 };
    const citation = { source: null, at: "own numbers", read: "judgement" };
    const body = { change: prior, citation, on: "2026-04-02" };
    expect(fits("evidence-changed", body)).toBe(true);
    for (const rate of [0, 1, 1.5, -0.1])
      expect(fits("evidence-changed", { ...body, change: { ...prior, rate } })).toBe(false);
    expect(fits("evidence-changed", { ...body, change: { ...prior, outOf: 0 } })).toBe(false);
    expect(fits("evidence-changed", { ...body, change: { ...prior, finding: "crawlers" } })).toBe(false);
    expect(fits("evidence-changed", { change: prior, on: body.on })).toBe(false);
    expect(fits("evidence-changed", { ...body, citation: { ...citation, read: "heard" } })).toBe(false);
  });
});
