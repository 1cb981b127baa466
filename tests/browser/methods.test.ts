/** Every method of the reckoner in a real browser: it answers its example without an objection; a long one can be stopped. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { methodsByFamily } from "../../src/views/model/index.ts";
import { complaintsOf, freshDevice, objections, openBrowser, type Site, serveBuiltPage } from "./harness.ts";

let site: Site;
let browser: Browser;
beforeAll(async () => {
  [site, browser] = await Promise.all([serveBuiltPage(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

const names = methodsByFamily.flatMap(([, each]) => each);

it("every method answers its example, fits a phone, and passes the accessibility rules with all its parts open", async () => {
  const device = await freshDevice(browser, "phone");
  const page = await device.newPage();
  const complaints = complaintsOf(page);
  const found: string[] = [];
  await page.goto(`${site.address}/reckoner`);
  for (const name of names) {
    await page.locator(`.families a[href="/reckoner/${name}"]`).click();
    await page.locator(".result .says").waitFor();
    await page.evaluate(() => {
      for (const part of document.querySelectorAll<HTMLDetailsElement>("main details")) part.open = true;
    });
    const beyond = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    if (beyond > 0) found.push(`${name}: ${beyond} px wider than the screen`);
    found.push(...(await objections(page)).map((line) => `${name}: ${line}`));
    await page.getByRole("link", { name: "All methods" }).click();
  }
  expect(found).toEqual([]);
  expect(complaints).toEqual([]);
  await device.close();
});

it("a long one is stopped, and its old answer does not stay beside the new question", async () => {
  const device = await freshDevice(browser);
  const page = await device.newPage();
  await page.goto(`${site.address}/reckoner/compare-shares`);
  await page.locator(".result .says").waitFor();
  // Sums over all pairs of counts: some 250,000 tables for each of two tests.
  const typed = {
    "first.positive": "200",
    "first.examined": "495",
    "second.positive": "230",
    "second.examined": "495",
  };
  for (const [name, value] of Object.entries(typed)) await page.locator(`input[name="${name}"]`).fill(value);
  await page.getByRole("button", { name: "Reckon" }).click();
  await page.getByRole("button", { name: "Stop" }).click();
  await page.getByText("Stopped before the answer.").waitFor();
  expect(await page.locator(".result").count()).toBe(0);
  await page.locator('input[name="first.examined"]').fill("210");
  await page.locator('input[name="second.examined"]').fill("240");
  await page.getByRole("button", { name: "Reckon" }).click();
  await page.locator(".result .says").waitFor();
  await device.close();
});

it("the address brings values; a field that holds no number says so and keeps what was typed", async () => {
  const device = await freshDevice(browser);
  const page = await device.newPage();
  await page.goto(`${site.address}/reckoner/intervals?positive=0&examined=50`);
  await page.getByText("None found in 50.").waitFor();
  await page.getByLabel("Bees with mites").fill("a few");
  await page.getByRole("button", { name: "Reckon" }).click();
  await page.locator('.field[data-trouble] input[name="positive"]').waitFor();
  expect(await page.getByLabel("Bees with mites").inputValue()).toBe("a few");
  await page.getByLabel("Bees with mites").fill("51");
  await page.getByRole("button", { name: "Reckon" }).click();
  await page.locator(".field[data-trouble] .trouble").waitFor();
  await page.getByLabel("Bees with mites").fill("17");
  await page.getByRole("button", { name: "Reckon" }).click();
  await page.getByText("34 in 100,").waitFor();
  await device.close();
});
