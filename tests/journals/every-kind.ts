/**
 * An invented case told in entries of every kind: invented place, no people, no real dose.
 * Two devices write: the office and a phone in the yard; they disagree once, and one bee is read twice.
 */
import type { Entry, EntryDraft } from "../../src/journal/index.ts";
import { type Writer, writer } from "./writer.ts";

export const ids = {
  apiary: "apiary-hollow",
  colonyOne: "colony-1",
  colonyTwo: "colony-2",
  case: "case-1",
  samplePlan: "sample-plan-1",
  specimen: "specimen-1",
  reading: "reading-1",
  plan: "plan-1",
  labelRecord: "label-record-1",
} as const;

/** A draft about the case on a day. */
const ofCase = (draft: Omit<EntryDraft, "about" | "at">, day: string, ...more: readonly string[]): EntryDraft =>
  ({ ...draft, at: day, about: [ids.case, ...more] }) as EntryDraft;

/** One bee of the reading; both trunks clear unless said. */
export const bee = (
  number: number,
  left: "clear" | "mites" | "mites-dark" | "dark-no-mite" | "unreadable" = "clear",
  right: "clear" | "mites" | "unreadable" = "clear",
): EntryDraft => ({
  kind: "bee-read",
  at: "2026-03-16T09:00:00Z",
  about: [ids.specimen, ids.reading],
  data: { reading: ids.reading, bee: number, lost: false, left, right },
});

export const apiaryDrafts: readonly EntryDraft[] = [
  {
    kind: "apiary-registered",
    at: "2026-03-02",
    about: [ids.apiary],
    data: { code: "HO", name: "Hollow Meadow", place: "Invented County", latitude: 45.2, longitude: -93.1 },
  },
  ...[ids.colonyOne, ids.colonyTwo].map(
    (colony, index): EntryDraft => ({
      kind: "colony-registered",
      at: "2026-03-02",
      about: [ids.apiary, colony],
      data: { code: `HO-${index + 1}`, hiveType: "ten-frame" },
    }),
  ),
  {
    kind: "weather-year-recorded",
    at: "2026-03-02",
    about: [ids.apiary],
    data: {
      kind: "monthly-means",
      monthlyMeanCelsius: [-9, -6, 0, 8, 15, 20, 23, 21, 17, 9, 1, -6],
      source: "invented",
    },
  },
  {
    kind: "region-recorded",
    at: "2026-03-02",
    about: [ids.apiary],
    data: {
      varroa: "present",
      acarapisWoodi: "unknown",
      smallHiveBeetle: "absent",
      tropilaelaps: "absent",
      vespa: "absent",
      source: "invented",
    },
  },
  {
    kind: "flow-recorded",
    at: "2026-03-02",
    about: [ids.apiary, "flow-1"],
    data: { name: "clover", from: "2026-06-10", to: "2026-07-20" },
  },
  {
    kind: "supers-recorded",
    at: "2026-03-02",
    about: [ids.apiary, "supers-1"],
    data: { on: "2026-06-01", off: null, colonies: [] },
  },
  {
    kind: "treatment-recorded",
    at: "2026-03-02",
    about: [ids.apiary, "treatment-1"],
    data: { activeIngredient: "thymol", on: "2025-09-01", off: "2025-09-29", colonies: [] },
  },
];

export const callDrafts: readonly EntryDraft[] = [
  ofCase(
    {
      kind: "case-opened",
      data: {
        code: "2026-014",
        openedOn: "2026-03-09",
        question: "Why do bees crawl in front of the hives?",
        story: "They crawl and do not fly since the first warm day.",
        alreadyDone: "Fed sugar twice.",
        beganOn: "2026-03-07",
        coloniesInApiary: 2,
        colonies: [ids.colonyOne, ids.colonyTwo],
        waitsOn: "office",
        due: "2026-03-16",
      },
    },
    "2026-03-09",
    ids.apiary,
  ),
  ofCase(
    { kind: "red-flag-answered", data: { flag: "ropy_brood", state: "absent", on: "2026-03-09" } },
    "2026-03-09",
    "ropy_brood",
  ),
  ofCase(
    {
      kind: "finding-recorded",
      data: { colony: ids.colonyOne, finding: "crawlers", state: "present", on: "2026-03-09", knownFrom: "told" },
    },
    "2026-03-09",
    ids.colonyOne,
  ),
  ofCase(
    {
      kind: "finding-recorded",
      data: { colony: null, finding: "spray_nearby", state: "not-looked", on: "2026-03-09" },
    },
    "2026-03-09",
  ),
  ofCase(
    { kind: "colony-state-recorded", data: { colony: ids.colonyOne, state: "dying", on: "2026-03-09" } },
    "2026-03-09",
    ids.colonyOne,
  ),
];

export const kitDrafts: readonly EntryDraft[] = [
  ofCase(
    {
      kind: "step-planned",
      data: { step: "tracheal-dissection", kind: "test", colonies: [ids.colonyOne], state: "planned" },
    },
    "2026-03-10",
  ),
  ofCase(
    {
      kind: "sampling-planned",
      data: {
        purpose: "detect",
        colonies: [ids.colonyOne],
        beesPerColony: 5,
        from: "S",
        preservative: "ethanol-70",
        designPrevalence: 0.5,
        confidence: 0.95,
        sensitivity: 0.9,
        on: "2026-03-10",
      },
    },
    "2026-03-10",
    ids.samplePlan,
  ),
  ofCase({ kind: "case-handed-on", data: { waitsOn: "bench", due: "2026-03-20" } }, "2026-03-10"),
  {
    kind: "specimen-labelled",
    at: "2026-03-10",
    about: [ids.specimen, ids.case, ids.colonyOne],
    data: {
      code: "2026-014-1",
      case: ids.case,
      colony: ids.colonyOne,
      takenOn: null,
      from: "S",
      preservative: "ethanol-70",
      purpose: "detect",
    },
  },
];

export const benchDrafts: readonly EntryDraft[] = [
  {
    kind: "specimen-received",
    at: "2026-03-16",
    about: [ids.specimen],
    data: {
      on: "2026-03-16",
      takenOn: "2026-03-11",
      condition: 0,
      beesReceived: 6,
      aliveWhenTaken: true,
      acceptance: "accepted",
    },
  },
  {
    kind: "reading-started",
    at: "2026-03-16",
    about: [ids.specimen, ids.reading],
    data: { reading: ids.reading, reader: "reader A", on: "2026-03-16", method: "thoracic-disc", target: 5 },
  },
  bee(1),
  bee(2, "mites"),
  bee(3, "clear", "unreadable"),
  bee(4),
  {
    kind: "bee-read",
    at: "2026-03-16T09:05:00Z",
    about: [ids.specimen, ids.reading],
    data: { reading: ids.reading, bee: 5, lost: true, left: null, right: null },
  },
];

const finishDrafts: readonly EntryDraft[] = [
  {
    kind: "reading-finished",
    at: "2026-03-16",
    about: [ids.specimen, ids.reading],
    data: { reading: ids.reading, on: "2026-03-16", stop: "target-reached" },
  },
  ofCase(
    {
      kind: "test-result-recorded",
      data: { colony: ids.colonyOne, test: "varroa-wash", on: "2026-03-16", mites: 2, bees: 300, kept: "fresh" },
    },
    "2026-03-16",
    ids.colonyOne,
  ),
  ofCase(
    {
      kind: "decision-recorded",
      data: {
        choice: "act-now",
        colonies: [ids.colonyOne],
        on: "2026-03-17",
        reason: "One of three bees read in full has mites.",
        reviewOn: "2026-04-17",
      },
    },
    "2026-03-17",
  ),
  {
    kind: "label-record-loaded",
    at: "2026-03-17",
    about: [ids.labelRecord],
    data: {
      jurisdiction: "Invented County",
      activeIngredient: "menthol",
      doseGramsPerColony: 1,
      applications: 1,
      daysBetweenApplications: 0,
      minDailyHighCelsius: 15,
      maxDailyHighCelsius: 26,
      durationDays: 14,
      supersAllowed: false,
      daysBeforeSupers: 28,
      placement: "invented",
      readOn: "2026-03-17",
      source: "invented for tests: no label says this",
      invented: true,
    },
  },
  {
    kind: "plan-made",
    at: "2026-03-17",
    about: [ids.plan, ids.case],
    data: {
      case: ids.case,
      colonies: [ids.colonyOne],
      control: "menthol",
      labelRecord: ids.labelRecord,
      madeOn: "2026-03-17",
      steps: [
        {
          step: "apply-1",
          kind: "apply",
          on: "2026-04-20",
          until: "2026-05-04",
          gramsPerColony: 1,
          gramsInAll: 1,
          note: "invented dose",
        },
        {
          step: "recheck-1",
          kind: "recheck",
          on: "2026-06-01",
          until: null,
          gramsPerColony: null,
          gramsInAll: null,
          note: "",
        },
      ],
      version: 1,
    },
  },
  {
    kind: "plan-step-done",
    at: "2026-04-21",
    about: [ids.plan],
    data: { step: "apply-1", state: "done", on: "2026-04-21", deviation: "One day late: rain." },
  },
  ofCase(
    { kind: "outcome-recorded", data: { colony: ids.colonyOne, on: "2026-06-01", survived: true } },
    "2026-06-01",
    ids.colonyOne,
  ),
];

/** The whole story: entries of both devices, in the order they were written. */
export function everyKind(programme = "main"): readonly Entry[] {
  const office = writer({ device: "office-1", programme, author: "Office" });
  const phone = writer({ device: "phone-1", programme, author: "Yard", from: "2026-03-09T08:00:30.000Z" });
  const story = [
    office.write(...apiaryDrafts),
    office.write(...callDrafts),
    phone.write({ ...finding("absent"), at: "2026-03-09" }),
    office.write(...kitDrafts),
    office.write(...benchDrafts),
  ].flat();
  const fourthBee = idOf(story, (entry) => entry.header.kind === "bee-read" && entry.body?.data.bee === 4);
  const thirdBee = idOf(story, (entry) => entry.header.kind === "bee-read" && entry.body?.data.bee === 3);
  story.push(
    // Bee 3 is read again and found to have mites on the right: a correction. Bee 4 is taken back, then read.
    ...office.write({ ...bee(3, "clear", "mites"), replaces: [thirdBee] }),
    ...office.write({
      kind: "entry-withdrawn",
      at: "2026-03-16",
      about: [ids.specimen],
      replaces: [fourthBee],
      data: { reason: "pressed twice" },
    }),
    ...office.write(bee(4, "dark-no-mite")),
    ...office.write(...finishDrafts),
  );
  return [...story, ...ending(office, story)];
}

const finding = (state: "present" | "absent"): EntryDraft =>
  ofCase(
    { kind: "finding-recorded", data: { colony: ids.colonyOne, finding: "crawlers", state, on: "2026-03-09" } },
    "2026-03-09",
    ids.colonyOne,
  );

/** A name recorded by mistake is erased, the case is closed, heads are noted. */
function ending(office: Writer, story: readonly Entry[]): readonly Entry[] {
  const withName = office.write(
    ofCase(
      {
        kind: "finding-recorded",
        data: { colony: ids.colonyTwo, finding: "k_wing", state: "absent", on: "2026-06-01", note: "invented name" },
      },
      "2026-06-01",
      ids.colonyTwo,
    ),
  );
  const erasure = office.write({
    kind: "content-erased",
    at: "2026-06-01",
    about: [ids.case],
    data: { entries: withName.map((entry) => entry.header.id), reason: "a name stood in the note" },
  });
  const closed = office.write(
    ofCase(
      {
        kind: "case-closed",
        data: { on: "2026-06-02", outcome: "answered", confirmedCauses: ["acarapis_woodi"], confirmedBy: "bench" },
      },
      "2026-06-02",
    ),
  );
  const head = office.head();
  const noted = office.write({
    kind: "heads-noted",
    at: "2026-06-02",
    about: [story[0]?.header.programme ?? ""],
    data: { heads: head ? [head] : [] },
  });
  const erased = withName.map((entry): Entry => ({ header: entry.header, body: null }));
  return [...erased, ...erasure, ...closed, ...noted];
}

function idOf(entries: readonly Entry[], is: (entry: Entry) => boolean): string {
  const found = entries.find(is);
  if (!found) throw new Error("the story lacks the entry");
  return found.header.id;
}
