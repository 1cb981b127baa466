/** Budgets of the built page: what loads before the first page is usable, what each later page adds, what must not be in it. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { beforeAll, describe, expect, it } from "vitest";

const web = path.join(path.dirname(path.dirname(path.dirname(fileURLToPath(import.meta.url)))), "dist", "web");
const kibibytes = (files: Iterable<string>): number =>
  [...files].reduce((sum, file) => sum + gzipSync(readFileSync(path.join(web, file)), { level: 9 }).length, 0) / 1024;

interface Chunk {
  readonly file: string;
  readonly isEntry?: boolean;
  readonly isDynamicEntry?: boolean;
  readonly imports?: readonly string[];
  readonly css?: readonly string[];
}

let manifest: Readonly<Record<string, Chunk>> = {};
const closure = (name: string, seen = new Set<string>()): ReadonlySet<string> => {
  if (seen.has(name)) return seen;
  seen.add(name);
  for (const next of manifest[name]?.imports ?? []) closure(next, seen);
  return seen;
};
const filesOf = (names: Iterable<string>): ReadonlySet<string> =>
  new Set([...names].map((name) => manifest[name]?.file ?? ""));

beforeAll(() => {
  manifest = JSON.parse(readFileSync(path.join(web, ".vite", "manifest.json"), "utf8")) as typeof manifest;
});

describe("budgets of the page", () => {
  it("scripts before the first usable page are at most 280 KiB gzipped, styles at most 40", () => {
    const entry = Object.keys(manifest).filter((name) => manifest[name]?.isEntry);
    const first = new Set(entry.flatMap((name) => [...closure(name)]));
    // The list of cases is the first usable page: its lazy chunk counts too.
    const cases = Object.keys(manifest).filter((name) => manifest[name]?.isDynamicEntry && /\/cases\//.test(name));
    const names = new Set([...first, ...cases.flatMap((name) => [...closure(name)])]);
    const scripts = kibibytes(filesOf(names));
    const styles = kibibytes(new Set([...names].flatMap((name) => manifest[name]?.css ?? [])));
    process.stderr.write(`first page: scripts ${scripts.toFixed(1)} KiB, styles ${styles.toFixed(1)} KiB gzipped\n`);
    expect(scripts).toBeLessThanOrEqual(280);
    expect(styles).toBeLessThanOrEqual(40);
  });

  it("each later page adds at most 90 KiB of scripts gzipped", () => {
    const entry = Object.keys(manifest).filter((name) => manifest[name]?.isEntry);
    const first = new Set(entry.flatMap((name) => [...closure(name)]));
    const heavy = Object.keys(manifest)
      .filter((name) => manifest[name]?.isDynamicEntry)
      .map((name) => ({ name, size: kibibytes(filesOf([...closure(name)].filter((each) => !first.has(each)))) }));
    process.stderr.write(`${heavy.map(({ name, size }) => `${name}: ${size.toFixed(1)} KiB`).join("\n")}\n`);
    expect(heavy.filter(({ size }) => size > 90)).toEqual([]);
  });

  it("holds no database driver and no module of Node", () => {
    const scripts = readdirSync(path.join(web, "assets")).filter((file) => file.endsWith(".js"));
    expect(scripts.length).toBeGreaterThan(0);
    const found = scripts.filter((file) =>
      /better[-_]sqlite3|\bfrom\s*["']node:|require\(["']node:|["']pg["']/.test(
        readFileSync(path.join(web, "assets", file), "utf8"),
      ),
    );
    expect(found).toEqual([]);
  });

  it("works offline: there is a service worker and it keeps every script, style and font", () => {
    expect(existsSync(path.join(web, "sw.js"))).toBe(true);
    const worker = readFileSync(path.join(web, "sw.js"), "utf8");
    const kept = readdirSync(path.join(web, "assets")).filter((file) => /\.(js|css|woff2)$/.test(file));
    expect(kept.filter((file) => !worker.includes(file))).toEqual([]);
  });
});
