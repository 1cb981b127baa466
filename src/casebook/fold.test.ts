import { describe, expect, it } from "vitest";
import { bee, callDrafts, everyKind, ids } from "../../tests/journals/every-kind.ts";
import { writer } from "../../tests/journals/writer.ts";
import { type Folding, faults, laws } from "../../tests/laws/casebook-laws.ts";
import type { Entry, EntryDraft } from "../journal/index.ts";
import { advance, conflictsOf, fold, foldRoot, nothingFolded, settled, wholeApiary } from "./index.ts";

const sound: Folding = {
  fold,
  bySteps: (steps) => steps.reduce(advance, nothingFolded).casebook,
};

const ruleOf: Readonly<Record<string, string>> = {
  "order of arrival": "[CB1]",
  copies: "[CB2]",
  withdrawal: "[CB3]",
  correction: "[CB4]",
  "unknown kinds": "[CB6]",
  "union of roots": "[CB8]",
  "step by step": "[CB9]",
  "no clock decides": "[CB11]",
};

describe("the laws of the fold", () => {
  it.each(Object.entries(laws).map(([law, holds]) => ({ rule: ruleOf[law], law, holds })))(
    "$rule obeys the law: $law",
    ({ holds }) => {
      holds(sound);
    },
  );

  it.each(Object.keys(faults))("a fold with the fault planted for the law %s breaks that law alone", (name) => {
    const faulty = faults[name]?.(sound);
    if (!faulty) throw new Error("there is no such fault");
    const broken = Object.keys(laws).filter((law) => {
      try {
        laws[law]?.(faulty);
        return false;
      } catch {
        return true;
      }
    });
    expect(broken).toEqual([name]);
  });

  it("has a planted fault for every law", () => {
    expect(Object.keys(faults)).toEqual(Object.keys(laws));
  });
});

const crawlers = (state: "present" | "absent", replaces: readonly string[] = []): EntryDraft => ({
  kind: "finding-recorded",
  at: "2026-03-09",
  about: [ids.case, ids.colonyOne],
  replaces,
  data: { colony: ids.colonyOne, finding: "crawlers", state, on: "2026-03-09" },
});
const withdrawn = (...replaces: readonly string[]): EntryDraft => ({
  kind: "entry-withdrawn",
  at: "2026-03-09",
  about: [ids.case],
  replaces,
  data: { reason: "a slip" },
});
const idOf = (entry: Entry | undefined): string => entry?.header.id ?? "";
const crawlersIn = (entries: readonly Entry[]) => fold(entries).cases[ids.case]?.findings[ids.colonyOne]?.crawlers;

describe("what replaces what", () => {
  it("[CB3] an entry is out also when its replacement arrives first, and never by its own word", () => {
    const phone = writer();
    const [first] = phone.write(crawlers("present"));
    const [second] = phone.write(crawlers("absent", [idOf(first)]));
    const entries = [second, first] as Entry[];
    expect(settled(crawlersIn(entries))).toBe("absent");
    const self = { ...first, header: { ...first?.header, replaces: [idOf(first)] } } as Entry;
    expect(settled(crawlersIn([self]))).toBe("present");
  });

  it("[CB3] an entry of a kind from a newer version replaces as any other does", () => {
    const [first] = writer().write(crawlers("present")) as [Entry];
    const newer = {
      ...first,
      header: {
        ...first.header,
        id: first.header.id.replace(/.$/, "0"),
        kind: "finding-doubted",
        replaces: [idOf(first)],
      },
    };
    expect(crawlersIn([first, newer])).toBeUndefined();
    expect(fold([first, newer]).unread.map((each) => each.entry)).toEqual([newer.header.id]);
  });

  it("[CB5] withdrawing a withdrawal brings nothing back; recording it again does", () => {
    const phone = writer();
    const [first] = phone.write(crawlers("present"));
    const [slip] = phone.write(withdrawn(idOf(first)));
    const [undone] = phone.write(withdrawn(idOf(slip)));
    expect(crawlersIn([first, slip, undone] as Entry[])).toBeUndefined();
    const [again] = phone.write(crawlers("present"));
    expect(settled(crawlersIn([first, slip, undone, again] as Entry[]))).toBe("present");
  });

  it("[CB10] two people's values stand side by side, oldest first, until one entry replaces both", () => {
    const [one] = writer({ device: "a", author: "A", from: "2026-03-09T10:00:00.000Z" }).write(crawlers("present"));
    const [other] = writer({ device: "b", author: "B", from: "2026-03-09T09:00:00.000Z" }).write(crawlers("absent"));
    const entries = [one, other] as Entry[];
    expect(crawlersIn(entries)?.candidates.map((each) => [each.author, each.value])).toEqual([
      ["B", "absent"],
      ["A", "present"],
    ]);
    expect(settled(crawlersIn(entries))).toBeNull();
    const [settling] = writer({ device: "c" }).write(crawlers("present", [idOf(one), idOf(other)]));
    expect(settled(crawlersIn([...entries, settling as Entry]))).toBe("present");
  });

  it("[CB10] a correction that saw only one of two leaves the other in conflict with it", () => {
    const [one] = writer({ device: "a" }).write(crawlers("present"));
    const [other] = writer({ device: "b" }).write(crawlers("absent"));
    const [late] = writer({ device: "c" }).write(crawlers("absent", [idOf(one)]));
    expect(crawlersIn([one, other, late] as Entry[])?.candidates).toHaveLength(2);
  });
});

describe("what cannot be read", () => {
  const [first] = writer().write(crawlers("present")) as [Entry];
  const changed = (header: Partial<Entry["header"]>, body: Entry["body"] = first.body): Entry => ({
    header: { ...first.header, ...header },
    body,
  });
  it.each([
    ["unknown-kind", changed({ kind: "queen-marked" })],
    ["newer-schema", changed({ schema: 2 })],
    ["body-does-not-fit", changed({}, { salt: "0".repeat(32), data: { state: "maybe" } })],
    ["withheld", changed({}, null)],
  ] as const)("[CB6] is counted with its reason: %s", (why, entry) => {
    const casebook = fold([entry]);
    expect(casebook.unread).toEqual([{ entry: entry.header.id, root: ids.case, kind: entry.header.kind, why }]);
    expect(casebook.cases).toEqual({});
  });

  const erasureOf = (entry: Entry): EntryDraft => ({
    kind: "content-erased",
    at: "2026-03-10",
    about: [entry.header.about[0] ?? ""],
    data: { entries: [entry.header.id], reason: "asked for" },
  });

  it("[CB7] an erased body has no effect, with or without its body, and even when the erasure is replaced", () => {
    const other = writer({ device: "phone-2" });
    const [erasure] = other.write(erasureOf(first)) as [Entry];
    const [undoing] = other.write(withdrawn(erasure.header.id)) as [Entry];
    const why = [{ entry: first.header.id, root: ids.case, kind: "finding-recorded", why: "erased" }];
    for (const entries of [
      [first, erasure],
      [changed({}, null), erasure],
      [first, erasure, undoing],
    ]) {
      expect(fold(entries)).toEqual({ ...fold([]), unread: why });
    }
  });

  it("[CB7] an erasure itself is not erased", () => {
    const other = writer({ device: "phone-2" });
    const [erasure] = other.write(erasureOf(first)) as [Entry];
    const [second] = other.write(erasureOf(erasure)) as [Entry];
    expect(fold([first, erasure, second]).unread.map((each) => each.entry)).toEqual([first.header.id]);
  });

  it("[CB7] an erased correction revives nothing", () => {
    const phone = writer({ device: "phone-3" });
    const [correction] = phone.write(crawlers("absent", [first.header.id])) as [Entry];
    const [erasure] = phone.write(erasureOf(correction)) as [Entry];
    expect(crawlersIn([first, correction, erasure])).toBeUndefined();
  });

  it("[CB2] a copy with its body is read before one without", () => {
    expect(fold([changed({}, null), first])).toEqual(fold([first]));
  });
});

describe("slots", () => {
  const story = everyKind();
  const casebook = fold(story);

  it("[CB12] every kind of the story stands in its place", () => {
    const state = casebook.cases[ids.case];
    expect(settled(state?.redFlags.ropy_brood)?.state).toBe("absent");
    expect(settled(state?.findings[wholeApiary]?.spray_nearby)).toBe("not-looked");
    expect(settled(state?.colonyStates[ids.colonyOne])?.state).toBe("dying");
    expect(settled(state?.steps["tracheal-dissection"])?.kind).toBe("test");
    expect(settled(state?.samplePlans[ids.samplePlan])?.beesPerColony).toBe(5);
    expect(Object.values(state?.tests ?? {}).map((each) => each.value.mites)).toEqual([2]);
    expect(settled(state?.outcomes[ids.colonyOne]?.["2026-06-01"])?.survived).toBe(true);
    expect(settled(state?.closed)?.confirmedCauses).toEqual(["acarapis_woodi"]);
    const bees = casebook.specimens[ids.specimen]?.readings[ids.reading]?.bees ?? {};
    expect(Object.keys(bees)).toEqual(["1", "2", "3", "4", "5"]);
    expect(settled(bees[3])?.right).toBe("mites");
    expect(settled(bees[4])?.left).toBe("dark-no-mite");
    expect(Object.keys(casebook.apiaries[ids.apiary]?.flows ?? {})).toEqual(["flow-1"]);
    expect(settled(casebook.plans[ids.plan]?.done["apply-1"])?.state).toBe("done");
    expect(settled(casebook.labelRecords[ids.labelRecord]?.record)?.invented).toBe(true);
  });

  it("[CB12] two results of one test are two results, not a conflict", () => {
    const result: EntryDraft = {
      kind: "test-result-recorded",
      at: "2026-03-09",
      about: [ids.case],
      data: { colony: null, test: "varroa-wash", on: "2026-03-09", mites: 3, bees: 300 },
    };
    const twice = fold(writer().write(result, result));
    expect(Object.keys(twice.cases[ids.case]?.tests ?? {})).toHaveLength(2);
    expect(conflictsOf(twice, ids.case)).toEqual([]);
  });

  it("[CB13] the apiary of a case is unknown while two records of it disagree", () => {
    const opened = callDrafts[0] as EntryDraft;
    const [one] = writer({ device: "a" }).write(opened);
    const [other] = writer({ device: "b" }).write({ ...opened, about: [ids.case, "apiary-other"] });
    expect(fold([one as Entry]).cases[ids.case]?.apiary).toBe(ids.apiary);
    expect(fold([one, other] as Entry[]).cases[ids.case]?.apiary).toBeNull();
    expect(casebook.specimens[ids.specimen]).toMatchObject({ case: ids.case, colony: ids.colonyOne });
    expect(casebook.plans[ids.plan]?.case).toBe(ids.case);
  });

  it("[CB8] the part of one root is what the whole casebook holds of it", () => {
    const part = foldRoot(ids.specimen, story);
    expect(part.specimens).toEqual(casebook.specimens);
    expect(part.cases).toEqual({});
    const [stranger] = writer({ device: "x" }).write({
      ...withdrawn(idOf(story.find((each) => each.header.kind === "bee-read"))),
      about: ["elsewhere"],
    });
    expect(fold([...story, stranger as Entry])).toEqual(casebook);
  });

  it("keeps a hundred bees in their order", () => {
    const bees = fold(writer().write(...Array.from({ length: 100 }, (_, index) => bee(index + 1))));
    expect(Object.keys(bees.specimens[ids.specimen]?.readings[ids.reading]?.bees ?? {})).toEqual(
      Array.from({ length: 100 }, (_, index) => String(index + 1)),
    );
  });
});
