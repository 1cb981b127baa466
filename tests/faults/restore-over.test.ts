/** A restore beside a service that runs: what a device was promised meanwhile is not overwritten. */
import { rmSync } from "node:fs";
import { afterAll, describe, expect, it } from "vitest";
import { inFolder } from "../../src/storage/server.ts";
import { answered } from "../../src/units/index.ts";
import { bee, everyKind } from "../journals/every-kind.ts";
import { writer } from "../journals/writer.ts";
import { scratch } from "./count.ts";

const folder = scratch("restore");
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("a restore", () => {
  it("[SG109] gives way to a device that pushed while it was built up, and leaves its entries", async () => {
    const records = inFolder(folder);
    const service = await records.open("main");
    const promised = writer({ device: "phone-9" }).write(bee(1));
    const restored = await records.restore("main", async (aside) => {
      await aside.pushRestored(everyKind());
      await service.push(promised);
      return answered(null);
    });
    expect(restored).toMatchObject({ ok: false, problems: [{ code: "store-not-empty" }] });
    expect(await service.all()).toEqual(promised);
    await service.close();
  });

  it("[SG109] shows all at once to a service that has the empty records open", async () => {
    const records = inFolder(`${folder}/other`);
    const service = await records.open("main");
    const restored = await records.restore("main", async (aside) => {
      await aside.pushRestored(everyKind());
      expect(await service.all()).toEqual([]);
      return answered(null);
    });
    expect(restored.ok).toBe(true);
    expect(await service.all()).toHaveLength(everyKind().length);
    expect((await service.check()).isIntact).toBe(true);
    expect((await service.push(writer({ device: "phone-9" }).write(bee(2)))).heads).toMatchObject([{ seq: 1 }]);
    await service.close();
  });
});
