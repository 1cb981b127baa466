/** Pages in a real browser before anything is written, and in the lights that the work did not choose. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { freshDevice, objections, openBrowser, type Site, serveBuiltPage } from "./harness.ts";
import { everyPage, openDemonstration, visit } from "./pages.ts";

let site: Site;
let browser: Browser;
beforeAll(async () => {
  [site, browser] = await Promise.all([serveBuiltPage(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

describe("before anything is written", () => {
  it("the empty pages pass the accessibility rules and offer what fills them", async () => {
    const device = await freshDevice(browser, "phone");
    const page = await device.newPage();
    await page.goto(`${site.address}/cases`);
    for (const path of ["/cases", "/cases/open", "/apiaries", "/bench", "/labels"]) {
      await visit(page, { name: path, path, ready: "main h1" });
      expect(await objections(page), path).toEqual([]);
    }
    await device.close();
  });
});

describe("in the other lights", () => {
  it("the list of cases and question 2 keep their contrast", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openDemonstration(page, site.address);
    for (const light of ["field", "bench"]) {
      await page.getByText("Light: ").first().click();
      await page.getByRole("button", { name: light, exact: true }).click();
      for (const each of everyPage.filter(({ name }) => name === "cases" || name === "question-2")) {
        await visit(page, each);
        expect(await page.evaluate(() => document.documentElement.dataset.light)).toBe(light);
        expect(await objections(page), light).toEqual([]);
      }
    }
    await device.close();
  });
});
