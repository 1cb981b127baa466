import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";

const imports = /(?:^|\n)(?:import|export)\s[^;]*?from\s+"([^"]+)"|(?:^|\n)import\s+"([^"]+)"|import\("([^"]+)"\)/g;

/** Every module that is reached from a file, through our own files, types left out of account. */
function reached(file: string, seen = new Set<string>()): ReadonlySet<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  const source = readFileSync(file, "utf8").replaceAll(/(?:^|\n)(?:import|export) type [^;]*;/g, "");
  for (const [, one, other, lazy] of source.matchAll(imports)) {
    const name = one ?? other ?? lazy ?? "";
    if (name.startsWith(".")) reached(path.resolve(path.dirname(file), name), seen);
    else seen.add(name);
  }
  return seen;
}
const entrance = (name: string) =>
  [...reached(path.join(import.meta.dirname, name))].map((each) => path.basename(each));
const nodeOnly = (name: string) => /^node:|^better-sqlite3$|^pg$|^kysely$|^sqlite\.ts$/.test(name);

it.each(["index.ts", "device.ts"])("[SG90] nothing that needs Node is reached from %s", (name) => {
  expect(entrance(name).filter(nodeOnly)).toEqual([]);
  expect(entrance(name)).toContain("memory.ts");
});

it("[SG90] the look would find it: the service's entrance does need Node", () => {
  expect(entrance("server.ts").filter(nodeOnly).toSorted()).toEqual([
    "better-sqlite3",
    "kysely",
    "node:crypto",
    "node:fs",
    "node:path",
    "node:worker_threads",
    "node:zlib",
    "pg",
    "sqlite.ts",
  ]);
});
