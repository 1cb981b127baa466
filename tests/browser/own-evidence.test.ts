/** A programme changes its evidence in a real browser: tried on past cases, accepted, asked, ranked, taken back. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { mark, tellSigns } from "./acts.ts";
import { freshDevice, objections, openBrowser, type Site, serveBuiltPage } from "./harness.ts";

let site: Site;
let browser: Browser;
beforeAll(async () => {
  [site, browser] = await Promise.all([serveBuiltPage(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

it("a finding and a condition of its own are tried, accepted, asked and ranked, and go when they are taken back", async () => {
  const device = await freshDevice(browser);
  const page = await device.newPage();
  await tellSigns(page, site);
  const questions = page.url();
  const toChanges = async () => {
    await page.goto(`${site.address}/evidence/changes`);
    await page.locator(".own form").waitFor();
  };
  const press = (name: string) => page.getByRole("button", { name, exact: true }).click();
  const accept = async (changes: number) => {
    await page.getByLabel("Where in it, or what else it rests on").fill("own numbers, invented");
    await press("See what would change");
    await page.getByRole("button", { name: "Accept and record" }).click();
    await page
      .locator(".own-changes > li")
      .nth(changes - 1)
      .waitFor();
  };
  await toChanges();
  await press("See what would change");
  const refused = await page.locator(".own form .trouble").allTextContents();
  expect(refused).toHaveLength(2);

  await page.getByLabel("What", { exact: true }).selectOption("finding");
  await page.getByLabel("Name", { exact: false }).fill("Water line on the boxes");
  await page.getByLabel("Minutes it takes").fill("1");
  await page.getByLabel("Question to be asked").fill("Is there a line of silt on the boxes?");
  await page.getByLabel("What to look for, so that").fill("A level line of silt around the lowest box.");
  for (const season of ["Winter", "Spring", "Summer", "Autumn"]) await page.getByLabel(season).fill("1");
  await accept(1);

  await page.getByLabel("What", { exact: true }).selectOption("condition");
  await page.getByLabel("Name", { exact: false }).fill("Flooded stand");
  for (const season of ["Winter", "Spring", "Summer", "Autumn"]) await page.getByLabel(season).fill("5");
  await accept(2);

  await page.getByLabel("What", { exact: true }).selectOption("frequency");
  await page.getByLabel("Condition", { exact: true }).selectOption("own_flooded_stand");
  await page.getByLabel("Finding", { exact: true }).selectOption("own_water_line_on_the_boxes");
  await page.getByLabel("Colonies with this cause that show it").fill("90");
  await accept(3);
  expect(await page.locator("h1").textContent()).toContain("3 changes of this programme.");
  expect(await objections(page)).toEqual([]);

  await page.goto(questions);
  await page.getByRole("grid").waitFor();
  await mark(page, "Water line on the boxes", "WB-02", "p");
  await page.goto(questions.replace(/1$/, "2"));
  await page.locator(".causes circle").first().waitFor();
  expect(await page.locator(".causes > li h3").first().textContent()).toContain("Flooded stand");
  expect(await page.locator("#page").textContent()).toContain("3 changes of the evidence");

  await toChanges();
  for (const left of [2, 1, 0]) {
    await page
      .getByRole("button", { name: /^Take it back:/ })
      .first()
      .click();
    await press("Take it back now");
    await page.waitForFunction((count) => document.querySelectorAll(".own-changes > li").length === count, left);
  }
  await page.goto(questions.replace(/1$/, "2"));
  await page.locator(".causes circle").first().waitFor();
  expect(await page.locator(".causes").textContent()).not.toContain("Flooded stand");
  await device.close();
});
