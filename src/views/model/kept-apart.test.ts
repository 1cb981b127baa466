import { expect, it } from "vitest";
import { apartStory } from "../../../tests/journals/apart-story.ts";
import { everyKind } from "../../../tests/journals/every-kind.ts";
import { fork } from "../../../tests/journals/fork.ts";
import { fold, type KeptApart } from "../../casebook/index.ts";
import { headerHash } from "../../journal/index.ts";
import { apartWords, wholeWordsOf } from "../words/index.ts";
import { differences } from "./differences.ts";
import { apartView, isWaiting, readSettling, withOwnSettlements } from "./kept-apart.ts";

const [standing, entry] = fork();
const kept: KeptApart = {
  ...{ hash: headerHash(entry.header), entry, why: "number-taken", standing },
  ...{ cameInAs: null, earlierCameInAs: [], withdrawnBy: null, isIdTaken: false, settlements: [] },
};

it("[CB53] tells both sides in plain words, what differs marked, ids on record by their codes", () => {
  const view = apartView(fold(everyKind()), kept, apartWords);
  expect(view.head).toBe("Entry 1 of device copied-phone");
  expect(view.kept).toMatchObject({ title: "Kept apart", what: "bee read", note: null });
  const told = (side: typeof view.kept | null) => side?.says.map(({ name, value, differs }) => [name, value, differs]);
  expect(told(view.kept)).toContainEqual(["left", "mites", true]);
  expect(told(view.standing)).toContainEqual(["left", "clear", true]);
  expect(told(view.kept)).toContainEqual(["lost", "no", false]);
  const where = view.kept.says.find(({ name }) => name === apartWords.where)?.value;
  expect(where).not.toBe("specimen-1");
  const bare = apartView(fold([]), { ...kept, standing: null, entry: { ...entry, body: null } }, apartWords);
  expect(bare).toMatchObject({ standing: null, kept: { note: apartWords.withoutWords } });
  expect(bare.kept.says.map(({ value }) => value)).toEqual(["2026-03-16 09:00", "specimen-1"]);
});

it("[CB53] every kind of the story is told without a brace, and nothing twice under one name", () => {
  for (const each of everyKind()) {
    const { says } = apartView(fold([]), { ...kept, entry: each }, apartWords).kept;
    expect(new Set(says.map(({ name }) => name)).size, each.header.kind).toBe(says.length);
    expect(says.map(({ value }) => value).join(" "), each.header.kind).not.toMatch(/\[object|[{}]/);
  }
});

it("[CB53] what was settled here and is not sent yet counts; the person chooses and says why", () => {
  const [own] = withOwnSettlements(fold(apartStory()), "main", [kept]);
  expect([isWaiting(kept), own && isWaiting(own)]).toEqual([true, false]);
  const asked = { choices: ["left-out"], programme: "main", on: "2026-03-20" } as const;
  const fields = (form: Record<string, string>) => {
    const read = readSettling(form, kept, asked);
    return read.ok ? read.value.map(({ kind }) => kind) : read.problems.map(({ field }) => field);
  };
  expect(fields({ decision: "", reason: " " })).toEqual(["decision", "reason"]);
  expect(fields({ decision: "taken-in", reason: "so" })).toEqual(["decision"]);
  expect(fields({ decision: "left-out", reason: "so" })).toEqual(["kept-apart-settled"]);
});

it("[CB51] two who settle differently are shown where people differ, and settle it where it is kept apart", () => {
  const found = differences(fold(apartStory()), wholeWordsOf("en")).filter(({ isSettledHere }) => !isSettledHere);
  expect(found).toMatchObject([{ where: "The programme", href: "/records/apart" }]);
  expect(found[0]?.what).toMatch(/^entry kept apart, [0-9a-f]{12}$/);
  expect(found[0]?.sides.map(({ says }) => Object.fromEntries(says).decision).toSorted()).toEqual([
    "left-out",
    "taken-in",
  ]);
});
