import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { fold } from "../../src/casebook/index.ts";
import { verifyChain } from "../../src/journal/index.ts";
import { openServerStore } from "../../src/storage/server.ts";
import { bee } from "../journals/every-kind.ts";
import { writer } from "../journals/writer.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-killed-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Pusher {
  readonly child: ChildProcess;
  /** The highest number it has said was acknowledged. */
  acknowledged(): number;
}

function startPushing(file: string, device: string): Pusher {
  const script = path.join(import.meta.dirname, "keeps-pushing.ts");
  const child = spawn(process.execPath, [script, file, device], { stdio: ["ignore", "pipe", "inherit"] });
  let said = "";
  child.stdout.on("data", (piece: Buffer) => {
    said += piece.toString();
  });
  const wholeLines = () => said.slice(0, said.lastIndexOf("\n") + 1).trim();
  return { child, acknowledged: () => Number(wholeLines().split("\n").at(-1) || 0) };
}

const until = async (isSo: () => boolean): Promise<void> => {
  while (!isSo()) await new Promise((resolve) => setTimeout(resolve, 5));
};
const killed = ({ child }: Pusher): Promise<void> =>
  new Promise((resolve) => {
    child.once("exit", () => resolve());
    child.kill("SIGKILL");
  });

describe("a store whose process goes without a word", () => {
  it("[SG61] is whole when it is dropped without being closed", async () => {
    const file = path.join(folder, "dropped.sqlite");
    const entries = writer().write(bee(1), bee(2));
    const dropped = await openServerStore({ file, programme: "main" });
    await dropped.push(entries);
    const again = await openServerStore({ file, programme: "main" });
    expect(await again.all()).toEqual(entries);
    expect(await again.states()).toEqual(fold(entries));
    await again.close();
    await dropped.close();
  });

  it("[SG61] holds everything it acknowledged when two pushing processes are killed in the middle", async () => {
    const file = path.join(folder, "killed.sqlite");
    await (await openServerStore({ file, programme: "main" })).close();
    const pushers = ["phone-1", "phone-2"].map((device) => startPushing(file, device));
    await until(() => pushers.every((pusher) => pusher.acknowledged() >= 20));
    await Promise.all(pushers.map(killed));

    const store = await openServerStore({ file, programme: "main" });
    const entries = await store.all();
    const heads = await store.heads();
    expect(verifyChain(entries, heads).isIntact).toBe(true);
    for (const [index, pusher] of pushers.entries()) {
      const kept = heads.find((head) => head.device === `phone-${index + 1}`)?.seq ?? 0;
      expect(kept).toBeGreaterThanOrEqual(pusher.acknowledged());
      expect(kept).toBeLessThanOrEqual(pusher.acknowledged() + 1);
    }
    expect(entries).toHaveLength(heads.reduce((sum, head) => sum + head.seq, 0));
    expect(await store.states()).toEqual(fold(entries));
    const { cursor } = await store.pull(0, 10_000);
    expect(cursor).toBe(entries.length);
    await store.close();
  });
});
