/** Records go from one device to another by a file, in a real browser: checked, added, sent, and nothing twice. */
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { tellSigns } from "./acts.ts";
import { freshDevice, openBrowser, serveBuiltPage } from "./harness.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

it("a copy saved on one device is opened on another: told first, added once, whole, and sent on", async () => {
  const [yard, office] = await Promise.all([serveBuiltPage(), serveBuiltPage()]);
  const phone = await freshDevice(browser, "phone");
  const page = await phone.newPage();
  await tellSigns(page, yard);
  await page.goto(`${yard.address}/records`);
  await page.getByRole("button", { name: "Check the chains" }).click();
  await page.getByText("none missing and each as it was written").waitFor();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page
      .locator("#page")
      .getByRole("button", { name: /^Save a copy/ })
      .click(),
  ]);
  const file = await download.path();
  const lines = readFileSync(file, "utf8").trimEnd().split("\n");

  const laptop = await freshDevice(browser);
  const other = await laptop.newPage();
  await other.goto(`${office.address}/records`);
  await other.getByText("Nothing is on record on this device yet").waitFor();
  const torn = path.join(path.dirname(file), "torn.jsonl");
  writeFileSync(torn, [...lines.slice(0, -3), ...lines.slice(-1)].join("\n"));
  await other.getByLabel("Open a saved copy").setInputFiles(torn);
  await other.getByText("The journal ends before its last line").waitFor();
  await other.getByLabel("Open a saved copy").setInputFiles(file);
  await other.getByText("are new here").waitFor();
  await other.getByRole("button", { name: /^Add \d+ entries$/ }).click();
  await other.getByText("They are sent with the next exchange").waitFor();
  await other.getByLabel("Open a saved copy").setInputFiles(file);
  await other.getByText("Nothing new.").waitFor();
  await other.goto(`${office.address}/cases`);
  await other.locator(".cases-table tbody tr").first().waitFor();
  await expect
    .poll(async () => (await fetch(`${office.address}/api/programmes/main/entries?cursor=0`)).text(), {
      timeout: 20_000,
    })
    .toContain("case-opened");
  await Promise.all([phone.close(), laptop.close()]);
  await Promise.all([yard.close(), office.close()]);
});
