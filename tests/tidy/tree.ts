/** What the tidy tests read: the tracked and new files of the project, and the imports in a source file. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

export const root = path.dirname(path.dirname(path.dirname(fileURLToPath(import.meta.url))));

/** Every file of the project that git knows or would add, relative to the root, with forward slashes. */
export const files: readonly string[] = execFileSync(
  "git",
  ["ls-files", "-z", "--cached", "--others", "--exclude-standard"],
  {
    cwd: root,
    encoding: "utf8",
    maxBuffer: 64 * 1024 * 1024,
  },
)
  .split("\0")
  .filter((file) => file !== "" && !isGone(file));

function isGone(file: string): boolean {
  try {
    readFileSync(path.join(root, file));
    return false;
  } catch {
    return true;
  }
}

export const read = (file: string): string => readFileSync(path.join(root, file), "utf8");

export const sources = files.filter((file) => /^src\/.*\.(ts|tsx)$/.test(file));
export const isTest = (file: string): boolean => /\.(test|type-test)\.tsx?$/.test(file);
export const modules = sources.filter((file) => !isTest(file));

/** Specifiers of static, dynamic and type imports, and of worker URLs. */
export function importsOf(file: string): readonly string[] {
  const text = read(file);
  const found = [
    ...text.matchAll(/\bfrom\s+"([^"]+)"/g),
    ...text.matchAll(/\bimport\s+"([^"]+)"/g),
    ...text.matchAll(/\bimport\(\s*"([^"]+)"\s*\)/g),
    ...text.matchAll(/new URL\(\s*"([^"]+)"\s*,\s*import\.meta\.url/g),
  ];
  return found.map((match) => match[1] ?? "");
}
