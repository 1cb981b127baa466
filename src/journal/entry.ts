/** What one entry is: a header that never changes and a body that can only be erased. */

/** UUIDv7 text (RFC 9562). */
export type EntryId = string;
/** SHA-256 as 64 lower-case hex digits. */
export type Hash = string;

/** What never changes of an entry; its hash is what the next entry of the device carries. */
export interface EntryHeader {
  readonly id: EntryId;
  /** Past tense, kebab-case. A kind this version does not know is kept and counted, never dropped. */
  readonly kind: string;
  /** Version of the body's shape, from 1. */
  readonly schema: number;
  readonly device: string;
  /** 1, 2, 3 … without a gap per device. */
  readonly seq: number;
  /** Hash of the device's previous header; null on the first. */
  readonly prev: Hash | null;
  /** When it happened: a day or an instant, ISO text. */
  readonly at: string;
  /** When it was written down: an instant, ISO text with Z. */
  readonly recordedAt: string;
  readonly author: string;
  readonly programme: string;
  /** Opaque ids; the first names the root (case, apiary, specimen, plan, label record). */
  readonly about: readonly string[];
  /** Every entry this one corrects or withdraws. In the header, so that erasing a body revives nothing. */
  readonly replaces: readonly EntryId[];
  /** SHA-256(salt ‖ RFC 8785 body). */
  readonly content: Hash;
}

/** What was recorded. Can be withheld or erased; nothing else ever changes it. */
export interface EntryBody {
  /** 128 random bits, 32 hex digits; keeps a small body from being guessed by its hash. */
  readonly salt: string;
  readonly data: Readonly<Record<string, unknown>>;
}

/** One thing that someone wrote down. */
export interface Entry {
  readonly header: EntryHeader;
  /** Null when withheld from this reader or erased; the chain still verifies. */
  readonly body: EntryBody | null;
}

/** Why an entry is kept but not read. */
export type UnreadReason = "unknown-kind" | "newer-schema" | "body-does-not-fit" | "withheld" | "erased";

/** The newest entry of a device that was acknowledged. */
export interface Head {
  readonly device: string;
  readonly seq: number;
  readonly hash: Hash;
}
