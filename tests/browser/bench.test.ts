/** The bench, questions 4 to 6, paper, reckoner and evidence in a real browser: by keys, in three sizes, without an objection. */
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { complaintsOf, freshDevice, objections, openBrowser, type Site, serveBuiltPage, sizes } from "./harness.ts";

let site: Site;
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());
beforeEach(async () => {
  site = await serveBuiltPage();
});
afterEach(() => site.close());

/** Opens the demonstration casebook; ends at its list of cases. */
async function openDemonstration(page: Page): Promise<void> {
  await page.goto(`${site.address}/cases`);
  await page.getByRole("button", { name: "Open the demonstration casebook" }).click();
  await page.locator(".cases-table").waitFor();
}

const withen = "demonstration-case-tv-26-014";
const vial = "demonstration-specimen-tv26-0271";
const count = (page: Page) => page.locator(".count").textContent();
const atBee = (page: Page, bee: number) => page.locator(".count", { hasText: new RegExp(`^${bee}$`) }).waitFor();
const lastLine = (page: Page) => page.locator(".last");
const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe.each(Object.keys(sizes) as (keyof typeof sizes)[])("on a %s", (size) => {
  it("pages pass the accessibility rules, fit the screen and break nothing", async () => {
    const device = await freshDevice(browser, size);
    const page = await device.newPage();
    const complaints = complaintsOf(page);
    const found: string[] = [];
    const look = async (address: string, ready: string) => {
      await page.goto(`${site.address}${address}`);
      await page.locator(ready).first().waitFor();
      found.push(...(await objections(page)).map((objection) => `${address}: ${objection}`));
      const beyond = await overflow(page);
      if (beyond > 0) found.push(`${address}: ${beyond} px wider than the screen`);
    };
    await openDemonstration(page);
    await look("/bench", ".vials");
    await look(`/bench/${vial}`, ".surface");
    await look("/bench/demonstration-specimen-tv26-0272", "form");
    await look("/bench/demonstration-specimen-tv26-0147", "form");
    await look(`/cases/${withen}/4`, ".quality li");
    await look(`/cases/${withen}/5`, ".weigh-form");
    await look("/cases/demonstration-case-tv-26-022/5", ".stops");
    await look(`/cases/${withen}/6`, ".steps-list");
    for (const paper of ["labels", "kit", "report"]) await look(`/cases/${withen}/paper/${paper}`, ".paper-sheet");
    await look("/reckoner/sample-size", ".result svg");
    await look("/evidence", ".records li");
    await look("/evidence/condition/tracheal_mites", ".citations li");
    expect(found).toEqual([]);
    expect(complaints).toEqual([]);
    await device.close();
  });
});

describe("the bench", () => {
  it("each key is a bee on the disk; a reload resumes at the exact bee; undo takes it back", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openDemonstration(page);
    await page.goto(`${site.address}/bench/${vial}`);
    await atBee(page, 24);
    await page.keyboard.press("0");
    await atBee(page, 25);
    await page.keyboard.press("2");
    await page.getByText("Right?").waitFor();
    expect(await lastLine(page).textContent()).toContain("Stored with the right one");
    await page.keyboard.press("1");
    await atBee(page, 26);
    expect(await lastLine(page).textContent()).toMatch(
      /bee 25, left mites and blotches; right mites.* Stored \d\d:\d\d:\d\d/,
    );
    await page.reload();
    await atBee(page, 26);
    expect(await lastLine(page).textContent()).toContain("bee 25, left mites and blotches");
    await page.keyboard.press("-");
    await atBee(page, 25);
    await page.getByText("bee 25 taken back").waitFor();
    await device.close();
  });

  it("a key that is held, or comes twice at once, counts once; one key takes a dropped press back", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openDemonstration(page);
    await page.goto(`${site.address}/bench/${vial}`);
    await atBee(page, 24);
    await page.keyboard.down("0");
    await page.keyboard.down("0");
    await atBee(page, 25);
    await page.getByText("was held and did not count").waitFor();
    await page.keyboard.up("0");
    expect(await count(page)).toBe("25");
    await page.keyboard.press("/");
    await atBee(page, 26);
    await device.close();
  });

  it("keys count only while the bench has the focus, and there is a way back", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openDemonstration(page);
    await page.goto(`${site.address}/bench/${vial}`);
    await atBee(page, 24);
    await page.keyboard.press("Tab");
    await page.keyboard.press("0");
    await page.getByText("Keys are off.").waitFor();
    expect(await count(page)).toBe("24");
    await page.getByText("Put the keys on the bench").click();
    await page.keyboard.press("0");
    await atBee(page, 25);
    await device.close();
  });

  it("fingers do what keys do", async () => {
    const device = await freshDevice(browser, "phone");
    const page = await device.newPage();
    await openDemonstration(page);
    await page.goto(`${site.address}/bench/${vial}`);
    await atBee(page, 24);
    await page.getByRole("button", { name: "left clear, right mites" }).click();
    await atBee(page, 25);
    await page.getByText("bee 24, left clear; right mites, tube clear").waitFor();
    await device.close();
  });

  it("no key moves under a finger, whichever trunk is asked", async () => {
    const device = await freshDevice(browser, "phone");
    const page = await device.newPage();
    await openDemonstration(page);
    await page.goto(`${site.address}/bench/${vial}`);
    await atBee(page, 24);
    const places = () =>
      page.locator(".touch-keys button").evaluateAll((keys) =>
        keys.map((key) => {
          const { x, y, width, height } = key.getBoundingClientRect();
          return [x, y + window.scrollY, width, height].map(Math.round).join(" ");
        }),
      );
    const before = await places();
    expect(before.length).toBeGreaterThan(8);
    for (const key of ["mites, tube clear", "this side unreadable", "mites, blotches", "undo"]) {
      await page.locator(".touch-keys button").filter({ hasText: key }).first().tap();
      await page.waitForTimeout(150);
      expect(await places()).toEqual(before);
    }
    await device.close();
  });

  it("a vial comes, is read to its last bee, which asks before one more, and is locked", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openDemonstration(page);
    await page.goto(`${site.address}/bench/demonstration-specimen-tv26-0272`);
    await page.getByLabel("Bees received").fill("2");
    await page.getByRole("button", { name: "Keep the receipt" }).click();
    // Nothing about the bees is answered before someone looked.
    expect(await page.getByText("Nothing is chosen here; choose one.").count()).toBe(3);
    await page.getByLabel("Condition").selectOption("0");
    await page.getByLabel("Alive when taken?").selectOption("yes");
    await page.getByLabel("Accepted?").selectOption("accepted");
    await page.getByRole("button", { name: "Keep the receipt" }).click();
    await page.getByLabel("Bees to read").fill("50");
    await page.getByLabel("Reader").fill("reader 2");
    await page.getByRole("button", { name: "Begin" }).click();
    await atBee(page, 1);
    await page.keyboard.press("0");
    await atBee(page, 2);
    await page.keyboard.press("7");
    await page.getByText("All 2 bees received are read.").waitFor();
    await page.keyboard.press("Enter");
    await page.getByLabel("Correct it: bee 1").click();
    await page.locator('.review-bees select[name="left"]').selectOption("unreadable");
    await page.getByRole("button", { name: "Keep it so" }).click();
    await page.getByText(/bee 1: left unreadable; right clear/).waitFor();
    await page.getByLabel("Correct it: bee 1").click();
    await page.locator('.review-bees select[name="left"]').selectOption("clear");
    await page.getByRole("button", { name: "Keep it so" }).click();
    await page.getByText(/bee 1: both trunks clear/).waitFor();
    await page.getByRole("button", { name: "Back to the bees" }).click();
    await page.keyboard.press("0");
    expect(await count(page)).toBe("3");
    await page.keyboard.press("Enter");
    await page.getByText("bee 2: left clear; right mites, tube clear").waitFor();
    await page.getByRole("button", { name: "Lock the reading" }).click();
    await page.getByText("Mites in 1 of 2 bees.").waitFor();
    await device.close();
  });
});

describe("questions 4 to 6", () => {
  it("prices weigh the choices; a plan is written down and comes as a calendar file", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openDemonstration(page);
    await page.goto(`${site.address}/cases/${withen}/5`);
    await page.getByRole("button", { name: "Weigh", exact: true }).click();
    await page.getByText("Best choice, by bees infested in 100").waitFor();
    const plan = page.locator('section[aria-labelledby="h-plan"]');
    await plan.getByLabel("With").selectOption("requeen");
    await plan.getByRole("button", { name: "Make a plan" }).click();
    await page.getByRole("button", { name: "Write this plan down" }).click();
    const kept = page.locator(".kept-plans > div", { hasText: "New queen" });
    await kept.waitFor();
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      kept.getByRole("button", { name: "Calendar file" }).click(),
    ]);
    expect(file.suggestedFilename()).toMatch(/\.ics$/);
    await device.close();
  });

  it("without a label record a vapour is refused with the way to load one, and no dose", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openDemonstration(page);
    await page.goto(`${site.address}/cases/${withen}/5`);
    const plan = page.locator('section[aria-labelledby="h-plan"]');
    await plan.getByLabel("With").selectOption("formic-acid");
    await plan.getByLabel("Label record").selectOption("");
    await plan.getByRole("button", { name: "Make a plan" }).click();
    await page.getByText("No label record is loaded").waitFor();
    expect(await page.getByRole("link", { name: "Load a label" }).getAttribute("href")).toBe(`/labels?case=${withen}`);
    await device.close();
  });

  it("what was typed stays when one goes to type a label, and the label says that it is kept", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openDemonstration(page);
    await page.goto(`${site.address}/cases/${withen}/5`);
    const values = { currency: "$", colonyValue: "240", actCost: "26", testCost: "3", residual: "15" };
    for (const [name, value] of Object.entries(values)) await page.locator(`[name="${name}"]`).fill(value);
    await page.getByRole("button", { name: "Weigh" }).click();
    await page
      .getByText(/You are here: \d+/)
      .first()
      .waitFor();
    const here = await page
      .getByText(/You are here: \d+/)
      .first()
      .textContent();
    await page.locator('[name="startOn"]').fill("2027-05-01");
    await page.getByRole("link", { name: "Type a label record" }).click();
    const label = {
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
    };
    for (const [name, value] of Object.entries(label)) await page.locator(`[name="${name}"]`).fill(value);
    await page.getByRole("button", { name: "Keep this label record" }).click();
    await page.getByText(/^Kept\./).waitFor();
    await page.getByRole("link", { name: "To question 5" }).click();
    await page
      .getByText(/You are here: \d+/)
      .first()
      .waitFor();
    expect(
      await page
        .getByText(/You are here: \d+/)
        .first()
        .textContent(),
    ).toBe(here);
    expect(await page.locator('[name="startOn"]').inputValue()).toBe("2027-05-01");
    expect(await page.locator('[name="colonyValue"]').inputValue()).toBe("240");
    expect(await page.getByLabel("Label record").textContent()).toContain("28 days, 16 to 32 °C; an invented label");
    await device.close();
  });

  it("only the paper is printed", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openDemonstration(page);
    await page.goto(`${site.address}/cases/${withen}/paper/report`);
    await page.locator(".paper-sheet h1").first().waitFor();
    await page.emulateMedia({ media: "print" });
    const shown = await page.evaluate(() =>
      [".top", ".quiet-line", ".paper-controls"].filter((selector) =>
        [...document.querySelectorAll(selector)].some((each) => getComputedStyle(each).display !== "none"),
      ),
    );
    expect(shown).toEqual([]);
    await device.close();
  });
});
