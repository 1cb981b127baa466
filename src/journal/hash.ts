/** Fingerprints of headers and bodies: SHA-256 over one fixed spelling of the same JSON. */
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, hexToBytes, utf8ToBytes } from "@noble/hashes/utils.js";
import canonicalize from "canonicalize";
import { DomainError, ensure } from "../units/index.ts";
import type { EntryBody, EntryHeader, Hash } from "./entry.ts";

/**
 * One fixed spelling of a JSON value, so that equal values have equal hashes.
 * Keys are sorted, numbers are spelt as ECMAScript does, members that are undefined are left out.
 * @throws DomainError when the value has no JSON spelling: NaN, infinity, half a surrogate pair, a circle
 * @source RFC 8785, JSON Canonicalization Scheme
 * @example
 * canonicalJson({ b: 2, a: "x" })  // → "{\"a\":\"x\",\"b\":2}"
 */
export function canonicalJson(value: unknown): string {
  let text: string | undefined;
  try {
    text = canonicalize(value);
  } catch (trouble) {
    throw new DomainError("value", (trouble as Error).message, "a value that JSON can spell");
  }
  ensure(text !== undefined, "value", value, "a value that JSON can spell");
  return text;
}

/** SHA-256 of bytes, 64 hex digits: a machine may have a faster one than the one here. */
export type Digest = (bytes: Uint8Array) => Hash;

const ownDigest: Digest = (bytes) => bytesToHex(sha256(bytes));

/** SHA-256 of a text in UTF-8, 64 hex digits. */
export const textHash = (text: string, digest: Digest = ownDigest): Hash => digest(utf8ToBytes(text));

/**
 * Hash of a header, as the next entry of the same device carries it in `prev`. 64 hex digits.
 * @throws DomainError when the header has no JSON spelling
 */
export const headerHash = (header: EntryHeader, digest?: Digest): Hash => textHash(canonicalJson(header), digest);

/**
 * Hash of a body, as its header carries it in `content`: SHA-256 over the 16 bytes of the salt
 * followed by the canonical JSON of the data. 64 hex digits. The salt keeps a short body,
 * such as one of three states, from being found by trying them all.
 * @throws DomainError when the salt is not 32 hex digits or the data have no JSON spelling
 */
export function contentHash(body: EntryBody, digest: Digest = ownDigest): Hash {
  ensure(/^[0-9a-f]{32}$/.test(body.salt), "salt", body.salt, "32 lower-case hex digits");
  const salt = hexToBytes(body.salt);
  const data = utf8ToBytes(canonicalJson(body.data));
  const salted = new Uint8Array(salt.length + data.length);
  salted.set(salt);
  salted.set(data, salt.length);
  return digest(salted);
}
