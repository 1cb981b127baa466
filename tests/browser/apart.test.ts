/** What the service keeps apart is judged in a real browser, at a desk and on a phone. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { decisionOn } from "../../src/casebook/index.ts";
import type { Entry } from "../../src/journal/index.ts";
import { apiaryDrafts, callDrafts } from "../journals/every-kind.ts";
import { fork } from "../journals/fork.ts";
import { writer } from "../journals/writer.ts";
import { complaintsOf, freshDevice, objections, openBrowser, serveBuiltPage } from "./harness.ts";

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

it.each(["desk", "phone"] as const)("[SG241] at the size of a %s a person sees both and settles each", async (size) => {
  const site = await serveBuiltPage();
  const store = await site.programmes.open("main");
  const [, tomorrow] = fork("phone-of-tomorrow");
  const unknown: Entry = { ...tomorrow, header: { ...tomorrow.header, kind: "queen-marked" } };
  await store.push(writer({ device: "office-1" }).write(...apiaryDrafts, ...callDrafts));
  await store.push([...fork(), fork("phone-of-tomorrow")[0], unknown]);
  expect((await store.check()).keptApart).toBe(2);

  const device = await freshDevice(browser, size);
  const page = await device.newPage();
  const complaints = complaintsOf(page);
  const troubles = async () => {
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    return [...(await objections(page)), ...(wide > 0 ? [`${wide} px wider than the screen`] : [])];
  };
  await page.goto(`${site.address}/records`);
  await page.getByRole("link", { name: "See what is kept apart" }).click();
  await page.getByText("2 entries wait for a person to judge.").waitFor();
  expect(await troubles()).toEqual([]);

  const copied = page.getByRole("region", { name: "Entry 1 of device copied-phone" });
  await copied.getByText("mites", { exact: true }).waitFor();
  expect(await copied.getByRole("heading", { level: 3 }).allTextContents()).toEqual([
    "Kept apart",
    "Stands under its number",
  ]);
  await copied.getByRole("button", { name: "Settle it" }).click();
  const choice = copied.getByLabel("What shall become of it?");
  expect(await choice.getAttribute("aria-invalid")).toBe("true");
  expect(await copied.getByLabel("Why?").getAttribute("aria-invalid")).toBe("true");
  await choice.selectOption("Take it in");
  await copied.getByLabel("Why?").fill("read from the slide again");
  await copied.getByRole("button", { name: "Settle it" }).click();
  await copied.getByText("Taken in").waitFor();

  const other = page.getByRole("region", { name: "Entry 1 of device phone-of-tomorrow" });
  await other.getByText("A newer version wrote it (queen marked)").waitFor();
  expect(await other.getByLabel("What shall become of it?").locator("option").allTextContents()).toEqual([
    "Choose",
    "Leave it out",
  ]);
  await other.getByLabel("What shall become of it?").selectOption("Leave it out");
  await other.getByLabel("Why?").fill("only tried");
  await other.getByRole("button", { name: "Settle it" }).click();
  await page.getByText("Nothing waits.").waitFor();
  expect(await troubles()).toEqual([]);

  const report = async () => (await store.check()).settledApart.reduce((sum, { entries }) => sum + entries, 0);
  await expect.poll(report, { timeout: 20_000 }).toBe(2);
  expect((await store.check()).isIntact).toBe(true);
  expect((await store.apart()).map(({ settlements }) => decisionOn(settlements)).toSorted()).toEqual([
    "left-out",
    "taken-in",
  ]);
  const bee = (await store.states()).specimens["specimen-1"]?.readings["reading-1"]?.bees["1"];
  expect(bee?.candidates.map(({ value }) => value.left).toSorted()).toEqual(["clear", "clear", "mites"]); // one stands for each phone
  expect(complaints).toEqual([]);
  await device.close();
  await site.close();
});
