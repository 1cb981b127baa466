/** `skepsis apart` and what `skepsis verify` says: kept apart, listed, settled, told. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, expect, it } from "vitest";
import { fork } from "../../../tests/journals/fork.ts";
import { headerHash } from "../../journal/index.ts";
import { inFolder } from "../../storage/server.ts";
import { said } from "./test-io.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-apart-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const env = { SKEPSIS_DATA: folder, USER: "Office" };
let runs = 0;
const run = (...words: string[]) => {
  runs += 1;
  return said(words, { env, drawn: runs * 10 });
};

it("[SG241] verify names what waits and what to do, and ends with 0 once it is settled", async () => {
  const store = await inFolder(folder).open("main");
  const [first, second] = fork();
  const [, other] = fork("second-phone\u001b[2J");
  await store.push([first, second, ...fork("second-phone\u001b[2J")]);
  await store.close();

  const before = await run("verify");
  expect(before.status).toBe(1);
  expect(before.out).toContain("Kept apart: 2 that claim a number which another entry has");
  expect(before.out).toContain("skepsis apart list shows each beside what stands");

  const list = (await run("apart", "list")).out;
  expect(list).toContain("Entry 1 of device second-phone\ufffd[2J");
  const hash = headerHash(second.header).slice(0, 12);
  expect(list).toContain("2 entries wait for a person to judge.");
  expect(list).toContain(`${hash}  Entry 1 of device copied-phone`);
  expect(list).toMatch(
    /Kept apart: bee read, .*\n(.*\n)*? {4}left: mites\n(.*\n)*? {2}Stands under its number: bee read/,
  );

  const taken = await run("apart", "take-in", "--entry", hash, "--reason", "read from the slide again");
  expect([taken.status, taken.out]).toEqual([0, `${hash}, entry 1 of copied-phone: taken in.\n`]);
  const again = await run("apart", "take-in", "--entry", hash, "--reason", "once more");
  expect([again.status, again.out]).toEqual([
    0,
    `${hash}, entry 1 of copied-phone: taken in already; nothing was written.\n`,
  ]);
  const back = await run("apart", "leave-out", "--entry", hash, "--reason", "after all");
  expect([back.status, back.err]).toEqual([
    2,
    expect.stringMatching(/Its words were taken in already\. .* withdraw entry [0-9a-f-]{36} where it stands/),
  ]);
  expect((await run("verify")).status).toBe(1);

  const left = headerHash(other.header).slice(0, 8);
  const words = ["apart", "leave-out", "--entry", left, "--reason", "only tried", "--author", "Ash", "--json"];
  expect((await run(...words)).json()).toEqual({ hash: headerHash(other.header), decision: "left-out", written: 1 });
  const after = await run("verify");
  expect(after.status).toBe(0);
  expect(after.out).toContain("Kept apart: 1, settled by Office. That is no fault.");
  expect(after.out).toContain("Kept apart: 1, settled by Ash. That is no fault.");
  expect((await run("apart", "list")).out).toMatch(/^Nothing waits\. 2 entries are kept apart and settled\.\n/);
  expect((await run("doctor")).out).not.toContain("kept apart of main");
});

it("[CB52] without a reason, for what is not kept apart, or with another word nothing is written", async () => {
  expect((await run("apart", "leave-out", "--entry", "00000000", "--reason", "x")).err).toContain(
    "Nothing is kept apart under",
  );
  expect((await run("apart", "leave-out", "--reason", "x")).status).toBe(2);
  const store = await inFolder(folder).open("main");
  const [, third] = fork("third-phone");
  await store.push(fork("third-phone"));
  const count = (await store.all()).length;
  const hash = headerHash(third.header);
  expect((await run("apart", "leave-out", "--entry", hash)).err).toContain("Say why");
  expect((await run("apart", "settle", "--entry", hash)).err).toContain("one of list, take-in, leave-out");
  expect(await store.all()).toHaveLength(count);
  await store.close();
});
