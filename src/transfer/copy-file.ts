/** A saved copy that carries files: the journal and the photos and voice notes that it names, in one archive. */
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { type Entry, fileNamedBy, type Hash, largestFile } from "../journal/index.ts";

export interface CopiedFile {
  readonly sha256: Hash;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** What a copy holds. Nothing of it was checked yet: the journal is text, and the hash of a file is what its name says. */
export interface SavedCopy {
  readonly journal: string;
  readonly files: readonly CopiedFile[];
}

const journalName = "journal.jsonl";
const fileName = /^files\/([0-9a-f]{64})$/;
/** Bytes of a journal in a copy at most: far above the largest there is, far below what fills a memory. A choice of ours. */
const longestJournal = 512 * 1024 * 1024;

/** The files that entries name, each once. */
export const filesNamedBy = (entries: readonly Entry[]): readonly Hash[] => [
  ...new Set(entries.flatMap((entry) => fileNamedBy(entry)?.sha256 ?? [])),
];

/** The archive of a journal and files. */
export const savedCopy = (journal: string, files: readonly CopiedFile[]): Uint8Array<ArrayBuffer> =>
  archiveWith(journalName, journal, files);

/** An archive of a text and files; photos and sound are packed already and are stored as they are. */
export function archiveWith(name: string, text: string, files: readonly CopiedFile[]): Uint8Array<ArrayBuffer> {
  return zipSync({
    [name]: strToU8(text),
    ...Object.fromEntries(files.map(({ sha256, bytes }) => [`files/${sha256}`, [bytes, { level: 0 }] as const])),
  }) as Uint8Array<ArrayBuffer>;
}

/** Times the size of the archive that its files may unpack to. Judgement: files in it are stored as they are. */
const mostUnpacking = 4;

/** Whether a file is an archive, by its first bytes. */
export const isArchive = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

/** What the archive holds of a copy, and nothing else that may be in it; null when it is none or is damaged. */
export function readSavedCopy(bytes: Uint8Array): SavedCopy | null {
  let inside: Readonly<Record<string, Uint8Array>>;
  let unpacked = 0;
  const taken = new Set<string>();
  try {
    inside = unzipSync(bytes, {
      filter({ name, originalSize }) {
        const isOurs =
          name === journalName ? originalSize <= longestJournal : fileName.test(name) && originalSize <= largestFile;
        // A name that comes twice would be unpacked twice, and only the last of the two be read.
        if (isOurs && taken.has(name)) throw new RangeError("a name comes twice");
        if (isOurs) taken.add(name);
        unpacked += isOurs && name !== journalName ? originalSize : 0;
        // Photos and sound hardly pack: what unpacks to many times its size was made to fill the memory.
        if (unpacked > mostUnpacking * bytes.length) throw new RangeError("unpacks without end");
        return isOurs;
      },
    });
  } catch {
    return null;
  }
  const journal = inside[journalName];
  if (journal === undefined) return null;
  const files = Object.entries(inside).flatMap(([name, content]) => {
    const sha256 = fileName.exec(name)?.[1];
    return sha256 === undefined ? [] : [{ sha256, bytes: new Uint8Array(content) }];
  });
  return { journal: strFromU8(journal), files };
}
