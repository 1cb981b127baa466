/** A photo and a voice note in a real browser: kept without a net, freed of their place, sent, and seen on another device. */
import type { Browser, Page } from "playwright-core";
import { chromium } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { browserPath } from "../../scripts/browser.ts";
import { fileNamedBy, isFreeOfTags } from "../../src/journal/index.ts";
import { answerFlags, openCase } from "./acts.ts";
import { complaintsOf, freshDevice, objections, type Site, serveBuiltPage } from "./harness.ts";

let browser: Browser;
let site: Site;
beforeAll(async () => {
  site = await serveBuiltPage();
  browser = await chromium.launch({
    executablePath: browserPath,
    args: [
      ...["--no-sandbox", "--disable-gpu", "--no-first-run"],
      ...["--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream"],
    ],
  });
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

/** A picture of 3000 by 1500 pixels as a camera writes it, with the place in its tags. Invented. */
async function cameraPhoto(page: Page): Promise<Buffer> {
  const drawn = await page.evaluate(() => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [3000, 1500];
    const pen = canvas.getContext("2d");
    if (!pen) throw new Error("no pen");
    for (let row = 0; row < 30; row += 1) {
      pen.fillStyle = `rgb(${row * 8} 120 ${255 - row * 8})`;
      pen.fillRect(0, row * 50, 3000, 50);
    }
    return canvas.toDataURL("image/jpeg", 0.9);
  });
  const plain = Buffer.from(drawn.split(",")[1] ?? "", "base64");
  const tag = Buffer.from("Exif\0\0GPS 46.654321 N");
  return Buffer.concat([plain.subarray(0, 2), Buffer.from([0xff, 0xe1, 0, tag.length + 2]), tag, plain.subarray(2)]);
}

const filed = async () => {
  const store = await site.programmes.open("main");
  return { store, report: (await store.check()).files };
};

it("is kept without a net, holds no place, is sent after the entries and seen on another device", async () => {
  const pocket = await freshDevice(browser, "phone", { offlineReady: true });
  const phone = await pocket.newPage();
  const complaints = complaintsOf(phone);
  await openCase(phone, site);
  await answerFlags(phone);
  const address = phone.url();
  const photo = await cameraPhoto(phone);
  await phone.evaluate(async () => void (await navigator.serviceWorker.ready));
  await phone.reload();
  const part = phone.getByRole("region", { name: "Photos and voice notes" });
  await part.waitFor();
  await pocket.setOffline(true);
  await part.getByLabel("Of", { exact: true }).selectOption("WB-02");
  await part
    .getByLabel("Add a photo: WB-02")
    .setInputFiles({ name: "comb.svg", mimeType: "image/svg+xml", buffer: photo });
  await part.getByText("The photo is kept on this device.").waitFor();
  await part.getByText("1 file not yet sent").waitFor();
  await part.getByRole("button", { name: "Record a note: WB-02" }).click();
  await part.getByText("Recording 0:01").waitFor();
  await part.getByRole("button", { name: "Stop and keep" }).click();
  await part.getByText("2 files not yet sent").waitFor();
  expect(await objections(phone)).toEqual([]);
  expect(await phone.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);

  // The page is closed without a word and opened again, still without a net.
  await phone.close({ runBeforeUnload: false });
  const again = await pocket.newPage();
  await again.goto(address);
  const kept = again.getByRole("region", { name: "Photos and voice notes" });
  await kept.getByRole("button", { name: "Open: Photo, WB-02" }).click();
  await again.getByLabel("What it shows").fill("Comb from the middle");
  const size = await again
    .locator("dialog img")
    .evaluate((image: HTMLImageElement) => [image.naturalWidth, image.naturalHeight]);
  expect(size).toEqual([2048, 1024]);
  await again.getByRole("button", { name: "Keep these words" }).click();
  await kept.getByRole("button", { name: "Comb from the middle", exact: true }).waitFor();
  expect((await filed()).report).toEqual({ whole: 0, waiting: [], erased: 0 });

  await pocket.setOffline(false);
  await expect
    .poll(async () => (await filed()).report, { timeout: 30_000 })
    .toEqual({ whole: 2, waiting: [], erased: 0 });
  await kept.getByText("not yet sent").waitFor({ state: "detached" });
  const { store } = await filed();
  const pictures = [];
  for (const { sha256, mediaType } of (await store.all()).flatMap((entry) => fileNamedBy(entry) ?? [])) {
    const file = await store.files.read(sha256);
    expect(file?.mediaType).toBe(mediaType);
    expect(Buffer.from(file?.bytes ?? []).includes("46.654321")).toBe(false);
    if (mediaType === "image/jpeg") pictures.push(isFreeOfTags(file?.bytes ?? new Uint8Array()));
  }
  expect(pictures).toEqual([true, true]); // the photo, and the photo with words

  const desk = await (await freshDevice(browser)).newPage();
  const others = complaintsOf(desk);
  await desk.goto(`${site.address}/cases`);
  await desk.locator(".cases-table tbody tr").first().waitFor();
  await desk.goto(address);
  const shown = desk.getByRole("region", { name: "Photos and voice notes" });
  for (const left of [1, 0]) {
    await shown
      .getByRole("button", { name: /^Not on this device/ })
      .first()
      .click();
    await expect.poll(() => shown.getByRole("button", { name: /^Not on this device/ }).count()).toBe(left);
  }
  await shown.getByRole("button", { name: "Open: Comb from the middle" }).waitFor();
  await shown.locator("audio").first().waitFor();
  const length = () =>
    shown
      .locator("audio")
      .first()
      .evaluate((sound: HTMLAudioElement) => [sound.error, sound.readyState > 0]);
  await expect.poll(length).toEqual([null, true]);
  expect(await objections(desk)).toEqual([]);
  await shown.getByRole("button", { name: "Open: Comb from the middle" }).click();
  await desk.getByRole("button", { name: "Take it back" }).click();
  await desk.getByRole("button", { name: "Yes, take it back" }).click();
  await shown.getByRole("button", { name: "Open: Comb from the middle" }).waitFor({ state: "detached" });
  expect([...complaints, ...others].filter((each) => !/ERR_INTERNET_DISCONNECTED|Failed to fetch/.test(each))).toEqual(
    [],
  );
});

it("says in words what it cannot keep: a drawing, a page, a picture that nothing here can read", async () => {
  const page = await (await freshDevice(browser)).newPage();
  await openCase(page, site);
  await answerFlags(page);
  const part = page.getByRole("region", { name: "Photos and voice notes" });
  const hostile = "<svg xmlns='http://www.w3.org/2000/svg' onload='window.ran=1'><script>window.ran=1</script></svg>";
  for (const [name, mimeType, text] of [
    ["wing.svg", "image/svg+xml", hostile],
    ["wing.jpg", "image/jpeg", "<!doctype html><script>window.ran=1</script>"],
    ["wing.heic", "image/heic", "....ftypheic"],
  ] as const) {
    await part.getByLabel(/^Add a photo/).setInputFiles({ name, mimeType, buffer: Buffer.from(text) });
    await part.getByText("This device cannot read that picture").waitFor();
    await part.getByLabel("Of", { exact: true }).selectOption("WB-01"); // the words go with what they were about
    await part.getByText("This device cannot read that picture").waitFor({ state: "detached" });
    await part.getByLabel("Of", { exact: true }).selectOption("whole apiary");
    expect(await page.evaluate(() => "ran" in window)).toBe(false);
  }
  await part.getByText("None yet.").waitFor();
});
