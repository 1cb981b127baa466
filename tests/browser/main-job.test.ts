/** The main job, from the call to the dated plan, by one person on one device: the network is cut half-way and comes back. */
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { answerFlags, mark, openCase, toQuestion } from "./acts.ts";
import { complaintsOf, freshDevice, openBrowser, type Site, serveBuiltPage } from "./harness.ts";

let site: Site;
let browser: Awaited<ReturnType<typeof openBrowser>>;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const field = (page: Page, name: string) => page.locator(`[name="${name}"]`).first();

async function fill(page: Page, values: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, value] of Object.entries(values)) await field(page, name).fill(value);
}

/** A device whose page is kept for use without a net. */
async function openDevice(size: "desk" | "phone"): Promise<{ readonly device: BrowserContext; readonly page: Page }> {
  const device = await freshDevice(browser, size, { offlineReady: true });
  const page = await device.newPage();
  await page.goto(`${site.address}/cases`);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await page.reload();
  return { device, page };
}

/** Reads bees: by key at the desk, by touching the keys' twins on the phone. */
async function readBees(page: Page, keys: string, size: "desk" | "phone"): Promise<void> {
  for (const key of keys) {
    if (size === "desk") await page.keyboard.press(key);
    else
      await page
        .locator(".touch-keys button")
        .filter({ has: page.getByText(key, { exact: true }) })
        .first()
        .tap();
    // Longer than a bounce, which the bench drops.
    await page.waitForTimeout(90);
  }
}

async function receiveAndBegin(page: Page): Promise<void> {
  await page.goto(`${site.address}/bench`);
  await page
    .getByRole("link", { name: /Receive/ })
    .first()
    .click();
  await page.getByLabel("Bees received").waitFor();
  const today = await field(page, "on").inputValue();
  await fill(page, { takenOn: today, beesReceived: "32" });
  await page.getByLabel("Condition").selectOption("0");
  await page.getByLabel("Alive when taken?").selectOption("yes");
  await page.getByLabel("Accepted?").selectOption("accepted");
  await page.getByRole("button", { name: "Keep the receipt" }).click();
  await page.getByRole("button", { name: "Begin" }).click();
  await page.getByText("Left?").waitFor();
}

/** Twelve monthly means of a place with warm summers, so that a window exists. */
const means = [-3, -2, 2, 8, 14, 18, 21, 20, 16, 10, 4, -1];

describe.each(["desk", "phone"] as const)("the main job at the %s", (size) => {
  it("goes from the call to the dated plan, loses nothing without a net, and sends everything when it is back", async () => {
    site = await serveBuiltPage();
    const { device, page } = await openDevice(size);
    const complaints = complaintsOf(page);

    await openCase(page, site);
    await answerFlags(page);
    for (const finding of ["Crawling bees", "K-wing", "Very small cluster"]) await mark(page, finding, "WB-02", "p");
    await mark(page, "Heap of dead bees", "WB-02", "a");
    await toQuestion(page, 2);
    await page.locator(".causes circle").first().waitFor();
    // Signs alone never name tracheal mites.
    expect(await page.locator("h1").first().textContent()).not.toMatch(/Leading: tracheal mites|Tracheal mites leads/i);

    await toQuestion(page, 3);
    await page.getByLabel("Must not be missed").fill("10");
    await page.getByText("29 to read").waitFor();
    await page.getByRole("button", { name: "Label 3 vials" }).click();
    await page.locator(".vial-labels .code").nth(2).waitFor();
    const theCase = page.url().replace(/\/3$/, "");
    await page.getByText("all sent").waitFor();

    await device.setOffline(true);
    await page.goto(`${theCase}/paper/labels`);
    await page.getByText("Print at 100 %").first().waitFor();
    await receiveAndBegin(page);
    await readBees(page, "000800002000070000", size);
    // 18 presses, one of them half a bee: the 17 bees that are shown are there after the page was loaded again.
    await page.getByText("With mites: 3 of 17").waitFor();
    await page.reload();
    await page.getByText("Left?").waitFor();
    await page.getByText("With mites: 3 of 17").waitFor();
    await readBees(page, "000000000000", size);
    await page
      .getByRole("button", { name: "Look it over" })
      .or(page.getByRole("link", { name: "Look it over" }))
      .click();
    await page.getByRole("button", { name: "Lock the reading" }).click();
    await page.getByText("Mites in 3 of 29 bees").waitFor();

    await page.goto(`${theCase}/4`);
    // Clopper–Pearson of 3 of 29: 2.19 to 27.35 in 100 (binomial, reckoned with mpmath).
    await page
      .getByText(/2 to 27/)
      .first()
      .waitFor();
    await page.goto(`${theCase}/5`);
    await fill(page, {
      currency: "$",
      colonyValue: "240",
      actCost: "26",
      testCost: "3",
      residual: "15",
      bees: "50",
      finds: "90",
    });
    await page.getByRole("button", { name: "Weigh" }).click();
    await page
      .getByText(/You are here: \d+/)
      .first()
      .waitFor();
    expect(await page.getByRole("status").first().textContent()).toMatch(/\d+ entries not yet sent/);

    await device.setOffline(false);
    await page.evaluate(() => window.dispatchEvent(new Event("online")));
    await page.getByText("all sent").waitFor();
    await planIt(page, theCase);

    // What the service holds is what the device wrote: nothing lost, nothing twice.
    const kept = await page.evaluate(async () => {
      const answer = await fetch("/api/programmes/main/entries?cursor=0&limit=500");
      return ((await answer.json()) as { entries: { header: { kind: string; seq: number } }[] }).entries.map(
        (entry) => entry.header,
      );
    });
    expect(kept.filter((header) => header.kind === "bee-read")).toHaveLength(29);
    expect(kept.map((header) => header.seq)).toEqual(kept.map((_, index) => index + 1));
    expect(complaints.filter((line) => !/ERR_INTERNET_DISCONNECTED|Failed to fetch/.test(line))).toEqual([]);
    await device.close();
    await site.close();
  });
});

/** Without a label record there is no dose; with one and the weather there is a dated plan and a calendar. */
async function planIt(page: Page, theCase: string): Promise<void> {
  await page.goto(`${theCase}/5`);
  await page.getByRole("button", { name: "Make a plan" }).last().click();
  await page
    .getByText(/no label record/i)
    .first()
    .waitFor();
  await page.goto(`${site.address}/labels`);
  await fill(page, {
    jurisdiction: "Tarrow Valley",
    activeIngredient: "menthol",
    dose: "50",
    durationDays: "28",
    applications: "1",
    daysBetweenApplications: "0",
    placement: "top bars",
    minDailyHigh: "16",
    maxDailyHigh: "32",
    daysBeforeSupers: "14",
    source: "an invented label",
  });
  await page.getByRole("button", { name: "Keep this label record" }).click();
  await page.getByText("One label record").waitFor();
  await page.goto(`${site.address}/apiaries`);
  await page.getByRole("link", { name: "Withen Bank" }).click();
  for (const [index, mean] of means.entries()) await field(page, `month-${index + 1}`).fill(String(mean));
  await field(page, "source").fill("invented");
  await page.getByRole("button", { name: "Keep these means" }).click();
  await page.getByText("Coldest month").waitFor();
  await page.goto(`${theCase}/5`);
  await page.getByLabel("Label record").selectOption({ index: 0 });
  await page.getByLabel("This label is valid where the hives stand").check();
  await field(page, "untestedReason").fill("They stand beside it and show the same signs.");
  await page.getByRole("button", { name: "Make a plan" }).last().click();
  // 50 g for each of three colonies, as the label record says.
  await page.getByText(/150 g/).first().waitFor();
  await page.getByRole("button", { name: "Write this plan down" }).click();
  await page.getByText(/Plan, version 1/).waitFor();
  const download = page.waitForEvent("download");
  await page.getByText("Calendar file").first().click();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/\.ics$/);
  await page.getByText("all sent").waitFor();
}
