/** The exchange between a device and a service: send what is unsent, fetch what is new. */
import type { Entry, Head } from "../journal/index.ts";
import { type Problem, problem } from "../units/index.ts";
import { largestPush, type PushReply, pageSize, type Refusal } from "./contract.ts";
import { type DeviceStore, ServiceRefused } from "./device-contract.ts";

export interface ExchangeSettings {
  readonly fetch: typeof globalThis.fetch;
  /** Address of the service's interface, without a slash at the end: `/api`. */
  readonly base: string;
  readonly store: DeviceStore;
  /**
   * For a member of the service: what may be seen, as the service named it last. When it names something else, the pull
   * begins anew; and only what this device wrote is ever sent again, since others' entries are not the member's to send.
   */
  readonly member?: { readonly scope: () => string | null; readonly keepScope: (scope: string) => void };
  /** Milliseconds since 1970 UTC; the machine's clock when left out. */
  readonly now?: () => number;
}

export interface ExchangeReport {
  /** Whether the service answered every request. That alone says whether there is a connection. */
  readonly reached: boolean;
  /** Entries sent that the service keeps now. */
  readonly sent: number;
  /** Entries that were new here. */
  readonly received: number;
  /** Photos and voice notes that the service has all of now. */
  readonly filesSent: number;
  /** What either side did not take in. */
  readonly refused: readonly Refusal[];
  /** What stood in the way, and a clock that is off. */
  readonly problems: readonly Problem[];
}

/** More than this between two clocks is said aloud. Common practice, no source. */
const clockToleranceMilliseconds = 10 * 60_000;

/**
 * One round: pushes until nothing is unsent or something is refused, then pulls until nothing is new, then sends files. What a service
 * acknowledged and no longer has, it gets again. Safe to repeat and safe to cut off anywhere. Never throws for the
 * network's sake: see `reached` and `problems`.
 */
export async function exchangeOnce({
  fetch,
  base,
  store,
  member,
  now = Date.now,
}: ExchangeSettings): Promise<ExchangeReport> {
  const address = `${base}/programmes/${encodeURIComponent(store.programme)}/entries`;
  const refused: Refusal[] = [];
  let [sent, received, clock]: [number, number, Problem | null] = [0, 0, null];
  let filesSent = 0;
  const report = (reached: boolean, ...problems: readonly Problem[]): ExchangeReport => ({
    reached,
    sent,
    received,
    filesSent,
    refused,
    problems: clock ? [...problems, clock] : problems,
  });
  const ask = async (path: string, init?: RequestInit): Promise<unknown> => {
    const response = await fetch(path, init);
    clock ??= clockProblem(response.headers.get("date"), now());
    if (!response.ok) throw new ServiceRefused(response.status);
    return response.json().catch(() => {
      throw new UnreadableReply("not JSON"); // the sign-in page of a network, say
    });
  };
  const push = async (entries: readonly Entry[]): Promise<PushReply> => {
    const body = JSON.stringify({ entries });
    const headers = { "content-type": "application/json" };
    return pushReplyOf(await ask(address, { method: "POST", headers, body }));
  };

  const isOwnOnly = member !== undefined;
  let mayHaveLost = true;
  /** Pushes until nothing is unsent or something is refused. */
  const send = async (): Promise<void> => {
    let limit = pageSize;
    /** Devices of others: what a carried copy brought of them is theirs to send, and holds nothing else up. */
    const others = new Set<string>();
    const next = () => batch(store, limit, others);
    for (let entries = await next(); entries.length > 0; entries = await next()) {
      let reply: PushReply;
      try {
        reply = await push(entries);
      } catch (trouble) {
        if (!isTooLarge(trouble) || limit === 1) throw trouble;
        limit = Math.ceil(limit / 2);
        continue;
      }
      const before = await store.unsentCount();
      await store.acknowledge(reply.heads);
      const acknowledged = before - (await store.unsentCount());
      sent += Math.max(0, acknowledged);
      if (mayHaveLost && (await sendLostAgain(store, reply, isOwnOnly))) {
        mayHaveLost = false;
        continue;
      }
      refused.push(...reply.refused);
      const met = others.size;
      for (const { problem: trouble } of reply.refused)
        if (trouble.code === "device-of-another") others.add(String(trouble.slots.device));
      if (others.size > met) continue;
      const fork = reply.refused.find(
        ({ problem: { code, slots } }) => code === forked && slots.device === store.device(),
      );
      if (fork) await store.stop(fork.problem);
      if (reply.refused.length > 0 || acknowledged <= 0) return;
    }
  };
  /** Pulls until nothing is new; false when the service turns out to hold less than it once gave. */
  const receive = async (): Promise<boolean> => {
    for (let more = true; more; ) {
      const cursor = await store.cursor();
      const page = pageOf(await ask(`${address}?cursor=${cursor}&limit=${pageSize}`));
      if (page.cursor < cursor) return false;
      if (member && page.scope !== null && page.scope !== member.scope()) {
        member.keepScope(page.scope);
        if (cursor > 0) {
          await store.takePage({ entries: [], cursor: 0 });
          continue;
        }
      }
      const before = countOf(await store.heads());
      const taken = await store.takePage(page);
      received += countOf(await store.heads()) - before;
      refused.push(...taken.refused);
      more = page.more && page.cursor > cursor;
    }
    return true;
  };

  try {
    await send();
    if (!(await receive())) {
      await sendEverythingAgain(store, isOwnOnly);
      await send();
      await receive();
    }
    await store.acknowledge([]);
    if ((await store.unsentFiles()).length === 0) return report(true);
    const { sendFiles } = await import("./file-exchange.ts"); // no file waits on most days: it comes when one does
    const files = await sendFiles({ fetch, base, store });
    filesSent = files.sent;
    return report(true, ...files.problems);
  } catch (trouble) {
    if (trouble instanceof ServiceRefused && trouble.status === 401)
      return report(false, problem("sign-in-needed", "warned", null));
    if (trouble instanceof ServiceRefused) {
      return report(false, problem("service-refused", "warned", null, { slots: { status: trouble.status } }));
    }
    if (trouble instanceof UnreadableReply) return report(false, problem("service-unreadable", "warned", null));
    if (trouble instanceof TypeError || (trouble as Error).name === "AbortError") {
      return report(false, problem("service-unreached", "noted", null)); // how fetch says that there is no connection
    }
    throw trouble;
  }
}

/** What goes in one push. A body erased before it was sent is taken in only together with its erasure. */
async function batch(store: DeviceStore, limit: number, others: ReadonlySet<string>): Promise<readonly Entry[]> {
  if (others.size > 0)
    return (await store.unsent(Number.MAX_SAFE_INTEGER))
      .filter(({ header }) => !others.has(header.device))
      .slice(0, limit);
  const entries = await store.unsent(limit);
  return entries.some((entry) => entry.body === null) ? store.unsent(largestPush) : entries;
}

/** Whether the service misses entries that it once acknowledged; then everything is unsent again. */
async function sendLostAgain(store: DeviceStore, { refused }: PushReply, isOwnOnly: boolean): Promise<boolean> {
  const missing = new Map<string, number>();
  for (const { problem: trouble } of refused) {
    const { device, expected } = trouble.slots ?? {};
    const isOurs = !isOwnOnly || device === store.device();
    if (trouble.code === "entries-missing-before" && typeof device === "string" && isOurs)
      missing.set(device, Number(expected));
  }
  let marked = 0;
  for (const [device, from] of missing) marked += await store.sendAgain(device, from);
  if (marked > 0) await sendEverythingAgain(store, isOwnOnly);
  return marked > 0;
}

/** After the service was set back to an earlier copy, or begun anew: what this device holds may be the only copy. */
async function sendEverythingAgain(store: DeviceStore, isOwnOnly: boolean): Promise<void> {
  for (const { device } of await store.heads())
    if (!isOwnOnly || device === store.device()) await store.sendAgain(device, 1);
  await store.takePage({ entries: [], cursor: 0 });
}

const forked = "two-entries-one-number";

/** Chains have no gaps: their heads tell how many entries there are. */
const countOf = (heads: readonly Head[]): number => heads.reduce((sum, head) => sum + head.seq, 0);

class UnreadableReply extends Error {}

const isTooLarge = (trouble: unknown): boolean => trouble instanceof ServiceRefused && trouble.status === 413;

/** The difference of two clocks, when it is more than ten minutes; nothing is corrected. */
function clockProblem(serviceDate: string | null, here: number): Problem | null {
  const there = Date.parse(serviceDate ?? "");
  const minutes = Math.round((here - there) / 60_000);
  if (Number.isNaN(there) || Math.abs(here - there) <= clockToleranceMilliseconds) return null;
  return problem("clock-off", "warned", null, { slots: { minutes } });
}

function pushReplyOf(value: unknown): PushReply {
  const reply = value as Partial<PushReply> | null;
  if (!Array.isArray(reply?.heads) || !Array.isArray(reply.refused)) throw new UnreadableReply("no heads");
  if (!reply.heads.every(isHead)) throw new UnreadableReply("a head without number");
  return { heads: reply.heads, refused: reply.refused };
}

const isHead = (head: unknown): head is Head => {
  const { device, seq, hash } = (head ?? {}) as Partial<Head>;
  return typeof device === "string" && Number.isInteger(seq) && typeof hash === "string";
};

interface ServicePage {
  readonly entries: readonly Entry[];
  readonly cursor: number;
  readonly more: boolean;
  /** What the member may see, in a word that changes with it; null where there are no members. */
  readonly scope: string | null;
}

function pageOf(value: unknown): ServicePage {
  const page = value as Partial<ServicePage> | null;
  if (!Array.isArray(page?.entries) || !Number.isInteger(page.cursor)) throw new UnreadableReply("no page");
  const scope = typeof page.scope === "string" ? page.scope : null;
  return { entries: page.entries, cursor: page.cursor ?? 0, more: page.more === true, scope };
}
