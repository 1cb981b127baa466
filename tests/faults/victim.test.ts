/** What is killed is told from what broke by itself, and what is waited for in vain is told in words. */
import { expect, it } from "vitest";
import { until, untilSaid, victim } from "./victim.ts";

const staying = "setInterval(() => {}, 1000);";

it("tells whether a process was still at work when it was killed", async () => {
  expect(await victim(["-e", staying]).kill()).toBe(true);
  const done = victim(["-e", "console.log('done')"]);
  await done.end();
  expect(await done.kill()).toBe(false);
});

it("throws when a process broke by itself: by its status, or by what it complained of", async () => {
  const broken = victim(["-e", "process.exit(3)"]);
  await broken.end();
  await expect(broken.kill()).rejects.toThrow("broke by itself, status 3");
  const complaining = victim(["-e", `console.error("no room"); console.log("on"); ${staying}`]);
  await untilSaid([complaining], (lines) => lines.includes("on"));
  await until(
    () => complaining.complaints() !== "",
    () => "it does not complain",
  );
  await expect(complaining.kill()).rejects.toThrow("no room");
});

it("waits no longer than it was told to, and says what is missing", async () => {
  await until(
    async () => true,
    () => "never said",
  );
  const waiting = until(
    () => false,
    () => "the line is silent",
    30,
  );
  await expect(waiting).rejects.toThrow("after 0.03 s: the line is silent");
});
