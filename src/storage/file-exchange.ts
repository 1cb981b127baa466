/** Sends the files of this device after their entries, goes on where a cut left off, and fetches those of others. */
import { type Hash, largestFile, mediaTypeOf } from "../journal/index.ts";
import { type Problem, problem } from "../units/index.ts";
import { type DeviceStore, ServiceRefused } from "./device-contract.ts";
import type { DeviceFile } from "./device-files.ts";
import { fileHash } from "./file-hash.ts";

export interface FileExchange {
  readonly fetch: typeof globalThis.fetch;
  /** Address of the service's interface, without a slash at the end. */
  readonly base: string;
  readonly store: DeviceStore;
}

/** Bytes of the first piece, so that a slow line brings it through; each that came through doubles the next. */
const [firstPart, largestPart] = [64 * 1024, 1024 * 1024];

const addressOf = ({ base, store }: FileExchange, sha256: Hash): string =>
  `${base}/programmes/${encodeURIComponent(store.programme)}/files/${sha256}`;

/**
 * Sends what waits, one file after another. Entries that are recorded meanwhile go first: it then leaves off, and the
 * next round goes on from the byte that it came to.
 */
export async function sendFiles(exchange: FileExchange): Promise<{ sent: number; problems: readonly Problem[] }> {
  const { store } = exchange;
  const entriesBefore = await store.unsentCount();
  const isOvertaken = async () => (await store.unsentCount()) > entriesBefore;
  const problems: Problem[] = [];
  let sent = 0;
  for (const { sha256, refused } of await store.unsentFiles()) {
    if (refused !== null) {
      problems.push(notTaken(refused));
      continue;
    }
    const file = await store.file(sha256);
    if (file === null) continue; // erased meanwhile
    const outcome = await sendOne(exchange, file, isOvertaken);
    if (outcome === "overtaken") break;
    if (outcome === "sent") {
      await store.settleFile(sha256, null);
      sent += 1;
    } else if (outcome !== "unnamed") {
      if (outcome.isFinal) await store.settleFile(sha256, outcome.reason);
      problems.push(notTaken(outcome.reason));
    }
  }
  return { sent, problems };
}

const notTaken = (reason: string): Problem => problem("file-not-taken", "warned", null, { slots: { reason } });

type Outcome = "sent" | "overtaken" | "unnamed" | { readonly reason: string; readonly isFinal: boolean };

/** Gaps in a row that are believed: the service that says so each time is not one to send to. */
const mostGaps = 5;

async function sendOne(
  exchange: FileExchange,
  { sha256, bytes }: DeviceFile,
  isOvertaken: () => Promise<boolean>,
): Promise<Outcome> {
  if ((await fileHash(bytes)) !== sha256) return { reason: "it was damaged on this device", isFinal: true };
  const at = addressOf(exchange, sha256);
  let size = firstPart;
  for (let gaps = 0; gaps < mostGaps; ) {
    const asked = await exchange.fetch(`${at}/standing`);
    if (asked.status === 404) return "unnamed"; // its entry was not taken in, or was erased there
    // Not of this member's to send, such as that of an apiary that was taken back: told, and the others go on.
    if (asked.status === 403) return { reason: await reasonIn(asked), isFinal: false };
    if (!asked.ok) throw new ServiceRefused(asked.status);
    let { held, isWhole } = await standingIn(asked);
    while (!isWhole) {
      if (await isOvertaken()) return "overtaken";
      const reply = await exchange.fetch(`${at}/parts?from=${held}&of=${bytes.length}`, {
        method: "POST",
        headers: { "content-type": "application/octet-stream" },
        body: bytes.slice(held, held + size),
      });
      if (reply.status === 409) break; // it has another number of bytes by now: asked anew
      if ([403, 413, 422, 507].includes(reply.status))
        return { reason: await reasonIn(reply), isFinal: [413, 422].includes(reply.status) };
      if (!reply.ok) throw new ServiceRefused(reply.status);
      const now = await standingIn(reply);
      if (now.held <= held && !now.isWhole) break;
      ({ held, isWhole } = now);
      size = Math.min(size * 2, largestPart);
    }
    if (isWhole) return "sent";
    gaps += 1;
  }
  throw new ServiceRefused(409);
}

async function standingIn(reply: Response): Promise<{ held: number; isWhole: boolean }> {
  const { held, isWhole } = (await reply.json().catch(() => ({}))) as { held?: unknown; isWhole?: unknown };
  if (!Number.isSafeInteger(held) || typeof isWhole !== "boolean") throw new ServiceRefused(reply.status);
  return { held: held as number, isWhole };
}

async function reasonIn(reply: Response): Promise<string> {
  const told = (await reply.json().catch(() => null)) as { problems?: readonly { message?: unknown }[] } | null;
  const message = told?.problems?.[0]?.message;
  return typeof message === "string" ? message : `the service answered ${reply.status}`;
}

/** A file that the service holds; null when it has not come there, may not be read, or is not what it is called. */
export async function fetchFile(exchange: FileExchange, sha256: Hash): Promise<DeviceFile | null> {
  const reply = await exchange.fetch(addressOf(exchange, sha256));
  if (!reply.ok || Number(reply.headers.get("content-length") ?? 0) > largestFile) return null;
  const bytes = new Uint8Array(await reply.arrayBuffer());
  const mediaType = mediaTypeOf(bytes);
  return mediaType !== null && (await fileHash(bytes)) === sha256 ? { sha256, mediaType, bytes } : null;
}
