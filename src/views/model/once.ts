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

function comparable(casebook: Casebook, drafts: readonly EntryDraft[]): string {
  const fresh = [...new Set(drafts.flatMap(({ about }) => about))].filter(
    (id) => madeId.test(id) && !isOnRecord(casebook, id),
  );
  return fresh.reduce((text, id, index) => text.replaceAll(id, `new ${index}`), JSON.stringify(drafts));
}

/** Ids that are made for what is new; flags and findings have names. */
const madeId = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

const isOnRecord = ({ apiaries, cases, specimens, plans }: Casebook, id: string): boolean =>
  [apiaries, cases, specimens, plans].some((roots) => Object.hasOwn(roots, id)) ||
  Object.values(apiaries).some(({ colonies }) => Object.hasOwn(colonies, id));
