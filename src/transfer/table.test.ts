/** Reading and writing tables. */
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plainCell } from "./cells.ts";
import { inertText, toCsv } from "./csv.ts";
import { readTable } from "./table.ts";

const refused = (text: string) => {
  const answer = readTable(text);
  return answer.ok ? [] : answer.problems.map(({ code, line }) => [code, line]);
};

describe("reading a table", () => {
  it("[TR1] rows with too few or too many cells are named by line, counting lines inside quotes", () => {
    expect(refused('a,b\n1,2\n"x\ny",2,3\n4\n5,6\n')).toEqual([
      ["row-too-long", 3],
      ["row-too-short", 5],
    ]);
  });
  it("[TR1] stray quotes, garbled text and bad headers are named", () => {
    expect(refused('a,b\n1,2"3"\n')).toContainEqual(["quote-inside-cell", 2]);
    expect(refused('a,b\n1,"2"3\n')).toEqual([["text-after-quote", 2]]);
    expect(refused("a,b\n1,W\uFFFDlder\n")).toEqual([["text-garbled", 2]]);
    expect(refused("a,a\n1,2\n")).toEqual([["column-twice", 1]]);
    expect(refused("a,\n1,2\n")).toEqual([["column-without-name", 1]]);
    expect(refused("a;b\n1;2\n")).toEqual([["other-delimiter", 1]]);
    expect(refused("a\0b")).toEqual([["not-a-text-file", 1]]);
    expect(refused("")).toEqual([["table-empty", 1]]);
    expect(refused("a,b\n")).toEqual([["table-without-rows", 1]]);
  });
  it("[TR1] blank rows are skipped and counted; a byte-order mark and old line ends do no harm", () => {
    const answer = readTable("\uFEFFa,b\r1,2\r,\r\r3,4\r");
    expect(answer.ok && answer.value.header).toEqual(["a", "b"]);
    expect(answer.ok && answer.value.rows).toEqual([
      { line: 2, cells: ["1", "2"] },
      { line: 5, cells: ["3", "4"] },
    ]);
    expect(answer.problems.map(({ code, slots }) => [code, slots.rows])).toEqual([["blank-rows-skipped", 2]]);
  });
  it("[TR2] a file cut in a row, inside quotes, or perhaps in its last cell", () => {
    const whole = 'colony,mites,bees\nA-1,3,300\nA-2,12,"310"\n';
    expect(refused(whole)).toEqual([]);
    expect(refused(whole.slice(0, -7))).toEqual([["file-cut-short", 3]]);
    expect(refused(whole.slice(0, -3))).toEqual([["file-cut-in-quotes", 3]]);
    const last = readTable("colony,mites,bees\nA-1,3,300\nA-2,12,31");
    expect(last.ok).toBe(true);
    expect(last.problems.map(({ code }) => code)).toEqual(["no-line-end-at-end"]);
  });
  it("[TR2] cut anywhere, no file but one cut at a row's end or in its last cell is taken", () => {
    const whole = 'colony,mites,bees\nA-1,3,300\n"A ""2""",12,310\n';
    for (let length = 20; length < whole.length; length++) {
      const cut = whole.slice(0, length);
      const answer = readTable(cut);
      const cells = cut.slice(cut.lastIndexOf("\n", cut.length - 1) + 1).split(",").length;
      if (answer.ok) expect(cut.endsWith("\n") || cells === 3).toBe(true);
    }
  });
  it("[TR3] agrees with a general parser on random tables", () => {
    const cell = fc.stringMatching(/^[a-z0-9 ,"\n;'=é—-]{0,8}$/);
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 6 }), (cells) => {
        const text = [
          "h1,h2,h3",
          ...cells.map((row) => row.map((each) => `"${each.replaceAll('"', '""')}"`).join(",")),
        ].join("\r\n");
        const answer = readTable(`${text}\r\n`);
        const other = (parse(text, { columns: false }) as string[][]).slice(1);
        const filled = other.filter((row) => row.some((each) => each.trim() !== ""));
        expect(answer.ok ? answer.value.rows.map((row) => [...row.cells]) : []).toEqual(filled);
      }),
      { seed: 4180, numRuns: 200 },
    );
  });
});

describe("writing a table", () => {
  const texts = fc.string({ maxLength: 12 }).filter((each) => !each.includes("\0") && !each.includes("\uFFFD"));
  it("[TR9] no exported text begins with a formula sign, and numbers keep their sign", () => {
    expect(["=1+1", "+1", "-1", "@a", "\tx", "WB-07"].map(inertText)).toEqual([
      "'=1+1",
      "'+1",
      "'-1",
      "'@a",
      "'\tx",
      "WB-07",
    ]);
    expect(toCsv({ name: "t", columns: ["a"], rows: [[-11.6], ["-11.6"], ["=HYPERLINK(1)"]] })).toBe(
      "a\r\n-11.6\r\n'-11.6\r\n'=HYPERLINK(1)\r\n",
    );
    fc.assert(
      fc.property(texts, (text) => {
        const [, line = ""] = toCsv({ name: "t", columns: ["a"], rows: [[text]] }).split(/\r\n/);
        expect(line.replace(/^"/, "")).not.toMatch(/^[=+\-@\t\r]/);
      }),
      { seed: 61, numRuns: 300 },
    );
  });
  it("[TR15] texts and numbers come back as they went out", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(texts, fc.double({ noNaN: true, noDefaultInfinity: true })), { minLength: 1, maxLength: 5 }),
        (rows) => {
          const answer = readTable(toCsv({ name: "t", columns: ["text", "number"], rows }));
          if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
          expect(answer.value.rows.map(({ cells }) => Number(cells[1]))).toEqual(rows.map(([, number]) => number + 0));
          expect(answer.value.rows.map(({ cells }) => plainCell(cells[0] ?? ""))).toEqual(
            rows.map(([text]) => plainCell(text.trim() === text ? inertText(text) : text)),
          );
        },
      ),
      { seed: 15, numRuns: 200 },
    );
    expect(toCsv({ name: "t", columns: ["a", "b"], rows: [[null, 0]] })).toBe("a,b\r\n,0\r\n");
  });
});
