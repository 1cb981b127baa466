/**
 * A press that comes twice is one press.
 *
 * @module views/model
 */
import type { Casebook } from "../../casebook/index.ts";
import type { EntryDraft } from "../../journal/index.ts";

/** A second press of the same sooner than this after the first is a slip of the hand. Judgement. */
const slipMilliseconds = 500;

/** `more`: what is kept beside the entries and named by them. */
type Write<T, M> = (drafts: readonly EntryDraft[], more?: M) => Promise<T>;

/**
 * Writing that writes the same but once: drafts given again while they are being written, or within half a second of the
 * first time, get the answer of the first. Ids that drafts bring along for what is new are not compared.
 */
export function onceWritten<T, M = never>(now: () => number): (casebook: Casebook, write: Write<T, M>) => Write<T, M> {
  let last: { readonly text: string; readonly at: number; readonly written: Promise<T>; isUnderWay: boolean } | null =
    null;
  return (casebook, write) => (drafts, more) => {
    const text = comparable(casebook, drafts);
    if (last && last.text === text && (last.isUnderWay || now() - last.at < slipMilliseconds)) return last.written;
    const own = { text, at: now(), written: write(drafts, more), isUnderWay: true };
    last = own;
    const ended = () => {
      own.isUnderWay = false;
    };
    own.written.then(ended, () => {
      ended();
      if (last === own) last = null; // what is not kept can be pressed again at once
    });
    return own.written;
  };
}

/** In one pass: a table that is brought in has tens of thousands of ids. */
function comparable(casebook: Casebook, drafts: readonly EntryDraft[]): string {
  const { apiaries, cases, specimens, plans } = casebook;
  const colonies = new Set(Object.values(apiaries).flatMap((apiary) => Object.keys(apiary.colonies)));
  const isOnRecord = (id: string) =>
    colonies.has(id) || [apiaries, cases, specimens, plans].some((roots) => Object.hasOwn(roots, id));
  const fresh = new Map(
    [...new Set(drafts.flatMap(({ about }) => about))]
      .filter((id) => !isOnRecord(id))
      .map((id, index) => [id, `new ${index}`]),
  );
  return JSON.stringify(drafts).replaceAll(madeIds, (id) => fresh.get(id) ?? id);
}

/** Ids that are made for what is new; flags and findings have names. */
const madeIds = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g;
