/** Two entries under one number, as a phone and its copy write them. */
import type { Entry } from "../../src/journal/index.ts";
import { bee } from "./every-kind.ts";
import { writer } from "./writer.ts";

/** The first is taken in by whoever meets it first; the second is then kept apart. */
export function fork(device = "copied-phone"): readonly [Entry, Entry] {
  const [first] = writer({ device }).write(bee(1)) as [Entry];
  const [second] = writer({ device, from: "2026-03-09T10:00:00.000Z" }).write(bee(1, "mites")) as [Entry];
  return [first, second];
}
