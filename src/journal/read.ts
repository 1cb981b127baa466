/** Reading a body by its kind: older schemas are lifted step by step, what cannot be read says why. */
import type * as z from "zod";
import type { Entry, UnreadReason } from "./entry.ts";
import { type BodyOf, type Kind, kinds } from "./kinds/index.ts";

type Data = Readonly<Record<string, unknown>>;

/** Lifts a body of schema n to schema n + 1. */
export type Upcaster = (data: Data) => Data;

/** What a version can read: kinds with their newest schema, and the steps up from older ones. */
export interface Registry {
  readonly kinds: Readonly<
    Record<string, { readonly schema: number; readonly body: z.ZodType; readonly about: readonly string[] }>
  >;
  /** By kind, then by the schema that the step starts from. */
  readonly upcasters: Readonly<Record<string, Readonly<Record<number, Upcaster>>>>;
}

/** A step that only brought members which may be left out. */
const unchanged: Upcaster = (data) => data;

/** What this version reads, and the steps up from what past versions wrote. */
export const registry: Registry = { kinds, upcasters: { "test-result-recorded": { 1: unchanged } } };

/** A body read by its kind. */
export type Reading = { [Each in Kind]: { readonly kind: Each; readonly data: BodyOf<Each> } }[Kind];

/** Why a body was not read. */
export interface Unread {
  readonly unread: UnreadReason;
}

/** Whether the entry was read. */
export const wasRead = (reading: Reading | Unread): reading is Reading => !("unread" in reading);

/**
 * The body by its kind, or why it was not read: unknown kind, newer schema, body (or its list of ids) that does
 * not fit, or withheld. Whether a missing body was erased is known to the fold, which sees the erasure.
 * The entry itself is never changed.
 */
export function readEntry(entry: Entry, known: Registry = registry): Reading | Unread {
  const { kind: name, schema, about } = entry.header;
  const kind = Object.hasOwn(known.kinds, name) ? known.kinds[name] : undefined;
  if (!kind) return { unread: "unknown-kind" };
  if (schema > kind.schema) return { unread: "newer-schema" };
  if (entry.body === null) return { unread: "withheld" };
  const lifted = lift(entry.body.data, { steps: known.upcasters[name] ?? {}, from: schema, to: kind.schema });
  if (!lifted || about.length <= kind.about.length) return { unread: "body-does-not-fit" };
  const read = kind.body.safeParse(lifted);
  return read.success ? ({ kind: name, data: read.data } as Reading) : { unread: "body-does-not-fit" };
}

interface Climb {
  readonly steps: Readonly<Record<number, Upcaster>>;
  readonly from: number;
  readonly to: number;
}

/** Null when a step is missing. */
function lift(data: Data, { steps, from, to }: Climb): Data | null {
  let lifted = data;
  for (let schema = from; schema < to; schema += 1) {
    const step = steps[schema];
    if (!step) return null;
    lifted = step(lifted);
  }
  return lifted;
}
