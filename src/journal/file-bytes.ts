/** The bytes of a photo or a voice note: their sort is told by the first of them, never by a name, and a picture is freed of what a camera writes beside it. */
import type { MediaType } from "./attached-file.ts";

const beginsWith = (bytes: Uint8Array, at: number, ...wanted: readonly number[]): boolean =>
  wanted.every((byte, index) => bytes[at + index] === byte);

const ascii = (text: string): readonly number[] => Array.from(text, (letter) => letter.charCodeAt(0));

/**
 * The sort of a file by its first bytes; null when it is none that an entry may name. An MP4 or WebM that holds pictures
 * as well begins like one of sound: it is served as sound.
 * @source JPEG: ITU-T T.81 B.1.1.3; Ogg: RFC 3533 section 6; EBML: RFC 8794 section 11.2.1; MP4: ISO/IEC 14496-12
 *   section 4.3. All from memory
 * @example
 * mediaTypeOf(new Uint8Array([0xff, 0xd8, 0xff, 0xe0]))  // → "image/jpeg"
 */
export function mediaTypeOf(bytes: Uint8Array): MediaType | null {
  if (beginsWith(bytes, 0, 0xff, 0xd8, 0xff)) return "image/jpeg";
  if (beginsWith(bytes, 0, 0x1a, 0x45, 0xdf, 0xa3)) return "audio/webm";
  if (beginsWith(bytes, 0, ...ascii("OggS"))) return "audio/ogg";
  if (beginsWith(bytes, 4, ...ascii("ftyp"))) return "audio/mp4";
  return null;
}

const [startOfScan, endOfImage] = [0xda, 0xd9];

/** Segments that a picture needs to look right: its frame, colour profile and colour transform. All others may tell of place and owner. */
function isKept(bytes: Uint8Array, at: number): boolean {
  const marker = bytes[at + 1] ?? 0;
  if (marker === 0xfe) return false; // a comment
  if (marker < 0xe0 || marker > 0xef) return true;
  if (marker === 0xe0) return beginsWith(bytes, at + 4, ...ascii("JFIF\0"));
  if (marker === 0xe2) return beginsWith(bytes, at + 4, ...ascii("ICC_PROFILE\0"));
  return marker === 0xee;
}

/** Where the coded picture that begins here ends: at the next marker that is neither stuffing nor a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 1 < bytes.length; at += 1) {
    const next = bytes[at + 1] ?? 0;
    if (bytes[at] === 0xff && next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at;
  }
  return bytes.length;
}

/**
 * The same picture without its tags: where and when it was taken, by which camera, smaller pictures, comments, and what
 * stands behind its end. How it is to be turned is a tag as well, and goes.
 * @returns null when it is no JPEG from beginning to end
 * @source ITU-T T.81, annex B, from memory
 */
export function withoutTags(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  if (!beginsWith(bytes, 0, 0xff, 0xd8)) return null;
  const kept: Uint8Array[] = [bytes.subarray(0, 2)];
  for (let at = 2; at + 1 < bytes.length; ) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1; // a byte that fills
      continue;
    }
    if (marker === endOfImage) return joined([...kept, bytes.subarray(at, at + 2)]);
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    if (length < 2 || at + 2 + length > bytes.length) return null;
    const end = marker === startOfScan ? endOfScan(bytes, at + 2 + length) : at + 2 + length;
    if (isKept(bytes, at)) kept.push(bytes.subarray(at, end));
    at = end;
  }
  return null;
}

/** Whether a picture holds nothing but the picture. */
export const isFreeOfTags = (bytes: Uint8Array): boolean => withoutTags(bytes)?.length === bytes.length;

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
