/** The reckoning thread: others are answered meanwhile, what takes too long is stopped, and a broken question harms no other. */
import { afterAll, expect, it } from "vitest";
import { verbNamed } from "../../reasoning/index.ts";
import { openReckoner } from "./reckoner.ts";

const reckoner = openReckoner();
afterAll(() => reckoner.close());

it("gives the reply that the verb gives", async () => {
  const verb = verbNamed("sample-size");
  if (!verb) throw new Error("no such verb");
  expect(await reckoner.ask("sample-size", verb.example)).toEqual(verb.ask(verb.example));
  expect(await reckoner.ask("sample-size", { designPrevalence: 2 })).toMatchObject({ kind: "unfit" });
});

it("leaves this thread free while it reckons", async () => {
  await reckoner.ask("differential", { findings: {}, season: "spring", draws: 40 });
  let turns = 0;
  const timer = setInterval(() => {
    turns += 1;
  }, 5);
  await reckoner.ask("differential", { findings: { crawlers: "present" }, season: "spring", draws: 5000 });
  clearInterval(timer);
  // In this thread it would be one turn at most.
  expect(turns).toBeGreaterThan(5);
});

it("stops what takes too long, and answers the next question", async () => {
  const hurried = openReckoner(30);
  expect(
    await hurried.ask("differential", { findings: { crawlers: "present" }, season: "spring", draws: 5000 }),
  ).toBeNull();
  await hurried.close();
  const patient = openReckoner(20_000);
  expect(await patient.ask("sample-size", { designPrevalence: 0.05, sensitivity: 1 })).toMatchObject({
    kind: "answered",
  });
  await patient.close();
});

it("lets a short question wait behind a long one", async () => {
  const two = openReckoner(20_000);
  const verb = verbNamed("sample-size");
  const slow = two.ask("differential", {
    findings: { crawlers: "present", k_wing: "present" },
    season: "spring",
    draws: 5000,
  });
  const quick = two.ask("sample-size", verb?.example ?? {});
  expect(await quick).toMatchObject({ kind: "answered" });
  await slow;
  await two.close();
});

it("tells of a verb that is none, and goes on", async () => {
  await expect(reckoner.ask("no-verb", {})).rejects.toThrow("no verb");
  expect(await reckoner.ask("sample-size", { designPrevalence: 0.05, sensitivity: 1 })).toMatchObject({
    kind: "answered",
  });
});
