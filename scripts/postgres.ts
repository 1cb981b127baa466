/** The PostgreSQL that the tests start: found where Debian puts it, or installed when that was asked for. */
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync } from "node:fs";
import path from "node:path";
import { maySetUp } from "./browser.ts";

const debian = "/usr/lib/postgresql";

/** Where PostgreSQL's programs lie: the newest that Debian keeps; SKEPSIS_POSTGRES names another folder. */
export function postgresPrograms(): string | null {
  const named = process.env.SKEPSIS_POSTGRES;
  const versions = existsSync(debian) ? readdirSync(debian).sort((one, other) => Number(other) - Number(one)) : [];
  const folders = named === undefined ? versions.map((each) => path.join(debian, each, "bin")) : [named];
  return folders.find((folder) => ["initdb", "postgres"].every((name) => existsSync(path.join(folder, name)))) ?? null;
}

/** The folder of the programs, installed first when that may be; or why there is none, and what to do. */
export function ensurePostgres(): { readonly programs: string } | { readonly missing: string } {
  let programs = postgresPrograms();
  if (programs === null && process.env.SKEPSIS_POSTGRES === undefined && maySetUp()) {
    process.stderr.write("Installing PostgreSQL for the tests of the store …\n");
    const quiet = { stdio: ["ignore", "ignore", "inherit"] as ["ignore", "ignore", "inherit"] };
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    spawnSync("apt-get", ["update", "-qq"], { ...quiet, env });
    spawnSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "postgresql"], { ...quiet, env });
    programs = postgresPrograms();
  }
  if (programs !== null) return { programs };
  const where = process.env.SKEPSIS_POSTGRES ?? `${debian}/*/bin`;
  return {
    missing: `there is no PostgreSQL in ${where}. On Debian: apt-get install postgresql (or run as root with SKEPSIS_SETUP=1). Elsewhere name the folder of its programs by SKEPSIS_POSTGRES.`,
  };
}
