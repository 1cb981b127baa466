/** Budgets of the built page: what loads before the first page is usable, what each later page adds, what must not be in it. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { firstPage, laterPages, readManifest, weightOf } from "../../benchmarks/page-weight.ts";
import { conditions, controls, findings } from "../../src/knowledge/index.ts";

const web = path.join(path.dirname(path.dirname(path.dirname(fileURLToPath(import.meta.url)))), "dist", "web");

describe("budgets of the page", () => {
  it("scripts before the first usable page are at most 175 KiB gzipped, styles at most 40", () => {
    const manifest = readManifest();
    const { scripts, styles } = weightOf(manifest, firstPage(manifest));
    expect(scripts).toBeGreaterThan(1);
    expect(scripts).toBeLessThanOrEqual(175);
    expect(styles).toBeLessThanOrEqual(40);
  });

  it("the first page carries the red flags and no other fact", () => {
    const manifest = readManifest();
    const read = (name: string) => readFileSync(path.join(web, manifest[name]?.file ?? ""), "utf8");
    const first = firstPage(manifest);
    // The build renames what it likes; ids are keys of records and stay as they are written.
    const carrying = (names: Iterable<string>, records: object) =>
      [...names].filter((name) => Object.keys(records).some((id) => read(name).includes(`id:\`${id}\``)));
    const scripts = Object.keys(manifest).filter((name) => manifest[name]?.file.endsWith(".js"));
    for (const records of [conditions, findings, controls]) {
      expect(carrying(scripts, records).length).toBeGreaterThan(0);
      expect(carrying(first, records)).toEqual([]);
    }
  });

  it("each later page adds at most 90 KiB of scripts gzipped", () => {
    const pages = laterPages(readManifest());
    expect(pages.length).toBeGreaterThan(0);
    expect(pages.filter((page) => page.scripts > 90)).toEqual([]);
  });

  it("holds no database driver and no module of Node", () => {
    const scripts = readdirSync(path.join(web, "assets")).filter((file) => file.endsWith(".js"));
    expect(scripts.length).toBeGreaterThan(0);
    const found = scripts.filter((file) =>
      /better[-_]sqlite3|\bfrom\s*["']node:|require\(["']node:|["']pg["']|__vite-browser-external/.test(
        readFileSync(path.join(web, "assets", file), "utf8"),
      ),
    );
    expect(found).toEqual([]);
  });

  it("works offline: the service worker keeps every script, style and font", () => {
    expect(existsSync(path.join(web, "sw.js"))).toBe(true);
    const worker = readFileSync(path.join(web, "sw.js"), "utf8");
    const kept = readdirSync(path.join(web, "assets")).filter((file) => /\.(js|css|woff2)$/.test(file));
    expect(kept.filter((file) => !worker.includes(file))).toEqual([]);
  });
});
