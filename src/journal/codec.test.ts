import { describe, expect, it } from "vitest";
import { everyKind } from "../../tests/journals/every-kind.ts";
import { decodeJournal, encodeJournal } from "./index.ts";

const story = everyKind();
const file = encodeJournal(story);
const lines = file.split("\n");
const trouble = (text: string) => {
  const read = decodeJournal(text);
  return read.ok ? null : read.problems[0];
};

describe("the journal file", () => {
  it("[JN20] gives the same entries back, word for word", () => {
    expect(decodeJournal(file)).toEqual({ ok: true, value: story, problems: [] });
    const again = decodeJournal(file);
    expect(again.ok && encodeJournal(again.value)).toBe(file);
    expect(decodeJournal(encodeJournal([]))).toMatchObject({ ok: true, value: [] });
  });

  it("[JN20] survives another system's line ends and byte order mark", () => {
    expect(decodeJournal(`\uFEFF${file.replaceAll("\n", "\r\n")}`)).toMatchObject({ ok: true, value: story });
  });

  it("[JN20] keeps members that a newer version added", () => {
    const newer = story.map((entry) => ({
      ...entry,
      header: { ...entry.header, kind: "queen-marked", colour: "blue" },
    }));
    expect(decodeJournal(encodeJournal(newer))).toMatchObject({ ok: true, value: newer });
  });

  it("[JN21] a file cut short at any byte is refused", () => {
    for (let length = 0; length < file.length; length += length < 400 ? 1 : 37) {
      const cut = trouble(file.slice(0, length));
      expect(cut, `${length} bytes`).not.toBeNull();
      expect(["journal-cut-short", "not-a-journal"]).toContain(cut?.code);
    }
  });

  it("[JN21] the line and the number of entries expected are named, also when it ends between two lines", () => {
    const betweenLines = `${lines.slice(0, 8).join("\n")}\n`;
    expect(trouble(betweenLines)).toMatchObject({
      code: "journal-cut-short",
      severity: "blocked",
      field: "line 9",
      expected: `${story.length} entries, each on a line of its own that ends`,
      slots: { line: 9, expected: story.length, complete: 7 },
    });
    expect(trouble(file.slice(0, -1))).toMatchObject({
      code: "journal-cut-short",
      slots: { complete: story.length - 1 },
    });
    expect(trouble(lines[0] ?? "")).toMatchObject({ code: "journal-cut-short", field: "line 2" });
  });

  it("[JN22] a line that is no entry is named with what is expected", () => {
    const damaged = lines.with(4, "{half").join("\n");
    expect(trouble(damaged)).toMatchObject({
      code: "journal-line-unreadable",
      field: "line 5",
      given: "{half",
      expected: "one entry, spelt as JSON",
    });
    const unfit = lines.with(4, (lines[4] ?? "").replace(/"seq":\d+/, '"seq":"two"')).join("\n");
    expect(trouble(unfit)).toMatchObject({ code: "journal-line-unreadable", field: "line 5: header.seq" });
    for (const spoilt of ['"author":"\\ud800"', '"author":"R. Vale","weight":1e400']) {
      const unspellable = lines.with(4, (lines[4] ?? "").replace(/"author":"[^"]*"/, spoilt)).join("\n");
      expect(trouble(unspellable)).toMatchObject({ code: "journal-line-unreadable", field: "line 5" });
    }
  });

  it("[JN22] what is no journal, a newer one, or more than announced is refused", () => {
    expect(trouble("")).toMatchObject({ code: "not-a-journal", field: "line 1" });
    expect(trouble("code,name\nHO,Hollow\n")).toMatchObject({ code: "not-a-journal" });
    expect(trouble('{"format":"skepsis-journal","version":1,"entries":-1}\n')).toMatchObject({ code: "not-a-journal" });
    expect(trouble('{"format":"skepsis-journal","version":2,"entries":0}\n')).toMatchObject({
      code: "newer-journal-file",
      given: 2,
    });
    expect(trouble(`${file}${lines[1]}\n`)).toMatchObject({
      code: "journal-too-long",
      field: `line ${story.length + 2}`,
    });
  });
});
