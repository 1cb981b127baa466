/** The work itself in a real browser: by keys alone, by thumb, without a net, in two windows, and sent to the service. */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { decodeJournal } from "../../src/journal/index.ts";
import { answerFlags, cell, mark, openCase, tabTo, tellSigns, toQuestion } from "./acts.ts";
import { freshDevice, objections, openBrowser, type Site, serveBuiltPage } from "./harness.ts";
import { openDemonstration } from "./pages.ts";

const examples = path.join(import.meta.dirname, "..", "..", "examples");
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

describe("by keys alone", () => {
  it("a case is opened, its flags answered and its sheet filled in", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await page.goto(`${site.address}/cases`);
    await page.locator("#page a.press").focus();
    await page.keyboard.press("Enter");
    await page.getByLabel("Name of the place").waitFor();
    const fields: readonly (readonly [string, string])[] = [
      ["Name of the place", "Withen Bank"],
      ["Short code", ""],
      ["District", "Tarrow Valley"],
      ["Latitude, degrees", "45"],
      ["What is the question?", "Why do bees crawl?"],
      ["In the caller’s own words", ""],
      ["What was already done", ""],
      ["Further colonies to register", "2"],
    ];
    await page.getByLabel("Name of the place").focus();
    for (const [label, text] of fields) {
      await tabTo(page, label);
      if (label.startsWith("Further")) await page.keyboard.press("Control+A");
      await page.keyboard.type(text);
    }
    await page.getByLabel("Your name or role").focus();
    await page.keyboard.type("specialist 1");
    await page.keyboard.press("Enter");
    await page.waitForURL(/\/1$/);
    await page.locator(".flags").waitFor();
    for (const flag of await page.locator(".flags li").all()) {
      await flag.getByRole("button", { name: "No", exact: true }).focus();
      await page.keyboard.press("Space");
    }
    await page.getByRole("grid").waitFor();
    await cell(page, "Heap of dead bees", "WB-01").focus();
    await page.keyboard.press("a");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("p");
    await page.getByRole("button", { name: "Heap of dead bees, WB-01: absent" }).waitFor();
    await page.getByRole("button", { name: "Droppings on the hive front, WB-02: present" }).waitFor();
    const ring = await page.locator(":focus").evaluate((element) => getComputedStyle(element).boxShadow);
    expect(ring).not.toBe("none");
    await device.close();
  });

  it("a vial is received, read, locked, decided on, and what became of the colony written down", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openDemonstration(page, site.address);
    const act = async (button: string) => {
      await page.getByRole("button", { name: button, exact: true }).last().focus();
      await page.keyboard.press("Enter");
    };
    const type = async (field: string, text: string) => {
      await page.getByLabel(field).last().focus();
      await page.keyboard.type(text);
    };
    await page.getByRole("link", { name: "Bench", exact: true }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("link", { name: "Receive, TV26-0272" }).focus();
    await page.keyboard.press("Enter");
    await type("Condition", "0");
    await type("Alive when taken?", "y");
    await type("Accepted?", "a");
    await type("Bees received", "6");
    await page.keyboard.press("Enter");
    await type("Reader", "reader 2");
    await page.keyboard.press("Enter");
    await page.getByText("Left?").waitFor();
    // The bench takes the keys by itself: two bees clear, one with mites in the right trunk, one lost, one taken back.
    for (const key of ["0", "0", "7", "5", "0", "-", "Enter"]) {
      await page.keyboard.press(key);
      // Longer than a bounce, which the bench drops.
      await page.waitForTimeout(90);
    }
    await act("Lock the reading");
    await page.getByText("Mites in 1 of 3 bees").waitFor();
    await page.getByRole("link", { name: "To question 4: What was found?" }).focus();
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: /^SE-04/ }).focus();
    await page.keyboard.press("Space");
    await page.getByRole("heading", { name: "Specimen TV26-0272" }).waitFor();
    await page.getByRole("link", { name: "To question 5: What shall be done?" }).focus();
    await page.keyboard.press("Enter");
    await type("Reason", "Too few bees to say.");
    await act("Write it down");
    await page.getByText("Test first.").waitFor();
    await page.getByRole("link", { name: "To question 6: Did it work?" }).focus();
    await page.keyboard.press("Enter");
    await page.locator("summary", { hasText: "Write it down" }).focus();
    await page.keyboard.press("Enter");
    await act("Write it down");
    await page.locator(".outcomes").waitFor();
    await device.close();
  });

  it("the sheet takes one step of the tab key, wherever one stands in it", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openCase(page, site);
    await answerFlags(page);
    expect(await page.locator('[role="grid"] button[tabindex="0"]').count()).toBe(1);
    await device.close();
  });
});

describe("in the field", () => {
  it("every target is 20 mm or more with 3 mm between, and the buttons mirror for the left hand", async () => {
    const device = await freshDevice(browser, "phone");
    const page = await device.newPage();
    await openCase(page, site);
    await answerFlags(page);
    await page.getByLabel("left hand").check();
    await page.locator('a[href^="/walk/"]').first().click();
    await page.locator(".keys").waitFor();
    const boxes = await page.locator(".keys button, .label").evaluateAll((elements) =>
      elements.map((element) => {
        const { x, y, width, height } = element.getBoundingClientRect();
        return { name: element.textContent ?? "", x, y, width, height };
      }),
    );
    // 6 px a millimetre on a phone of 390 px, by the tokens
    for (const { name, width, height } of boxes) expect(Math.min(width, height), name).toBeGreaterThanOrEqual(120);
    const left = (name: string) => boxes.find((box) => box.name === name)?.x ?? Number.NaN;
    expect(left("Present")).toBeLessThan(left("Absent"));
    expect(
      left("Absent") - left("Present") - (boxes.find((box) => box.name === "Present")?.width ?? 0),
    ).toBeGreaterThanOrEqual(18);
    await device.close();
  });

  it("asks of which day the answers are where those of today would turn the season of the case", async () => {
    const device = await freshDevice(browser, "phone");
    const page = await device.newPage();
    await openDemonstration(page, site.address);
    await page.goto(`${site.address}/walk/demonstration-case-tv-26-014/demonstration-wb-02`);
    const heading = page.locator("h1");
    await heading.getByText("Of which day?").waitFor();
    expect(await page.locator(".saved").textContent()).toContain("Seen today, 19 November 2026");
    expect(await page.getByRole("button", { name: "Absent" }).count()).toBe(0);
    await page.getByRole("button", { name: "Answer for 2 March 2026" }).click();
    await heading.getByText("Heap of dead bees?").waitFor();
    expect(await page.locator(".saved").textContent()).toContain("Seen on 2 March 2026");
    await device.close();
  });

  it("undo says what it takes back, and takes back that", async () => {
    const device = await freshDevice(browser, "phone");
    const page = await device.newPage();
    await openCase(page, site);
    await answerFlags(page);
    await page.locator('a[href^="/walk/"]').first().click();
    const heading = page.locator("h1");
    await heading.getByText("Heap of dead bees?").waitFor();
    await page.getByRole("button", { name: "Absent" }).click();
    await heading.getByText("Droppings on the front?").waitFor();
    const undo = page.getByRole("button", { name: "Undo" });
    await undo.getByText("absent").waitFor();
    expect(await undo.textContent()).toBe("Undoheap of dead bees: absent");
    await undo.click();
    await heading.getByText("Heap of dead bees?").waitFor();
    await page.goto(page.url().replace(/\/walk\/([^/]+)\/.*/, "/cases/$1/1"));
    await page.getByRole("button", { name: "Heap of dead bees, WB-01: not asked yet" }).waitFor();
    await device.close();
  });
});

describe("keeping and sending", () => {
  it("what was written is there after the page is loaded again, and reaches the service", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openCase(page, site);
    await answerFlags(page);
    await mark(page, "Crawling bees", "WB-02", "p");
    await page.reload();
    await page.getByRole("button", { name: "Crawling bees, WB-02: present" }).waitFor();
    await page.getByText("all sent").waitFor();
    const kept = await page.evaluate(async () =>
      (await fetch("/api/programmes/main/entries?cursor=0&limit=500")).json(),
    );
    const kinds = (kept as { entries: { header: { kind: string } }[] }).entries.map((entry) => entry.header.kind);
    expect(kinds).toContain("finding-recorded");
    await device.close();
  });

  it("a second window shows what the first one writes", async () => {
    const device = await freshDevice(browser);
    const one = await device.newPage();
    await openCase(one, site);
    await answerFlags(one);
    const other = await device.newPage();
    await other.goto(one.url());
    await other.getByRole("grid").waitFor();
    // A window behind another one is slow to be pressed.
    await one.bringToFront();
    await mark(one, "K-wing", "WB-01", "p");
    await other.getByRole("button", { name: "K-wing, WB-01: present" }).waitFor();
    await device.close();
  });

  it("works without a net: opens, ranks, records, says what is not sent, and sends it later", async () => {
    const device = await freshDevice(browser, "desk", { offlineReady: true });
    const page = await device.newPage();
    await page.goto(`${site.address}/cases`);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    // The worker keeps the page once everything is fetched; a second load is under its control.
    await page.reload();
    await page.locator("h1").waitFor();
    await device.setOffline(true);
    await tellSigns(page, site);
    await toQuestion(page, 2);
    await page.locator(".causes circle").first().waitFor();
    await toQuestion(page, 3);
    await page.locator(".next li").first().waitFor();
    expect(await page.getByRole("status").first().textContent()).toMatch(/\d+ entries not yet sent/);
    await device.setOffline(false);
    await page.evaluate(() => window.dispatchEvent(new Event("online")));
    await page.getByText("all sent").waitFor();
    await device.setOffline(true);
    await page.evaluate(() => window.dispatchEvent(new Event("offline")));
    await page.getByText("service not reachable, working here").waitFor();
    await device.close();
  });

  it("the demonstration opens apart, says so, is saved as a file by one act and removed by another", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await page.goto(`${site.address}/cases`);
    const real = await page.locator("h1").textContent();
    await page.getByRole("button", { name: "Open the demonstration casebook" }).click();
    await page.getByText("invented places").waitFor();
    await page.locator(".cases-table").waitFor();
    // The way back leads from a case of the demonstration to one's own list, not to a case that is not there.
    await page.locator(".cases-table a").first().click();
    await page.waitForURL(/\/cases\/demonstration-/);
    await page.getByRole("button", { name: "Back to your own cases" }).click();
    await page.waitForURL(/\/cases$/);
    await page.getByRole("button", { name: "Open the demonstration casebook" }).click();
    await page.getByText("invented places").waitFor();
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save a copy of the journal as a file" }).click();
    const file = await (await download).path();
    const journal = decodeJournal(readFileSync(file, "utf8"));
    // As it was brought here, entry for entry.
    expect(journal).toEqual(decodeJournal(readFileSync(path.join(examples, "demonstration", "journal.jsonl"), "utf8")));
    await page.getByRole("button", { name: "Remove the demonstration" }).click();
    await page
      .getByText(real ?? "")
      .first()
      .waitFor();
    const left = await page.evaluate(async () => (await indexedDB.databases()).map((database) => database.name));
    expect(left).toEqual(["skepsis-main"]);
    await device.close();
  });
});

describe("stop and report", () => {
  it("stands first on every question by a red flag alone, with who was told, until the flag is corrected", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await tellSigns(page, site);
    await page.getByText("See them all, or change an answer").click();
    const flag = page.locator(".flags li").filter({ hasText: "Does dead brood rope" });
    await flag.getByRole("button", { name: "Yes", exact: true }).click();
    for (const question of [1, 2, 3, 4, 6]) {
      await toQuestion(page, question);
      await page.locator(".stop-first").getByText("call the competent authority").waitFor();
      await page.locator("h1").first().waitFor();
      expect(await objections(page), `question ${question}`).toEqual([]);
    }
    await toQuestion(page, 3);
    await page.getByText("Stop and report comes first").waitFor();
    expect(await page.locator(".next, .sample-plan").count()).toBe(0);
    await page.locator(".until").getByText("Do not move hives").waitFor();
    expect(await page.locator(".until").getByText("test comb").count()).toBe(0);
    await page.getByText("Write down who was told").click();
    await page.getByLabel("Who was told").fill("competent authority");
    await page.getByLabel("Reference", { exact: true }).fill("B-12");
    await page.getByLabel("Answer due").fill("1999-01-01");
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByText("lies before the day it was told").waitFor();
    await page.getByLabel("Answer due").fill("2090-01-01");
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByText(/Told on .*: competent authority, reference B-12\./).waitFor();
    await toQuestion(page, 5);
    await page.getByText(/Told on .*reference B-12\./).waitFor();
    await page.getByText("Write down that the stop is lifted").click();
    await page.getByLabel("Lifted by, role").selectOption("reference-laboratory");
    await page.getByLabel("Name").fill("laboratory 1");
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.getByText("Nothing is entered here").waitFor();
    await page.getByLabel("Laboratory reference").fill("L-26-7");
    await page.getByRole("button", { name: "Keep it" }).click();
    await page.locator(".stop").waitFor({ state: "detached" });
    await toQuestion(page, 1);
    await page.getByText(/Lifted on .* by laboratory 1, reference laboratory, laboratory reference L-26-7/).waitFor();
    await page.getByText("See them all, or change an answer").click();
    await flag.getByRole("button", { name: "Yes", exact: true }).click();
    await page.locator(".stop-first .stop").waitFor();
    await flag.getByRole("button", { name: "No", exact: true }).click();
    await page.locator(".stop-first").waitFor({ state: "detached" });
    await device.close();
  });
});

describe("the day something was seen", () => {
  it("is carried by the answers that follow, and gives the season of question 2", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openCase(page, site);
    const year = new Date().getUTCFullYear() - 1;
    await page.getByLabel("Seen on").fill(`${year + 3}-07-14`);
    await page.getByText("is still to come").waitFor();
    await page.getByLabel("Seen on").fill(`${year}-07-14`);
    await answerFlags(page);
    await mark(page, "Crawling bees", "WB-02", "p");
    await toQuestion(page, 2);
    await page.getByText("Season: summer, from 14 July at 45° north").waitFor();
    await device.close();
  });
});

describe("questions 2 and 3", () => {
  it("another colony gives another ranking, and a finding changes it", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await tellSigns(page, site);
    await toQuestion(page, 2);
    await page.locator(".causes circle").first().waitFor();
    const before = await page.locator(".causes").textContent();
    await page.getByLabel("WB-01").check();
    await page.waitForFunction((text) => document.querySelector(".causes")?.textContent !== text, before);
    await device.close();
  });

  it("a look goes to the yard list and a sample becomes labelled vials", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await tellSigns(page, site);
    await toQuestion(page, 3);
    await page
      .getByRole("button", { name: /^To yard list/ })
      .first()
      .click();
    await page.getByText("On the yard list").waitFor();
    await page.getByLabel("Must not be missed").fill("10");
    // The smallest n with 0.9^n ≤ 0.05 is 29.
    await page.getByText("29 to read").waitFor();
    await page.getByRole("button", { name: "Label 3 vials" }).click();
    await page.locator(".vial-labels .code").nth(2).waitFor();
    expect(await page.locator(".vial-labels .code").first().textContent()).toMatch(/^TV\d\d-\d{4}-[A-Z]$/);
    // What is labelled is said, leads on, and more are asked for before they are made.
    await page.getByText("3 vials are labelled").waitFor();
    await page.getByRole("button", { name: "Label more" }).click();
    await page.getByText("Label 3 further vials?").waitFor();
    await page.getByRole("button", { name: "No, leave it" }).click();
    expect(await page.locator(".vial-labels .code").count()).toBe(3);
    await page
      .getByRole("button", { name: /^Take back/ })
      .first()
      .click();
    await page.getByText("2 vials are labelled").waitFor();
    expect(await page.locator(".vial-labels .code").count()).toBe(2);
    await device.close();
  });
});
