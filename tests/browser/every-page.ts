/** One walk through every page at one size of screen, for the test files that each hold a size: two of them run at once. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import {
  complaintsOf,
  freshDevice,
  objections,
  openBrowser,
  type Site,
  serveBuiltPage,
  type sizes,
} from "./harness.ts";
import { otherNames } from "./names.ts";
import { everyPage, load, openDemonstration, visit } from "./pages.ts";
import { beyondTheTabKey } from "./tabs.ts";

/** Pixels by which the page is wider than the screen. */
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/**
 * No objection of the accessibility rules, no error, nothing cut off. A page is gone to from the one before; on a
 * phone one page of each route is loaded by its address. Names and the tab key are the same in every size; they are walked at
 * the desk, where most people type.
 */
export function everyPageHolds(size: keyof typeof sizes): void {
  let site: Site;
  let browser: Browser;
  beforeAll(async () => {
    [site, browser] = await Promise.all([serveBuiltPage(), openBrowser()]);
  });
  afterAll(async () => {
    await browser.close();
    await site.close();
  });

  it(`every page on a ${size} passes the accessibility rules, fits the screen and breaks nothing`, async () => {
    const device = await freshDevice(browser, size);
    const page = await device.newPage();
    const complaints = complaintsOf(page);
    const found: string[] = [];
    await openDemonstration(page, site.address);
    for (const each of everyPage) {
      if (size === "phone" && each.fromBookmark) await load(page, site.address, each);
      else await visit(page, each);
      const trouble = [...(await objections(page))];
      const beyond = await overflow(page);
      if (beyond > 0) trouble.push(`${beyond} px wider than the screen`);
      if (size === "desk")
        trouble.push(...[(await otherNames(page, each.name)) ?? []].flat(), ...(await beyondTheTabKey(page)));
      found.push(...trouble.map((line) => `${each.name}: ${line}`));
    }
    expect(found).toEqual([]);
    expect(complaints).toEqual([]);
    await device.close();
  });
}
