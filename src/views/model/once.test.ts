/** Presses that come twice, and presses that are two. */
import { describe, expect, it } from "vitest";
import { colony, following, opened, see, today } from "../../../tests/case-story.ts";
import { casebookOf } from "../../../tests/casebook-of.ts";
import type { EntryDraft } from "../../journal/index.ts";
import { redFlagDraft, redFlagIds } from "./index.ts";
import { onceWritten } from "./once.ts";

const start = opened();
const { casebook } = following(start);
const seen = (number: number) => see(start.caseId, colony(casebook, number), "crawlers", "present")(casebook);

function writer(book = casebook) {
  let [time, writes] = [0, 0];
  const done: (() => void)[] = [];
  const record = onceWritten<number>(() => time)(book, () => {
    writes += 1;
    const own = writes;
    return new Promise((resolve) => done.push(() => resolve(own)));
  });
  return {
    record,
    writes: () => writes,
    settle: async () => {
      for (const each of done.splice(0)) each();
      await Promise.resolve();
    },
    pass: (milliseconds: number) => {
      time += milliseconds;
    },
  };
}

describe("a press that comes twice", () => {
  it("is written once, however long the first takes, and both get its answer", async () => {
    const { record, writes, settle, pass } = writer();
    const first = record(seen(1));
    pass(5000);
    const second = record(seen(1));
    await settle();
    expect([writes(), await first, await second]).toEqual([1, 1, 1]);
    pass(1);
    void record(seen(1));
    expect(writes()).toBe(2);
  });

  it("within half a second is a slip, later it is meant", async () => {
    const { record, writes, settle, pass } = writer();
    void record(seen(1));
    await settle();
    pass(499);
    void record(seen(1));
    expect(writes()).toBe(1);
    pass(1);
    void record(seen(1));
    expect(writes()).toBe(2);
  });

  it("opens one case, though each press brings new ids", () => {
    const { record, writes } = writer(casebookOf([]));
    const withIds = (first: string) =>
      JSON.parse(
        JSON.stringify(start.drafts).replaceAll(
          /"id-(\d+)"/g,
          (_, number: string) => `"${first}-0000-4000-8000-${number.padStart(12, "0")}"`,
        ),
      ) as readonly EntryDraft[];
    void record(withIds("0000000a"));
    void record(withIds("0000000b"));
    expect(writes()).toBe(1);
  });

  it("a table of twenty thousand colonies is compared in one pass", () => {
    const { record, writes } = writer(casebookOf([]));
    const table = Array.from({ length: 20_000 }, (_, index): EntryDraft => {
      const id = `0000000a-0000-8000-8000-${String(index).padStart(12, "0")}`;
      return { kind: "colony-registered", at: today, about: ["ap", id], data: { code: `C${index}` } };
    });
    void record(table);
    void record(table);
    expect(writes()).toBe(1);
  });

  it("of another red flag is another press", () => {
    const { record, writes } = writer();
    for (const flag of redFlagIds)
      void record([redFlagDraft(casebook.cases[start.caseId] as never, flag, "absent", today)]);
    expect(writes()).toBe(redFlagIds.length);
  });

  it("of another colony is another press, and what could not be kept is tried again", async () => {
    const { record, writes } = writer();
    void record(seen(1));
    void record(seen(2));
    expect(writes()).toBe(2);
    let tries = 0;
    const failing = onceWritten<never>(() => 0)(casebook, () => {
      tries += 1;
      return Promise.reject(new Error("no room"));
    });
    await expect(failing(seen(1))).rejects.toThrow("no room");
    await expect(failing(seen(1))).rejects.toThrow("no room");
    expect(tries).toBe(2);
  });
});
