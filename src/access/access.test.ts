/** Every role, every kind, every act: what is given and what may be done, held against a table written by hand. */
import { describe, expect, it } from "vitest";
import { bee, callDrafts, everyKind } from "../../tests/journals/every-kind.ts";
import { fileStory } from "../../tests/journals/file-story.ts";
import { writer } from "../../tests/journals/writer.ts";
import { type Entry, type EntryDraft, kinds } from "../journal/index.ts";
import {
  acts,
  addingTrouble,
  coarsened,
  mayAct,
  mayAdd,
  mayEverAdd,
  ownsByRoot,
  passwordTrouble,
  type Role,
  relations,
  roles,
  type Sent,
  type Share,
  seesOnlyOwn,
  shared,
  shareOf,
} from "./index.ts";

/** Columns: keeper, reader, manager, inspector, reviewer, administrator; each own, other, common. W whole, h header, - nothing. */
const givenByHand = `
apiary-registered      W-- W-- Wh- WWW WWW WWW
colony-registered      W-- W-- WW- WWW WWW WWW
weather-year-recorded  W-- W-- WW- WWW WWW WWW
region-recorded        W-- W-- WW- WWW WWW WWW
flow-recorded          W-- W-- WW- WWW WWW WWW
supers-recorded        W-- W-- WW- WWW WWW WWW
treatment-recorded     W-- W-- WW- WWW WWW WWW
case-opened            W-- W-- Wh- WWW WWW WWW
case-handed-on         W-- W-- WW- WWW WWW WWW
red-flag-answered      W-- W-- WW- WWW WWW WWW
finding-recorded       W-- W-- WW- WWW WWW WWW
colony-state-recorded  W-- W-- WW- WWW WWW WWW
step-planned           W-- W-- WW- WWW WWW WWW
sampling-planned       W-- W-- WW- WWW WWW WWW
test-result-recorded   W-- W-- WW- WWW WWW WWW
stop-reported          W-- W-- WW- WWW WWW WWW
stop-lifted            W-- W-- WW- WWW WWW WWW
decision-recorded      W-- W-- WW- WWW WWW WWW
outcome-recorded       W-- W-- WW- WWW WWW WWW
case-closed            W-- W-- WW- WWW WWW WWW
file-attached          W-- W-- Wh- WWW WWW WWW
specimen-labelled      W-- WW- WW- WWW WWW WWW
specimen-received      W-- WW- WW- WWW WWW WWW
reading-started        W-- Wh- WW- WWW WWW WWW
bee-read               W-- Wh- WW- WWW WWW WWW
reading-finished       W-- Wh- WW- WWW WWW WWW
label-record-loaded    W-W W-W WWW WWW WWW WWW
plan-made              W-- W-- WW- WWW WWW WWW
plan-step-done         W-- W-- WW- WWW WWW WWW
entry-withdrawn        W-W WhW WWW WWW WWW WWW
content-erased         W-W WWW WWW WWW WWW WWW
heads-noted            --- --- WWW WWW WWW WWW
kept-apart-settled     --- --- hhh hhh WWW WWW
access-noted           --- --- hhh hhh hhh WWW
evidence-changed       W-W W-W WWW WWW WWW WWW
reasoning-set          W-W W-W WWW WWW WWW WWW
a-kind-of-tomorrow     W-W W-W WhW WWW WWW WWW
`;

const inTable = ["keeper", "reader", "manager", "inspector", "reviewer", "administrator"] as const;
const whoses = ["own", "other", "common"] as const;
const shares: Readonly<Record<string, Share>> = { W: "whole", h: "withheld", "-": "none" };

const rows = givenByHand
  .trim()
  .split("\n")
  .map((line) => line.split(/\s+/) as [string, ...string[]]);

const asker = (role: Role, hasExactPlaces = false) => ({ role, hasExactPlaces });

describe("entries that are given", () => {
  it("[AC1] the table written by hand holds every kind and every role", () => {
    expect(rows.map(([kind]) => kind).toSorted()).toEqual([...Object.keys(kinds), "a-kind-of-tomorrow"].toSorted());
    expect([...inTable].toSorted()).toEqual([...roles].toSorted());
    for (const [kind, ...cells] of rows)
      expect(
        cells.every((cell) => cell.length === 3),
        kind,
      ).toBe(true);
  });

  it.each(rows)("[AC1] %s is shared as the table says", (kind, ...cells) => {
    const found = inTable.map((role) => whoses.map((whose) => shareOf(asker(role), kind, whose)));
    expect(found).toEqual(cells.map((cell) => [...cell].map((sign) => shares[sign])));
  });

  it("[AC2] a keeper is given nothing of another's, of no kind at all, and a pull need not look there", () => {
    expect(rows.map(([kind]) => shareOf(asker("keeper"), kind, "other"))).toEqual(rows.map(() => "none"));
    expect(roles.filter(seesOnlyOwn)).toEqual(["keeper"]);
  });

  it("[AC3] a reader is given no test, no case and no earlier reading, whoever labelled the vial", () => {
    const story = everyKind();
    const seen = story.flatMap((entry) => shared(entry, asker("reader"), "other") ?? []);
    expect(new Set(seen.filter(({ body }) => body !== null).map(({ header }) => header.kind))).toEqual(
      new Set(["specimen-labelled", "specimen-received", "content-erased"]),
    );
    expect(JSON.stringify(seen)).not.toContain('"left":');
    expect(roles.filter((role) => !ownsByRoot(role))).toEqual(["reader"]);
  });

  it("[AC4] a manager meets neither place nor caller before the grant, and both after it", () => {
    const story = everyKind();
    const apiary = story.find(({ header }) => header.kind === "apiary-registered");
    const seen = (granted: boolean) =>
      JSON.stringify(story.map((entry) => shared(entry, asker("manager", granted), "other")));
    expect(apiary?.body?.data).toMatchObject({ latitude: 45.2, longitude: -93.1 });
    expect(seen(false)).not.toMatch(/-93\.1|Hollow Meadow|"story"|"caller"/);
    expect(seen(true)).toContain("-93.1");
    expect(seen(true)).toContain('"story"');
  });

  it("[AC14] a manager meets no photo and no voice note before the grant, a reader never those of others", () => {
    const [entry] = fileStory().filter(({ header }) => header.kind === "file-attached") as [Entry];
    const to = (role: Role, granted: boolean) => shared(entry, asker(role, granted), "other");
    expect(to("manager", false)).toEqual({ header: entry.header, body: null });
    expect(to("manager", true)).toEqual(entry);
    expect(to("reader", true)).toBeNull();
  });

  it("[AC5] what was done to members is whole for the administrator alone", () => {
    const whole = roles.filter((role) =>
      whoses.some((whose) => shareOf(asker(role, true), "access-noted", whose) === "whole"),
    );
    expect(whole).toEqual(["administrator"]);
  });

  it("[AC1] an entry that is withheld keeps its header word for word", () => {
    const [entry] = everyKind() as [Entry];
    expect(shared(entry, asker("manager"), "other")).toEqual({ header: entry.header, body: null });
  });
});

const home =
  "apiary-registered colony-registered weather-year-recorded region-recorded flow-recorded supers-recorded treatment-recorded case-opened case-handed-on red-flag-answered finding-recorded colony-state-recorded step-planned sampling-planned test-result-recorded stop-reported decision-recorded outcome-recorded case-closed file-attached specimen-labelled specimen-received reading-started bee-read reading-finished label-record-loaded plan-made plan-step-done entry-withdrawn".split(
    " ",
  );
const bench = "specimen-labelled specimen-received reading-started bee-read reading-finished entry-withdrawn".split(
  " ",
);
const desk = ["heads-noted", "label-record-loaded", "entry-withdrawn"];
const evidence = ["evidence-changed", "reasoning-set"];
const settling = "kept-apart-settled";
const last = ["content-erased", "a-kind-of-tomorrow"];

/** What may be added, by hand: own, other, common. */
const addedByHand: Readonly<Record<Role, readonly [readonly string[], readonly string[], readonly string[]]>> = {
  keeper: [home, [], ["heads-noted"]],
  reader: [bench, bench, ["heads-noted"]],
  manager: [["case-handed-on"], ["case-handed-on"], ["heads-noted"]],
  inspector: [[...home, "stop-lifted"], [...home, "stop-lifted"], desk],
  reviewer: [
    [...home, "stop-lifted"],
    [...home, "stop-lifted"],
    [...desk, ...evidence, settling],
  ],
  administrator: [
    [...home, "stop-lifted", ...last],
    [...home, "stop-lifted", ...last],
    [...desk, ...evidence, settling, ...last],
  ],
};

/** What the service would know of a draft written on the sender's own device. */
const sent = (draft: EntryDraft, more: Partial<Sent> = {}): Sent => {
  const [entry] = writer().write(draft) as [Entry];
  return { entry, root: "own", named: [], replacesOwn: true, ...more };
};
const opened = callDrafts.find((draft) => draft.kind === "case-opened") as EntryDraft;

describe("entries that are added", () => {
  it.each(roles.map((role) => [role]))("[AC6] %s may add what the table says and nothing else", (role) => {
    const found = whoses.map((whose) => rows.map(([kind]) => kind).filter((kind) => mayAdd(role, kind, whose)));
    expect(found.map((list) => list.toSorted())).toEqual(addedByHand[role].map((list) => [...list].toSorted()));
  });

  it("[AC6] a page asks before it writes: a kind that may be added nowhere is none of the role's", () => {
    expect(mayEverAdd("keeper", "evidence-changed")).toBe(false);
    expect(mayEverAdd("keeper", "finding-recorded")).toBe(true);
    expect(mayEverAdd("reader", "case-opened")).toBe(false);
  });

  it("[AC7] a keeper adds nothing to another's case, and hangs nothing of his own on it", () => {
    expect(addingTrouble("keeper", sent(opened))).toBeNull();
    expect(addingTrouble("keeper", sent(opened, { root: "other" }))).toMatchObject({ code: "entry-not-allowed" });
    expect(addingTrouble("keeper", sent(opened, { named: ["other"] }))).toMatchObject({ code: "entry-not-allowed" });
    expect(addingTrouble("inspector", sent(opened, { root: "other", named: ["other"] }))).toBeNull();
  });

  it("[AC43] who may not settle undoes no settlement: nothing of theirs replaces an entry of the programme", () => {
    const withdrawal: EntryDraft = {
      ...{ kind: "entry-withdrawn", at: "2026-03-20", about: ["main"], data: { reason: "so" } },
      replaces: ["0190c0de-0000-7000-8000-00000000000a"],
    };
    const undoing = (role: Role, draft = withdrawal) => addingTrouble(role, sent(draft, { root: "common" }));
    expect(undoing("inspector")).toMatchObject({ code: "entry-not-allowed" });
    expect([undoing("reviewer"), undoing("administrator")]).toEqual([null, null]);
    expect(undoing("inspector", { ...withdrawal, about: ["label-1"] })).toBeNull();
  });

  it("[AC7] a vial whose body names another case than its header is refused", () => {
    const label = (of: string): EntryDraft => ({
      kind: "specimen-labelled",
      at: "2026-03-10",
      about: ["vial-1", "case-1", "colony-1"],
      data: {
        ...{ code: "A-1", case: of, colony: "colony-1", takenOn: null, from: "S" },
        ...{ preservative: "ethanol-70", purpose: "detect" },
      },
    });
    expect(addingTrouble("keeper", sent(label("case-1")))).toBeNull();
    expect(addingTrouble("keeper", sent(label("case-2")))).toMatchObject({ code: "entry-not-allowed" });
  });

  it("[AC8] a reader replaces and withdraws only what the reader wrote", () => {
    const other = { root: "other", replacesOwn: false } as const;
    expect(addingTrouble("reader", sent(bee(1), { ...other, replacesOwn: true }))).toBeNull();
    expect(addingTrouble("reader", sent(bee(1), other))).toMatchObject({ code: "entry-not-allowed" });
    const [first] = writer().write(bee(1)) as [Entry];
    const undo: EntryDraft = {
      ...{ kind: "entry-withdrawn", at: "2026-03-16", about: first.header.about, data: { reason: "slip" } },
      replaces: [first.header.id],
    };
    expect(addingTrouble("reader", sent(undo, other))).toMatchObject({ code: "entry-not-allowed" });
    expect(addingTrouble("inspector", sent(undo, other))).toBeNull();
  });

  it("[AC15] entries kept apart are settled by reviewer and administrator", () => {
    expect(roles.filter((role) => mayEverAdd(role, "kept-apart-settled"))).toEqual(["reviewer", "administrator"]);
  });

  it("[AC9] evidence, erasure and the book of members", () => {
    const who = (kind: string) => roles.filter((role) => mayEverAdd(role, kind));
    expect(who("evidence-changed")).toEqual(["reviewer", "administrator"]);
    expect(who("content-erased")).toEqual(["administrator"]);
    expect(who("access-noted")).toEqual([]);
  });
});

/** Acts by hand: o own, t another's, r the region; keeper, reader, manager, inspector, reviewer, administrator. */
const actsByHand = `
reckon             o o o   o   o   o
see-members        o o o   o   o   ot
invite             - - -   -   -   ot
change-member      - - -   -   -   ot
change-credentials o o o   o   o   o
see-sessions       o o o   o   o   ot
end-session        o o o   o   o   ot
register-device    o o o   o   o   o
report-device-lost o o o   o   o   ot
return-device      - - -   -   -   ot
give-apiary        - - -   -   -   ot
see-places         - - r   otr otr otr
read-audit         - - -   -   -   r
export-data        o o o   o   o   ot
erase-data         - - -   -   -   ot
`;

describe("acts", () => {
  const table = actsByHand
    .trim()
    .split("\n")
    .map((line) => line.split(/\s+/) as [string, ...string[]]);

  it("[AC10] [AC11] every role, act and relation is as the table written by hand says", () => {
    expect(table.map(([act]) => act).toSorted()).toEqual([...acts].toSorted());
    const signs = { own: "o", other: "t", region: "r" } as const;
    for (const [name, ...cells] of table) {
      const act = acts.find((each) => each === name) as (typeof acts)[number];
      const found = inTable.map((role) =>
        relations.filter((each) => mayAct(role, act, each)).map((each) => signs[each]),
      );
      expect(
        found.map((each) => each.join("") || "-"),
        name,
      ).toEqual(cells);
    }
  });
});

/** Great-circle distance on a sphere of the mean radius: a second opinion, good to half a percent. */
function haversineMetres(one: readonly [number, number], other: readonly [number, number]): number {
  const [lat1, lon1, lat2, lon2] = [...one, ...other].map((degrees) => (degrees * Math.PI) / 180) as [
    number,
    number,
    number,
    number,
  ];
  const a = Math.sin((lat2 - lat1) / 2) ** 2 + Math.cos(lat1) * Math.cos(lat2) * Math.sin((lon2 - lon1) / 2) ** 2;
  return 2 * 6_371_008.8 * Math.asin(Math.sqrt(a));
}

describe("places", () => {
  it("[AC12] every corner of a cell lies within the uncertainty, and hardly any farther in", () => {
    for (const latitude of [-89.95, -45.15, -0.05, 0.05, 30.05, 45.15, 60.05, 89.95]) {
      const place = coarsened({ latitude, longitude: -93.75 });
      const corners = [-0.05, 0.05].flatMap((north) =>
        [-0.05, 0.05].map((east) => [place.latitude + north, place.longitude + east] as const),
      );
      const farthest = Math.max(...corners.map((corner) => haversineMetres([place.latitude, place.longitude], corner)));
      // The sphere and the ellipsoid differ by up to 0.56 % in a degree's length.
      expect(place.coordinateUncertaintyMetres).toBeGreaterThan(farthest * 0.993);
      expect(place.coordinateUncertaintyMetres).toBeLessThan(farthest * 1.02 + 1);
    }
  });

  it("[AC12] at the equator a tenth of a degree each way is 15 691 m from corner to corner", () => {
    // The georeferencing guides print this figure for coordinates given to 0.1 degrees (from memory).
    expect(2 * coarsened({ latitude: 0.04, longitude: 10.04 }).coordinateUncertaintyMetres).toBeCloseTo(15_691, -1);
  });

  it("[AC12] every place of a cell gives the same answer", () => {
    const all = [45.1, 45.13, 45.1999].flatMap((latitude) =>
      [-93.8, -93.761, -93.7001].map((longitude) => coarsened({ latitude, longitude })),
    );
    expect(new Set(all.map((each) => JSON.stringify(each))).size).toBe(1);
    expect(all[0]).toMatchObject({ latitude: 45.15, longitude: -93.75, gridDegrees: 0.1 });
  });
});

describe("passwords", () => {
  it.each([
    ["short of twelve", "vale-meadow"],
    ["longer than 256", "ab3".repeat(100)],
  ])("[AC13] %s", (_, password) => {
    expect(passwordTrouble(password, "R. Vale")?.code).toBe("password-length");
  });

  it.each([
    "aaaaaaaaaaaaaa",
    "abcdefghijklmn",
    "987654321098765",
    "honeybee-hive-2026!",
    "Skepsis123456789",
    "RowanValeRowan",
  ])("[AC13] %s is too easy", (password) => {
    expect(passwordTrouble(password, "Rowan Vale")?.code).toBe("password-easy");
  });

  it.each(["quiet copper lantern", "Zq9#rT2!mKp7w", "пчёлы летят домой", "482915730264", "honey tastes of thyme here"])(
    "[AC13] %s is taken: its make-up is free",
    (password) => {
      expect(passwordTrouble(password, "Rowan Vale")).toBeNull();
    },
  );
});
