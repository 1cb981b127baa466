/** The names a screen reader says on a page, held in a file: a change in them is seen by a person before it is kept. */
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { Page } from "playwright-core";

const folder = path.join(import.meta.dirname, "names");

/** Null when the names of the page are those kept; else what to do: the new ones are then in a file beside the old. */
export async function otherNames(page: Page, name: string): Promise<string | null> {
  const said = steady(await page.locator("body").ariaSnapshot());
  const kept = path.join(folder, `${name}.yml`);
  const changed = path.join(folder, `${name}-changed.yml`);
  if (existsSync(kept) && readFileSync(kept, "utf8") === said) {
    rmSync(changed, { force: true });
    return null;
  }
  writeFileSync(changed, said);
  return `${name}: names/${name}-changed.yml differs from names/${name}.yml; look at it and, if it is right, put it in its place`;
}

/** Without what differs from run to run or grows with the knowledge: days, figures, and the length of long lists. */
function steady(snapshot: string): string {
  const plain = snapshot
    .replace(/\d{4}-\d{2}-\d{2}/g, "<day>")
    .replace(
      /\d{1,2} (January|February|March|April|May|June|July|August|September|October|November|December)( \d{4})?/g,
      "<day>",
    )
    .replace(/\b[0-9a-f]{64}\b/g, "N")
    .replace(/\bseal [0-9a-f]{8}\b/g, "seal N")
    .replace(/(?<!level=)\b\d+([.,]\d+)*|(?<=[A-Z])\d+/g, "N");
  return `${drawn(shortened(parsed(plain)))}\n`;
}

interface Said {
  readonly text: string;
  readonly inside: Said[];
}

/** Lines as a tree, by how far they are set in. */
function parsed(text: string): readonly Said[] {
  const root: Said[] = [];
  const open: { readonly depth: number; readonly inside: Said[] }[] = [{ depth: -1, inside: root }];
  for (const line of text.split("\n")) {
    const depth = line.length - line.trimStart().length;
    while ((open.at(-1)?.depth ?? -1) >= depth) open.pop();
    const said: Said = { text: line.trim(), inside: [] };
    open.at(-1)?.inside.push(said);
    open.push({ depth, inside: said.inside });
  }
  return root;
}

const roleOf = (said: Said): string => /^- '?([\w-]+)/.exec(said.text)?.[1] ?? said.text;
/** Of neighbours with one role, so many are kept; of the parts of a page, all. */
const most = 4;

function shortened(all: readonly Said[]): readonly Said[] {
  let run = 0;
  return all.flatMap((said, index) => {
    const before = all[index - 1];
    run = before && roleOf(before) === roleOf(said) && roleOf(said) !== "region" ? run + 1 : 0;
    if (run > most) return [];
    if (run === most) return [{ text: "- …", inside: [] }];
    return [{ text: said.text, inside: [...shortened(said.inside)] }];
  });
}

const drawn = (all: readonly Said[], depth = 0): string =>
  all
    .flatMap(({ text, inside }) => [
      `${"    ".repeat(depth)}${text}`,
      ...(inside.length > 0 ? [drawn(inside, depth + 1)] : []),
    ])
    .join("\n");
