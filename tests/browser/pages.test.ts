/** Every page in a real browser, in three sizes: no objection of the accessibility rules, no error, nothing cut off. */
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { tellSigns, toQuestion } from "./acts.ts";
import { complaintsOf, freshDevice, objections, openBrowser, type Site, serveBuiltPage, sizes } from "./harness.ts";

let site: Site;
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());
// A service of its own for each test: what one device sent does not reach the next test's device.
beforeEach(async () => {
  site = await serveBuiltPage();
});
afterEach(() => site.close());

/** Pixels by which the page is wider than the screen. */
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe.each(Object.keys(sizes) as (keyof typeof sizes)[])("on a %s", (size) => {
  it("pages pass the accessibility rules, fit the screen and break nothing", async () => {
    const device = await freshDevice(browser, size);
    const page = await device.newPage();
    const complaints = complaintsOf(page);
    const found: string[] = [];
    const look = async (name: string, ready: string) => {
      await page.locator(ready).first().waitFor();
      found.push(...(await objections(page)).map((objection) => `${name}: ${objection}`));
      const beyond = await overflow(page);
      if (beyond > 0) found.push(`${name}: ${beyond} px wider than the screen`);
    };
    await page.goto(`${site.address}/cases`);
    await look("no cases", "h1");
    await page.goto(`${site.address}/cases/open`);
    await look("open a case", "form");
    await tellSigns(page, site);
    await look("question 1", '[role="grid"]');
    const walk = await page.locator('a[href^="/walk/"]').first().getAttribute("href");
    await toQuestion(page, 2);
    await look("question 2", ".causes circle");
    await page.getByRole("button", { name: "Table" }).click();
    await look("question 2, table", ".causes-table");
    await toQuestion(page, 3);
    await look("question 3", ".next li");
    await page.goto(`${site.address}${walk}`);
    await look("the walk", ".keys");
    await page.goto(`${site.address}/cases`);
    await look("cases", ".cases-table");
    await page.goto(`${site.address}/apiaries`);
    await look("apiaries", "table a");
    await page.locator("table a").first().click();
    await look("an apiary", ".apiary");
    await page.goto(`${site.address}/labels`);
    await look("labels", "form");
    await page.goto(`${site.address}/nowhere`);
    await look("no such page", "h1");
    expect(found).toEqual([]);
    expect(complaints).toEqual([]);
    await device.close();
  });
});

describe("in the other lights", () => {
  it.each(["field", "bench"])("the list of cases and question 2 keep their contrast in %s light", async (light) => {
    const device = await freshDevice(browser, "desk");
    const page = await device.newPage();
    await tellSigns(page, site);
    await page.getByText("Light: desk").click();
    await page.getByRole("button", { name: light, exact: true }).click();
    await toQuestion(page, 2);
    await page.locator(".causes circle").first().waitFor();
    expect(await page.evaluate(() => document.documentElement.dataset.light)).toBe(light);
    expect(await objections(page)).toEqual([]);
    await page.goto(`${site.address}/cases`);
    await page.locator(".cases-table").waitFor();
    expect(await objections(page)).toEqual([]);
    await device.close();
  });
});
