/** The hash of a file, where there is a browser. */
import type { Hash } from "../journal/index.ts";

/** SHA-256 of bytes, 64 hex digits, by the browser itself. */
export async function fileHash(bytes: Uint8Array<ArrayBuffer>): Promise<Hash> {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
