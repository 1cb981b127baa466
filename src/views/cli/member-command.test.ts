/** `skepsis member`: the first administrator, invitations, and phones that were lost, from the machine itself. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import SQLite from "better-sqlite3";
import { afterAll, expect, it } from "vitest";
import { bee } from "../../../tests/journals/every-kind.ts";
import { writer } from "../../../tests/journals/writer.ts";
import { inFolder } from "../../storage/server.ts";
import { fits } from "../service/passwords.ts";
import { said } from "./test-io.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-member-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const env = { SKEPSIS_DATA: folder };
const member = (...words: string[]) => said(["member", ...words], { env });
const json = async (...words: string[]) => JSON.parse((await member(...words, "--json")).out);

it("[AC25] makes the first administrator, with a password that is drawn and shown once, or typed", async () => {
  expect((await member("list")).out).toContain("No member yet");
  const made = await json("add", "--name", "Rowan Vale", "--role", "administrator");
  expect(made).toMatchObject({ name: "Rowan Vale", role: "administrator" });
  expect(made.password).toMatch(/^([a-z2-9]{5}-){3}[a-z2-9]{5}$/);
  const store = await inFolder(folder).open("main");
  const credential = await store.members.credential("Rowan Vale");
  expect(await fits(credential?.password ?? null, made.password)).toBe(true);
  expect(await fits(credential?.password ?? null, `${made.password}x`)).toBe(false);
  expect(credential?.endsAt).toBe("2026-03-16T10:00:00.000Z");
  await store.close();
  const typed = (words: string) =>
    said(["member", "add", "--name", "Ash Moor", "--role", "keeper", "--password-stdin"], { env, stdin: words });
  expect((await typed("short\n")).status).toBe(2);
  expect((await typed("quiet copper lantern\n")).out).toBe("Ash Moor is a member now, as keeper.\n");
  const list = (await member("list")).out;
  expect(list).toMatch(/Rowan Vale +administrator/);
  expect(list).not.toMatch(/argon2|copper/);
});

it("[AC22] prints the link of an invitation, and keeps only the hash of its secret", async () => {
  const { link, invitation } = await json("invite", "--role", "reader", "--address", "https://bees.example");
  expect(link).toMatch(/^https:\/\/bees\.example\/invitation#main\.[\w-]{43}$/);
  expect(JSON.stringify(invitation)).not.toContain(link.split("#")[1]);
});

it("[AC11] says what is missing, and does nothing", async () => {
  for (const words of [
    [],
    ["promote"],
    ["add", "--name", "Elm"],
    ["add", "--role", "keeper"],
    ["add", "--name", "Elm", "--role", "king"],
    ["end"],
    ["end", "--member", "nobody"],
    ["lost", "--device", "no-phone"],
    ["give", "--member", "nobody", "--apiary", "none"],
    ["add", "--name", "rowan vale", "--role", "keeper"],
  ])
    expect((await member(...words)).status, words.join(" ")).toBe(2);
  const { members } = await json("list");
  expect(members.map(({ name }: { name: string }) => name)).toEqual(["Ash Moor", "Rowan Vale"]);
});

it("[AC29] gives a member's data out, and erases them when id and name agree", async () => {
  const made = await json("add", "--name", "Elm Moor", "--role", "keeper");
  const store = await inFolder(folder).open("main");
  const doing = { by: made.id, at: "2026-03-09T10:00:00.000Z", mayClaim: false, trouble: () => null };
  await store.members.push(writer({ device: "phone-elm" }).write(bee(1)), doing);
  await store.close();
  const data = await json("data", "--member", made.id);
  expect(data).toMatchObject({ member: { name: "Elm Moor" }, devices: [{ device: "phone-elm" }] });
  expect(data.entries).toHaveLength(1);
  const erase = (name: string) => member("erase", "--member", made.id, "--name", name, "--reason", "asked for");
  expect((await erase("Ash Moor")).status).toBe(2);
  expect((await erase("Elm Moor")).out).toBe("Erased; entries without words now: 1.\n");
  expect((await member("list")).out).not.toContain("Elm Moor");
  expect((await said(["verify"], { env })).out).toContain("1 erased by machine on 2026-03-09");
});

it("[AC11] changes role and places, ends a membership, and never the last administrator's", async () => {
  const { members } = await json("list");
  const named = (name: string) => members.find((each: { name: string }) => each.name === name).id as string;
  const [keeper, head] = [named("Ash Moor"), named("Rowan Vale")];
  expect(await json("role", "--member", keeper, "--role", "manager")).toMatchObject({ role: "manager" });
  expect(await json("places", "--member", keeper)).toMatchObject({ hasExactPlaces: true });
  expect(await json("no-places", "--member", keeper)).toMatchObject({ hasExactPlaces: false });
  expect((await member("end", "--member", head)).err).toContain("last administrator");
  const ends = async () => {
    const store = await inFolder(folder).open("main");
    const credential = await store.members.credential("Ash Moor");
    await store.close();
    return credential?.endsAt;
  };
  expect(await ends()).toBeNull();
  expect((await member("password", "--member", keeper)).out).toContain("shown this once; good for seven days");
  expect(await ends()).toBe("2026-03-16T10:00:00.000Z");
  expect(await json("end", "--member", keeper)).toMatchObject({ endedAt: expect.any(String) });
  const store = await inFolder(folder).open("main");
  const acts = (await store.all()).map(({ body }) => body?.data.act);
  await store.close();
  expect(acts).toEqual(
    expect.arrayContaining(["member-admitted", "invited", "role-given", "places-granted", "member-ended"]),
  );
});

it("[SG113] verify refolds who may see what, and ends with 1 where a table says something else", async () => {
  const verify = () => said(["verify"], { env });
  const whole = await verify();
  expect(whole.status).toBe(0);
  expect(whole.out).toMatch(/Who may see what was refolded from \d+ acts of the service\./);
  const raw = new SQLite(path.join(folder, "main.sqlite"));
  raw.exec("update members set role = 'manager' where role = 'keeper'");
  raw.close();
  const changed = await verify();
  expect(changed.status).toBe(1);
  expect(changed.out).toMatch(/- members [0-9a-f-]{36}: role is manager, by the journal keeper\n/);
  expect(changed.out).not.toMatch(/Ash|Rowan/);
});
