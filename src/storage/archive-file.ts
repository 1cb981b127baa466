/** An archive on disk, read file by file, so that a large one is never held whole. */
import { closeSync, fstatSync, openSync, readSync } from "node:fs";
import { crc32, inflateRawSync } from "node:zlib";

export interface ArchiveFile {
  /** What of it is more than any backup has, by the sizes it tells; null when nothing is. Then nothing is to be read. */
  readonly beyond: string | null;
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
const longest = 512 * 1024 ** 2;
/** More files than this the format cannot count. */
const mostFiles = 65_535;
/**
 * So many times its own size an archive may unpack to, or to what is always let through. A journal of 20 000 bees comes to
 * 4 times. Judgement.
 */
const [mostTimes, leastAllowed] = [100, 64 * 1024 ** 2];
/** And never to more: photos and voice notes come to 2 GiB, journals packed into what the format leaves beside them to some 8. Judgement. */
const mostBytes = 32 * 1024 ** 3;

/**
 * Opens the archive; null when it is none.
 * @throws an error of the file system when it may not be read
 * @source ZIP application note 6.3, sections 4.3.7, 4.3.12 and 4.3.16, from memory
 */
export function openArchive(file: string): ArchiveFile | null {
  const handle = openSync(file, "r");
  /** No room is made for more than there is, whatever the archive says. */
  const read = (offset: number, length: number): Buffer => {
    const bytes = Buffer.alloc(Math.max(0, Math.min(length, fstatSync(handle).size - offset)));
    return bytes.subarray(0, readSync(handle, bytes, 0, bytes.length, offset));
  };
  const close = () => closeSync(handle);
  try {
    const { size } = fstatSync(handle);
    const placed = directoryIn(read, size);
    if (placed === null) {
      close();
      return null;
    }
    const told = placed.reduce((sum, [, { unpacked }]) => sum + unpacked, 0);
    const files = new Map(placed);
    let spent = 0;
    const bytes = (name: string) => {
      const file = files.get(name);
      spent += file?.unpacked ?? 0;
      // Each is read once: what is asked for again and again was made to be.
      return spent > told ? null : bytesOf(read, file);
    };
    return {
      beyond: beyondIn(placed.length, told, size),
      bytes,
      text: (name) => bytes(name)?.toString("utf8") ?? null,
      close,
    };
  } catch (trouble) {
    close();
    throw trouble;
  }
}

function beyondIn(files: number, told: number, size: number): string | null {
  if (files > mostFiles) return `${files} files`;
  return told > Math.min(mostBytes, Math.max(leastAllowed, mostTimes * size)) ? `${told} bytes of ${size}` : null;
}

type Read = (offset: number, length: number) => Buffer;

function directoryIn(read: Read, size: number): readonly (readonly [string, Placed])[] | null {
  const tail = read(Math.max(0, size - 65_557), Math.min(size, 65_557));
  const at = tail.lastIndexOf(Buffer.from("PK\x05\x06", "latin1"));
  if (at < 0 || at + 22 > tail.length || tail.readUInt32LE(at) !== endMark) return null;
  const directory = read(tail.readUInt32LE(at + 16), tail.readUInt32LE(at + 12));
  const placed: (readonly [string, Placed])[] = [];
  for (let here = 0; here + 46 <= directory.length && directory.readUInt32LE(here) === entryMark; ) {
    const nameLength = directory.readUInt16LE(here + 28);
    const file = {
      method: directory.readUInt16LE(here + 10),
      crc: directory.readUInt32LE(here + 16),
      packed: directory.readUInt32LE(here + 20),
      unpacked: directory.readUInt32LE(here + 24),
      offset: directory.readUInt32LE(here + 42),
    };
    placed.push([directory.toString("utf8", here + 46, here + 46 + nameLength), file]);
    here += 46 + nameLength + directory.readUInt16LE(here + 30) + directory.readUInt16LE(here + 32);
  }
  return placed;
}

function bytesOf(read: Read, placed: Placed | undefined): Buffer | null {
  if (!placed || Math.max(placed.packed, placed.unpacked) > longest) return null;
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
