/** Every page in a real browser, in three sizes: no objection of the accessibility rules, no error, nothing cut off. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { complaintsOf, freshDevice, objections, openBrowser, type Site, serveBuiltPage, sizes } from "./harness.ts";
import { otherNames } from "./names.ts";
import { everyPage, openDemonstration, visit } from "./pages.ts";
import { beyondTheTabKey } from "./tabs.ts";

let site: Site;
let browser: Browser;
beforeAll(async () => {
  [site, browser] = await Promise.all([serveBuiltPage(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

/** Pixels by which the page is wider than the screen. */
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe.each(Object.keys(sizes) as (keyof typeof sizes)[])("on a %s", (size) => {
  it("every page passes the accessibility rules, fits the screen and breaks nothing", async () => {
    const device = await freshDevice(browser, size);
    const page = await device.newPage();
    const complaints = complaintsOf(page);
    const found: string[] = [];
    await openDemonstration(page, site.address);
    for (const each of everyPage) {
      await visit(page, each);
      const trouble = [...(await objections(page))];
      const beyond = await overflow(page);
      if (beyond > 0) trouble.push(`${beyond} px wider than the screen`);
      // Names and the tab key are the same in every size; they are walked where most people type.
      if (size === "desk")
        trouble.push(...[(await otherNames(page, each.name)) ?? []].flat(), ...(await beyondTheTabKey(page)));
      found.push(...trouble.map((line) => `${each.name}: ${line}`));
    }
    expect(found).toEqual([]);
    expect(complaints).toEqual([]);
    await device.close();
  });
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
