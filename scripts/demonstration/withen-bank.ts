/** Withen Bank: crawling bees in late winter, mites found, a plan under an invented label, a recheck with a comparator. */
import type { Place } from "./places.ts";
import { openCase, writeFindings, writeLabel, writeReading, writeRedFlags } from "./records.ts";
import type { Writer } from "./writer.ts";

/** The whole way, from the call in February to the recheck in October. */
export function writeWithenBank(writer: Writer, where: Place): void {
  const { write } = writer;
  const kase = openCase(writer, where, "TV-26-014", "2026-02-27", {
    question: "Do tracheal mites explain the crawling bees and small clusters?",
    story:
      "Bees crawl in front of the hives on warm days and cannot fly. The clusters are small. Worse over some weeks.",
    colonies: where.colonies,
    waitsOn: "inspector 2",
    due: "2026-03-02",
  });
  writeRedFlags(writer, kase, "2026-02-27", {
    "sting-allergy": "absent",
    "sudden-mass-death": "absent",
    "brood-ropes-or-smells": "not-looked",
    "exotic-signs": "absent",
    "no-food-now": "absent",
  });
  writeFindings(writer, kase, "2026-03-02", null, {
    long_confinement: "present",
    recent_spray: "absent",
    new_stock_12m: "present",
  });
  const signs = {
    crawlers: "present",
    k_wing: "present",
    small_cluster: "present",
    onset_gradual: "present",
    dead_heap: "absent",
  } as const;
  for (const number of [3, 5, 7])
    writeFindings(writer, kase, "2026-03-02", where.colony(number), { ...signs, deformed_wings: "absent" });
  writeFindings(writer, kase, "2026-03-02", where.colony(7), {
    faecal_streaks_front: "present",
    trembling: "absent",
    loose_cluster: "present",
  });
  writeFindings(writer, kase, "2026-03-02", where.colony(11), {
    crawlers: "absent",
    k_wing: "absent",
    dead_heap: "absent",
  });
  write("inspector 2", {
    kind: "step-planned",
    at: "2026-03-02",
    about: [kase],
    data: { step: "tracheal-dissection", kind: "test", colonies: [3, 5, 7, 11].map(where.colony), state: "done" },
  });
  write("inspector 2", {
    kind: "sampling-planned",
    at: "2026-03-02",
    about: [kase, `${kase}-samples-1`],
    data: {
      purpose: "estimate",
      colonies: [3, 5, 7, 11].map(where.colony),
      beesPerColony: 50,
      from: "E",
      preservative: "frozen",
      laboratory: "own bench",
      designPrevalence: 0.05,
      confidence: 0.9,
      sensitivity: 1,
      on: "2026-03-03",
    },
  });
  const march = { takenOn: "2026-03-03", receivedOn: "2026-03-03", target: 50 };
  const label = (code: string, number: number, purpose: "estimate" | "recheck", on: string) =>
    writeLabel(writer, kase, on, { code, colony: where.colony(number), from: "E", purpose });
  writeReading(writer, {
    ...march,
    specimen: label("TV26-0146", 3, "estimate", "2026-03-03"),
    on: "2026-03-04",
    bees: 50,
    read: 50,
    share: 0.12,
    positive: 6,
    condition: 0,
  });
  writeReading(writer, {
    ...march,
    specimen: label("TV26-0147", 7, "estimate", "2026-03-03"),
    on: "2026-03-04",
    bees: 52,
    read: 50,
    share: 0.34,
    positive: 17,
    condition: 0,
  });
  writeReading(writer, {
    ...march,
    specimen: label("TV26-0148", 5, "estimate", "2026-03-03"),
    on: "2026-03-05",
    bees: 30,
    read: 30,
    share: 0.17,
    positive: 2,
    unreadable: 18,
    condition: 3,
  });
  writeReading(writer, {
    ...march,
    specimen: label("TV26-0149", 11, "estimate", "2026-03-03"),
    on: "2026-03-05",
    bees: 50,
    read: 50,
    share: 0.02,
    positive: 0,
    condition: 0,
  });
  write("bench", {
    kind: "test-result-recorded",
    at: "2026-03-05",
    about: [kase, where.colony(7)],
    data: {
      colony: where.colony(7),
      test: "varroa-wash",
      on: "2026-03-05",
      mites: 3,
      bees: 300,
      takenFrom: "B",
      aliveWhenTaken: true,
    },
  });
  write("specialist 1", {
    kind: "decision-recorded",
    at: "2026-03-09",
    about: [kase],
    data: {
      choice: "act-now",
      control: "menthol",
      colonies: [where.colony(7)],
      on: "2026-03-09",
      reason:
        "One colony is well above the line at which damage is likely; the others are to be counted again in August.",
      reviewOn: "2026-08-03",
      reckonedFrom: { colonyValue: 240, actCost: 26, testCost: 3, residualShare: 0.15, currency: "invented money" },
    },
  });
  writePlan(writer, where, kase);
  writeRecheck(writer, where, kase, label);
  write("specialist 1", {
    kind: "case-handed-on",
    at: "2026-10-15",
    about: [kase],
    data: { waitsOn: "inspector 1", due: "2027-02-15", note: "Outcome after winter." },
  });
}

function writePlan(writer: Writer, where: Place, kase: string): void {
  const { write } = writer;
  const record = writer.id("label-record-menthol");
  write("specialist 1", {
    kind: "label-record-loaded",
    at: "2026-03-06",
    about: [record],
    data: {
      jurisdiction: "Tarrow Valley (invented)",
      activeIngredient: "menthol",
      doseGramsPerColony: 50,
      applications: 1,
      daysBetweenApplications: 0,
      minDailyHighCelsius: 16,
      maxDailyHighCelsius: 32,
      durationDays: 28,
      supersAllowed: false,
      daysBeforeSupers: 14,
      placement: "on the top bars",
      protectiveEquipment: "gloves and eye protection",
      readOn: "2026-03-06",
      source: "Invented label for the demonstration; no real label says this.",
      invented: true,
    },
  });
  const supers = `${where.apiary}-supers-2026`;
  const on = write("keeper", {
    kind: "supers-recorded",
    at: "2026-04-20",
    about: [where.apiary, supers],
    data: { on: "2026-04-20", off: null, colonies: [] },
  });
  write("keeper", {
    kind: "supers-recorded",
    at: "2026-08-06",
    about: [where.apiary, supers],
    replaces: [on.header.id],
    data: { on: "2026-04-20", off: "2026-08-06", colonies: [] },
  });
  const plan = writer.id("plan-withen-menthol");
  write("specialist 1", {
    kind: "plan-made",
    at: "2026-08-06",
    about: [plan, kase],
    data: {
      case: kase,
      colonies: [where.colony(7)],
      control: "menthol",
      labelRecord: record,
      madeOn: "2026-08-06",
      steps: [
        {
          step: "apply-1",
          kind: "apply",
          on: "2026-08-08",
          until: null,
          gramsPerColony: 50,
          gramsInAll: 50,
          note: "On the top bars, supers off.",
        },
        {
          step: "remove-1",
          kind: "remove",
          on: "2026-09-05",
          until: null,
          gramsPerColony: null,
          gramsInAll: null,
          note: "Take out what is left.",
        },
        {
          step: "recheck-1",
          kind: "recheck",
          on: "2026-10-12",
          until: null,
          gramsPerColony: null,
          gramsInAll: null,
          note: "Same frames, 50 bees, with WB-03 as comparator.",
        },
      ],
      version: 1,
    },
  });
  for (const [step, day] of [
    ["apply-1", "2026-08-08"],
    ["remove-1", "2026-09-05"],
  ] as const) {
    write("keeper", { kind: "plan-step-done", at: day, about: [plan], data: { step, state: "done", on: day } });
  }
  write("keeper", {
    kind: "treatment-recorded",
    at: "2026-08-08",
    about: [where.apiary, `${where.apiary}-menthol-2026`],
    data: { activeIngredient: "menthol", on: "2026-08-08", off: "2026-09-05", grams: 50, colonies: [where.colony(7)] },
  });
}

/** August counts before the treatment, October counts after it, in the treated colony and in an untreated one. */
function writeRecheck(
  writer: Writer,
  where: Place,
  kase: string,
  label: (code: string, number: number, purpose: "estimate" | "recheck", on: string) => string,
): void {
  const counts = [
    ["TV26-0211", 7, "2026-08-04", 20],
    ["TV26-0212", 3, "2026-08-04", 18],
    ["TV26-0260", 7, "2026-10-12", 5],
    ["TV26-0261", 3, "2026-10-12", 9],
  ] as const;
  for (const [code, number, on, positive] of counts) {
    const specimen = label(code, number, on < "2026-09" ? "estimate" : "recheck", on);
    writeReading(writer, {
      specimen,
      takenOn: on,
      receivedOn: on,
      on,
      bees: 50,
      read: 50,
      target: 50,
      share: positive / 50,
      positive,
      condition: 0,
    });
  }
  for (const number of [3, 7]) {
    writer.write("inspector 2", {
      kind: "outcome-recorded",
      at: "2026-10-12",
      about: [kase, where.colony(number)],
      data: { colony: where.colony(number), on: "2026-10-12", survived: true },
    });
  }
}
