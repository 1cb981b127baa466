import fc from "fast-check";
import { expect, it } from "vitest";
import { everyKind } from "../../tests/journals/every-kind.ts";
import { storageContract } from "../../tests/laws/storage-contract.ts";
import { fold } from "../casebook/index.ts";
import { headsOf, verifyChain } from "../journal/index.ts";
import { memoryStore } from "./index.ts";

storageContract("memory", async (programme) => memoryStore({ programme }));

it("[SG14] ends up the same however a journal is delivered: in pieces, doubled, out of order, with losses on the way", async () => {
  const story = everyKind();
  const delivery = fc.array(fc.shuffledSubarray([...story]), { maxLength: 4 });
  await fc.assert(
    fc.asyncProperty(delivery, async (deliveries) => {
      const store = memoryStore({ programme: "main" });
      for (const some of deliveries) {
        await store.push(some);
        const kept = await store.all();
        expect(verifyChain(kept, await store.heads()).faults).toEqual([]);
        expect(await store.states()).toEqual(fold(kept));
      }
      await store.push(story);
      expect(await store.heads()).toEqual(headsOf(story));
      expect(await store.states()).toEqual(fold(story));
    }),
    { seed: 71, numRuns: 12 },
  );
});
