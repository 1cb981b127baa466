/** What the browser must fetch before the first page is usable, gzipped. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import type { Figure } from "./figure.ts";

const web = path.join(path.dirname(path.dirname(fileURLToPath(import.meta.url))), "dist", "web");

export interface Chunk {
  readonly file: string;
  readonly isEntry?: boolean;
  readonly isDynamicEntry?: boolean;
  readonly imports?: readonly string[];
  readonly css?: readonly string[];
}
export type Manifest = Readonly<Record<string, Chunk>>;

/** The build's own list of chunks. */
export const readManifest = (): Manifest =>
  JSON.parse(readFileSync(path.join(web, ".vite", "manifest.json"), "utf8")) as Manifest;

/** A chunk and everything it imports at once. */
export function closure(manifest: Manifest, name: string, seen = new Set<string>()): ReadonlySet<string> {
  if (seen.has(name)) return seen;
  seen.add(name);
  for (const next of manifest[name]?.imports ?? []) closure(manifest, next, seen);
  return seen;
}

const gzipped = (file: string): number => gzipSync(readFileSync(path.join(web, file)), { level: 9 }).length / 1024;
const weigh = (files: Iterable<string>): number => [...new Set(files)].reduce((sum, file) => sum + gzipped(file), 0);

/** KiB of scripts and of styles of these chunks. */
export function weightOf(
  manifest: Manifest,
  names: Iterable<string>,
): { readonly scripts: number; readonly styles: number } {
  const chunks = [...names].flatMap((name) => manifest[name] ?? []);
  return {
    scripts: weigh(chunks.map((chunk) => chunk.file).filter((file) => file.endsWith(".js"))),
    styles: weigh(chunks.flatMap((chunk) => chunk.css ?? [])),
  };
}

/** Chunks needed before the first page, the list of cases, is usable. */
export function firstPage(manifest: Manifest): ReadonlySet<string> {
  const needed = Object.keys(manifest).filter((name) => manifest[name]?.isEntry || /web\/cases\/CasesPage/.test(name));
  return new Set(needed.flatMap((name) => [...closure(manifest, name)]));
}

/** Later pages by name, with the KiB of scripts that each adds to the first page. */
export function laterPages(manifest: Manifest): readonly { readonly name: string; readonly scripts: number }[] {
  const first = firstPage(manifest);
  return Object.keys(manifest)
    .filter((name) => manifest[name]?.isDynamicEntry && !first.has(name))
    .map((name) => ({
      name,
      scripts: weightOf(
        manifest,
        [...closure(manifest, name)].filter((each) => !first.has(each)),
      ).scripts,
    }));
}

/** The figures of the built page; build it first. */
export async function pageWeight(): Promise<readonly Figure[]> {
  const manifest = readManifest();
  const { scripts, styles } = weightOf(manifest, firstPage(manifest));
  const heaviest = laterPages(manifest).reduce((most, page) => (page.scripts > most.scripts ? page : most));
  return [
    { what: "scripts before the first usable page, gzipped", value: scripts, unit: "KiB", goal: 175 },
    { what: "styles before the first usable page, gzipped", value: styles, unit: "KiB", goal: 40 },
    {
      what: `heaviest later page (${path.basename(heaviest.name)}), gzipped`,
      value: heaviest.scripts,
      unit: "KiB",
      goal: 90,
    },
  ];
}
