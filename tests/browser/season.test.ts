/** The page Season in a real browser: flags moved by hand and by keys, choices compared, stopped, without a net, with bad input. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { dynamics } from "../../src/reasoning/index.ts";
import { complaintsOf, freshDevice, objections, openBrowser, type Site, serveBuiltPage } from "./harness.ts";
import { openDemonstration } from "./pages.ts";

const assets = path.join(import.meta.dirname, "..", "..", "dist", "web", "assets");

let site: Site;
let browser: Browser;
beforeAll(async () => {
  [site, browser] = await Promise.all([serveBuiltPage(), openBrowser()]);
});
afterAll(async () => {
  await browser.close();
  await site.close();
});

const ofColony = (colony: string) => `/season?case=demonstration-case-tv-26-014&colony=demonstration-${colony}`;

async function openSeason(page: Page, colony = "wb-03"): Promise<void> {
  await openDemonstration(page, site.address);
  await page.goto(`${site.address}${ofColony(colony)}`);
  await page.locator("#h-tells").waitFor();
}
const reckoned = (page: Page) => page.locator('[aria-busy="true"]').waitFor({ state: "detached" });
const addFirst = async (page: Page, name: string) => {
  await page.getByRole("group", { name: "Add a choice" }).getByRole("button", { name }).click();
  await page.getByRole("slider").first().waitFor();
  await reckoned(page);
};
const answer = (page: Page) => page.locator("h1").textContent();

describe.each(["phone", "desk"] as const)("Season on a %s", (size) => {
  it("a flag is dragged, moved by keys and by its date field; the sentence and the course follow", async () => {
    const device = await freshDevice(browser, size);
    const page = await device.newPage();
    const complaints = complaintsOf(page);
    await openSeason(page);
    expect(await answer(page)).toMatch(/^Without action about \d to \d of 10 bees infested on 31 March 2027;/);
    await addFirst(page, "Formic acid");
    const flag = page.getByRole("slider", { name: "Formic acid, first day" });
    await page.getByText(/With formic acid from 26 November about/).waitFor();
    await flag.focus();
    await page.keyboard.press("ArrowRight");
    await page.getByText(/With formic acid from 27 November about/).waitFor();
    await page.keyboard.press("PageUp");
    await page.getByText(/With formic acid from 4 December about/).waitFor();
    expect(await flag.getAttribute("aria-valuetext")).toBe("4 December 2026");
    await page.keyboard.press("Home");
    await page.getByText(/With formic acid from 19 November about/).waitFor();
    await page.getByLabel("Formic acid, first day", { exact: true }).and(page.locator("input")).fill("2026-12-20");
    await page.getByText(/With formic acid from 20 December about/).waitFor();
    await page.getByRole("button", { name: "One day earlier: Formic acid, first day" }).click();
    await page.getByText(/With formic acid from 19 December about/).waitFor();
    await reckoned(page);
    await flag.scrollIntoViewIfNeeded();
    const box = await flag.boundingBox();
    if (!box) throw new Error("no flag");
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
    await page.mouse.move(box.x + 22, box.y + 22);
    await page.mouse.down();
    await page.mouse.move(box.x + 42, box.y + 22, { steps: 4 });
    await page.mouse.up();
    await page.getByText(/With formic acid from .* (December|January|February) about/).waitFor();
    expect(await flag.getAttribute("aria-valuetext")).not.toBe("19 December 2026");
    await reckoned(page);
    expect(await objections(page)).toEqual([]);
    // Away and back: what was put together is still there.
    const left = await answer(page);
    await page.getByRole("link", { name: "To case TV-26-014" }).click();
    await page.locator("#h-weigh").waitFor();
    await page.goBack();
    await page.getByRole("slider").first().waitFor();
    await reckoned(page);
    expect(await answer(page)).toBe(left);
    expect(complaints).toEqual([]);
    await device.close();
  });

  it("choices stand beside each other; the picture has its table, SVG and CSV", async () => {
    const device = await freshDevice(browser, size);
    const page = await device.newPage();
    await openSeason(page);
    await addFirst(page, "Menthol");
    await page.getByRole("group", { name: "Another choice" }).getByRole("button", { name: "Patty" }).click();
    const rows = page.locator(".by-row tbody tr");
    await rows.nth(2).waitFor();
    await reckoned(page);
    expect(await rows.locator("th").allTextContents()).toEqual([
      "without action",
      "menthol from 26 November",
      "patty 26 November to 9 February",
    ]);
    expect(await rows.nth(1).textContent()).toContain("hardly any difference");
    // Menthol in the cold: said beside its flag, once it is shown.
    await page.getByRole("radio", { name: "menthol from 26 November" }).check();
    await page.getByText("menthol hardly leaves its crystals").waitFor();
    await page.locator("#h-tells").waitFor();
    await page.getByRole("button", { name: "Table", exact: true }).click();
    await page.locator(".twin-table tbody tr").nth(20).waitFor();
    await page.getByRole("button", { name: "Picture", exact: true }).click();
    const saved = async (name: string) => {
      const download = page.waitForEvent("download");
      await page.getByRole("button", { name, exact: true }).click();
      return readFileSync((await (await download).path()) ?? "", "utf8");
    };
    const svg = await saved("SVG");
    expect(svg).toMatch(/^<svg[^>]*xmlns/);
    expect(svg).not.toContain("NaN");
    expect(svg).not.toContain("var(--bronze)");
    const csv = await saved("CSV");
    expect(csv.split("\n")[0]).toMatch(/^.?Day,Choice,"?Infested in 100, 5 %/);
    expect(csv).not.toContain("NaN");
    await device.close();
  });
});

describe("Season", () => {
  it("stopped, keeps what it had and says what is missing; goes on when asked", async () => {
    const device = await freshDevice(browser);
    const page = await device.newPage();
    await openSeason(page);
    // A long season takes long enough to be stopped.
    await page.getByLabel("Last day").fill("2028-09-30");
    await page.getByRole("button", { name: "Reckon the season" }).click();
    await page
      .getByText(/infested on 30 September 2028/)
      .first()
      .waitFor();
    await addFirst(page, "New queen");
    for (const name of ["Patty", "Menthol", "New queen"])
      await page.getByRole("group", { name: "Another choice" }).getByRole("button", { name, exact: true }).click();
    await page.getByRole("button", { name: "Stop", exact: true }).click();
    await page.getByText(/^Stopped/).waitFor();
    // What is in the workers' hands when it is stopped is told by nobody: the page is at rest, and stays so.
    const isBusy = () => page.locator('[aria-busy="true"], [data-old="true"]').count();
    const rest: number[] = [];
    for (let look = 0; look < 15; look++) {
      rest.push(await isBusy());
      await page.waitForTimeout(100);
    }
    expect(rest).toEqual(rest.map(() => 0));
    const kept = await page.locator(".by-row tbody tr").count();
    expect(kept).toBeGreaterThanOrEqual(1);
    expect(await answer(page)).toMatch(/^Without action about/);
    await page.getByRole("button", { name: "Reckon again" }).click();
    await page.locator(".by-row tbody tr").nth(4).waitFor();
    await reckoned(page);
    await device.close();
  });

  it("from the form alone: bad input is told at its field in words, never as a number that is none", async () => {
    const device = await freshDevice(browser, "phone");
    const page = await device.newPage();
    await page.goto(`${site.address}/season`);
    await page.getByText("Where does the infestation go from here?").waitFor();
    const press = () => page.getByRole("button", { name: "Reckon the season" }).click();
    await page.getByLabel("Bees in the colony then").fill("20");
    await page.getByLabel("Mean temperature of the twelve months").fill("1 2 3");
    await page.getByLabel("Counts: day").fill("soon 3 50");
    await press();
    await page.getByText("is no count. Expected").waitFor();
    await page.getByText("3 numbers were read").waitFor();
    expect(await objections(page)).toEqual([]);
    await page.getByLabel("Bees in the colony then").fill("20000");
    await page.getByLabel("Mean temperature of the twelve months").fill("");
    // In July many bees have just emerged; in winter nearly all may be infested.
    const july = `${new Date().getUTCFullYear() - 1}-07-01`;
    const [first] = await page.getByLabel("First day").all();
    const before = (await first?.inputValue()) ?? "";
    await first?.fill(july);
    await page.getByLabel("Bees infested in 100 then").fill("99.9");
    await page.getByLabel("Counts: day").fill("");
    await press();
    await page.getByText("bees just emerged carry no mites").waitFor();
    await page.getByText("This cannot be reckoned yet").waitFor();
    await page.getByLabel("Bees infested in 100 then").fill("8");
    await first?.fill(before);
    await page.getByLabel("Counts: day").fill("2090-01-01 3 50");
    await press();
    await page.getByText("lies outside the days").waitFor();
    await page.getByLabel("Counts: day").fill("");
    await press();
    await page.locator("#h-tells").waitFor();
    await page.getByText("Nothing of this colony is counted yet").waitFor();
    // Two vapours on one day: told at the choice, and what was reckoned before stays in sight.
    await addFirst(page, "Menthol");
    await page.getByRole("group", { name: "Add to this choice" }).getByRole("button", { name: "Formic acid" }).click();
    await page.getByText("What they do together is not known").waitFor();
    // A handful of bees: lost at once, by name.
    await page.getByRole("button", { name: "Take out: Formic acid" }).click();
    await page.getByLabel("Bees in the colony then").fill("500");
    await press();
    await page.getByText(/can hardly keep warm|more likely lost to cold than not/).waitFor();
    expect(await page.locator("body").textContent()).not.toMatch(/NaN|Infinity|undefined/);
    await device.close();
  });

  it("offers the counted colonies of open cases, each with its own season", async () => {
    const device = await freshDevice(browser, "phone");
    const page = await device.newPage();
    await openDemonstration(page, site.address);
    await page.getByRole("navigation", { name: "Areas" }).getByRole("link", { name: "Season" }).click();
    await page.getByRole("link", { name: "WB-11, case TV-26-014" }).click();
    await page.locator("#h-tells").waitFor();
    expect(await answer(page)).toMatch(/^Without action about .* infested on 31 March 2027/);
    await page.getByRole("combobox", { name: "Colony" }).selectOption({ label: "WB-07" });
    await page.getByText("Without further action about").waitFor();
    await device.close();
  });

  it("works without a net, and is reached from question 5", async () => {
    const device = await freshDevice(browser, "phone", { offlineReady: true });
    const page = await device.newPage();
    await openDemonstration(page, site.address);
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await page.reload();
    await page.locator("h1").waitFor();
    await device.setOffline(true);
    await page.goto(`${site.address}/cases/demonstration-case-tv-26-014/5`);
    await page.locator(".season-ahead svg").waitFor();
    expect(await page.locator(".season-ahead").textContent()).toMatch(
      /Without further action about .* infested on 31 March 2027/,
    );
    await page.getByRole("link", { name: "Season: move the days and compare" }).click();
    await page.locator("#h-tells").waitFor();
    await page.getByText("Done already, in every course: menthol from 8 August.").waitFor();
    await page.getByText(/after menthol began. Dead mites stay/).waitFor();
    await device.close();
  });
});

describe("uniting on the page", () => {
  it("is not reckoned before the other colony's bees and mites are typed; then it stands beside the rest", async () => {
    const device = await freshDevice(browser, "phone");
    const page = await device.newPage();
    await openSeason(page);
    await page.getByRole("group", { name: "Add a choice" }).getByRole("button", { name: "Uniting" }).click();
    await page.getByText("Say how many bees it has").waitFor();
    const bees = page.getByLabel(/^Bees in it on 25 November 2026/);
    expect(await bees.inputValue()).toBe("");
    expect(await answer(page)).not.toContain("united");
    await bees.fill("9000");
    await page.getByLabel(/^Infested of 100 on/).fill("10");
    await page.keyboard.press("Enter");
    await page.getByText(/With a colony of 9,000 bees united on 26 November about/).waitFor();
    await reckoned(page);
    expect(await objections(page)).toEqual([]);
    await page.getByRole("slider", { name: "Uniting, day" }).focus();
    await page.keyboard.press("ArrowRight");
    await page.getByText(/With a colony of 9,000 bees united on 27 November about/).waitFor();
    // Another counted colony of the case: its count comes along, its bees are asked for again.
    await page.getByLabel("The other colony").selectOption({ label: "WB-07" });
    await page.getByText("Its last count: 5 of 50 on 12 October 2026.").waitFor();
    await page.getByText("Say how many bees it has").waitFor();
    // Going away and coming back loses nothing.
    await page.getByLabel(/^Bees in it on 11 October 2026/).fill("12000");
    await page.keyboard.press("Enter");
    await page.getByText(/With a colony of 12,000 bees on 11 October united on 27 November about/).waitFor();
    await page.getByRole("link", { name: "Cases", exact: true }).click();
    await page.locator(".cases-table").waitFor();
    await page.goBack();
    await page.getByText(/With a colony of 12,000 bees on 11 October united on 27 November about/).waitFor();
    await device.close();
  });

  it("is not offered, nor is any other action, while something is to be reported", async () => {
    const device = await freshDevice(browser, "desk");
    const page = await device.newPage();
    await openDemonstration(page, site.address);
    await page.goto(`${site.address}/season?case=demonstration-case-tv-26-022&colony=demonstration-gh-01`);
    await page.getByText("No action is weighed beside what must be reported").first().waitFor();
    expect(await page.getByRole("group", { name: "Add a choice" }).count()).toBe(0);
    expect(await page.locator("#h-tells").count()).toBe(0);
    // What was put together before the stop came waits: it is neither weighed nor in the way of the forecast.
    const before = [
      [{ kind: "menthol", from: "2026-12-01" }],
      [
        {
          ...{ kind: "unite", from: "2026-11-26" },
          donor: { start: { date: "2026-11-25", bees: 9000, infestedShare: 0.1, brood: "usual" } },
        },
      ],
    ];
    await page.evaluate(([slot, kept]) => sessionStorage.setItem(slot, kept), [
      "typed season demonstration-case-tv-26-022 demonstration-gh-01",
      JSON.stringify({ choices: JSON.stringify(before) }),
    ] as const);
    await page.reload();
    await page.locator(".by-row tbody tr").first().waitFor();
    await reckoned(page);
    expect(await answer(page)).toMatch(/^Without action about [^W]*$/);
    expect(await page.locator(".by-row tbody tr").count()).toBe(1);
    expect(await page.locator("p.trouble").count()).toBe(0);
    expect(await page.locator("#h-flags, .choice-acts, [role=slider]").count()).toBe(0);
    await device.close();
  });
});

describe("the workers of Season", () => {
  const question: dynamics.ChoicesQuestion = {
    site: {},
    start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" },
    actions: [],
    counts: [{ date: "2026-08-20", infested: 4, examined: 50 }],
    decideOn: "2026-08-25",
    until: "2027-01-15",
    draws: 203,
    seed: 3,
    line: 0.2,
    choices: [
      { name: "menthol", actions: [{ kind: "menthol", from: "2026-09-01" }] },
      { name: "new queen", actions: [{ kind: "requeen", from: "2026-09-01", susceptibility: 0.7 }] },
    ],
  };

  const file = (name: string) => {
    const found = readdirSync(assets).find((each) => each.startsWith(`${name}-`) && each.endsWith(".js"));
    return `/assets/${found ?? expect.fail(`no ${name}`)}`;
  };

  /** The whole answer of the worker on a device with so many cores, as text that holds every digit; the worker stays. */
  const answerOn = (page: Page, cores: number): Promise<string> =>
    page.evaluate(
      ([address, message]) =>
        new Promise<string>((resolve, reject) => {
          const worker = new Worker(address, { type: "module" });
          const told: unknown[] = [];
          worker.onerror = ({ message }) => reject(new Error(message));
          worker.onmessage = ({ data }) => {
            if (data.kind !== "progress") told.push(data);
            if (data.kind === "done") resolve(JSON.stringify(told));
            if (data.kind === "broke" || data.kind === "unfit") reject(new Error(data.kind));
          };
          worker.postMessage(message);
        }),
      [file("season.worker"), { number: 1, question, cores }] as const,
    );

  /** All numbers in a text, in order. */
  const numbersIn = (text: string) => (text.match(/-?\d+(\.\d+)?(e-?\d+)?/g) ?? []).map(Number);

  it("reckon the same bytes with the kernel in a pool and plainly in one, and the numbers of the service", async () => {
    const device = await freshDevice(browser, "desk");
    const page = await device.newPage();
    const complaints = complaintsOf(page);
    await openSeason(page);
    const plain = await answerOn(page, 1);
    // By the size alone: a difference of texts this long tells nobody anything.
    for (const cores of [2, 4, 16]) expect((await answerOn(page, cores)) === plain).toBe(true);
    const here = dynamics.compareChoices(question, { every: 3 });
    if (!here.ok) throw new Error("no comparison");
    const { past, choices, settling, learnt } = here.value;
    const told = [
      { number: 1, kind: "past", past },
      ...choices.map((outcome) => ({ number: 1, kind: "choice", outcome })),
      { number: 1, kind: "done", settling, learnt, problems: here.problems },
    ];
    const [theirs, ours] = [numbersIn(plain), numbersIn(JSON.stringify(told))];
    expect(theirs.length).toBe(ours.length);
    const most = theirs.reduce((sum, each, at) => {
      const other = ours[at] as number;
      return Math.max(sum, Math.abs(each - other) / Math.max(Math.abs(other), 1e-6));
    }, 0);
    // Engines may differ in the last bit of an exponential; a day carries it on.
    expect(most).toBeLessThan(1e-9);
    expect(complaints).toEqual([]);
    await device.close();
  });

  it("alone may compile WebAssembly; the page and the worker that asks them may not", async () => {
    const device = await freshDevice(browser, "desk");
    const page = await device.newPage();
    await openSeason(page);
    const policies = await page.evaluate(
      (addresses) =>
        Promise.all(
          addresses.map((address) => fetch(address).then(({ headers }) => headers.get("content-security-policy"))),
        ),
      [file("season-piece.worker"), file("season.worker")],
    );
    expect(policies[0]).toContain("'wasm-unsafe-eval'");
    expect(policies[1]).not.toContain("eval");
    // A module without a function: compiling it is allowed or not.
    const mayCompile = () => {
      try {
        new WebAssembly.Module(Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0));
        return true;
      } catch {
        return false;
      }
    };
    expect(await page.evaluate(mayCompile)).toBe(false);
    const allowed = await Promise.all(
      page
        .workers()
        .map(async (worker) => [path.basename(new URL(worker.url()).pathname), await worker.evaluate(mayCompile)]),
    );
    expect(allowed.length).toBeGreaterThan(2);
    for (const [name, may] of allowed) expect(`${name} ${may}`).toMatch(/^season(-piece.* true|\.worker.* false)$/);
    await device.close();
  });
});
