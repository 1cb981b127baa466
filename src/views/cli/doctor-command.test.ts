/** `skepsis doctor` tells what is in the way, and each point can fail. */
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import SQLite from "better-sqlite3";
import { afterAll, beforeEach, expect, it } from "vitest";
import { bee } from "../../../tests/journals/every-kind.ts";
import { writer } from "../../../tests/journals/writer.ts";
import { inFolder } from "../../storage/server.ts";
import { type Finding, nodeVersion } from "./doctor-command.ts";
import { said } from "./test-io.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-doctor-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
let data = "";
let count = 0;
beforeEach(async () => {
  count += 1;
  data = path.join(folder, String(count));
  const store = await inFolder(data).open("main");
  await store.push(writer({ from: "2026-03-09T08:00:00.000Z" }).write(bee(1)));
  await store.close();
});

async function look(env: Record<string, string> = {}) {
  const told = await said(["doctor", "--json"], { env: { SKEPSIS_DATA: data, ...env } });
  const { isWell, findings } = told.json() as unknown as { isWell: boolean; findings: Finding[] };
  expect(told.status).toBe(isWell ? 0 : 1);
  return Object.fromEntries(findings.map(({ check, state }) => [check, state]));
}

it("[AC32] finds a sound place sound", async () => {
  expect(await look()).toEqual({
    ...{ Node: "good", permissions: "good", disk: expect.stringMatching(/good|look/), "records of main": "good" },
    ...{ clock: "good", "members of main": "good", reach: "good", backups: "look" },
  });
  expect((await said(["doctor"], { env: { SKEPSIS_DATA: data } })).out).toMatch(
    /records of main +good +1 entries, whole/,
  );
});

it.skipIf(process.platform === "win32")("[AC32] a folder that others may enter is bad", async () => {
  chmodSync(data, 0o755);
  expect((await look()).permissions).toBe("bad");
});

it("[AC32] a changed entry, an entry from the future, and an old Node are told", async () => {
  const store = await inFolder(data).open("main");
  await store.push(writer({ device: "phone-2", from: "2026-03-10T08:00:00.000Z" }).write(bee(2)));
  await store.close();
  expect((await look()).clock).toBe("look");
  const raw = new SQLite(path.join(data, "main.sqlite"));
  raw.exec("update entries set body = replace(body, 'clear', 'mites')");
  raw.close();
  expect((await look())["records of main"]).toBe("bad");
  expect([nodeVersion("22.11.0").state, nodeVersion("24.0.0").state]).toEqual(["bad", "good"]);
});

it("[AC32] an address for others without an administrator, or without https, is bad", async () => {
  expect((await look({ SKEPSIS_HOST: "0.0.0.0" })).reach).toBe("bad");
  const store = await inFolder(data).open("main");
  const doing = { by: null, at: "2026-03-09T08:00:00.000Z" };
  await store.members.admit({ name: "Rowan Vale", role: "administrator", password: null }, doing);
  await store.close();
  expect((await look({ SKEPSIS_HOST: "0.0.0.0" })).reach).toBe("bad");
  expect((await look({ SKEPSIS_HOST: "0.0.0.0", SKEPSIS_ADDRESS: "https://bees.example" })).reach).toBe("good");
});

it("[AC32] what is damaged beside the chains is bad, as verify says", async () => {
  const raw = new SQLite(path.join(data, "main.sqlite"));
  expect(raw.prepare("update counters set position = position - 1").run().changes).toBe(1);
  raw.close();
  expect((await said(["verify"], { env: { SKEPSIS_DATA: data } })).status).toBe(1);
  expect((await look())["records of main"]).toBe("bad");
});

it("[AC32] what an act that was erased may account for is worth a look", async () => {
  const store = await inFolder(data).open("main");
  const doing = { by: null, at: "2026-03-09T08:00:00.000Z" };
  const made = await store.members.admit({ name: "Rowan Vale", role: "keeper", password: null }, doing);
  if (!made.ok) throw new Error("not admitted");
  await store.members.change(made.value.id, { role: "reader" }, doing);
  expect(await look()).not.toHaveProperty("rights of main");
  const act = (await store.all()).find(({ body }) => body?.data.act === "role-given");
  const erasure = { entries: [act?.header.id ?? ""], reason: "asked for" };
  const desk = writer({ device: "desk", from: "2026-03-09T08:00:00.000Z" });
  await store.push(desk.write({ kind: "content-erased", at: doing.at, about: ["main"], data: erasure }));
  await store.close();
  expect(await look()).toMatchObject({ "records of main": "good", "rights of main": "look" });
});

it("[AC32] backups: none, none there, old, fresh", async () => {
  const backups = path.join(data, "backups");
  const looked = async () => (await look({ SKEPSIS_BACKUP: backups }))["backups of main"];
  expect((await look({ SKEPSIS_BACKUP: backups })).backups).toBe("bad");
  mkdirSync(backups);
  expect(await looked()).toBe("bad");
  // By the instant in the name: a copy of the folder has another time on its files.
  writeFileSync(path.join(backups, "skepsis-main-2026-03-06T100000Z.zip"), "");
  expect(await looked()).toBe("bad");
  writeFileSync(path.join(backups, "skepsis-main-2026-03-09T010000Z.zip"), "");
  expect(await looked()).toBe("good");
});

it("[AC32] a fresh backup of one programme says nothing of another", async () => {
  const backups = path.join(data, "backups");
  mkdirSync(backups);
  const other = await inFolder(data).open("valley");
  await other.push(writer({ from: "2026-03-09T08:00:00.000Z" }).write(bee(1)));
  await other.close();
  writeFileSync(path.join(backups, "skepsis-main-2026-03-09T010000Z.zip"), "");
  expect(await look({ SKEPSIS_BACKUP: backups })).toMatchObject({
    "backups of main": "good",
    "backups of valley": "bad",
  });
});

it("[AC40] a database that others on the way could read along with is bad, one that is meant so worth a look", async () => {
  const way = async (rest: string, tls = "") => {
    const env = { SKEPSIS_DATABASE: `postgres://anna:s3cret@${rest}`, SKEPSIS_DATABASE_TLS: tls };
    const told = await said(["doctor", "--json"], { env });
    expect(told.out).not.toContain("s3cret");
    const { findings } = told.json() as { findings: readonly Finding[] };
    return findings.find(({ check }) => check === "way to the database");
  };
  expect(await way("127.0.0.1:9/x")).toMatchObject({ state: "good", found: "on this machine" });
  expect(await way("db.invalid/x?sslmode=verify-full")).toMatchObject({ state: "good" });
  expect(await way("db.invalid/x")).toMatchObject({ state: "bad", advice: expect.stringContaining("verify-full") });
  expect(await way("db.invalid/x", "off")).toMatchObject({ state: "look" });
});

it("[AC32] records that cannot be opened are told, not thrown", async () => {
  writeFileSync(path.join(data, "main.sqlite"), "this is no database, and long enough to be looked at by its header");
  expect((await look()).records).toBe("bad");
});
