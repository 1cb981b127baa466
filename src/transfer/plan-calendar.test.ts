/** A plan's calendar, read back by a small reader of its own. */
import { execFileSync } from "node:child_process";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { type PlanBody, planCalendar } from "./plan-calendar.ts";

const step = (name: string, on: string, note = ""): PlanBody["steps"][number] => ({
  step: name,
  kind: "apply",
  on,
  until: null,
  gramsPerColony: 50,
  gramsInAll: 600,
  note,
});
const version = (number: number, steps: PlanBody["steps"]): PlanBody => ({
  case: "case-1",
  colonies: ["c1"],
  control: "menthol",
  labelRecord: "label-1",
  madeOn: "2026-08-20",
  steps,
  version: number,
});
const first = version(1, [
  step(
    "apply-1",
    "2026-09-02",
    "Put it on the top bars; keep the vapour from your eyes, \\ and note the day.\nTwo lines.",
  ),
  step("check-1", "2026-09-05"),
  step("remove-1", "2026-09-30"),
]);
const second = version(2, [
  step("apply-1", "2026-09-04", "später — bei Wärme ".repeat(12)),
  step("remove-1", "2026-12-31"),
]);
const calendar = (...versions: readonly [PlanBody, ...PlanBody[]]) =>
  planCalendar({
    plan: "0190-plan",
    versions,
    name: "Tarn Ridge",
    titleOf: ({ step: name }) => `${name}: Tarn Ridge, 12 colonies`,
    madeAt: "2026-08-20T09:00:00.000Z",
  });

/** Lines unfolded, events as name → value; escapes undone. */
function events(text: string): readonly Record<string, string>[] {
  const lines = text.replaceAll("\r\n ", "").split("\r\n");
  const found: Record<string, string>[] = [];
  for (const line of lines) {
    if (line === "BEGIN:VEVENT") found.push({});
    const colon = line.indexOf(":");
    const event = found.at(-1);
    if (event && colon > 0)
      event[line.slice(0, colon)] = line
        .slice(colon + 1)
        .replace(/\\([\\;,nN])/g, (_, sign: string) => (sign.toLowerCase() === "n" ? "\n" : sign));
  }
  return found;
}

describe("a plan's calendar", () => {
  it("[TR17] one all-day event a step, ending on the next day", () => {
    const [apply, check, remove] = events(calendar(first));
    expect(apply).toMatchObject({
      UID: "0190-plan.apply-1@skepsis",
      SEQUENCE: "1",
      "DTSTART;VALUE=DATE": "20260902",
      "DTEND;VALUE=DATE": "20260903",
      SUMMARY: "apply-1: Tarn Ridge, 12 colonies",
      DESCRIPTION: "Put it on the top bars; keep the vapour from your eyes, \\ and note the day.\nTwo lines.",
      STATUS: "CONFIRMED",
      DTSTAMP: "20260820T090000Z",
    });
    expect(check?.["DTSTART;VALUE=DATE"]).toBe("20260905");
    expect(remove?.["DTSTART;VALUE=DATE"]).toBe("20260930");
  });
  it("[TR17] a new version keeps the ids, raises the sequence and cancels what it dropped", () => {
    const found = events(calendar(first, second));
    expect(found.map((event) => [event.UID, event.SEQUENCE, event.STATUS, event["DTSTART;VALUE=DATE"]])).toEqual([
      ["0190-plan.apply-1@skepsis", "2", "CONFIRMED", "20260904"],
      ["0190-plan.remove-1@skepsis", "2", "CONFIRMED", "20261231"],
      ["0190-plan.check-1@skepsis", "2", "CANCELLED", "20260905"],
    ]);
    expect(found[1]?.["DTEND;VALUE=DATE"]).toBe("20270101");
    expect(calendar(first, second)).toBe(calendar(first, second));
  });
  it("[TR17] versions out of order and a moment without a zone are the caller's bug", () => {
    expect(() => calendar(second, first)).toThrow("versions must be");
    expect(() =>
      planCalendar({ plan: "p", versions: [first], name: "n", titleOf: () => "t", madeAt: "2026-08-20T09:00:00" }),
    ).toThrow("madeAt must be");
  });
  it("[TR18] CRLF everywhere, no line over 75 octets, and the text survives folding", () => {
    const text = calendar(first, second);
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    expect(text.endsWith("END:VCALENDAR\r\n")).toBe(true);
    const octets = text.split("\r\n").map((line) => new TextEncoder().encode(line).length);
    expect(Math.max(...octets)).toBeLessThanOrEqual(75);
    expect(events(text)[0]?.DESCRIPTION).toBe(second.steps[0]?.note);
  });
  it("[TR18] the same text in every time zone", () => {
    const script = `
      import { planCalendar } from ${JSON.stringify(path.resolve("src/transfer/plan-calendar.ts"))};
      process.stdout.write(planCalendar({ plan: "p", versions: [${JSON.stringify(first)}], name: "n", titleOf: () => "t", madeAt: "2026-08-20T09:00:00.000Z" }));`;
    const texts = ["UTC", "America/Los_Angeles", "Pacific/Auckland"].map((TZ) =>
      execFileSync(process.execPath, ["--input-type=module", "-e", script], {
        env: { ...process.env, TZ },
        encoding: "utf8",
      }),
    );
    expect(texts[0]).toContain("DTSTART;VALUE=DATE:20260902");
    expect(new Set(texts).size).toBe(1);
  });
});
