/** Where the files lie that entries name: photos and voice notes, each under its SHA-256. */
import type { EntryId, Hash } from "../journal/index.ts";
import type { Result } from "../units/index.ts";
import type { Whose } from "./members-contract.ts";

/** How far a file has come from one sender. */
export interface FileStanding {
  /** Bytes that have come, from the beginning without a gap. */
  readonly held: number;
  /** All of it has come, and it is what its hash says. */
  readonly isWhole: boolean;
}

/** A piece of a file. */
export interface FilePart {
  readonly sha256: Hash;
  /** Bytes of the whole file. */
  readonly of: number;
  /** Where in it this piece begins. */
  readonly from: number;
  readonly bytes: Uint8Array;
  /** The member who sends it; null where there are no members. */
  readonly sender: string | null;
}

/** A file of a backup. */
export interface FileOfBackup {
  readonly sha256: Hash;
  /** The entries that open it: it came from their writers. */
  readonly openedBy: readonly EntryId[];
}

/** An entry that names a file, as one member sees it. */
export interface FileName {
  readonly kind: string;
  /** Whose it is, as a pull would give it. */
  readonly whose: Whose;
  /** Bytes of the file, as the entry says. */
  readonly bytes: number;
  /** All of it has come from the writer of the entry: only then does the entry open it. */
  readonly hasCome: boolean;
}

export interface StoredFile {
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}

export interface FileShelf {
  /**
   * How far a file has come from this sender, whatever came from others; null when no entry of his names it. Where there
   * are no members every entry is his.
   */
  readonly standing: (sha256: Hash, sender: string | null) => Promise<FileStanding | null>;
  /**
   * Takes in the next piece. One that has come already changes nothing; one that leaves a gap is refused with the number
   * of bytes that have come. With the last one the whole is held against its hash: what is another file, or none that an
   * entry may name, is thrown away and refused; else the sender's entries that name it with its size open it from then
   * on. Only what an entry of the sender names is taken, and only while he is a member, or there never was one.
   */
  readonly take: (part: FilePart) => Promise<Result<FileStanding>>;
  /**
   * Puts a file of a backup on the shelf, judged as one that was sent, and opened by the same entries as before; by all
   * that name it where an older backup does not say.
   */
  readonly putBack: (file: {
    readonly sha256: Hash;
    readonly openedBy: readonly EntryId[] | null;
    readonly bytes: Uint8Array;
  }) => Promise<Result<FileStanding>>;
  /**
   * A whole file; null when it is not here.
   * @throws StoreTrouble when it is no longer what was written
   */
  readonly read: (sha256: Hash) => Promise<StoredFile | null>;
  /** Files that entries up to this position open, in order of their hashes. */
  readonly upTo: (position: number) => Promise<readonly FileOfBackup[]>;
  /** The entries that name the file, as far as a pull looks at them for this member. */
  readonly naming: (
    sha256: Hash,
    asker: { readonly member: string; readonly onlyOwn: boolean; readonly byRoot: boolean },
  ) => Promise<readonly FileName[]>;
}

/** Files that a device has not sent yet. */
export interface WaitedFor {
  readonly device: string;
  readonly files: number;
}

/** What checking the files found. */
export interface FilesReport {
  /** Files that are here, whole and with their hash. */
  readonly whole: number;
  /** Files that have not come from the writer of an entry yet, by the device that must send them. */
  readonly waiting: readonly WaitedFor[];
  /** Files that went with their entries. */
  readonly erased: number;
}

/** Bytes of all files of a programme at most: an archive of them stays below what its format can hold. A choice of ours. */
export const mostFileBytes = 2 * 1024 ** 3;
