/** `skepsis forecast-nightly` on files: told in words, once a day. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, it } from "vitest";
import { demonstrationAsMain } from "../../../tests/journals/demonstration-as-main.ts";
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
