/** Backups by the clock: one a day, the newest kept, the oldest gone only after a whole new one. */
import { mkdtempSync, readdirSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, it } from "vitest";
import { backupName } from "./backup-command.ts";
import { beyondKept, lookForDue, programmesDue } from "./scheduled-backups.ts";

const name = (day: string, programme = "main") => backupName(programme, `2026-04-${day}T08:00:00.000Z`);
const at = (day: string, hour = "08") => Date.parse(`2026-04-${day}T${hour}:00:00.000Z`);

it("is due when the newest is a day old, and where there is none", () => {
  const names = [name("01"), name("02"), "notes.txt", name("01", "main-2")];
  expect(programmesDue(names, ["main", "main-2", "other"], at("02", "20"))).toEqual(["main-2", "other"]);
  expect(programmesDue(names, ["main"], at("03"))).toEqual(["main"]);
});

it("keeps the newest of each programme and no file of another name goes", () => {
  const names = [name("01"), name("03"), name("02"), "skepsis-main.zip", "main.sqlite", name("01", "other")];
  expect(beyondKept(names, "main", 2)).toEqual([name("01")]);
  expect(beyondKept(names, "main", 5)).toEqual([]);
});

it("a failed backup takes no older one away; a whole one does", async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-by-clock-"));
  for (const day of ["01", "02"]) writeFileSync(path.join(folder, name(day)), "old");
  const left = path.join(folder, `${name("03")}.part-12`);
  writeFileSync(left, "cut off");
  utimesSync(left, at("03") / 1000, at("03") / 1000);
  const said: string[] = [];
  const schedule = {
    folder,
    keep: 1,
    programmes: async () => ["main"],
    now: () => at("05"),
    say: (text: string) => said.push(text),
  };
  await lookForDue({ ...schedule, make: async () => false });
  expect(readdirSync(folder)).toHaveLength(2);
  await lookForDue({
    ...schedule,
    make: async (programme, into) => {
      writeFileSync(path.join(into, backupName(programme, new Date(at("05")).toISOString())), "new");
      return true;
    },
  });
  expect(readdirSync(folder)).toEqual([name("05")]);
  expect(said).toEqual(["The backup of main failed; see above. Older ones are kept.", "Backed up: main."]);
});
