/** From a fresh clone to the first answered page, and the second start, as a newcomer meets them. */
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Figure } from "./figure.ts";

const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));
const port = 4791;

/** Starts the project, waits until the page answers, stops it; seconds from start to answer. */
async function startOnce(folder: string): Promise<number> {
  const began = performance.now();
  const child = spawn("npm", ["start"], {
    cwd: folder,
    env: { ...process.env, SKEPSIS_PORT: String(port) },
    stdio: "ignore",
    detached: true,
  });
  try {
    for (let tries = 0; tries < 1800; tries += 1) {
      const answer = await fetch(`http://127.0.0.1:${port}/`).catch(() => null);
      if (answer?.ok && (await answer.text()).includes("<script")) return (performance.now() - began) / 1000;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    throw new Error("the page did not answer within three minutes");
  } finally {
    if (child.pid) process.kill(-child.pid, "SIGTERM");
    await new Promise((resolve) => setTimeout(resolve, 1500));
  }
}

/** Clones what is committed into a new folder and starts it twice. Needs the package registry. */
export async function cloneToPage(): Promise<readonly Figure[]> {
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-clone-"));
  try {
    execFileSync("git", ["clone", "--quiet", root, folder]);
    return [
      { what: "fresh clone to first answered page", value: await startOnce(folder), unit: "s", goal: 60 },
      { what: "second start to answered page", value: await startOnce(folder), unit: "s", goal: 5 },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
