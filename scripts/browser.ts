/** The browser that the tests drive: found where Debian puts it, or installed when that was asked for. */
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** Where the tests look for Chromium; SKEPSIS_CHROMIUM names another place. */
export const browserPath = process.env.SKEPSIS_CHROMIUM ?? "/usr/bin/chromium";

/** Whether this machine may be set up: root on Debian, and asked for by CI=true or SKEPSIS_SETUP=1. */
export const maySetUp = (): boolean =>
  process.getuid?.() === 0 &&
  existsSync("/usr/bin/apt-get") &&
  (process.env.CI === "true" || process.env.SKEPSIS_SETUP === "1");

/** 0 when there is a browser, or could be installed; else 1, having said what to do. */
export function ensureBrowser(): number {
  if (existsSync(browserPath)) return 0;
  if (process.env.SKEPSIS_CHROMIUM === undefined && maySetUp()) {
    process.stderr.write("Installing Chromium for the browser tests …\n");
    const quiet = { stdio: ["ignore", "ignore", "inherit"] as ["ignore", "ignore", "inherit"] };
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    spawnSync("apt-get", ["update", "-qq"], { ...quiet, env });
    spawnSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "chromium"], { ...quiet, env });
    if (existsSync(browserPath)) return 0;
  }
  process.stderr.write(
    `The browser tests need Chromium at ${browserPath}. On Debian: apt-get install chromium (or run as root with SKEPSIS_SETUP=1). Elsewhere name one by SKEPSIS_CHROMIUM.\n`,
  );
  return 1;
}
