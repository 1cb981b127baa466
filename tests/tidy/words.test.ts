/** Words and data that must not stand in the project: trade names of treatments, data that may not be redistributed. */
import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { files, read } from "./tree.ts";
import { withheldNames, withheldRows } from "./withheld.ts";

const hash = (text: string): string => createHash("sha256").update(text).digest("hex").slice(0, 16);
const isText = (file: string): boolean => !/\.(woff2|png|ico|pdf|sqlite)$/.test(file) && file !== "package-lock.json";

describe("words and data kept out", () => {
  it("no trade name of a treatment stands anywhere; the list is kept as hashes so that it names none itself", () => {
    const known = new Map<string, string>();
    const named = files.filter(isText).flatMap((file) => {
      const words = new Set(
        read(file)
          .toLowerCase()
          .match(/[a-z][a-z0-9]{2,}/g) ?? [],
      );
      return [...words]
        .filter((word) => {
          const digest = known.get(word) ?? hash(word);
          known.set(word, digest);
          return withheldNames.has(digest);
        })
        .map((word) => `${file}: ${word}`);
    });
    expect(named).toEqual([]);
  });

  it("no row block of a data set that only its carrier may distribute is committed", () => {
    const carried = files
      .filter((file) => /\.(csv|tsv|txt|json|ts|md)$/.test(file))
      .filter((file) => {
        const lines = read(file).split(/\r?\n/);
        return lines.some((_, start) => withheldRows.has(hash(lines.slice(start, start + 4).join("\n"))));
      });
    expect(carried).toEqual([]);
  });

  it("no path of one person's machine stands in the project", () => {
    const personal = new RegExp(["/ho", "me/[a-z]|/ro", "ot/|C:\\\\Us", "ers\\\\"].join(""));
    expect(files.filter(isText).filter((file) => personal.test(read(file)))).toEqual([]);
  });
});
