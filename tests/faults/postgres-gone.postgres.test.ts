/** A PostgreSQL that goes under its services, by a stop or an accident, and comes back: what was acknowledged is there. */
import { rmSync } from "node:fs";
import path from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { ensurePostgres } from "../../scripts/postgres.ts";
import { ask, server } from "../postgres/database.ts";
import { type PostgresServer, password, startPostgres } from "../postgres/server.ts";
import { type ServiceProcess, startService } from "../postgres/service.ts";
import { begun, filled, manifestOf, restoredOf, succeeds, timeOf } from "./backing-up.ts";
import { expectSome, patience, scratch, seeded, tell, tries } from "./count.ts";
import { databasePlace } from "./database-place.ts";
import { holdsAll, keepPushing, type Pushing } from "./keeps-pushing.ts";
import { inStore, isWhole, type Place } from "./place.ts";
import { command, pause, until } from "./victim.ts";

const devices = ["phone-1", "phone-2", "phone-3", "office-1"];
const sessions = "select pid from pg_stat_activity where application_name = 'skepsis' order by pid";

/** Ways in which a PostgreSQL goes; each has killed something, or throws. */
const ways = {
  "kill −9 of PostgreSQL": (own: PostgresServer) => own.kill("SIGKILL"),
  "kill of PostgreSQL by an immediate stop": (own: PostgresServer) => own.kill("SIGQUIT"),
  /** It ends all others and recovers by itself, since the dead one may have spoilt the memory that they share. */
  async "kill −9 of a session of PostgreSQL"(own: PostgresServer, below: (bound: number) => number) {
    await until(
      async () => {
        const found = await ask(own.address, sessions);
        const pid = Number(found[below(found.length)]?.pid ?? 0);
        return pid > 0 && isKilled(pid);
      },
      () => "PostgreSQL has no session of a service that could be killed",
    );
  },
} as const;

/** Kills a process; false when it has ended since it was seen. */
function isKilled(pid: number): boolean {
  try {
    return process.kill(pid, "SIGKILL");
  } catch (trouble) {
    if ((trouble as NodeJS.ErrnoException).code === "ESRCH") return false;
    throw trouble;
  }
}

const services: ServiceProcess[] = [];
afterEach(async () => {
  for (const service of services.splice(0)) await service.kill();
});

/** Two services on a place, and devices that push through both. */
async function pushingOn(place: Place): Promise<Pushing> {
  services.push(...(await Promise.all([startService(place.database), startService(place.database)])));
  const pushing = keepPushing(devices, (device) => services[device % 2]?.address ?? "");
  await pushing.goesOn();
  return pushing;
}

/** Ends the pushing, and holds everything against everything; how many entries were acknowledged. */
async function allIsThere(pushing: Pushing, place: Place): Promise<number> {
  const acknowledged = await pushing.end();
  expect([...pushing.statuses].sort()).toEqual([200, 503]);
  for (const text of pushing.heard) expect(text).toContain("records cannot be reached now");
  await holdsAll(
    pushing,
    services.map(({ address }) => address),
  );
  await inStore(place, isWhole);
  place.remove();
  return acknowledged;
}

describe.skipIf(server === null)("a PostgreSQL that goes under its services", { timeout: patience }, () => {
  let own: PostgresServer;
  beforeAll(async () => {
    const found = ensurePostgres();
    if ("missing" in found) throw new Error(found.missing);
    own = await startPostgres(found.programs);
  });
  afterAll(() => own.remove());

  it("[SG60] [SG62] is told as away, nothing is acknowledged, and they go on when it is back", async () => {
    const place = await databasePlace(own.address);
    const pushing = await pushingOn(place);
    const rounds = tries(2, 12);
    for (const _ of rounds) {
      await own.stop();
      const before = pushing.heard.length;
      await until(
        () => pushing.heard.length >= before + 6,
        () => `the services told only ${pushing.heard.length - before} times that PostgreSQL is away`,
      );
      expect((await fetch(`${services[0]?.address}/api/health`)).status).toBe(200);
      await own.start();
      await pushing.goesOn();
    }
    const acknowledged = await allIsThere(pushing, place);
    tell({
      fault: "PostgreSQL stopped and started again under two services",
      tried: rounds.count(),
      against: `${acknowledged} entries acknowledged`,
    });
    for (const service of services) await service.stop();
    const everything = [...pushing.heard, ...services.map((service) => service.said())].join("\n");
    expect(everything).toContain("postgres://skepsis@127.0.0.1");
    for (const form of [password, encodeURIComponent(password)]) expect(everything).not.toContain(form);
  });

  it("[SG61] holds everything acknowledged when it or one of its sessions is killed at any instant (seed 65)", async () => {
    const place = await databasePlace(own.address);
    const pushing = await pushingOn(place);
    const below = seeded(65);
    const rounds = tries(3, 150);
    const tried = new Map<string, number>();
    for (const round of rounds) {
      const [fault, goes] = Object.entries(ways)[round % 3] ?? [];
      await pause(below(300));
      await goes?.(own, below);
      if (fault !== "kill −9 of a session of PostgreSQL") await own.start();
      await pushing.goesOn();
      tried.set(fault ?? "", (tried.get(fault ?? "") ?? 0) + 1);
    }
    const acknowledged = await allIsThere(pushing, place);
    expect([...tried.keys()]).toEqual(Object.keys(ways));
    for (const [fault, count] of tried)
      tell({ fault, tried: count, against: `with the others ${acknowledged} entries acknowledged; seed 65` });
  });

  it("[SG103] leaves all the records of a restore or none, and the restore says so (seed 105)", async () => {
    const place = await databasePlace(own.address);
    const folder = scratch("gone");
    const whole = path.join(folder, "whole.zip");
    await filled(place, 500);
    await succeeds(command(place.env, "backup", "--output", whole));
    await place.empty();
    const restore = () => command(place.env, "restore", whole);
    const took = await timeOf(restore(), place.hasAside);
    const manifest = manifestOf(whole);
    const below = seeded(105);
    const rounds = tries(1, 30);
    let [none, done, midway] = [0, 0, 0];
    for (const round of rounds) {
      await place.empty();
      const restoring = restore();
      await begun(restoring, place.hasAside);
      await pause(below(1.2 * took));
      await own.kill(round % 2 === 0 ? "SIGKILL" : "SIGQUIT");
      const status = await restoring.end();
      await own.start();
      const isBegun = await place.hasAside();
      const kept = await restoredOf(place, manifest);
      if (kept > 0) done += 1;
      else none += 1;
      if (kept === 0 && isBegun) midway += 1;
      if (status === 0) expect(kept).toBe(manifest.entries);
      else expect(restoring.complaints()).toMatch(/cannot be reached/);
      if (kept > 0) continue;
      await succeeds(restore());
      expect(await restoredOf(place, manifest)).toBe(manifest.entries);
    }
    expectSome(midway, rounds);
    for (const left of [folder, place.folder]) rmSync(left, { recursive: true, force: true });
    tell({
      fault: "kill of PostgreSQL while restoring",
      tried: rounds.count(),
      against: `${none} left none, ${midway} of them midway, ${done} all; seed 105`,
    });
  });
});
