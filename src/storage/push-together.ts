/** Pushes that wait for each other are taken in together: one lock, one look, one wait for the disk. */
import type { Entry } from "../journal/index.ts";
import { hold, judge, type Verdict } from "./admission.ts";
import { nativeDigest } from "./native-digest.ts";
import { StoreTrouble } from "./patience.ts";
import { lockCounter } from "./rows.ts";
import { heldIn, takeIn } from "./server-writing.ts";
import type { Writing } from "./tables.ts";

/** What one caller pushes. */
export interface Push {
  readonly given: readonly Entry[];
  /** Entries of a backup: in the order they were once taken in, some without the body that an erasure took. */
  readonly isRestored: boolean;
}

interface Waiting<Each, Reply> {
  readonly push: Each;
  readonly answered: (reply: Reply) => void;
  readonly failed: (trouble: unknown) => void;
}

/** Most entries taken in at once, unless a single push has more. */
const mostTogether = 5000;

/**
 * A queue of pushes in the order they came. Whoever comes while others are written waits, and then goes together with
 * all who wait. `work` takes several in, in one transaction; when that fails by a bug, each is tried alone, so that one
 * cannot take others with it.
 */
export function pushesTogether<Each extends { readonly given: readonly unknown[] }, Reply>(
  work: (pushes: readonly Each[]) => Promise<readonly Reply[]>,
): (push: Each) => Promise<Reply> {
  const waiting: Waiting<Each, Reply>[] = [];
  let isWorking = false;

  async function goThrough(): Promise<void> {
    isWorking = true;
    while (waiting.length > 0) await together(nextGroup(waiting));
    isWorking = false;
  }
  async function together(group: readonly Waiting<Each, Reply>[]): Promise<void> {
    try {
      const replies = await work(group.map(({ push }) => push));
      for (const [index, { answered }] of group.entries()) answered(replies[index] as Reply);
    } catch (trouble) {
      if (group.length === 1 || isAway(trouble)) for (const { failed } of group) failed(trouble);
      else for (const each of group) await together([each]);
    }
  }
  return (push) =>
    new Promise((answered, failed) => {
      waiting.push({ push, answered, failed });
      if (!isWorking) void goThrough();
    });
}

/** The store is away or held for too long: alone it would fare no better. Damage may lie in what one of them touches. */
const isAway = (trouble: unknown): boolean =>
  trouble instanceof StoreTrouble && trouble.problem.code !== "records-damaged";

function nextGroup<Each extends { readonly given: readonly unknown[] }, Reply>(
  waiting: Waiting<Each, Reply>[],
): readonly Waiting<Each, Reply>[] {
  let [count, entries] = [0, 0];
  for (const { push } of waiting) {
    entries += push.given.length;
    if (count > 0 && entries > mostTogether) break;
    count += 1;
  }
  return waiting.splice(0, count);
}

/** Takes several pushes in, one after another, in this transaction; a verdict each. */
export async function takeInTogether(
  tx: Writing,
  programme: string,
  pushes: readonly Push[],
): Promise<readonly Verdict[]> {
  const from = await lockCounter(tx, programme);
  const held = await heldIn(
    tx,
    pushes.flatMap(({ given }) => given),
  );
  const verdicts = pushes.map(({ given, isRestored }) => {
    const rule = { programme, acceptsWithheld: isRestored, keepsOrder: isRestored, digest: nativeDigest };
    const verdict = judge(given, held, rule);
    hold(held, verdict);
    return verdict;
  });
  const all = merged(verdicts);
  if (all.admitted.length > 0 || all.quarantined.length > 0) await takeIn(tx, all, from);
  return verdicts;
}

const merged = (verdicts: readonly Verdict[]): Verdict => ({
  admitted: verdicts.flatMap(({ admitted }) => admitted),
  refused: [],
  quarantined: verdicts.flatMap(({ quarantined }) => quarantined),
  heads: [...new Map(verdicts.flatMap(({ heads }) => heads.map((head) => [head.device, head] as const))).values()],
  erased: new Map(verdicts.flatMap(({ erased }) => [...erased])),
});
