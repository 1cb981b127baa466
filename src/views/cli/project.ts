/** Where the project lies, which version it is, and where its data are kept. */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import type { Io } from "./io.ts";

export interface Project {
  readonly root: string;
  readonly version: string;
}

/** The nearest folder upwards that holds this package: the same from the sources and from the built program. */
export function project(from: string = path.dirname(fileURLToPath(import.meta.url))): Project {
  for (let folder = from; ; folder = path.dirname(folder)) {
    const file = path.join(folder, "package.json");
    if (existsSync(file)) {
      const { name, version } = JSON.parse(readFileSync(file, "utf8")) as { name?: string; version?: string };
      if (name === "skepsis") return { root: folder, version: version ?? "unknown" };
    }
    if (folder === path.dirname(folder)) throw new Error("The program does not lie inside its own package.");
  }
}

/** `SKEPSIS_DATA`, or `.data` in the project. */
export const dataFolder = (io: Pick<Io, "env" | "resolve">): string =>
  io.env.SKEPSIS_DATA ? io.resolve(io.env.SKEPSIS_DATA) : path.join(project().root, ".data");
