/** The house rules about who may import whom, made from architecture/boundaries.ts. */
import path from "node:path";
import { describe, expect, it } from "vitest";
import { type Part, parts } from "../../architecture/boundaries.ts";
import { drawBoundaries } from "../../architecture/diagram.ts";
import { files, importsOf, modules, read } from "./tree.ts";

const byDepth = [...parts].sort((a, b) => b.folder.length - a.folder.length);
const partOf = (file: string): Part | undefined => byDepth.find((part) => file.startsWith(`src/${part.folder}/`));

/** A folder is entered through its index; storage has three entrances. */
const entrances = (part: Part): readonly string[] =>
  part.folder === "storage" ? ["index.ts", "device.ts", "server.ts"] : ["index.ts", "index.tsx"];

function faults(file: string): readonly string[] {
  const part = partOf(file);
  if (!part) return [`${file}: belongs to no part of architecture/boundaries.ts`];
  return importsOf(file).flatMap((specifier) => {
    if (!specifier.startsWith(".")) {
      const name = specifier.startsWith("@")
        ? specifier.split("/").slice(0, 2).join("/")
        : (specifier.split("/")[0] ?? "");
      return part.packages === "any" || part.packages.includes(name) ? [] : [`${file}: may not import ${specifier}`];
    }
    const target = path.posix.join(path.posix.dirname(file), specifier.replace(/\?.*$/, ""));
    const other = partOf(target);
    if (!target.startsWith("src/"))
      return target.endsWith(".json") || specifier.endsWith("?url")
        ? []
        : [`${file}: reaches outside src: ${specifier}`];
    if (!other || other.folder === part.folder) return [];
    if (!part.imports.includes(other.folder)) return [`${file}: ${part.folder} may not import ${other.folder}`];
    const inside = target.slice(`src/${other.folder}/`.length);
    return entrances(other).includes(inside) ? [] : [`${file}: enters ${other.folder} by ${inside}, not by its index`];
  });
}

describe("boundaries", () => {
  it("every source file imports only what its part may import, through the entrance", () => {
    expect(modules.flatMap(faults)).toEqual([]);
  });

  it("every part has an entrance", () => {
    const missing = parts.filter(
      (part) =>
        part.folder !== "views/web" &&
        part.folder !== "views/cli" &&
        !files.some((file) => entrances(part).some((name) => file === `src/${part.folder}/${name}`)),
    );
    expect(missing.map((part) => part.folder)).toEqual([]);
  });

  it("no part imports in a circle", () => {
    const reaches = (from: string, seen: ReadonlySet<string> = new Set()): boolean =>
      (parts.find((part) => part.folder === from)?.imports ?? []).some(
        (next) =>
          next === [...seen][0] || (!seen.has(next) && reaches(next, new Set([...(seen.size ? seen : [from]), next]))),
      );
    expect(parts.filter((part) => reaches(part.folder, new Set([part.folder]))).map((part) => part.folder)).toEqual([]);
  });

  it("no pure folder reads a clock, draws by chance, or touches disk, network or screen", () => {
    const forbidden =
      /\b(Math\.random|Date\.now|new Date\(\)|performance\.|process\.|console\.|fetch\(|localStorage|crypto\.|setTimeout)/;
    const found = modules
      .filter((file) => partOf(file)?.pure)
      .filter((file) => forbidden.test(read(file).replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "")));
    expect(found).toEqual([]);
  });

  it("nothing outside views imports views, and nothing imports tests", () => {
    const outside = modules.filter(
      (file) => !file.startsWith("src/views/") && importsOf(file).some((each) => each.includes("/views/")),
    );
    const tests = modules.filter((file) =>
      importsOf(file).some(
        (each) => /\.test\.tsx?$/.test(each) || path.posix.join(path.posix.dirname(file), each).startsWith("tests/"),
      ),
    );
    expect([...outside, ...tests]).toEqual([]);
  });

  it("the diagram in ARCHITECTURE.md is the one drawn from the table", () => {
    expect(read("ARCHITECTURE.md")).toContain(drawBoundaries(parts));
  });
});
