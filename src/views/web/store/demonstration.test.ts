import { expect, it } from "vitest";
import { callDrafts } from "../../../../tests/journals/every-kind.ts";
import { writer } from "../../../../tests/journals/writer.ts";
import { dayOfDemonstration } from "./demonstration.ts";

it("stands on the day of the newest entry that came with it, whatever is written into it later", async () => {
  const came = writer({ device: "demonstration", programme: "demonstration", from: "2026-11-19T20:00:00.000Z" });
  const here = writer({ device: "phone-1", programme: "demonstration", from: "2026-11-27T09:00:00.000Z" });
  const brought = came.write(...callDrafts);
  expect(await dayOfDemonstration({ all: async () => brought })).toBe("2026-11-19");
  const written = [...brought, ...here.write(...callDrafts)];
  expect(await dayOfDemonstration({ all: async () => written })).toBe("2026-11-19");
  expect(await dayOfDemonstration({ all: async () => [] })).toBeNull();
});
