/** The house rules that a machine can hold: file size, opening sentence, leftover marks, golden files, links. */
import path from "node:path";
import { describe, expect, it } from "vitest";
import { files, modules, read, sources } from "./tree.ts";

/** Tables of data may be long. */
const isTable = (file: string): boolean => file.startsWith("src/knowledge/") || /\/words\/.*\.ts$/.test(file);

const marks = [
  ["TO", "DO"],
  ["FIX", "ME"],
  ["HA", "CK"],
  ["@ts-", "ignore"],
  ["@ts-", "nocheck"],
  ["as", " any"],
].map((halves) => halves.join(""));

describe("house rules", () => {
  it("no source file is longer than 300 lines, tables of data excepted", () => {
    const long = modules.filter((file) => !isTable(file) && read(file).split("\n").length > 301);
    expect(long.map((file) => `${file}: ${read(file).split("\n").length} lines`)).toEqual([]);
  });

  it("every source file opens with a sentence saying what it is for", () => {
    const silent = modules.filter((file) => !/^(#![^\n]*\n)?(\/\*\*|\/\/ )\s*\S/.test(read(file)));
    expect(silent).toEqual([]);
  });

  it("no mark of unfinished or switched-off work is left", () => {
    const own = "tests/tidy/house.test.ts";
    const left = files
      .filter(
        (file) => /^(src|tests|scripts|benchmarks|architecture)\/.*\.(ts|tsx|mjs|css)$/.test(file) && file !== own,
      )
      .filter((file) => {
        const text = read(file);
        return (
          marks.some((mark) => new RegExp(`\\b${mark.replace("@", "")}\\b(?! [a-z])`).test(text)) ||
          /\b(it|test|describe)\.(skip|only|todo)\b/.test(text)
        );
      });
    expect(left).toEqual([]);
  });

  it("every golden file is read by a test", () => {
    const tests = files
      .filter((file) => /^(src|tests)\/.*\.tsx?$/.test(file))
      .map(read)
      .join("\n");
    const unread = files
      .filter((file) => file.startsWith("tests/golden/") && !/\.(md|test\.ts)$/.test(file))
      .filter((file) => !tests.includes(path.posix.basename(file)));
    expect(unread).toEqual([]);
  });

  it("every golden table says its source, where in it, and how it was read", () => {
    const bare = files
      .filter((file) => /^tests\/golden\/[^/]+\.json$/.test(file))
      .filter((file) => {
        const table = JSON.parse(read(file)) as Record<string, unknown>;
        return typeof table.source !== "string" || typeof table.read !== "string";
      });
    expect(bare).toEqual([]);
  });

  it("links between documents lead somewhere", () => {
    const broken = files
      .filter((file) => file.endsWith(".md"))
      .flatMap((file) =>
        [...read(file).matchAll(/\]\(([^)#\s]+)(#[^)\s]*)?\)/g)]
          .map((match) => match[1] ?? "")
          .filter((target) => !/^(https?:|mailto:)/.test(target))
          .map((target) => path.posix.join(path.posix.dirname(file), decodeURI(target)))
          .filter(
            (target) => !files.some((known) => known === target || known.startsWith(`${target.replace(/\/$/, "")}/`)),
          )
          .map((target) => `${file} → ${target}`),
      );
    expect(broken).toEqual([]);
  });

  it("anchors inside documents lead to a heading", () => {
    const slug = (heading: string) =>
      heading
        .trim()
        .toLowerCase()
        .replace(/[^\p{L}\p{N}\s-]/gu, "")
        .replace(/\s/g, "-");
    const broken = files
      .filter((file) => file.endsWith(".md"))
      .flatMap((file) => {
        const headings = [...read(file).matchAll(/^#+\s+(.+)$/gm)].map((match) => slug(match[1] ?? ""));
        return [...read(file).matchAll(/\]\(#([^)\s]+)\)/g)]
          .map((match) => match[1] ?? "")
          .filter((anchor) => !headings.includes(anchor))
          .map((anchor) => `${file}#${anchor}`);
      });
    expect(broken).toEqual([]);
  });

  it("every rule of a SPEC has a test, and every rule named in a test stands in a SPEC", () => {
    const specs = files.filter((file) => file.endsWith("SPEC.md"));
    const written = specs.flatMap((file) =>
      [...read(file).matchAll(/^- \*\*([A-Z]{2,3}\d+)\*\*/gm)].map((match) => match[1] ?? ""),
    );
    const prefixes = new Set(written.map((rule) => rule.replace(/\d+$/, "")));
    const tested = files
      .filter((file) => /^(src|tests)\/.*\.test\.tsx?$|^tests\/laws\/|contract-suite/.test(file))
      .flatMap((file) =>
        // A name that begins with a rule, or a rule handed to a kit of laws that puts it into the name.
        [...read(file).matchAll(/["'`]((?:\[[A-Z]{2,3}\d+\]\s*)+|[A-Z]{2,3}\d+["'`])/g)].flatMap(
          (match) => (match[1] ?? "").match(/[A-Z]{2,3}\d+/g) ?? [],
        ),
      )
      .filter((rule) => prefixes.has(rule.replace(/\d+$/, "")));
    expect(new Set(written).size, "a rule id is used twice").toBe(written.length);
    expect([...new Set(tested)].sort()).toEqual([...written].sort());
  });

  it("reasoning steps, journal and casebook each have a SPEC", () => {
    const folders = [
      "journal",
      "casebook",
      ...new Set(
        sources.map((file) => /^src\/(reasoning\/[^/]+)\//.exec(file)?.[1]).filter((each) => each !== undefined),
      ),
    ];
    const bare = folders.filter((folder) => folder !== "reasoning/verbs" && !files.includes(`src/${folder}/SPEC.md`));
    expect(bare).toEqual([]);
  });
});
