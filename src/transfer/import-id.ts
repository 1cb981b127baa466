/** Ids made from what a row is, so that the same table gives the same ids each time. */
import { contentHash } from "../journal/index.ts";

const noSalt = "0".repeat(32);

/**
 * UUID of version 8 (RFC 9562) from the mapping's key and the parts that name a thing: the same parts, the same id.
 *
 * @example
 * importId("example", "colony", "yard-1", "7") === importId("example", "colony", "yard-1", "7")  // → true
 */
export function importId(key: string, ...parts: readonly string[]): string {
  const hash = contentHash({ salt: noSalt, data: { import: key, parts: [...parts] } });
  const variant = ((Number.parseInt(hash.slice(16, 17), 16) & 0x3) | 0x8).toString(16);
  return [
    hash.slice(0, 8),
    hash.slice(8, 12),
    `8${hash.slice(13, 16)}`,
    `${variant}${hash.slice(17, 20)}`,
    hash.slice(20, 32),
  ].join("-");
}
