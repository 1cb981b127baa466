/** What people do on the pages, as tests do it: by the names that stand there. */
import type { Page } from "playwright-core";
import type { Site } from "./harness.ts";

/** Opens a case at a new place with some colonies; ends at question 1. */
export async function openCase(page: Page, site: Site, colonies = 3): Promise<void> {
  await page.goto(`${site.address}/cases/open`);
  await page.getByLabel("Name of the place").fill("Withen Bank");
  await page.getByLabel("District").fill("Tarrow Valley");
  await page.getByLabel("Latitude, degrees").fill("45");
  await page.getByLabel("What is the question?").fill("Why do bees crawl before the hives?");
  await page.getByLabel("In the caller’s own words").fill("Since the thaw they hop in the grass.");
  await page.getByLabel("Further colonies to register").fill(String(colonies));
  await page.getByLabel("Waits on").fill("inspector 2");
  await page.getByLabel("Your name or role").fill("specialist 1");
  await page.getByRole("button", { name: "Open the case" }).click();
  await page.waitForURL(/\/cases\/[^/]+\/1$/);
  await page.locator(".flags").waitFor();
}

/** Answers every red flag with "No". */
export async function answerFlags(page: Page): Promise<void> {
  const flags = page.locator(".flags li");
  const count = await flags.count();
  for (let index = 0; index < count; index += 1) {
    const no = flags.nth(index).getByRole("button", { name: "No", exact: true });
    await no.click();
    if (index < count - 1) await no.and(page.locator('[aria-pressed="true"]')).waitFor();
  }
  await page.getByRole("grid").waitFor();
}

/** The cell of a finding and a colony on the sheet. */
export const cell = (page: Page, finding: string, colony: string) =>
  page.getByRole("button", { name: new RegExp(`^${finding}, ${colony}:`) });

/** Writes a finding by key; waits until it stands there. */
export async function mark(page: Page, finding: string, colony: string, key: "p" | "a" | "n"): Promise<void> {
  const says = { p: "present", a: "absent", n: "not looked" }[key];
  await cell(page, finding, colony).focus();
  await page.keyboard.press(key);
  await page.getByRole("button", { name: `${finding}, ${colony}: ${says}`, exact: true }).waitFor();
}

/** A case with enough seen to be ranked; ends at question 1. */
export async function tellSigns(page: Page, site: Site): Promise<void> {
  await openCase(page, site);
  await answerFlags(page);
  for (const finding of ["Crawling bees", "K-wing", "Very small cluster", "Slow start"])
    await mark(page, finding, "WB-02", "p");
  await mark(page, "Heap of dead bees", "WB-02", "a");
}

/** Presses Tab until the field of that name has the focus; a field of a day takes several presses. */
export async function tabTo(page: Page, label: string): Promise<void> {
  const field = page.getByLabel(label).and(page.locator(":focus"));
  for (let presses = 0; presses < 12; presses += 1) {
    if ((await field.count()) > 0) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`the tab key does not reach ${label}`);
}

/** Goes to another question of the case that is open, by its link: what was pressed just before is not cut off. */
export async function toQuestion(page: Page, question: number): Promise<void> {
  const path = new URL(page.url()).pathname.replace(/\/\d$/, `/${question}`);
  await page.locator(`a[href="${path}"]`).first().click();
  await page.waitForURL((url) => url.pathname === path);
}
