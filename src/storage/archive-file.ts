/** An archive on disk, read file by file, so that a large one is never held whole. */
import { closeSync, fstatSync, openSync, readSync } from "node:fs";
import { crc32, inflateRawSync } from "node:zlib";

export interface ArchiveFile {
  /** The bytes of a file in it; null when there is none of that name, or it is not what was written. */
  readonly bytes: (name: string) => Buffer | null;
  /** The same as text. */
  readonly text: (name: string) => string | null;
  readonly close: () => void;
}

interface Placed {
  readonly offset: number;
  readonly packed: number;
  readonly unpacked: number;
  readonly crc: number;
  readonly method: number;
}

const [endMark, entryMark, localMark] = [0x06054b50, 0x02014b50, 0x04034b50];
/** Longest unpacked file that is read: a part of a backup is far below it. */
const longest = 512 * 1024 * 1024;

/**
 * Opens the archive; null when it is none.
 * @throws an error of the file system when it may not be read
 * @source ZIP application note 6.3, sections 4.3.7, 4.3.12 and 4.3.16, from memory
 */
export function openArchive(file: string): ArchiveFile | null {
  const handle = openSync(file, "r");
  const read = (offset: number, length: number): Buffer => {
    const bytes = Buffer.alloc(length);
    return bytes.subarray(0, readSync(handle, bytes, 0, length, offset));
  };
  const close = () => closeSync(handle);
  try {
    const placed = directoryIn(read, fstatSync(handle).size);
    if (placed === null) {
      close();
      return null;
    }
    const bytes = (name: string) => bytesOf(read, placed.get(name));
    return { bytes, text: (name) => bytes(name)?.toString("utf8") ?? null, close };
  } catch (trouble) {
    close();
    throw trouble;
  }
}

type Read = (offset: number, length: number) => Buffer;

function directoryIn(read: Read, size: number): ReadonlyMap<string, Placed> | null {
  const tail = read(Math.max(0, size - 65_557), Math.min(size, 65_557));
  const at = tail.lastIndexOf(Buffer.from("PK\x05\x06", "latin1"));
  if (at < 0 || at + 22 > tail.length || tail.readUInt32LE(at) !== endMark) return null;
  const directory = read(tail.readUInt32LE(at + 16), tail.readUInt32LE(at + 12));
  const placed = new Map<string, Placed>();
  for (let here = 0; here + 46 <= directory.length && directory.readUInt32LE(here) === entryMark; ) {
    const nameLength = directory.readUInt16LE(here + 28);
    placed.set(directory.toString("utf8", here + 46, here + 46 + nameLength), {
      method: directory.readUInt16LE(here + 10),
      crc: directory.readUInt32LE(here + 16),
      packed: directory.readUInt32LE(here + 20),
      unpacked: directory.readUInt32LE(here + 24),
      offset: directory.readUInt32LE(here + 42),
    });
    here += 46 + nameLength + directory.readUInt16LE(here + 30) + directory.readUInt16LE(here + 32);
  }
  return placed;
}

function bytesOf(read: Read, placed: Placed | undefined): Buffer | null {
  if (!placed || placed.unpacked > longest) return null;
  const local = read(placed.offset, 30);
  if (local.length < 30 || local.readUInt32LE(0) !== localMark) return null;
  const packed = read(placed.offset + 30 + local.readUInt16LE(26) + local.readUInt16LE(28), placed.packed);
  if (placed.method !== 0 && placed.method !== 8) return null;
  try {
    const bytes = placed.method === 0 ? packed : inflateRawSync(packed, { maxOutputLength: placed.unpacked || 1 });
    return bytes.length === placed.unpacked && crc32(bytes) === placed.crc ? bytes : null;
  } catch {
    return null;
  }
}
