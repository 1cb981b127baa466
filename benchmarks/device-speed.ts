/** How soon a device that holds 500 open cases shows its list of them: built, kept by its worker, in a real browser. */
import type { Page } from "playwright-core";
import { openBrowser, serveBuiltPage, sizes } from "../tests/browser/harness.ts";
import type { Figure } from "./figure.ts";
import { median } from "./median-time.ts";
import { batchesOf, devices, type Size } from "./scale/big-casebook.ts";

/** Of the large casebook as many specimens and bees as its cases have. */
const held: Size = { cases: 500, specimens: 2500, bees: 125_000 };
const runs = 5;
const mostWaited = 600_000;

const isListed = (least: number) => document.querySelectorAll(".cases-table tbody tr").length >= least;

/** Sends all of it to the service, as sixteen devices would. */
async function filled(address: string): Promise<void> {
  for (let device = 0; device < devices; device++)
    for (const entries of batchesOf(device, held, 500)) {
      const init = {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: JSON.stringify({ entries }),
      };
      const reply = await fetch(`${address}/api/programmes/main/entries`, init);
      if (!reply.ok) throw new Error(`push: ${reply.status}`);
      await reply.arrayBuffer();
    }
}

async function reloaded(page: Page): Promise<number> {
  await page.reload({ waitUntil: "commit" });
  await page.waitForFunction(isListed, held.cases, { timeout: mostWaited });
  return page.evaluate(() => performance.now());
}

/** The first fetch of all records, and the list of cases once they are there. Build the page first. */
export async function deviceSpeed(): Promise<readonly Figure[]> {
  const site = await serveBuiltPage();
  const browser = await openBrowser();
  try {
    await filled(site.address);
    const context = await browser.newContext({ viewport: sizes.desk, locale: "en-GB", timezoneId: "UTC" });
    const page = await context.newPage();
    const began = performance.now();
    await page.goto(`${site.address}/cases`, { waitUntil: "load" });
    await page.waitForFunction(isListed, held.cases, { timeout: mostWaited });
    const fetched = (performance.now() - began) / 1000;
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    const times: number[] = [];
    for (let run = 0; run < runs; run++) times.push(await reloaded(page));
    const what = `${held.cases} open cases, ${held.bees} bees read`;
    return [
      { what: `device: ${what}: all fetched and kept`, value: fetched, unit: "s", goal: null },
      { what: `device: ${what}: from the start to the list`, value: median(times) / 1000, unit: "s", goal: 1 },
    ];
  } finally {
    await browser.close();
    await site.close();
  }
}
