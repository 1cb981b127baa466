/** What of JSON nobody writes in earnest, and what only trips the programs that read it. */

const deepest = 64;
const mostNames = 1000;
const longestName = 200;

/**
 * What a JSON value should be and is not, in a few plain words; null when it is fine. At most 64 levels deep, at most
 * 1000 names in one object, each of at most 200 signs; finite numbers (1e400 is read as infinite) and whole
 * characters, since others have no one spelling to be hashed.
 * @example
 * jsonTrouble({ a: [1, "x"] })  // → null
 * jsonTrouble([1e400])  // → "finite numbers"
 */
export function jsonTrouble(value: unknown): string | null {
  // A list of what is still to be looked at, not a recursion: depth is what it guards against.
  const waiting: { readonly value: unknown; readonly depth: number }[] = [{ value, depth: 0 }];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { value: here, depth } = next;
    if (typeof here === "number" && !Number.isFinite(here)) return "finite numbers";
    if (typeof here === "string" && !here.isWellFormed()) return "text of whole characters";
    if (typeof here !== "object" || here === null) continue;
    if (depth >= deepest) return `at most ${deepest} levels of lists and objects`;
    if (!Array.isArray(here)) {
      const names = Object.keys(here);
      if (names.length > mostNames) return `at most ${mostNames} names in one object`;
      if (names.some((name) => name.length > longestName)) return `names of at most ${longestName} signs`;
      if (names.some((name) => !name.isWellFormed())) return "text of whole characters";
    }
    for (const inside of Object.values(here)) waiting.push({ value: inside, depth: depth + 1 });
  }
  return null;
}
