import { describe, expect, it } from "vitest";
import { bee, everyKind } from "../../tests/journals/every-kind.ts";
import { fork } from "../../tests/journals/fork.ts";
import { writer } from "../../tests/journals/writer.ts";
import type { Entry, EntryDraft } from "../journal/index.ts";
import { fold } from "./fold.ts";

const office = (device: string) => writer({ device, author: device });
const sameAs = ({ header, body }: Entry, replaces: readonly string[]): EntryDraft =>
  ({ kind: header.kind, at: header.at, about: header.about, replaces, data: body?.data }) as unknown as EntryDraft;
const copyOf = (entry: Entry, ...more: string[]) => sameAs(entry, [...entry.header.replaces, ...more, entry.header.id]);
const withdrawal = (entry: Entry): EntryDraft => ({
  ...{ kind: "entry-withdrawn", at: "2026-03-20", about: [entry.header.about[0] ?? ""] },
  ...{ replaces: [entry.header.id], data: { reason: "a slip" } },
});
const bees = (entries: readonly Entry[]) => {
  const casebook = fold(entries);
  expect(fold(entries.toReversed())).toEqual(casebook);
  return casebook.specimens["specimen-1"]?.readings["reading-1"]?.bees["1"]?.candidates ?? [];
};

describe("copies of one entry", () => {
  it("[CB54] counts two copies of one kept entry once, by the smallest id, tests and stops too", () => {
    const [, kept] = fork();
    const [one, other] = [...office("office-1").write(copyOf(kept)), ...office("desk-2").write(copyOf(kept))];
    const first = [one, other].map((each) => each?.header.id ?? "").sort()[0];
    expect(bees([one, other] as Entry[]).map(({ entry }) => entry)).toEqual([first]);
    const test = everyKind().find(({ header }) => header.kind === "test-result-recorded") ?? expect.fail("no test");
    const copies = [...office("office-1").write(copyOf(test)), ...office("desk-2").write(copyOf(test))];
    const root = test.header.about[0] ?? "";
    expect(Object.keys(fold(copies).cases[root]?.tests ?? {})).toHaveLength(1);
  });

  it("[CB54] what replaces one copy replaces all, also when the phone sends its own words again", () => {
    const [, kept] = fork();
    const copies = [...office("office-1").write(copyOf(kept)), ...office("phone-anew").write(copyOf(kept))];
    for (const each of copies) expect(bees([...copies, ...office("desk-2").write(withdrawal(each))])).toEqual([]);
    const phone = office("phone-back");
    const [own] = phone.write(bee(1, "mites")) as [Entry];
    const late = phone.write(withdrawal(own));
    expect(bees([...office("office-1").write(copyOf(own)), own]).map(({ device }) => device)).toEqual(["office-1"]);
    expect(bees([...office("office-1").write(copyOf(own)), own, ...late])).toEqual([]);
  });

  it("[CB54] two who correct one entry in other words still differ, and so does who chose a side", () => {
    const [own] = office("phone-1").write(bee(1)) as [Entry];
    const [two] = office("phone-2").write(bee(1, "mites")) as [Entry];
    const chosen = office("desk-1").write(sameAs(own, [own.header.id, two.header.id]));
    const corrected = office("desk-2").write({ ...bee(1, "mites"), replaces: [own.header.id] });
    expect(bees([own, two, ...chosen, ...corrected])).toHaveLength(2);
    expect(
      bees([
        own,
        ...office("desk-3").write({ ...bee(1, "mites"), at: "2026-03-17", replaces: [own.header.id] }),
        ...corrected,
      ]),
    ).toHaveLength(2);
  });
});
