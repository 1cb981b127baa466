/** Serves the built page, opens it in a real browser, and asks the accessibility rules about it. */
import { readFileSync, statSync } from "node:fs";
import { createServer, type Server } from "node:http";
import path from "node:path";
import axe from "axe-core";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";

const built = path.join(import.meta.dirname, "..", "..", "dist", "web");
const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".webmanifest": "application/manifest+json",
  ".txt": "text/plain",
};

/** The policy the page must be able to live with: nothing inline, nothing from elsewhere. */
const policy =
  "default-src 'self'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; worker-src 'self'; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

export interface Site {
  readonly address: string;
  readonly close: () => Promise<void>;
}

/** A small server of the built page: any address without a file is the page itself; there is no service behind it. */
export async function serveBuiltPage(): Promise<Site> {
  const server: Server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? "/", "http://page");
    if (pathname.startsWith("/api/")) {
      response.writeHead(404).end();
      return;
    }
    const wanted = path.join(built, path.normalize(pathname));
    const isFile = wanted.startsWith(built) && statSync(wanted, { throwIfNoEntry: false })?.isFile() === true;
    const file = isFile ? wanted : path.join(built, "index.html");
    response.writeHead(200, {
      "content-type": types[path.extname(file)] ?? "application/octet-stream",
      "content-security-policy": policy,
    });
    response.end(readFileSync(file));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("the server has no port");
  return {
    address: `http://127.0.0.1:${address.port}`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}

/** Debian's browser, without a window and without talking to anyone. */
export const openBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: process.env.SKEPSIS_CHROMIUM ?? "/usr/bin/chromium",
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

/** A device of its own: nothing kept from another test. Its clock stands in March 2026, so that days are the same each time. */
export async function freshDevice(browser: Browser, size: keyof typeof sizes = "desk"): Promise<BrowserContext> {
  const context = await browser.newContext({
    viewport: sizes[size],
    hasTouch: size !== "desk",
    locale: "en-GB",
    timezoneId: "UTC",
    serviceWorkers: "block",
  });
  await context.clock.setFixedTime(new Date("2026-03-09T16:42:00Z"));
  return context;
}

/** Everything the accessibility rules object to on this page, as lines to read. */
export async function objections(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const rules = (window as unknown as { axe: typeof axe }).axe;
    const result = await rules.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
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
