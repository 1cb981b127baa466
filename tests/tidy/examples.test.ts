/** Runs the `@example` lines of pure folders: `call(…)  // → value` must be true to the digits shown. */
import path from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it } from "vitest";
import { parts } from "../../architecture/boundaries.ts";
import { files, modules, read, root } from "./tree.ts";

interface Example {
  readonly file: string;
  readonly call: string;
  readonly value: string;
}

const comments = /\/\*\*[\s\S]*?\*\//g;

function examplesOf(file: string): readonly Example[] {
  return [...read(file).matchAll(comments)].flatMap(([comment]) => {
    const at = comment.indexOf("@example");
    if (at < 0) return [];
    return comment
      .slice(at)
      .split("\n")
      .map((line) => /^\s*\*\s+(\S.*?)\s+\/\/ →\s*(.+?)\s*(?:\*\/)?$/.exec(line))
      .filter((match) => match !== null)
      .map((match) => ({ file, call: match[1] ?? "", value: match[2] ?? "" }));
  });
}

/** Numbers agree when they agree to the significant digits that the example shows. */
function agrees(actual: unknown, shown: unknown): boolean {
  if (typeof actual === "number" && typeof shown === "number") {
    if (actual === shown) return true;
    const digits = String(Math.abs(shown)).replace(/e.*$/, "").replace(".", "").replace(/^0+/, "").length;
    return (
      digits > 0 &&
      Math.abs(actual - shown) <= 0.5000001 * 10 ** (Math.floor(Math.log10(Math.abs(shown) || 1)) - digits + 1)
    );
  }
  if (actual !== null && shown !== null && typeof actual === "object" && typeof shown === "object") {
    const keys = Object.keys(shown);
    return (
      keys.length === Object.keys(actual).length &&
      keys.every((key) => agrees(Reflect.get(actual, key), Reflect.get(shown, key)))
    );
  }
  return Object.is(actual, shown);
}

const evaluate = (text: string, scope: Readonly<Record<string, unknown>>): unknown =>
  new Function(...Object.keys(scope), `return (${text.replace(/;$/, "")});`)(...Object.values(scope));

const pure = parts.filter((part) => part.pure).sort((a, b) => b.folder.length - a.folder.length);
const folderOf = (file: string): string => pure.find((part) => file.startsWith(`src/${part.folder}/`))?.folder ?? "";
const examples = modules.filter((file) => folderOf(file) !== "").flatMap(examplesOf);

describe("examples in comments", () => {
  it("there are some", () => {
    expect(examples.length).toBeGreaterThan(0);
  });

  it.each([...new Set(examples.map((example) => example.file))])("those of %s are true", async (file) => {
    const entrance = `src/${folderOf(file)}/index.ts`;
    expect(files).toContain(entrance);
    const scope = {
      ...((await import(pathToFileURL(path.join(root, entrance)).href)) as Record<string, unknown>),
      ...((await import(pathToFileURL(path.join(root, file)).href)) as Record<string, unknown>),
    };
    const wrong = examples
      .filter((example) => example.file === file)
      .map((example) => ({ ...example, got: evaluate(example.call, scope), shown: evaluate(example.value, {}) }))
      .filter(({ got, shown }) => !agrees(got, shown));
    expect(wrong).toEqual([]);
  });
});
