/** Members in a real browser: invited, signed in, a phone reported lost; each sees what is his or hers. */
import { readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { decodeJournal } from "../../src/journal/index.ts";
import { readSavedCopy } from "../../src/transfer/index.ts";
import { drawnPasswordEndsAt, hashed } from "../../src/views/service/passwords.ts";
import { photo } from "../journals/file-story.ts";
import { answerFlags, openCase, tellSigns } from "./acts.ts";
import { complaintsOf, freshDevice, objections, openBrowser, type Site, serveBuiltPage } from "./harness.ts";

let browser: Browser;
let site: Site;
beforeAll(async () => {
  [browser, site] = await Promise.all([openBrowser(), serveBuiltPage()]);
  const store = await site.programmes.open("main");
  const password = await hashed("quiet copper lantern");
  const doing = { by: null, at: new Date().toISOString() };
  await store.members.admit({ name: "Rowan Vale", role: "administrator", password }, doing);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

/** What the accessibility rules object to, and whether anything is wider than the screen. */
async function troubles(page: Page): Promise<readonly string[]> {
  const beyond = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  return [...(await objections(page)), ...(beyond > 0 ? [`${beyond} px wider than the screen`] : [])];
}

it("an administrator invites a keeper; the keeper's phone is lost; each sees what is theirs", async () => {
  const desk = await freshDevice(browser, "desk");
  const office = await desk.newPage();
  const complaints = complaintsOf(office);
  await office.goto(`${site.address}/cases`);
  await office.getByRole("link", { name: "Sign in" }).first().click();
  await office.locator("main h1").first().waitFor();
  expect(await troubles(office)).toEqual([]);
  await office.getByLabel("Name", { exact: true }).fill("Rowan Vale");
  await office.getByLabel("Password").fill("not the password");
  await office.getByRole("button", { name: "Sign in", exact: true }).click();
  await office.getByText("Name and password do not go together").waitFor();
  await office.getByLabel("Password").fill("quiet copper lantern");
  await office.getByRole("button", { name: "Sign in", exact: true }).click();
  await office.getByText("You are Rowan Vale, administrator").waitFor();

  await office.getByLabel("Role", { exact: true }).selectOption("keeper");
  await office.getByRole("button", { name: "Make an invitation" }).click();
  const link = await office.getByLabel("Link of the invitation").inputValue();
  expect(link).toContain(`${site.address}/invitation#main.`);
  expect(await troubles(office)).toEqual([]);

  const pocket = await freshDevice(browser, "phone");
  const phone = await pocket.newPage();
  await phone.goto(link);
  await phone.getByText("You are invited as keeper").waitFor();
  expect(phone.url()).toBe(`${site.address}/invitation`);
  expect(await troubles(phone)).toEqual([]);
  await phone.getByLabel("Your name").fill("Ash Moor");
  await phone.getByLabel("Choose a password").fill("short");
  await phone.getByRole("button", { name: "Become a member" }).click();
  await phone.getByText("A password needs 12 to 256 signs").waitFor();
  await phone.getByLabel("Choose a password").fill("green kettle on the hill");
  await phone.getByLabel("What is this device called?").fill("Ash's phone");
  await phone.getByRole("button", { name: "Become a member" }).click();
  await phone.getByText("You are Ash Moor, keeper").waitFor();
  expect(await troubles(phone)).toEqual([]);
  await phone.goto(`${site.address}/records/apart`);
  await phone.getByText("What is kept apart is settled by a reviewer or an administrator.").waitFor();
  await tellSigns(phone, site);
  const entries = async () => (await (await site.programmes.open("main")).all()).map(({ header }) => header.kind);
  await expect.poll(entries, { timeout: 20_000 }).toContain("case-opened");

  await office.goto(`${site.address}/cases`);
  await office.locator(".cases-table tbody tr").first().waitFor();
  await office.goto(`${site.address}/members`);
  await office.getByRole("button", { name: "Ash's phone is lost" }).click();
  await office.getByRole("button", { name: "It is lost: end its session" }).click();
  await office.getByRole("button", { name: "Ash's phone is back" }).waitFor();
  await office.getByRole("link", { name: "Who did what: the audit" }).click();
  await office.getByText("reported a device lost, of Ash Moor").waitFor();
  await office.getByText("wrote case opened about").first().waitFor();
  expect(await troubles(office)).toEqual([]);
  await office.goto(`${site.address}/members`);
  await office.getByRole("link", { name: "Kept apart, for a person to judge" }).click();
  await office.getByText("Nothing is kept apart.").waitFor();

  await phone.goto(`${site.address}/cases`);
  await phone.getByText("This device was reported lost").waitFor();
  expect(await phone.locator(".cases-table tbody tr").count()).toBe(0);
  const kept = await phone.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name));
  expect(kept.filter((name) => name?.startsWith("skepsis-main "))).toEqual([]);

  await office.goto(`${site.address}/members`);
  await office.getByRole("button", { name: "Sign out", exact: true }).click();
  await office.getByText("Shall the records of this device stay?").waitFor();
  expect(await troubles(office)).toEqual([]);
  // Going on at once would cut the request off.
  await Promise.all([
    office.waitForResponse((reply) => reply.request().method() === "DELETE" && reply.url().endsWith("/api/session")),
    office.getByRole("button", { name: "Sign out, let them stay" }).click(),
  ]);
  await office.goto(`${site.address}/cases`);
  await office.getByText("You are not signed in").waitFor();
  expect(await office.locator(".cases-table tbody tr").count()).toBe(0);
  expect(complaints.filter((line) => !/40[139]/.test(line))).toEqual([]);
  await Promise.all([desk.close(), pocket.close()]);
});

it("[AC37] on signing out records go only when all was sent, and the session ends only with the service", async () => {
  const desk = await freshDevice(browser, "desk");
  const page = await desk.newPage();
  const signIn = async () => {
    await page.goto(`${site.address}/sign-in`);
    await page.getByLabel("Name", { exact: true }).fill("Rowan Vale");
    await page.getByLabel("Password").fill("quiet copper lantern");
    await page.getByRole("button", { name: "Sign in", exact: true }).click();
    await page.getByText("You are Rowan Vale").waitFor();
  };
  const kept = async () =>
    page.evaluate(async () => (await indexedDB.databases()).flatMap(({ name }) => (name?.includes(" ") ? [name] : [])));
  const go = page.getByRole("button", { name: "Sign out, remove them from this device" });
  await signIn();
  await openCase(page, site);
  const address = page.url();
  await answerFlags(page);
  const files = (url: URL) => url.pathname.includes("/files/");
  await page.route(files, (route) => route.abort());
  const picture = Buffer.from(photo);
  await page
    .getByLabel("Add a photo: whole apiary")
    .setInputFiles({ name: "p.jpg", mimeType: "image/jpeg", buffer: picture });
  await page.getByText("The photo is kept on this device.").waitFor();
  await page.locator(".kept-line").getByText("1 file not yet sent").waitFor({ timeout: 20_000 });

  await page.goto(`${site.address}/members`);
  await page.getByRole("button", { name: "Sign out", exact: true }).click();
  const told = page.locator(".sign-out");
  await told.getByText("1 photo or voice note has not been sent and would be lost").waitFor();
  expect(await go.count()).toBe(0);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    told.getByRole("button", { name: /^Save a copy/ }).click(),
  ]);
  const copy = readSavedCopy(new Uint8Array(readFileSync(await download.path())));
  expect([copy?.files.length, decodeJournal(copy?.journal ?? "").ok]).toEqual([1, true]);
  expect(await troubles(page)).toEqual([]);

  await page.route("**/api/session", (route) => route.abort());
  await page.getByRole("button", { name: "Sign out, let them stay" }).click();
  await told.getByText("so you stay signed in").waitFor();
  expect(await kept()).toHaveLength(1);
  await page.unroute("**/api/session");

  await page.unroute(files);
  await page.getByRole("button", { name: "Not now" }).click();
  const sent = async () => {
    await page.getByRole("button", { name: "Sign out", exact: true }).click();
    await page.getByRole("button", { name: "Not now" }).waitFor();
    const isSent = (await go.count()) > 0;
    if (!isSent) await page.getByRole("button", { name: "Not now" }).click();
    return isSent;
  };
  await page.evaluate(() => window.dispatchEvent(new Event("online"))); // a hint to try now
  await expect.poll(sent, { timeout: 30_000 }).toBe(true);
  await go.click();
  await page.getByRole("button", { name: "Sign in", exact: true }).waitFor();
  expect(await kept()).toEqual([]);
  expect(
    await page.evaluate(() => Object.keys(localStorage).filter((key) => /^skepsis\.(member|kept main)/.test(key))),
  ).toEqual([]);
  const report = (await (await site.programmes.open("main")).check()).files;
  expect(report).toMatchObject({ whole: 1, waiting: [] });

  await signIn();
  const data = page.getByRole("region", { name: "Your data" }).getByRole("button", { name: "Save my data" });
  const [given] = await Promise.all([page.waitForEvent("download"), data.click()]);
  const inside = unzipSync(new Uint8Array(readFileSync(await given.path())));
  expect(Object.keys(inside)).toEqual(["data.json", `files/${copy?.files[0]?.sha256}`]);
  await page.goto(address);
  await page.getByRole("button", { name: /^Not on this device/ }).waitFor();
  expect(await page.getByText("The browser has cleared the records").count()).toBe(0);

  await page.goto(`${site.address}/members`);
  await page.evaluate(() => {
    IDBFactory.prototype.deleteDatabase = () => {
      throw new DOMException("the browser lets nothing go");
    };
  });
  await expect.poll(sent, { timeout: 30_000 }).toBe(true);
  await go.click();
  await page.getByText("they are still on this device").waitFor();
  expect(await kept()).toHaveLength(1);
  expect(await troubles(page)).toEqual([]);
  await desk.close();
});

it("[AC35] a passkey is made with the password, signs in alone, and works no more when it was taken away", async () => {
  const desk = await freshDevice(browser, "desk");
  const page = await desk.newPage();
  // A passkey is bound to a name, and 127.0.0.1 is none.
  const address = site.address.replace("127.0.0.1", "localhost");
  const session = await desk.newCDPSession(page);
  await session.send("WebAuthn.enable");
  await session.send("WebAuthn.addVirtualAuthenticator", {
    options: {
      ...{ protocol: "ctap2", transport: "internal", hasResidentKey: true, hasUserVerification: true },
      ...{ isUserVerified: true, automaticPresenceSimulation: true },
    },
  });
  await page.goto(`${address}/sign-in`);
  await page.getByLabel("Name", { exact: true }).fill("Rowan Vale");
  await page.getByLabel("Password").fill("quiet copper lantern");
  await page.getByRole("button", { name: "Sign in", exact: true }).click();
  await page.getByText("You are Rowan Vale").waitFor();
  const make = page.getByRole("region", { name: "Passkeys" });
  await make.getByLabel("Your password now").fill("not the password");
  await make.getByRole("button", { name: "Make a passkey" }).click();
  await make.getByText("Name and password do not go together").waitFor();
  await make.getByLabel("Your password now").fill("quiet copper lantern");
  await make.getByRole("button", { name: "Make a passkey" }).click();
  await make.getByRole("button", { name: "Take away: This device" }).waitFor();
  expect(await troubles(page)).toEqual([]);
  const again = async () => {
    await page.getByRole("button", { name: "Sign out", exact: true }).click();
    await page.getByRole("button", { name: "Sign out, let them stay" }).click();
    await page.getByRole("button", { name: "Sign in with a passkey" }).waitFor();
    await page.goto(`${address}/sign-in`);
    await page.getByRole("button", { name: "Sign in with a passkey" }).click();
  };
  await again();
  await page.getByText("You are Rowan Vale, administrator").waitFor();
  await make.getByRole("button", { name: "Take away: This device" }).click();
  await make.getByLabel("Your password, to take away This device").fill("not the password");
  expect(await troubles(page)).toEqual([]);
  await make.getByRole("button", { name: "Take it away" }).click();
  await make.getByText("Name and password do not go together").waitFor();
  await make.getByLabel("Your password, to take away This device").fill("quiet copper lantern");
  await make.getByRole("button", { name: "Take it away" }).click();
  await make.getByRole("button", { name: "Take away: This device" }).waitFor({ state: "detached" });
  await again();
  await page.getByText("The passkey was not accepted").waitFor();
  const acts = (await (await site.programmes.open("main")).all()).map(({ body }) => body?.data.act);
  expect(acts).toEqual(expect.arrayContaining(["passkey-added", "passkey-removed"]));
  await desk.close();
});

it("[AC38] who comes with a drawn password chooses another at once, and signs in with that", async () => {
  const store = await site.programmes.open("main");
  const drawn = "abcde-fghij-kmnpq-rstuv";
  const at = new Date().toISOString();
  const given = { name: "Yew Moor", role: "reader", password: await hashed(drawn) };
  await store.members.admit({ ...given, passwordEndsAt: drawnPasswordEndsAt(at) }, { by: null, at });
  const pocket = await freshDevice(browser, "phone");
  const page = await pocket.newPage();
  await page.goto(`${site.address}/sign-in`);
  await page.getByLabel("Name", { exact: true }).fill("Yew Moor");
  await page.getByLabel("Password", { exact: true }).fill(drawn);
  const send = page.getByRole("button", { name: "Sign in", exact: true });
  await send.click();
  await page.getByText("This password was drawn for you").waitFor();
  expect(await troubles(page)).toEqual([]);
  const own = page.getByLabel("Choose your own password");
  await own.fill("short");
  await send.click();
  await page.getByText("A password needs 12 to 256 signs").waitFor();
  await own.fill("green kettle on the hill");
  await send.click();
  await page.getByText("You are Yew Moor, reader").waitFor();
  await pocket.close();
});

it("a reader is offered nothing that the service would not take", async () => {
  const store = await site.programmes.open("main");
  const password = await hashed("quiet copper lantern");
  await store.members.admit({ name: "Oak Moor", role: "reader", password }, { by: null, at: new Date().toISOString() });
  const desk = await freshDevice(browser, "desk");
  const page = await desk.newPage();
  await page.goto(`${site.address}/sign-in`);
  await page.getByLabel("Name", { exact: true }).fill("Oak Moor");
  await page.getByLabel("Password").fill("quiet copper lantern");
  await page.getByRole("button", { name: "Sign in", exact: true }).click();
  await page.getByText("You are Oak Moor, reader").waitFor();
  await page.goto(`${site.address}/cases`);
  await page.getByRole("link", { name: "Bench" }).waitFor();
  expect(await page.getByRole("link", { name: "Open a case" }).count()).toBe(0);
  await page.goto(`${site.address}/cases/open`);
  await page.getByText("Your role in this programme does not include this").waitFor();
  await page.goto(`${site.address}/members/audit`);
  await page.getByText("The audit is for administrators").waitFor();
  await page.goto(`${site.address}/evidence/changes`);
  await page.locator("main.own h1").waitFor();
  expect(await page.locator("main.own form").count()).toBe(0);
  await desk.close();
});
