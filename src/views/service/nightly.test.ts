/** The forecast of a night on files: planned once, chunk by chunk the same bytes, dropped with what was erased. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demonstrationAsMain } from "../../../tests/journals/demonstration-as-main.ts";
import { type EntryDraft, newEntryId, newSalt, sealChain } from "../../journal/index.ts";
import { dynamics } from "../../reasoning/index.ts";
import { inFolder, type Records, type ServerStore } from "../../storage/server.ts";
import { type NightForecast, nightChunks, reckonNightChunk } from "../model/index.ts";
import { forecastByTheClock, planNight, reckonChunk, runNight } from "./nightly.ts";

const folder = mkdtempSync(path.join(tmpdir(), "skepsis-nights-"));
const records: Records = inFolder(folder);
let store: ServerStore;
beforeAll(async () => {
  store = await records.open("main");
  const { refused } = await store.push(demonstrationAsMain());
  expect(refused).toEqual([]);
});
afterAll(async () => {
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

const at = new Date("2026-11-19T02:10:00.000Z");
/** Fewer draws: what is tried is who reckons what, not how well. */
const forecast = (question: dynamics.ForecastQuestion) => dynamics.colonyForecast({ ...question, draws: 100 });
const textOf = async () => JSON.stringify(await store.nights.forecasts());

describe("the forecast of a night", () => {
  it("[SG220] cuts the counted colonies of open cases into chunks; neither cut nor order changes a question", async () => {
    const casebook = await store.states();
    const [whole, ones] = [nightChunks(casebook, "2026-11-19", 50), nightChunks(casebook, "2026-11-19", 1)];
    expect(whole).toHaveLength(1);
    expect(ones.length).toBeGreaterThan(2);
    expect(ones.flatMap(({ colonies }) => colonies)).toEqual(whole[0]?.colonies);
    expect(new Set(ones.flatMap(({ colonies }) => colonies.map(({ question }) => question.seed))).size).toBe(
      ones.length,
    );
    for (const { question } of whole[0]?.colonies ?? []) expect(question.counts.length).toBeGreaterThan(0);
    const chunk = ones[0] ?? expect.fail("no chunk");
    const twice = await Promise.all([1, 2].map(() => reckonNightChunk(chunk, "2026-11-19", forecast)));
    expect(JSON.stringify(twice[0])).toBe(JSON.stringify(twice[1]));
    expect(twice[0]?.[0]?.days.at(-1)?.date).toBe(chunk.colonies[0]?.question.until);
    expect(twice[0]?.[0]?.days[0]?.date).toBe("2026-11-19");
  });

  it("[SG221] is planned once a night, from the records as they stood, and kept when each chunk is done", async () => {
    expect(await store.nights.newest()).toBeNull();
    const planned = await planNight(store, at);
    const { cursor } = await store.pull(Number.MAX_SAFE_INTEGER, 1);
    expect(planned).toEqual({ night: "2026-11-19", stoodAt: at.toISOString(), position: cursor, left: [0] });
    expect(await store.nights.newest()).toEqual({ night: "2026-11-19", stoodAt: at.toISOString(), position: cursor });
    // Planned again, later the same day: the chunks stay those of the first time.
    expect(await planNight(store, new Date("2026-11-19T20:00:00.000Z"))).toEqual(planned);
    expect(await store.nights.forecasts()).toEqual([]);
    const chunk = await store.nights.chunk("2026-11-19", 0);
    expect(await reckonChunk(store, { night: planned.night, number: 0 }, forecast)).toBe(true);
    const kept = await store.nights.forecasts();
    expect(kept.length).toBe((JSON.parse(chunk?.text ?? "{}") as { colonies: unknown[] }).colonies.length);
    for (const { root, colony, text, stoodAt, position } of kept) {
      const told = JSON.parse(text) as NightForecast;
      expect([told.caseId, told.colony, stoodAt, position]).toEqual([root, colony, at.toISOString(), cursor]);
    }
    // Done: reckoned again it changes nothing, not even with another answer.
    const before = await textOf();
    expect(await reckonChunk(store, { night: planned.night, number: 0 }, () => expect.fail("reckoned"))).toBe(true);
    await store.nights.done(planned.night, 0, [{ root: "x", colony: "y", text: "{}" }]);
    expect(await textOf()).toBe(before);
    expect((await planNight(store, at)).left).toEqual([]);
  });

  it("[SG221] the next night replaces it; one that was stopped is finished by the next look", async () => {
    const next = new Date("2026-11-20T02:10:00.000Z");
    const stopped = await runNight({ records, queue: null, forecast: () => null }, next);
    expect(stopped).toEqual([{ programme: "main", night: "2026-11-20", chunks: 1 }]);
    expect((await store.nights.forecasts()).map(({ night }) => night)).toContain("2026-11-19");
    await runNight({ records, queue: null, forecast }, next);
    expect(new Set((await store.nights.forecasts()).map(({ night }) => night))).toEqual(new Set(["2026-11-20"]));
  });

  it("[SG222] is no entry, and goes with what was erased; the next night makes it anew", async () => {
    const before = await store.all();
    expect((await store.nights.forecasts()).length).toBeGreaterThan(0);
    const { id, about } = before[0]?.header ?? expect.fail("no entry");
    const erasure: EntryDraft = {
      kind: "content-erased",
      at: "2026-11-20",
      about: [about[0] ?? ""],
      data: { entries: [id], reason: "asked for by the keeper" },
    };
    const end = { device: "device-2", head: null, programme: "main", author: "reader 2" };
    const chance = {
      id: newEntryId(at.getTime(), new Uint8Array(16).fill(7)),
      salt: newSalt(new Uint8Array(16).fill(7)),
    };
    const { refused } = await store.push(sealChain([erasure], { ...end, recordedAt: at.toISOString() }, [chance]));
    expect(refused).toEqual([]);
    expect(await store.nights.forecasts()).toEqual([]);
    expect(await store.nights.newest()).toBeNull();
    await runNight({ records, queue: null, forecast }, new Date("2026-11-20T03:00:00.000Z"));
    expect((await store.nights.forecasts()).length).toBeGreaterThan(0);
    expect(await store.all()).toHaveLength(before.length + 1);
  });

  it("[SG221] is made by the clock from two o'clock UTC on, and no more once the service stops", async () => {
    const said: string[] = [];
    const stop = new AbortController();
    const how = { records, queue: null, forecast, say: (text: string) => said.push(text) };
    forecastByTheClock({ ...how, now: () => new Date("2026-11-21T01:59:00.000Z") }, stop.signal);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect((await store.nights.newest())?.night).toBe("2026-11-20");
    forecastByTheClock({ ...how, now: () => new Date("2026-11-21T02:00:00.000Z") }, stop.signal);
    await expect.poll(async () => (await store.nights.forecasts())[0]?.night, { timeout: 5_000 }).toBe("2026-11-21");
    stop.abort();
    forecastByTheClock({ ...how, now: () => new Date("2026-11-22T02:00:00.000Z") }, stop.signal);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect((await store.nights.newest())?.night).toBe("2026-11-21");
    const away = { ...records, programmes: () => Promise.reject(new Error("the database is away")) };
    forecastByTheClock(
      { ...how, records: away, now: () => new Date("2026-11-22T03:00:00.000Z") },
      new AbortController().signal,
    );
    await expect.poll(() => said).toEqual(["The forecast of the night failed: the database is away"]);
  });
});
