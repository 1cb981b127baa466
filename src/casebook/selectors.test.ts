import { describe, expect, it } from "vitest";
import {
  apiaryDrafts,
  bee,
  benchDrafts,
  callDrafts,
  everyKind,
  ids,
  kitDrafts,
} from "../../tests/journals/every-kind.ts";
import { writer } from "../../tests/journals/writer.ts";
import type { Entry, EntryDraft } from "../journal/index.ts";
import {
  type Casebook,
  caseList,
  coloniesOf,
  compareCodes,
  conflictsOf,
  fold,
  openQuestion,
  plansOf,
  questionsOf,
  specimensOf,
} from "./index.ts";

const seeing = (...drafts: readonly EntryDraft[]): Casebook => fold(writer().write(...drafts));
const statuses = (casebook: Casebook): string =>
  questionsOf(casebook, ids.case)
    .map((each) => ({ done: "d", open: "o", later: "l" })[each.status])
    .join("");

const decided = (choice: "act-now" | "test-first" | "wait"): EntryDraft => ({
  kind: "decision-recorded",
  at: "2026-03-17",
  about: [ids.case],
  data: { choice, colonies: [ids.colonyOne], on: "2026-03-17", reason: "as the story goes", reviewOn: "2026-04-17" },
});
const story = everyKind();
const draftOf = (kind: string): EntryDraft => {
  const entry = story.find((each) => each.header.kind === kind);
  if (!entry?.body) throw new Error(`the story has no ${kind}`);
  return { kind, at: entry.header.at, about: entry.header.about, data: entry.body.data } as unknown as EntryDraft;
};
const [received, started, ...bees] = benchDrafts as [EntryDraft, EntryDraft, ...EntryDraft[]];
const finished = draftOf("reading-finished");
const [step, sample, handedOn, label] = kitDrafts as [EntryDraft, EntryDraft, EntryDraft, EntryDraft];
const flag = (state: "present" | "absent" | "not-looked", name = "ropy_brood"): EntryDraft => ({
  kind: "red-flag-answered",
  at: "2026-03-09",
  about: [ids.case, name],
  data: { flag: name, state, on: "2026-03-09" },
});
const opened = callDrafts[0] as EntryDraft;
const finding = callDrafts[2] as EntryDraft;

describe("the six questions", () => {
  it("[CB20] what was seen waits for every red flag and one finding", () => {
    expect(openQuestion(seeing(opened), ids.case)).toBe(1);
    expect(openQuestion(seeing(opened, finding), ids.case)).toBe(1);
    expect(openQuestion(seeing(opened, flag("absent")), ids.case)).toBe(1);
    expect(openQuestion(seeing(opened, finding, flag("not-looked")), ids.case)).toBe(2);
    expect(openQuestion(seeing(opened, finding, flag("absent"), flag("not-looked", "foul_smell")), ids.case)).toBe(2);
    expect(openQuestion(seeing(opened, finding, flag("present")), ids.case)).toBe(2);
    const asked = { redFlags: ["ropy_brood", "foul_smell"] };
    expect(openQuestion(seeing(opened, finding, flag("present")), ids.case, asked)).toBe(1);
    expect(openQuestion(seeing(opened, finding, flag("present"), flag("absent", "foul_smell")), ids.case, asked)).toBe(
      2,
    );
  });

  it("[CB20] a finding nobody looked for is not one that was seen", () => {
    expect(openQuestion(seeing(opened, callDrafts[3] as EntryDraft, flag("absent")), ids.case)).toBe(1);
  });

  it("[CB21] what it could be is weighed until something is asked, sampled or decided", () => {
    expect(statuses(seeing(...callDrafts))).toBe("dollll");
    expect(statuses(seeing(...callDrafts, step))).toBe("ddolll");
    expect(statuses(seeing(...callDrafts, sample))).toBe("ddolll");
    expect(statuses(seeing(...callDrafts, decided("test-first")))).toBe("ddolll");
    expect(statuses(seeing(...callDrafts, { ...step, data: { ...step.data, state: "dropped" } } as EntryDraft))).toBe(
      "dollll",
    );
  });

  it("[CB22] what would tell waits until vials have labels, or something needs no vial", () => {
    expect(statuses(seeing(...callDrafts, label))).toBe("dddoll");
    expect(statuses(seeing(...callDrafts, { ...step, data: { ...step.data, state: "done" } } as EntryDraft))).toBe(
      "ddddol",
    );
    expect(statuses(seeing(...callDrafts, draftOf("test-result-recorded")))).toBe("ddddol");
    const rejected = {
      ...received,
      data: { ...received.data, acceptance: "rejected", reason: "rotten" },
    } as EntryDraft;
    expect(statuses(seeing(...callDrafts, sample, label, rejected))).toBe("ddolll");
  });

  it("[CB23] what was found waits for every vial", () => {
    expect(statuses(seeing(...callDrafts, label, received, started, ...bees))).toBe("dddoll");
    expect(statuses(seeing(...callDrafts, label, received, started, ...bees, finished))).toBe("ddddol");
    const second = { ...label, about: ["specimen-2", ids.case, ids.colonyOne] } as EntryDraft;
    expect(statuses(seeing(...callDrafts, label, received, started, ...bees, finished, second))).toBe("dddoll");
    expect(statuses(seeing(...callDrafts, label, draftOf("test-result-recorded")))).toBe("dddoll");
  });

  it("[CB24] what shall be done is open while tests come first or a plan is missing", () => {
    const found = [...callDrafts, draftOf("test-result-recorded")];
    expect(statuses(seeing(...found, decided("test-first")))).toBe("ddddol");
    expect(statuses(seeing(...found, decided("act-now")))).toBe("ddddol");
    expect(statuses(seeing(...found, decided("act-now"), draftOf("plan-made")))).toBe("dddddo");
    expect(statuses(seeing(...found, decided("wait")))).toBe("dddddo");
  });

  it("[CB25] all are done when the case is closed, and open again when the closing is withdrawn", () => {
    const desk = writer();
    const closed = desk.write(...callDrafts, draftOf("case-closed"));
    expect(statuses(fold(closed))).toBe("dddddd");
    expect(openQuestion(fold(closed), ids.case)).toBe(6);
    const undone = desk.write({
      kind: "entry-withdrawn",
      at: "2026-06-03",
      about: [ids.case],
      replaces: [closed.at(-1)?.header.id ?? ""],
      data: { reason: "too early" },
    });
    expect(statuses(fold([...closed, ...undone]))).toBe("dollll");
  });

  it("[CB26] a case that is not here opens at the first question", () => {
    expect(openQuestion(fold([]), "nowhere")).toBe(1);
    expect(questionsOf(fold([]), "nowhere")).toEqual([]);
    expect(openQuestion(seeing(opened), "toString")).toBe(1);
  });

  it("[CB26] a skipped question opens before a later one that is done", () => {
    expect(statuses(seeing(opened, decided("wait")))).toBe("oddddl");
  });

  it("[CB27] a slot in conflict answers nothing", () => {
    const one = writer({ device: "a" }).write(...callDrafts);
    const other = writer({ device: "b" }).write(flag("present"));
    expect(openQuestion(fold([...one, ...other]), ids.case)).toBe(1);
    const decisions = [
      writer({ device: "c" }).write(decided("wait")),
      writer({ device: "d" }).write(decided("act-now")),
    ].flat();
    expect(statuses(fold([...one, ...decisions]))).toBe("dollll");
  });

  it("[CB28] each tells its newest day and how many entries bear on it", () => {
    const [seen, , tell, found, done, worked] = questionsOf(fold(story), ids.case);
    expect(seen).toMatchObject({ lastDay: "2026-03-09", entries: 6 });
    expect(tell).toMatchObject({ lastDay: "2026-03-10", entries: 3 });
    expect(found).toMatchObject({ lastDay: "2026-03-16", entries: 9 });
    expect(done).toMatchObject({ lastDay: "2026-03-17", entries: 2 });
    expect(worked).toMatchObject({ lastDay: "2026-06-02", entries: 3 });
    expect(questionsOf(seeing(opened), ids.case)[3]).toMatchObject({ lastDay: null, entries: 0 });
  });
});

describe("what belongs to a case", () => {
  it("[CB14] its colonies are those it names, in order of code", () => {
    const casebook = seeing(...apiaryDrafts, ...callDrafts);
    expect(coloniesOf(casebook, ids.case)).toMatchObject([
      { id: ids.colonyOne, code: "HO-1", state: { state: "dying" } },
      { id: ids.colonyTwo, code: "HO-2", state: null },
    ]);
    expect(coloniesOf(casebook, "nowhere")).toEqual([]);
  });

  it("[CB14] a case that names none is about all at its apiary; one that names strangers lists them by id", () => {
    const naming = (colonies: readonly string[]) => ({ ...opened, data: { ...opened.data, colonies } }) as EntryDraft;
    const idsOf = (casebook: Casebook) => coloniesOf(casebook, ids.case).map((each) => each.id);
    expect(idsOf(seeing(...apiaryDrafts, naming([])))).toEqual([ids.colonyOne, ids.colonyTwo]);
    expect(coloniesOf(seeing(naming(["far"])), ids.case)).toEqual([
      { id: "far", code: null, record: null, state: null },
    ]);
  });

  it("[CB15] codes are ordered as people read them", () => {
    expect(["A-10", "B-1", "A-2", "A-2b", "A"].toSorted(compareCodes)).toEqual(["A", "A-2", "A-2b", "A-10", "B-1"]);
    expect(compareCodes("7", "007")).not.toBe(0);
  });

  it("lists specimens by code and plans by age", () => {
    const second = {
      ...label,
      about: ["specimen-2", ids.case, ids.colonyOne],
      data: { ...label.data, code: "2026-014-10" },
    } as EntryDraft;
    const third = {
      ...label,
      about: ["specimen-3", ids.case, ids.colonyOne],
      data: { ...label.data, code: "2026-014-2" },
    } as EntryDraft;
    const casebook = seeing(label, second, third);
    expect(specimensOf(casebook, ids.case).map((each) => each.id)).toEqual([ids.specimen, "specimen-3", "specimen-2"]);
    const plan = draftOf("plan-made");
    expect(
      plansOf(seeing({ ...plan, about: ["z", ids.case] }, { ...plan, about: ["a", ids.case] }), ids.case).map(
        (each) => each.id,
      ),
    ).toEqual(["z", "a"]);
  });

  it("[CB16] conflicts are listed with the way to their slot", () => {
    expect(conflictsOf(fold(story), ids.case).map((each) => each.slot)).toEqual([
      ["findings", ids.colonyOne, "crawlers"],
    ]);
    const twice = [writer({ device: "a" }).write(bee(1)), writer({ device: "b" }).write(bee(1, "mites"))].flat();
    expect(conflictsOf(fold(twice), ids.specimen).map((each) => each.slot)).toEqual([
      ["readings", ids.reading, "bees", "1"],
    ]);
    expect(conflictsOf(fold(story), "nowhere")).toEqual([]);
  });
});

describe("the list of cases", () => {
  const today = "2026-03-20";
  const rowOf = (...drafts: readonly EntryDraft[]) => caseList(seeing(...drafts), today)[0];
  const another = (code: string, due: string | undefined): readonly EntryDraft[] => {
    const data = { ...opened.data, code } as Record<string, unknown>;
    if (due === undefined) delete data.due;
    else data.due = due;
    return [{ ...opened, about: [code, ids.apiary], data } as unknown as EntryDraft];
  };

  it("[CB30] most overdue first, closed last, withdrawn not at all", () => {
    const desk = writer();
    const entries: Entry[] = [
      ...desk.write(
        ...another("2026-2", "2026-04-01"),
        ...another("2026-10", undefined),
        ...another("2026-9", undefined),
      ),
      ...desk.write(...another("2026-3", "2026-03-01"), ...another("2026-4", "2026-01-01")),
    ];
    const last = entries.at(-1)?.header;
    entries.push(...desk.write({ ...draftOf("case-closed"), about: ["2026-4"] }));
    expect(caseList(fold(entries), today).map((row) => row.code)).toEqual([
      "2026-3",
      "2026-2",
      "2026-9",
      "2026-10",
      "2026-4",
    ]);
    const [slip] = desk.write({
      kind: "entry-withdrawn",
      at: today,
      about: ["2026-4"],
      replaces: [last?.id ?? ""],
      data: { reason: "opened twice" },
    });
    expect(caseList(fold([...entries, slip as Entry]), today)).toHaveLength(4);
  });

  it("[CB31] the newest word on whom it waits for counts", () => {
    expect(rowOf(...apiaryDrafts, opened)).toMatchObject({
      waitsOn: "office",
      due: "2026-03-16",
      overdueDays: 4,
      place: "Hollow Meadow",
      colonies: 2,
    });
    expect(rowOf(opened, handedOn)).toMatchObject({ waitsOn: "bench", due: "2026-03-20", overdueDays: 0 });
    expect(rowOf(opened, decided("wait"))).toMatchObject({ waitsOn: "office", due: "2026-04-17", overdueDays: 0 });
    expect(rowOf(opened, draftOf("case-closed"))).toMatchObject({
      isClosed: true,
      overdueDays: 0,
      waitsFor: "nothing",
    });
    expect(rowOf(opened)).toMatchObject({ place: null });
  });

  it("[CB32] what it waits for follows from its open question", () => {
    const waits = (...drafts: readonly EntryDraft[]) => rowOf(...callDrafts, ...drafts)?.waitsFor;
    expect(rowOf(opened)?.waitsFor).toBe("what-was-seen");
    expect(waits()).toBe("what-to-ask");
    expect(waits(sample)).toBe("vials-to-label");
    expect(waits(label)).toBe("vials-to-arrive");
    expect(waits(label, received)).toBe("bees-to-read");
    const found = draftOf("test-result-recorded");
    expect(waits(found)).toBe("decision");
    expect(waits(found, decided("act-now"))).toBe("plan");
    expect(waits(found, decided("act-now"), draftOf("plan-made"))).toBe("plan-steps");
    expect(waits(found, decided("wait"))).toBe("outcome");
  });

  it("counts conflicts in the case, its specimens and plans", () => {
    const one = writer({ device: "a" }).write(...callDrafts, label, bee(1));
    const other = writer({ device: "b" }).write(bee(1, "mites"), flag("present"));
    expect(caseList(fold([...one, ...other]), today)[0]?.conflicts).toBe(2);
  });
});
