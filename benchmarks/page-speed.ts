/** How soon the page is usable when it opens once more: built, kept by its worker, in a real browser. */
import { existsSync } from "node:fs";
import path from "node:path";
import type { Page } from "playwright-core";
import { openBrowser, serveBuiltPage, sizes } from "../tests/browser/harness.ts";
import type { Figure } from "./figure.ts";
import { median } from "./median-time.ts";

/** On the page of cases this link can be followed only once the records on the device have been read. */
const usable = '#page a[href="/cases/open"]';
const runs = 5;

/** Milliseconds from the start of the navigation until the link is on the screen, by the page's own clock. */
async function reloaded(page: Page): Promise<number> {
  await page.reload({ waitUntil: "commit" });
  await page.waitForSelector(usable, { state: "visible" });
  const { time, isKept } = await page.evaluate(() => ({
    time: performance.now(),
    isKept: navigator.serviceWorker.controller !== null,
  }));
  if (!isKept) throw new Error("the page did not come from its worker");
  return time;
}

/** Opens the built page, waits until its worker answers for it, and opens it again. Build it first. */
export async function pageSpeed(): Promise<readonly Figure[]> {
  const root = path.dirname(import.meta.dirname);
  if (!existsSync(path.join(root, "dist", "web", "index.html")))
    throw new Error("there is no built page: build it first");
  const site = await serveBuiltPage();
  const browser = await openBrowser();
  try {
    const context = await browser.newContext({ viewport: sizes.desk, locale: "en-GB", timezoneId: "UTC" });
    const page = await context.newPage();
    await page.goto(site.address, { waitUntil: "load" });
    await page.waitForSelector(usable, { state: "visible" });
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.reload();
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    const times: number[] = [];
    for (let run = 0; run < runs; run++) times.push(await reloaded(page));
    return [
      {
        what: "page opened again, no records: from the start to usable cases",
        value: median(times) / 1000,
        unit: "s",
        goal: 1,
      },
    ];
  } finally {
    await browser.close();
    await site.close();
  }
}
