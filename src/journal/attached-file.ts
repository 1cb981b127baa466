/** What an entry says of a photo or a voice note, and what it may be. */

/** Sorts of file that an entry may name. */
export const mediaTypes = ["image/jpeg", "audio/webm", "audio/ogg", "audio/mp4"] as const;
export type MediaType = (typeof mediaTypes)[number];

/** Most bytes of one file: five minutes of sound, or a large photo. A choice of ours. */
export const largestFile = 8 * 1024 * 1024;

/** What an entry says of its file. */
export interface NamedFile {
  readonly sha256: string;
  readonly bytes: number;
  readonly mediaType: string;
}

/** The file that an entry names; null when it names none, or its body is gone. Also of a newer schema, as far as it says these. */
export function fileNamedBy(entry: {
  readonly header: { readonly kind: string };
  readonly body: { readonly data: Readonly<Record<string, unknown>> } | null;
}): NamedFile | null {
  if (entry.header.kind !== "file-attached" || entry.body === null) return null;
  const { sha256, bytes, mediaType } = entry.body.data;
  if (typeof sha256 !== "string" || !/^[0-9a-f]{64}$/.test(sha256)) return null;
  if (!Number.isSafeInteger(bytes) || typeof mediaType !== "string") return null;
  return { sha256, bytes: bytes as number, mediaType };
}
