import { describe, expect, it } from "vitest";
import { settlingOf } from "../../../tests/journals/apart-story.ts";
import { everyKind, ids } from "../../../tests/journals/every-kind.ts";
import { fork } from "../../../tests/journals/fork.ts";
import { writer } from "../../../tests/journals/writer.ts";
import { conflictsOf, fold } from "../../casebook/index.ts";
import type { Entry } from "../../journal/index.ts";
import { wholeWordsOf } from "../words/index.ts";
import { differences, settlingDraft } from "./differences.ts";

const story = everyKind();
const two = fold(story);

describe("where people differ", () => {
  it("stands side by side: who said what, with the words that differ and no others", () => {
    const [found] = differences(two, wholeWordsOf("en"));
    expect(found).toMatchObject({ where: "Case 2026-014", what: expect.stringContaining("Crawling") });
    expect(Object.fromEntries((found?.sides ?? []).map(({ author, says }) => [author, says]))).toEqual({
      Office: [["", "present"]],
      Yard: [["", "absent"]],
    });
  });

  it("is settled by one entry that replaces every side; nothing is left of it, and both stay on record", () => {
    const [found] = differences(two, wholeWordsOf("en"));
    const yard = found?.sides.find(({ author }) => author === "Yard")?.entry ?? "";
    const draft = found && settlingDraft(story, found, yard);
    if (!draft) throw new Error("settled");
    const all = [...story, ...writer({ device: "settler" }).write(draft)];
    const after = fold(all);
    expect(differences(after, wholeWordsOf("en"))).toEqual([]);
    expect(conflictsOf(after, ids.case)).toEqual([]);
    expect(after.cases[ids.case]?.findings[ids.colonyOne]?.crawlers?.candidates.map(({ value }) => value)).toEqual([
      "absent",
    ]);
  });

  it("[CB55] is told of settlements of what is kept apart only where they decide differently", () => {
    const [, kept] = fork();
    const by = (device: string, decision: "taken-in" | "left-out", reason: string) =>
      writer({ device }).write(settlingOf(kept, decision, reason));
    const once = by("desk-1", "left-out", "read twice");
    const told = (entries: readonly Entry[]) => differences(fold([...once, ...entries]), wholeWordsOf("en")).length;
    expect(told(by("desk-2", "left-out", "asked the yard"))).toBe(0);
    expect(told(by("desk-2", "taken-in", "asked the yard"))).toBe(1);
  });

  it("is not settled by words that are not here", () => {
    const [found] = differences(two, wholeWordsOf("en"));
    const bare = story.map(({ header }) => ({ header, body: null }));
    expect(found && settlingDraft(bare, found, found.sides[0]?.entry ?? "")).toBeNull();
  });
});
