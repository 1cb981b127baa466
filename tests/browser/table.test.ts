/** A table of others comes in by the page, in a real browser: proposed, tried, mended, added once, and nothing the second time. */
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import writeExcel from "write-excel-file/node";
import { openCase } from "./acts.ts";
import { complaintsOf, freshDevice, objections, openBrowser, type Site, serveBuiltPage } from "./harness.ts";

let browser: Browser;
let site: Site;
beforeAll(async () => {
  [browser, site] = await Promise.all([openBrowser(), serveBuiltPage()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-table-"));
const file = (name: string, content: string | Uint8Array): string => {
  writeFileSync(path.join(folder, name), content);
  return path.join(folder, name);
};
const rows = [
  ["Yard", "Hive No", "Date", "Infested", "Examined", "K-wing", "Notes"],
  ["North", "7", "2026-03-02", "3", "50", "yes", "x"],
  ["North", "8", "03/04/2026", "0", "50", "no", ""],
  ["North", "9", "2026-03-02", "n/a", "n/a", "not examined", ""],
];
const csv = rows.map((row) => `${row.join(",")}\n`).join("");

async function choose(page: Page, given: string): Promise<void> {
  await page.goto(`${site.address}/records/table`);
  await page.getByLabel("A table", { exact: true }).setInputFiles(given);
}
const add = (page: Page) => page.getByRole("button", { name: /^Add \d+ entries$/ });

it("[TR36] is tried, mended, added whole, and found on record when it comes again as a workbook", async () => {
  const device = await freshDevice(browser, "phone");
  const page = await device.newPage();
  const complaints = complaintsOf(page);
  await choose(page, file("bench.csv", csv));
  await page.getByText("3 rows, 7 columns.").waitFor();
  expect(await page.getByLabel("What the column Infested is").inputValue()).toBe("positive");
  expect(await page.getByLabel("What the column K-wing is").inputValue()).toBe("k_wing");
  expect(await objections(page)).toEqual([]);
  await page.getByLabel("Where they are").fill("Invented County");
  await page.getByRole("button", { name: "Try it" }).click();

  await page.getByText("stand in the way").waitFor();
  expect(await add(page).count()).toBe(0);
  await page.getByText("This can be 2026-04-03 or 2026-03-04").first().waitFor();
  expect(await objections(page)).toEqual([]);
  await page.getByRole("button", { name: "The month comes first" }).first().click();
  await page.getByRole("button", { name: "“n/a” is nothing recorded" }).first().click();
  await add(page).waitFor();
  await page.getByText("Not on record before: apiary North; colonies 7, 8 and 9.").waitFor();
  expect(await objections(page)).toEqual([]);
  // Chosen anew: what was chosen and typed is still there.
  await page.getByRole("button", { name: "Choose the columns anew" }).click();
  expect(await page.getByLabel("Where they are").inputValue()).toBe("Invented County");
  await page.getByLabel("Name of North").fill("North Yard");
  await page.getByRole("button", { name: "Try it" }).click();
  await page.getByRole("button", { name: "The month comes first" }).first().click();
  await page.getByRole("button", { name: "“n/a” is nothing recorded" }).first().click();
  await page.getByText("Not on record before: apiary North Yard; colonies 7, 8 and 9.").waitFor();
  await add(page).click();
  await page.getByText("They are sent with the next exchange").waitFor();
  await page.goto(`${site.address}/cases`);
  await page.locator(".cases-table tbody tr").first().waitFor();

  const cells = rows.map((row) => row.map((value) => ({ value, type: String })));
  await choose(page, file("bench.xlsx", await writeExcel(cells as never, { sheet: "Bees" }).toBuffer()));
  await page.getByText("the same mapping is used").waitFor();
  await page.getByText("Nothing new.").waitFor();
  expect(complaints).toEqual([]);
  await device.close();
});

it("[TR37] gives results to an apiary that stands on record, and registers no second one", async () => {
  const device = await freshDevice(browser);
  const page = await device.newPage();
  await openCase(page, site, 2);
  await page.goto(`${site.address}/records/table`);
  const given = rows.slice(0, 2).map((row) => row.with(0, row[0] === "North" ? "Withen Bank" : (row[0] ?? "")));
  await page
    .getByLabel("A table", { exact: true })
    .setInputFiles(file("known.csv", given.map((row) => `${row.join(",")}\n`).join("")));
  const meant = page.getByLabel("What Withen Bank is", { exact: true });
  await meant.waitFor();
  expect(await meant.inputValue()).not.toBe("");
  expect(await page.getByLabel("Where they are").count()).toBe(0);
  const goesTo = page.getByLabel("Case that Withen Bank goes to");
  expect(await goesTo.locator("option").allTextContents()).toHaveLength(2);
  await page.getByRole("button", { name: "Try it" }).click();
  await add(page).click();
  await page.getByText("They are sent with the next exchange").waitFor();
  await page.goto(`${site.address}/apiaries`);
  await page.getByText("Withen Bank").first().waitFor();
  expect(await page.getByRole("link", { name: /Withen Bank/ }).count()).toBe(1);
  await device.close();
});

it("[TR31] says what is wrong with a file that is none, is cut, or is too large", async () => {
  const device = await freshDevice(browser);
  const page = await device.newPage();
  await choose(page, file("cut.xlsx", new Uint8Array([0x50, 0x4b, 3, 4, 5])));
  await page.getByText("not a spreadsheet file that can be read").waitFor();
  await choose(page, file("cut.csv", csv.slice(0, -30)));
  await page.getByText("The file ends within a row").waitFor();
  await choose(page, file("large.csv", "x".repeat(65 * 1024 * 1024)));
  await page.getByText("Expected: at most 64").waitFor();
  await device.close();
});

it("[SG115] a device without room says that nothing was kept, keeps what was chosen, and takes it once there is room", async () => {
  const device = await freshDevice(browser);
  const page = await device.newPage();
  const many = Array.from({ length: 300 }, (_, index) => `North,${index + 1},2026-03-02,${index % 3},50,yes,\n`).join(
    "",
  );
  await choose(page, file("many.csv", `${rows[0]?.join(",")}\n${many}`));
  await page.getByLabel("Where they are").fill("Invented County");
  await page.getByRole("button", { name: "Try it" }).click();
  await add(page).waitFor();
  // Browsers let some writes through before they ask how much room there is, so the refusal itself is put in their way.
  const hasRoom = (room: boolean) =>
    page.evaluate((has) => {
      const stores = IDBObjectStore.prototype as unknown as { put: unknown; kept?: unknown };
      stores.kept ??= stores.put;
      const full = () => {
        throw new DOMException("no room", "QuotaExceededError");
      };
      stores.put = has ? stores.kept : full;
    }, room);
  await hasRoom(false);
  await add(page).click();
  await page.getByText("This device has no room left").waitFor();
  expect(await objections(page)).toEqual([]);
  await hasRoom(true);
  await add(page).click();
  await page.getByText("They are sent with the next exchange").waitFor();
  expect(await page.getByText("This device has no room left").count()).toBe(0);
  await device.close();
});
