/** Runs the `@example` lines of pure folders: `call(…)  // → value` must be true to the digits shown. */
import path from "node:path";
import { pathToFileURL } from "node:url";
import { describe, expect, it } from "vitest";
import { parts } from "../../architecture/boundaries.ts";
import { agrees, evaluate, type Shown, shownIn, valueShown } from "./agrees.ts";
import { files, modules, read, root } from "./tree.ts";

interface Example extends Shown {
  readonly file: string;
}

const comments = /\/\*\*[\s\S]*?\*\//g;

function examplesOf(file: string): readonly Example[] {
  return [...read(file).matchAll(comments)].flatMap(([comment]) => {
    const at = comment.indexOf("@example");
    if (at < 0) return [];
    return comment
      .slice(at)
      .split("\n")
      .map((line) => shownIn(line.replace(/^\s*\*\s+/, "").replace(/\s*\*\/$/, "")))
      .filter((shown) => shown !== null)
      .map((shown) => ({ file, ...shown }));
  });
}

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
      .map((example) => ({ ...example, got: evaluate(example.call, scope), shown: valueShown(example.value) }))
      .filter(({ got, shown }) => !agrees(got, shown));
    expect(wrong).toEqual([]);
  });
});
