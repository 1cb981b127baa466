import { describe, expect, it } from "vitest";
import { postgresEngine, sqliteEngine } from "./engine.ts";
import { patiently, StoreTrouble } from "./patience.ts";
import { wholeNumber } from "./postgres.ts";

const failing = (code: string, message = "") => Object.assign(new Error(message), code === "" ? {} : { code });

/** Work that fails so many times first; how often it was tried comes with the outcome. */
async function tried(engine: typeof postgresEngine, times: number, trouble: Error) {
  let tries = 0;
  const outcome = await patiently(engine, async () => {
    tries += 1;
    if (tries <= times) throw trouble;
    return "done";
  }).catch((error: unknown) => error);
  return { tries, outcome };
}

describe("work on a database", () => {
  it.each(["40001", "40P01", "55P03"])("[SG25] is tried again after %s, at most six times", async (code) => {
    expect(await tried(postgresEngine, 5, failing(code))).toEqual({ tries: 6, outcome: "done" });
    const { tries, outcome } = await tried(postgresEngine, 99, failing(code));
    expect(tries).toBe(6);
    expect(outcome).toBeInstanceOf(StoreTrouble);
    expect(outcome).toMatchObject({
      problem: { code: "records-unavailable", slots: { reason: expect.stringContaining(code) } },
    });
  });

  it("[SG25] is tried as long as patience lasts where a try fails at once", async () => {
    expect(await tried(sqliteEngine, 40, failing("SQLITE_BUSY_SNAPSHOT"))).toEqual({ tries: 41, outcome: "done" });
  });

  it.each([
    failing("ECONNREFUSED"),
    failing("57P01"),
    failing("08006"),
    failing("28P01"),
    failing("", "Connection terminated unexpectedly"),
    failing("", "timeout exceeded when trying to connect"),
  ])("[SG60] is not tried again when the database is away: %s", async (trouble) => {
    const { tries, outcome } = await tried(postgresEngine, 1, trouble);
    expect(tries).toBe(1);
    expect(outcome).toMatchObject({ problem: { code: "records-unavailable" } });
  });

  it("[SG60] hands on a bug of ours as it is", async () => {
    const bug = failing("42703", "column does not exist");
    expect(await tried(postgresEngine, 1, bug)).toEqual({ tries: 1, outcome: bug });
  });
});

it("[SG41] whole numbers of eight bytes are never rounded", () => {
  expect(wholeNumber("9007199254740991")).toBe(Number.MAX_SAFE_INTEGER);
  expect(() => wholeNumber("9007199254740993")).toThrow("too large");
});
