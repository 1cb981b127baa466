/** The browser is killed while somebody writes: what the page showed as written is there when it is opened again. */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { expect, it } from "vitest";
import { browserPath } from "../../scripts/browser.ts";
import { seeded, tell, tries } from "../faults/count.ts";
import { answerFlags, cell, mark, openCase } from "./acts.ts";
import { serveBuiltPage } from "./harness.ts";

/** A browser of its own over a folder that stays, and how to kill it with all its processes. */
async function browserOver(folder: string) {
  const flags = ["--headless=new", "--no-sandbox", "--disable-gpu", "--no-first-run", "--remote-debugging-port=0"];
  const child = spawn(browserPath, [...flags, `--user-data-dir=${folder}`, "about:blank"], {
    stdio: ["ignore", "ignore", "pipe"],
    detached: true,
  });
  const address = await new Promise<string>((resolve) => {
    let said = "";
    child.stderr.on("data", (piece: Buffer) => {
      said += piece.toString();
      const met = /ws:\/\/\S+/.exec(said)?.[0];
      if (met) resolve(met);
    });
  });
  const browser: Browser = await chromium.connectOverCDP(address);
  const [context] = browser.contexts();
  const page: Page | undefined = await context?.newPage();
  if (!page) throw new Error("no page");
  return {
    page,
    async kill() {
      const gone = once(child, "exit");
      process.kill(-(child.pid ?? 0), "SIGKILL");
      await gone;
      await browser.close().catch(() => {});
    },
  };
}

const findings = ["Crawling bees", "K-wing", "Very small cluster", "Slow start", "Heap of dead bees"];
const says = { p: "present", a: "absent", n: "not looked" } as const;

it("[SG111] holds every finding that was shown as written, and the chain is whole", async () => {
  const below = seeded(111);
  const rounds = tries(1, 20);
  let acknowledged = 0;
  for (const _ of rounds) {
    const site = await serveBuiltPage();
    const folder = mkdtempSync(path.join(tmpdir(), "skepsis-tab-"));
    const first = await browserOver(folder);
    await openCase(first.page, site, 3);
    await answerFlags(first.page);
    const address = first.page.url();
    const shown = new Map<string, "p" | "a" | "n">();
    const writes = 3 + below(10);
    for (let write = 0; write < writes; write += 1) {
      const finding = findings[below(findings.length)] ?? "K-wing";
      const key = (["p", "a", "n"] as const)[below(3)] ?? "p";
      await mark(first.page, finding, "WB-01", key);
      shown.set(finding, key);
    }
    // One more is on its way: it may be there or not.
    const last = findings[below(findings.length)] ?? "K-wing";
    const next = (["p", "a", "n"] as const)[below(3)] ?? "p";
    const writing = mark(first.page, last, "WB-01", next).catch(() => {});
    await new Promise((resolve) => setTimeout(resolve, below(60)));
    await first.kill();
    await writing;
    acknowledged += writes;

    const again = await browserOver(folder);
    await again.page.goto(address);
    await again.page.getByRole("grid").waitFor();
    for (const [finding, key] of shown) {
      const name = (await cell(again.page, finding, "WB-01").getAttribute("aria-label")) ?? "";
      const told = finding === last ? [says[key], says[next]] : [says[key]];
      expect(told.map((state) => `${finding}, WB-01: ${state}`)).toContain(name);
    }
    await again.page.goto(`${site.address}/records`);
    await again.page.getByRole("button", { name: "Check the chains" }).click();
    await again.page.getByText("none missing and each as it was written").waitFor();
    await again.kill();
    await site.close();
    rmSync(folder, { recursive: true, force: true });
  }
  tell({
    fault: "kill −9 of the browser that writes",
    tried: rounds.count(),
    against: `${acknowledged} findings shown as written`,
  });
});

/** A picture that no other is like: grains of a colour, in places by a seed. */
async function anotherPicture(page: Page, seed: number): Promise<Buffer> {
  const drawn = await page.evaluate((from) => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [1200, 900];
    const pen = canvas.getContext("2d");
    if (!pen) throw new Error("no pen");
    let state = from;
    const next = (most: number) => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state % most;
    };
    for (let grain = 0; grain < 4000; grain += 1) {
      pen.fillStyle = `rgb(${next(256)} ${next(256)} ${next(256)})`;
      pen.fillRect(next(1200), next(900), 20, 12);
    }
    return canvas.toDataURL("image/jpeg", 0.9);
  }, seed);
  return Buffer.from(drawn.split(",")[1] ?? "", "base64");
}

it("[SG126] holds every photo that was shown as kept, and no entry without its photo", async () => {
  const below = seeded(126);
  const rounds = tries(1, 20);
  let [shown, under] = [0, 0];
  for (const _ of rounds) {
    const site = await serveBuiltPage();
    const folder = mkdtempSync(path.join(tmpdir(), "skepsis-tab-"));
    const first = await browserOver(folder);
    // Nothing is sent: what is there afterwards was on this device.
    await first.page.route("**/api/**", (route) => route.abort());
    await openCase(first.page, site, 1);
    await answerFlags(first.page);
    const address = first.page.url();
    const add = async () => {
      const buffer = await anotherPicture(first.page, below(2 ** 24));
      await first.page
        .getByLabel("Add a photo: whole apiary")
        .setInputFiles({ name: "p.jpg", mimeType: "image/jpeg", buffer });
    };
    const kept = 1 + below(3);
    const cards = first.page.locator(".file-card");
    for (let photos = 1; photos <= kept; photos += 1) {
      await add();
      await expect.poll(() => cards.count()).toBe(photos);
    }
    const adding = add().catch(() => {}); // one more is on its way: it may be there, whole, or not
    await new Promise((resolve) => setTimeout(resolve, below(80)));
    await first.kill();
    await adding;
    shown += kept;

    const again = await browserOver(folder);
    await again.page.goto(address);
    await again.page.getByRole("grid").waitFor();
    await again.page.locator(".file-card").first().waitFor();
    const there = await again.page.locator(".file-card").count();
    expect([kept, kept + 1]).toContain(there);
    under += there - kept;
    await expect.poll(() => again.page.locator(".file-card .thumb-press").count()).toBe(there);
    await expect
      .poll(async () => (await (await site.programmes.open("main")).check()).files, { timeout: 30_000 })
      .toEqual({ whole: there, waiting: [], erased: 0 });
    await again.kill();
    await site.close();
    rmSync(folder, { recursive: true, force: true });
  }
  tell({
    fault: "kill −9 of the browser that keeps a photo",
    tried: rounds.count(),
    against: `${shown} photos shown as kept, ${under} more came through`,
  });
});
