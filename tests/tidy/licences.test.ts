/** Every library that ships with the product has a licence on the list. */
import { describe, expect, it } from "vitest";
import { files, read } from "./tree.ts";

const accepted = new Set([
  "MIT",
  "MIT-0",
  "ISC",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "0BSD",
  "Apache-2.0",
  "BlueOak-1.0.0",
  "CC0-1.0",
  "Unlicense",
  "(MIT OR CC0-1.0)",
  "(MIT OR Apache-2.0)",
  "(BSD-2-Clause OR MIT OR Apache-2.0)",
  "(MIT OR WTFPL)",
]);

interface Locked {
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly resolved?: string;
}

const lock = JSON.parse(read("package-lock.json")) as { readonly packages: Readonly<Record<string, Locked>> };
const locked = Object.entries(lock.packages).filter(([name]) => name !== "");

describe("licences and the lock file", () => {
  it("libraries that ship carry a licence on the list", () => {
    const odd = locked
      .filter(([, each]) => !each.dev && !accepted.has(each.license ?? "none"))
      .map(([name, each]) => `${name}: ${each.license ?? "none"}`);
    expect(odd).toEqual([]);
  });

  it("the lock file names no download address", () => {
    expect(locked.filter(([, each]) => each.resolved !== undefined).map(([name]) => name)).toEqual([]);
  });

  it("code, knowledge and fonts each have their licence text", () => {
    for (const file of ["LICENSE", "src/knowledge/LICENSE"]) expect(files).toContain(file);
    expect(read("LICENSE")).toContain("MIT License");
    expect(read("src/knowledge/LICENSE")).toContain("CC BY 4.0");
  });
});
