/** `skepsis forecast-nightly` on files: told in words, once a day. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, it } from "vitest";
import { demonstrationAsMain } from "../../../tests/journals/demonstration-as-main.ts";
import { type EntryDraft, newEntryId, newSalt, sealChain } from "../../journal/index.ts";
import { inFolder } from "../../storage/server.ts";
import { said } from "./test-io.ts";

it("[SG221] forecasts the counted colonies of open cases, and says so; without records there is nothing to do", async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-nightly-"));
  const env = { SKEPSIS_DATA: folder };
  const none = await said(["forecast-nightly"], { env });
  expect([none.status, none.out]).toEqual([0, "There are no records to forecast from.\n"]);
  const records = inFolder(folder);
  const store = await records.open("main");
  await store.push(demonstrationAsMain());
  for (let round = 0; round < 2; round++) {
    const told = await said(["forecast-nightly"], { env });
    expect([told.status, told.out, told.err]).toEqual([0, "main, night of 2026-03-09: 3 colonies forecast.\n", ""]);
  }
  expect(await store.nights.forecasts()).toHaveLength(3);
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

it("[SG226] tells a colony whose records cannot be reckoned, and why, and ends with 1", async () => {
  const folder = mkdtempSync(path.join(tmpdir(), "skepsis-nightly-"));
  const env = { SKEPSIS_DATA: folder };
  const store = await inFolder(folder).open("main");
  await store.push(demonstrationAsMain());
  const casebook = await store.states();
  const open = Object.values(casebook.cases).find(({ record }) => record?.candidates[0]?.value.code === "TV-26-014");
  const patty = (name: string, on: string): EntryDraft => ({
    kind: "treatment-recorded",
    at: "2026-03-09",
    about: [open?.apiary ?? expect.fail("no apiary"), name],
    data: {
      activeIngredient: "vegetable shortening",
      on,
      off: "2026-03-08",
      colonies: ["demonstration-wb-07"],
    },
  });
  const end = {
    device: "device-2",
    head: null,
    programme: "main",
    author: "reader 2",
    recordedAt: "2026-03-09T09:00:00.000Z",
  };
  const chances = [1, 2].map((each) => {
    const bytes = new Uint8Array(16).fill(each);
    return { id: newEntryId(0, bytes), salt: newSalt(bytes) };
  });
  const { refused } = await store.push(
    sealChain([patty("one", "2026-03-04"), patty("two", "2026-03-06")], end, chances),
  );
  expect(refused).toEqual([]);
  const told = await said(["forecast-nightly"], { env });
  expect([told.status, told.err]).toEqual([1, ""]);
  expect(told.out).toMatch(/^main, night of 2026-03-09: \d+ colonies forecast\.\n/);
  expect(told.out).toContain(
    "Not forecast, WB-07, case TV-26-014: An oil patty and an oil patty meet on 6 March 2026.",
  );
  const { programmes } = (await said(["forecast-nightly", "--json"], { env })).json();
  expect(programmes).toMatchObject([
    { left: 0, missed: [{ colony: "demonstration-wb-07", problems: [{ field: "actions[1].from" }] }] },
  ]);
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});
