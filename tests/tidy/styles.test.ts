/** Styles of one page must not reach another: pages share one document, and what was loaded stays. */
import { describe, expect, it } from "vitest";
import { files, read } from "./tree.ts";

const styles = files.filter((file) => /^src\/views\/web\/.*\.css$/.test(file));
/** What several pages share on purpose. */
const isShared = (file: string): boolean => /\/web\/(look|parts|pictures)\/|\/case\/notices/.test(file);

/** The first class of every selector in a style sheet, at-rules opened. */
function leadingClasses(file: string): ReadonlySet<string> {
  const text = read(file).replace(/\/\*[\s\S]*?\*\//g, "");
  const selectors = [...text.matchAll(/([^{}]+)\{/g)]
    .map((match) => (match[1] ?? "").trim())
    .filter((each) => !each.startsWith("@"));
  return new Set(
    selectors
      .flatMap((selector) => selector.split(",").map((one) => /\.([a-zA-Z][\w-]*)/.exec(one.trim())?.[1] ?? ""))
      .filter((name) => name !== ""),
  );
}

describe("styles", () => {
  it("no class that begins a selector is styled by two pages", () => {
    const owners = new Map<string, string[]>();
    for (const file of styles.filter((each) => !isShared(each)))
      for (const name of leadingClasses(file)) owners.set(name, [...(owners.get(name) ?? []), file]);
    expect([...owners].filter(([, of]) => of.length > 1).map(([name, of]) => `.${name}: ${of.join(", ")}`)).toEqual([]);
  });

  it("colours come from the tokens alone", () => {
    const own = styles
      .filter((file) => !file.endsWith("/look/tokens.css"))
      .filter((file) =>
        /#[0-9a-f]{3,8}\b|\brgba?\(|\bhsla?\(/i.test(
          read(file)
            .replace(/\/\*[\s\S]*?\*\//g, "")
            .replace(/url\([^)]*\)/g, ""),
        ),
      );
    expect(own).toEqual([]);
  });
});
