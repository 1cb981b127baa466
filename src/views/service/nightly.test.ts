/** The forecast of a night on files: planned once, chunk by chunk the same bytes, dropped with what was erased. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demonstrationAsMain } from "../../../tests/journals/demonstration-as-main.ts";
import { type Entry, type EntryDraft, newEntryId, newSalt, sealChain } from "../../journal/index.ts";
import { dynamics } from "../../reasoning/index.ts";
import { inFolder, type Records, type ServerStore } from "../../storage/server.ts";
import { isForecast, type NightForecast, type NightFound, nightChunks, reckonNightChunk } from "../model/index.ts";
import { forecastByTheClock, nightOutcome, planNight, reckonChunk, runNight } from "./nightly.ts";

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
const say = (text: string) => expect.fail(text);
const daysOf = (found: NightFound | undefined) =>
  found && isForecast(found) ? found.days : expect.fail("no forecast");
const textOf = async () => JSON.stringify(await store.nights.forecasts());

/** Erases what an entry holds, as another device would ask for it. */
async function erase({ header: { id, about } }: Entry, chance: number): Promise<void> {
  const erasure: EntryDraft = {
    kind: "content-erased",
    at: "2026-11-20",
    about: [about[0] ?? ""],
    data: { entries: [id], reason: "asked for by the keeper" },
  };
  const bytes = new Uint8Array(16).fill(chance);
  const end = { device: `device-${chance}`, head: null, programme: "main", author: "reader 2" };
  const { refused } = await store.push(
    sealChain([erasure], { ...end, recordedAt: at.toISOString() }, [
      { id: newEntryId(at.getTime(), bytes), salt: newSalt(bytes) },
    ]),
  );
  expect(refused).toEqual([]);
}

describe("the forecast of a night", () => {
  it("[SG220] cuts the counted colonies of open cases into chunks; neither cut nor order changes a question", async () => {
    const casebook = await store.states();
    const [whole, ones] = [nightChunks(casebook, "2026-11-19", 50), nightChunks(casebook, "2026-11-19", 1)];
    expect(whole).toHaveLength(1);
    expect(ones.length).toBeGreaterThan(2);
    expect(ones.flatMap(({ colonies }) => colonies)).toEqual(whole[0]?.colonies);
    expect(new Set(ones.flatMap(({ colonies }) => colonies.map(({ question }) => question?.seed))).size).toBe(
      ones.length,
    );
    for (const { question } of whole[0]?.colonies ?? []) expect(question?.counts.length).toBeGreaterThan(0);
    const chunk = ones[0] ?? expect.fail("no chunk");
    const twice = await Promise.all([1, 2].map(() => reckonNightChunk(chunk, "2026-11-19", forecast)));
    expect(JSON.stringify(twice[0])).toBe(JSON.stringify(twice[1]));
    const days = daysOf(twice[0]?.[0]);
    expect([days[0]?.date, days.at(-1)?.date]).toEqual(["2026-11-19", chunk.colonies[0]?.question?.until]);
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
    const text = await store.nights.chunk({ ...planned, number: 0 });
    expect(await reckonChunk(store, { ...planned, number: 0 }, forecast)).toBe(true);
    const kept = await store.nights.forecasts();
    expect(kept.length).toBe((JSON.parse(text ?? "{}") as { colonies: unknown[] }).colonies.length);
    for (const { root, colony, text: own, stoodAt, position } of kept) {
      const told = JSON.parse(own) as NightForecast;
      expect([told.caseId, told.colony, stoodAt, position]).toEqual([root, colony, at.toISOString(), cursor]);
    }
    // Done: reckoned again it changes nothing, not even with another answer.
    const before = await textOf();
    expect(await reckonChunk(store, { ...planned, number: 0 }, () => expect.fail("reckoned"))).toBe(true);
    await store.nights.done({ ...planned, number: 0 }, [{ root: "x", colony: "y", text: "{}" }]);
    expect(await textOf()).toBe(before);
    expect((await planNight(store, at)).left).toEqual([]);
  });

  it("[SG221] the next night replaces it; one that was stopped is finished by the next look", async () => {
    const next = new Date("2026-11-20T02:10:00.000Z");
    const stopped = await runNight({ records, queue: null, forecast: () => null, say }, next);
    expect(stopped).toEqual({ programmes: [{ programme: "main", night: "2026-11-20", chunks: 0 }], failed: [] });
    expect((await store.nights.forecasts()).map(({ night }) => night)).toContain("2026-11-19");
    await runNight({ records, queue: null, forecast, say }, next);
    expect(new Set((await store.nights.forecasts()).map(({ night }) => night))).toEqual(new Set(["2026-11-20"]));
  });

  it("[SG222] is no entry, and goes with what was erased; the next night makes it anew", async () => {
    const before = await store.all();
    expect((await store.nights.forecasts()).length).toBeGreaterThan(0);
    await erase(before[0] ?? expect.fail("no entry"), 7);
    expect(await store.nights.forecasts()).toEqual([]);
    expect(await store.nights.newest()).toBeNull();
    await runNight({ records, queue: null, forecast, say }, new Date("2026-11-20T03:00:00.000Z"));
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

  it("[SG225] what is reckoned while something is erased is kept nowhere, not even beside the same night planned anew", async () => {
    const night = new Date("2026-11-23T02:10:00.000Z");
    const planned = await planNight(store, night);
    const entries = await store.all();
    const counted = entries.filter(({ header, body }) => header.kind === "bee-read" && body !== null);
    let anew: Awaited<ReturnType<typeof planNight>> | null = null;
    const slow: typeof forecast = (question) => forecast({ ...question, seed: 99 });
    // Another process erases and plans anew while this one reckons.
    await reckonChunk(store, { ...planned, number: 0 }, async (question) => {
      if (anew === null) {
        await erase(counted[0] ?? expect.fail("no reading"), 8);
        anew = await planNight(store, new Date(night.getTime() + 60_000));
        expect(anew).toMatchObject({ night: planned.night, left: [0] });
      }
      return slow(question);
    });
    expect(await store.nights.forecasts()).toEqual([]);
    await runNight({ records, queue: null, forecast, say }, night);
    const kept = await store.nights.forecasts();
    expect(new Set(kept.map(({ stoodAt }) => stoodAt))).toEqual(new Set(["2026-11-23T02:11:00.000Z"]));
    // Erased between the reading and the keeping: the states that were read are not planned from.
    const position = (await store.pull(Number.MAX_SAFE_INTEGER, 1)).cursor;
    await erase(counted[1] ?? expect.fail("no reading"), 9);
    const late = { night: "2026-11-24", stoodAt: "2026-11-24T02:10:00.000Z", position };
    expect(await store.nights.plan(late, [{ number: 0, text: "{}" }], [])).toBeNull();
    expect(await store.nights.newest()).toBeNull();
    let isErased = false;
    const reading = {
      ...store,
      states: async () => {
        const states = await store.states();
        if (!isErased) await erase(counted[2] ?? expect.fail("no reading"), 10);
        isErased = true;
        return states;
      },
    };
    expect((await planNight(reading, new Date("2026-11-24T02:10:00.000Z"))).left).toEqual([0]);
  });

  it("[SG226] a chunk that breaks holds up no other, nor a programme that cannot be planned; what is left is counted", async () => {
    const night = new Date("2026-11-25T02:10:00.000Z");
    const chunks = nightChunks(await store.states(), "2026-11-25", 1);
    const texts = chunks.map((chunk) => ({ number: chunk.number, text: JSON.stringify(chunk) }));
    const { cursor: position } = await store.pull(Number.MAX_SAFE_INTEGER, 1);
    await store.nights.plan({ night: "2026-11-25", stoodAt: night.toISOString(), position }, texts, []);
    const other = await records.open("zoo");
    await other.push([]);
    await other.close();
    const said: string[] = [];
    const broken: Records = {
      ...records,
      programmes: async () => ["away", ...(await records.programmes())],
      open: (programme) =>
        programme === "away" ? Promise.reject(new Error("no such folder")) : records.open(programme),
    };
    let asked = 0;
    const breaking: typeof forecast = (question) => {
      asked += 1;
      if (asked === 1) throw new Error("out of memory");
      return forecast(question);
    };
    const how = { records: broken, queue: null, forecast: breaking, say: (text: string) => said.push(text) };
    const ran = await runNight(how, night);
    expect(ran.failed).toEqual(["away"]);
    expect(ran.programmes).toContainEqual({ programme: "main", night: "2026-11-25", chunks: chunks.length - 1 });
    expect(said).toEqual([
      "The forecast of the night failed for away: no such folder",
      "Chunk 0 of the night of 2026-11-25, main, broke: out of memory",
    ]);
    expect(await nightOutcome(store, "2026-11-25")).toEqual({ colonies: chunks.length - 1, missed: [], left: 1 });
    await runNight({ ...how, records }, night);
    expect(await nightOutcome(store, "2026-11-25")).toEqual({ colonies: chunks.length, missed: [], left: 0 });
  });

  it("[SG226] a colony that cannot be reckoned is kept with the reason; its neighbours in the chunk are told", async () => {
    const [chunk = expect.fail("no chunk")] = nightChunks(await store.states(), "2026-11-26");
    const patty = { kind: "oil-patty", from: "2026-11-27", to: "2026-12-20" } as const;
    const unfit = chunk.colonies.map((each, place) =>
      place === 0 && each.question ? { ...each, question: { ...each.question, actions: [patty, patty] } } : each,
    );
    const found = (await reckonNightChunk({ ...chunk, colonies: unfit }, "2026-11-26", forecast)) ?? [];
    expect(found).toHaveLength(chunk.colonies.length);
    expect(found[0]).toMatchObject({ colony: unfit[0]?.colony, problems: [{ code: "season-actions-overlap" }] });
    expect(found.slice(1).every(isForecast)).toBe(true);
  });
});
