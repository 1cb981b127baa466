/** Sedge End and Garth Hollow: a case at the bench, a stop-and-report, a case just called in, a closed one. */
import type { Place } from "./places.ts";
import { openCase, writeFindings, writeLabel, writeReading, writeRedFlags } from "./records.ts";
import type { Writer } from "./writer.ts";

const nothingAlarming = {
  "sting-allergy": "absent",
  "sudden-mass-death": "absent",
  "brood-ropes-or-smells": "absent",
  "exotic-signs": "absent",
  "no-food-now": "absent",
} as const;

/** Winter 2025: one colony starved; closed with its cause confirmed. */
export function writeStarvedColony(writer: Writer, where: Place): void {
  const kase = openCase(writer, where, "TV-26-003", "2026-01-19", {
    question: "Why did one colony die?",
    story: "One hive silent, bees in the cells head first.",
    colonies: [where.colony(2)],
    waitsOn: "inspector 1",
    due: "2026-01-26",
  });
  writeRedFlags(writer, kase, "2026-01-19", nothingAlarming);
  writer.write("inspector 1", {
    kind: "colony-state-recorded",
    at: "2026-01-21",
    about: [kase, where.colony(2)],
    data: { colony: where.colony(2), state: "dead", on: "2026-01-21" },
  });
  writeFindings(writer, kase, "2026-01-21", where.colony(2), {
    heads_in_cells: "present",
    stores_exhausted: "present",
    small_cluster: "present",
    faeces_inside: "absent",
    white_cell_deposits: "absent",
    dead_pile_floor: "present",
  });
  writer.write("inspector 1", {
    kind: "test-result-recorded",
    at: "2026-01-22",
    about: [kase, where.colony(2)],
    data: {
      colony: where.colony(2),
      test: "varroa-wash",
      on: "2026-01-22",
      mites: 4,
      bees: 280,
      takenFrom: "D",
      aliveWhenTaken: false,
    },
  });
  writer.write("inspector 1", {
    kind: "decision-recorded",
    at: "2026-01-22",
    about: [kase],
    data: {
      choice: "act-now",
      colonies: where.colonies.filter((each) => each !== where.colony(2)),
      on: "2026-01-22",
      reason: "Feed the others solid sugar today; close the dead hive bee-tight.",
      reviewOn: "2026-02-05",
    },
  });
  writer.write("inspector 1", {
    kind: "outcome-recorded",
    at: "2026-04-12",
    about: [kase, where.colony(2)],
    data: { colony: where.colony(2), on: "2026-04-12", survived: false },
  });
  writer.write("inspector 1", {
    kind: "case-closed",
    at: "2026-04-12",
    about: [kase],
    data: {
      on: "2026-04-12",
      outcome: "answered",
      confirmedCauses: ["starvation"],
      confirmedBy: "inspection of the dead hive",
      learnt: "Heft in January.",
    },
  });
}

/** Autumn 2026: dwindling colonies; one vial half read, one waiting. */
export function writeDwindle(writer: Writer, where: Place): void {
  const kase = openCase(writer, where, "TV-26-031", "2026-10-20", {
    question: "Why do colonies dwindle in October?",
    story: "Two of six have half the bees of September. Food is there.",
    alreadyDone: "Nothing put in since spring.",
    colonies: where.colonies.filter((each) => each !== where.colony(2)),
    waitsOn: "bench",
    due: "2026-11-20",
  });
  writeRedFlags(writer, kase, "2026-10-20", nothingAlarming);
  writeFindings(writer, kase, "2026-10-22", null, { no_mite_control: "present", recent_spray: "absent" });
  for (const number of [1, 4])
    writeFindings(writer, kase, "2026-10-22", where.colony(number), {
      weak_for_season: "present",
      few_dead_depopulated: "present",
      stores_ample: "present",
      onset_gradual: "present",
      crawlers: "present",
      spotty_brood: "present",
      deformed_wings: number === 1 ? "present" : "absent",
    });
  writer.write("inspector 1", {
    kind: "test-result-recorded",
    at: "2026-10-24",
    about: [kase, where.colony(1)],
    data: {
      colony: where.colony(1),
      test: "varroa-wash",
      on: "2026-10-24",
      mites: 21,
      bees: 300,
      takenFrom: "B",
      aliveWhenTaken: true,
    },
  });
  writer.write("inspector 1", {
    kind: "sampling-planned",
    at: "2026-10-22",
    about: [kase, `${kase}-samples-1`],
    data: {
      purpose: "detect",
      colonies: [where.colony(1), where.colony(4)],
      beesPerColony: 60,
      from: "S",
      preservative: "ethanol-70",
      laboratory: "own bench",
      designPrevalence: 0.05,
      confidence: 0.95,
      sensitivity: 1,
      on: "2026-10-24",
    },
  });
  const vial = (code: string, number: number) =>
    writeLabel(writer, kase, "2026-10-24", { code, colony: where.colony(number), from: "S", purpose: "detect" });
  writeReading(writer, {
    specimen: vial("TV26-0271", 1),
    takenOn: "2026-10-24",
    receivedOn: "2026-10-27",
    on: "2026-11-19",
    bees: 62,
    read: 23,
    target: 60,
    share: 0.04,
    positive: 1,
    condition: 1,
  });
  vial("TV26-0272", 4);
}

/** Autumn 2026: a ropy thread; ordinary advice stops until the authority has spoken. */
export function writeRopyThread(writer: Writer, where: Place): void {
  const kase = openCase(writer, where, "TV-26-022", "2026-09-28", {
    question: "What is wrong with the brood of one colony?",
    story: "Sunken dark cappings and a bad smell in one hive.",
    colonies: where.colonies,
    waitsOn: "competent authority",
    due: "2026-09-29",
  });
  const flags = writeRedFlags(writer, kase, "2026-09-28", { ...nothingAlarming, "brood-ropes-or-smells": "present" });
  const signs = writeFindings(writer, kase, "2026-09-28", where.colony(2), {
    ropy_thread: "present",
    sunken_perforated_caps: "present",
    foul_odour: "present",
    spotty_brood: "present",
  });
  const told = { toldWhom: "competent authority", on: "2026-09-28", due: "2026-11-27", reference: "TV 311" };
  const answers = [signs.ropy_thread, flags["brood-ropes-or-smells"]].filter((entry) => entry !== undefined);
  writer.write("specialist 1", {
    kind: "stop-reported",
    at: told.on,
    about: [kase],
    data: { ...told, answers },
  });
  writer.write("specialist 1", {
    kind: "case-handed-on",
    at: told.on,
    about: [kase],
    data: { waitsOn: told.toldWhom, due: told.due },
  });
}

/** November 2026: just called in; the red flags are not all asked. */
export function writeNewCall(writer: Writer, where: Place): void {
  const kase = openCase(writer, where, "TV-26-035", "2026-11-18", {
    question: "Dead bees in front of two hives on a cold morning: should I worry?",
    story: "About fifty dead bees on the board after the first frost.",
    colonies: [where.colony(1), where.colony(3)],
    waitsOn: "specialist 2",
    due: "2026-11-21",
  });
  writeRedFlags(writer, kase, "2026-11-18", { "sting-allergy": "absent" });
}
