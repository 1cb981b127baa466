/** Records go from one device to another by a file, in a real browser: checked, added, sent, and nothing twice. */
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { readSavedCopy, savedCopy } from "../../src/transfer/index.ts";
import { photo } from "../journals/file-story.ts";
import { answerFlags, openCase, tellSigns } from "./acts.ts";
import { freshDevice, openBrowser, serveBuiltPage } from "./harness.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

it("a copy carries photos: told first, kept once, sent on, and a photo that is not what it is called stays out", async () => {
  const [yard, office] = await Promise.all([serveBuiltPage(), serveBuiltPage()]);
  const page = await (await freshDevice(browser, "phone")).newPage();
  await openCase(page, yard);
  await answerFlags(page);
  await page
    .getByLabel("Add a photo: whole apiary")
    .setInputFiles({ name: "p.jpg", mimeType: "image/jpeg", buffer: Buffer.from(photo) });
  await page.getByText("The photo is kept on this device.").waitFor();
  const address = new URL(page.url()).pathname;
  await page.goto(`${yard.address}/records`);
  const save = page.locator("#page").getByRole("button", { name: /^Save a copy/ });
  const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
  expect(download.suggestedFilename()).toMatch(/\.zip$/);
  const file = await download.path();
  const copy = readSavedCopy(new Uint8Array(readFileSync(file)));
  if (!copy?.files[0]) throw new Error("no photo in the copy");
  const [{ sha256, bytes }] = copy.files;
  const wrong = bytes.slice();
  wrong[wrong.length - 5] = (wrong[wrong.length - 5] ?? 0) ^ 1;
  const [false1, torn] = ["false.zip", "torn.zip"].map((name) => path.join(path.dirname(file), name));
  writeFileSync(false1 ?? "", savedCopy(copy.journal, [{ sha256, bytes: wrong }]));
  writeFileSync(torn ?? "", readFileSync(file).subarray(0, 900));

  const other = await (await freshDevice(browser)).newPage();
  await other.goto(`${office.address}/records`);
  const open = other.getByLabel("Open a saved copy");
  await open.setInputFiles(torn ?? "");
  await other.getByText("This file is not a journal of this tool.").waitFor();
  await open.setInputFiles(false1 ?? "");
  await other.getByRole("button", { name: /^Add \d+ entries$/ }).click();
  await other.getByText("They are sent with the next exchange").waitFor();
  await open.setInputFiles(file);
  await other.getByText("1 photo or voice note not on this device").waitFor();
  await other.getByRole("button", { name: "Add 1 photo or voice note" }).click();
  await other.getByText("and 1 photo or voice note").waitFor();
  await open.setInputFiles(file);
  await other.getByText("Nothing new.").waitFor();
  await other.goto(`${office.address}${address}`);
  await other.getByRole("button", { name: "Open: Photo, whole apiary" }).waitFor();
  const report = async () => (await (await office.programmes.open("main")).check()).files;
  await expect.poll(report, { timeout: 30_000 }).toEqual({ whole: 1, waiting: [], erased: 0 });
  await Promise.all([yard.close(), office.close()]);
});

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
