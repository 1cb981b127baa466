/** New ids and salts from a clock reading and random bytes, both given by the caller. */
import { ensure } from "../units/index.ts";
import type { EntryId } from "./entry.ts";

const hex = (bytes: Uint8Array): string => [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");

/**
 * A new id that sorts by time: 48 bits of milliseconds since 1970 UTC, then 74 of the random bits given.
 * @throws DomainError when the time is before 1970 or past the year 10889, or there are not 16 bytes
 * @source RFC 9562, section 5.7 (UUID version 7)
 * @example
 * newEntryId(1645557742000, new Uint8Array(16))  // → "017f22e2-79b0-7000-8000-000000000000"
 */
export function newEntryId(recordedAtMilliseconds: number, random16: Uint8Array): EntryId {
  const isTime = Number.isInteger(recordedAtMilliseconds) && recordedAtMilliseconds >= 0;
  ensure(isTime && recordedAtMilliseconds < 2 ** 48, "recordedAtMilliseconds", recordedAtMilliseconds, "in [0, 2^48)");
  ensure(random16.length === 16, "random16", random16.length, "16 bytes");
  const bytes = random16.slice();
  for (let index = 0; index < 6; index += 1) {
    bytes[index] = Math.floor(recordedAtMilliseconds / 2 ** (8 * (5 - index))) % 256;
  }
  bytes[6] = 0x70 | ((bytes[6] ?? 0) & 0x0f); // version 7
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f); // variant of RFC 9562
  const text = hex(bytes);
  return [text.slice(0, 8), text.slice(8, 12), text.slice(12, 16), text.slice(16, 20), text.slice(20)].join("-");
}

/**
 * A salt of 128 bits as 32 hex digits, from 16 random bytes.
 * @throws DomainError when there are not 16 bytes
 */
export function newSalt(random16: Uint8Array): string {
  ensure(random16.length === 16, "random16", random16.length, "16 bytes");
  return hex(random16);
}
