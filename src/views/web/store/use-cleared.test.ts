import { expect, it } from "vitest";
import { clearedBefore } from "./use-cleared.ts";

const store = (device: string, lastSafeAt: string | null) => ({ device: () => device, lastSafeAt: () => lastSafeAt });

it("[SG116] tells of records that another device id had kept here, with how many were not sent", () => {
  expect(clearedBefore({ device: "a", unsent: 3 }, store("b", null))).toMatchObject({
    code: "device-cleared",
    slots: { unsent: 3 },
  });
});

it("[SG116] tells nothing on a first visit, of the same device, and of one that was registered anew", () => {
  expect(clearedBefore(null, store("b", null))).toBeNull();
  expect(clearedBefore({ device: "a", unsent: 3 }, store("a", null))).toBeNull();
  expect(clearedBefore({ device: "a", unsent: 3 }, store("b", "2026-03-09T10:00:00.000Z"))).toBeNull();
});
