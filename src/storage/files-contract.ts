/** Where the files lie that entries name: photos and voice notes, each under its SHA-256. */
import type { Hash } from "../journal/index.ts";
import type { Result } from "../units/index.ts";
import type { Whose } from "./members-contract.ts";

/** How far a file has come. */
export interface FileStanding {
  /** Bytes that are here, from the beginning without a gap. */
  readonly held: number;
  /** All of it is here, and it is what its hash says. */
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
}

export interface StoredFile {
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}

export interface FileShelf {
  /** Null when no entry names such a file. */
  readonly standing: (sha256: Hash) => Promise<FileStanding | null>;
  /**
   * Takes in the next piece. One that is here already changes nothing; one that leaves a gap is refused with the number
   * of bytes that are here. With the last one the whole is held against its hash: what is another file, or none that an
   * entry may name, is thrown away and refused. Only what an entry names is taken.
   */
  readonly take: (part: FilePart) => Promise<Result<FileStanding>>;
  /**
   * A whole file; null when it is not here.
   * @throws StoreTrouble when it is no longer what was written
   */
  readonly read: (sha256: Hash) => Promise<StoredFile | null>;
  /** Whole files that entries up to this position name, in order of their hashes. */
  readonly upTo: (position: number) => Promise<readonly Hash[]>;
  /** The kinds of entry that name the file, and whose each is to a member, as a pull would give them. */
  readonly naming: (
    sha256: Hash,
    asker: { readonly member: string; readonly onlyOwn: boolean; readonly byRoot: boolean },
  ) => Promise<readonly { readonly kind: string; readonly whose: Whose }[]>;
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
  /** Files that are not here yet, by the device that must send them. */
  readonly waiting: readonly WaitedFor[];
  /** Files that went with their entries. */
  readonly erased: number;
}

/** Bytes of all files of a programme at most: an archive of them stays below what its format can hold. A choice of ours. */
export const mostFileBytes = 2 * 1024 ** 3;
