/** Which signs a person looked at: the red flags always, the rest by chance. */
import { type FindingId, findings, mustNotMiss } from "../../src/knowledge/index.ts";
import { drawIndex, type RandomStream } from "../../src/numerics/index.ts";
import { signIds } from "../../src/reasoning/differential/network-for.ts";

/** Signs looked at in one visit: about a third of all. */
export const signsLooked = 25;

/** Signs that fire a notice by themselves or with others; whoever looks for anything looks for these. */
const redFlags: readonly FindingId[] = [...new Set(Object.values(mustNotMiss).flatMap((notice) => notice.findings))];

/** Signs that were looked at, never both of an exclusive pair. */
export function drawnLook(count: number, stream: RandomStream): readonly FindingId[] {
  const looked = new Set<FindingId>();
  const add = (id: FindingId) => {
    const other = findings[id].exclusiveWith;
    if (other === undefined || !looked.has(other)) looked.add(id);
  };
  for (const id of redFlags.filter((each) => signIds.includes(each))) add(id);
  while (looked.size < count) add(signIds[drawIndex(stream, signIds.length)] as FindingId);
  return [...looked];
}
