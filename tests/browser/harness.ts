/** Serves the built page by the service itself, opens it in a real browser, and asks the accessibility rules about it. */
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import axe from "axe-core";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";
import { browserPath } from "../../scripts/browser.ts";
import { openProgrammes, type Programmes, service } from "../../src/views/service/index.ts";

const built = path.join(import.meta.dirname, "..", "..", "dist", "web");

export interface Site {
  readonly address: string;
  /** Its records, met from the side. */
  readonly programmes: Programmes;
  readonly close: () => Promise<void>;
}

/** The service with the built page and an empty data folder of its own. */
export async function serveBuiltPage(): Promise<Site> {
  if (!existsSync(path.join(built, "index.html"))) throw new Error("the page is not built: npm run build");
  const dataFolder = mkdtempSync(path.join(tmpdir(), "skepsis-browser-"));
  const state = { port: 0 };
  const programmes = openProgrammes(dataFolder);
  const app = await service({
    version: "0.0.0",
    programmes,
    page: built,
    port: () => state.port,
  });
  await app.listen({ host: "127.0.0.1", port: 0 });
  const address = app.server.address();
  if (address === null || typeof address === "string") throw new Error("the service has no port");
  state.port = address.port;
  return {
    address: `http://127.0.0.1:${address.port}`,
    programmes,
    async close() {
      app.server.closeAllConnections();
      await app.close();
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
}

/** Debian's browser, without a window and without talking to anyone. */
export const openBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: browserPath,
    headless: true,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });

/** The three sizes every page is looked at in. */
export const sizes = {
  phone: { width: 390, height: 844 },
  tablet: { width: 820, height: 1180 },
  desk: { width: 1440, height: 900 },
} as const;

/**
 * A device of its own: nothing kept from another test. `offlineReady` lets the page keep itself for use without a net;
 * without it every test loads the page anew.
 */
export async function freshDevice(
  browser: Browser,
  size: keyof typeof sizes = "desk",
  { offlineReady = false }: { readonly offlineReady?: boolean } = {},
): Promise<BrowserContext> {
  return browser.newContext({
    viewport: sizes[size],
    hasTouch: size !== "desk",
    locale: "en-GB",
    timezoneId: "UTC",
    serviceWorkers: offlineReady ? "allow" : "block",
  });
}

/** Everything the accessibility rules object to on this page, as lines to read. */
export async function objections(page: Page): Promise<readonly string[]> {
  // Once a document: going from page to page within it keeps the rules.
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const rules = (window as unknown as { axe: typeof axe }).axe;
    const result = await rules.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      resultTypes: ["violations"],
    });
    return result.violations.map((violation) => ({
      id: violation.id,
      help: violation.help,
      where: violation.nodes.map((node) => `${node.target.join(" ")} ${node.failureSummary ?? ""}`),
    }));
  });
  return found.flatMap((violation) => violation.where.map((where) => `${violation.id}: ${violation.help} at ${where}`));
}

/** Collects what the browser complains about: errors of the page and blocked content. */
export function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(String(error)));
  page.on("console", (message) => {
    if (message.type() === "error" && !message.text().includes("404")) complaints.push(message.text());
  });
  return complaints;
}
