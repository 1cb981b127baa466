/** Devices that push through services without a rest, and what was acknowledged to each of them. */
import { expect } from "vitest";
import { headsOf } from "../../src/journal/index.ts";
import { bee } from "../journals/every-kind.ts";
import { writer } from "../journals/writer.ts";
import { pullAll, push } from "../postgres/service.ts";
import { pause, until } from "./victim.ts";

export interface Pushing {
  /** The newest number that was acknowledged to each device. */
  readonly acknowledged: ReadonlyMap<string, number>;
  /** Every status that was answered, and the texts of those that were not 200. */
  readonly statuses: ReadonlySet<number>;
  readonly heard: readonly string[];
  /** Waits until more was acknowledged to every device. */
  readonly goesOn: () => Promise<void>;
  /** Ends it; how many entries were acknowledged. */
  readonly end: () => Promise<number>;
}

/** Two entries at a time, again and again until they are acknowledged; `through` says which service to ask next. */
export function keepPushing(devices: readonly string[], through: (device: number) => string): Pushing {
  const acknowledged = new Map<string, number>();
  const statuses = new Set<number>();
  const heard: string[] = [];
  let isOver = false;

  async function pushOn(device: string, index: number): Promise<void> {
    const phone = writer({ device });
    let seq = 0;
    while (!isOver) {
      // Fifty to a specimen: what one amounts to stays small.
      const about = [`specimen ${Math.floor(seq / 50)} of ${device}`, "reading-1"];
      let waiting = phone.write({ ...bee(seq + 1), about }, { ...bee(seq + 2), about });
      while (!isOver && waiting.length > 0) {
        const answer = await push(through(index), waiting).catch(lineCut);
        if (answer) statuses.add(answer.status);
        if (answer?.status === 200) {
          expect(answer.reply.refused).toEqual([]);
          seq = answer.reply.heads[0]?.seq ?? 0;
          acknowledged.set(device, seq);
          waiting = waiting.filter(({ header }) => header.seq > seq);
        } else {
          if (answer) heard.push(answer.text);
          await pause(20);
        }
      }
    }
  }
  let failure: unknown = null;
  const all = Promise.all(devices.map(pushOn)).catch((trouble: unknown) => {
    failure = trouble;
  });
  return {
    ...{ acknowledged, statuses, heard },
    async goesOn() {
      const marks = new Map(acknowledged);
      const waiting = () => devices.filter((device) => (acknowledged.get(device) ?? 0) <= (marks.get(device) ?? 0));
      await until(
        () => {
          if (failure !== null) throw failure;
          return waiting().length === 0;
        },
        () => `nothing more was acknowledged to ${waiting().join(", ")}; heard last: ${heard.at(-1) ?? "nothing"}`,
      );
    },
    async end() {
      isOver = true;
      await all;
      if (failure !== null) throw failure;
      return [...acknowledged.values()].reduce((sum, seq) => sum + seq, 0);
    },
  };
}

/** The service is gone, or was while it answered. */
function lineCut(trouble: unknown): null {
  if (trouble instanceof TypeError) return null;
  throw trouble;
}

/** Whether every service gives the same, and each device at least what was acknowledged to it and no more than it sent. */
export async function holdsAll(pushing: Pushing, addresses: readonly string[]): Promise<void> {
  const [kept = [], ...others] = await Promise.all(addresses.map((address) => pullAll(address, 500)));
  const heads = new Map(headsOf(kept).map((head) => [head.device, head.seq]));
  for (const [device, seq] of pushing.acknowledged) {
    expect(heads.get(device) ?? 0).toBeGreaterThanOrEqual(seq);
    expect(heads.get(device) ?? 0).toBeLessThanOrEqual(seq + 2);
  }
  for (const other of others) expect(other).toEqual(kept);
}
