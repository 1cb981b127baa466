/** Signing out says what became of the session and of the records, also where something breaks. */
import { expect, it } from "vitest";
import { type Leaving, leaveDevice } from "./leave.ts";

/** A device from which everything was sent, and the steps that were taken on it. */
function device(breaks: Partial<Leaving> = {}) {
  const steps: string[] = [];
  const noted = <T>(step: string, does: () => Promise<T>) => {
    return () => {
      steps.push(step);
      return does();
    };
  };
  const nothing = async () => ({ entries: 0, files: 0 });
  const leaving: Leaving = {
    notSent: noted("asked", breaks.notSent ?? nothing),
    end: noted("ended", breaks.end ?? (async () => true)),
    forget: noted("removed", breaks.forget ?? (async () => true)),
  };
  return { leaving, steps };
}
const breaks = () => Promise.reject(new Error("the browser gives nothing"));

it("[AC37] records that could not be removed after the session ended are told", async () => {
  for (const forget of [async () => false, breaks])
    expect(await leaveDevice(true, device({ forget }).leaving)).toEqual({ how: "stayed" });
  expect(await leaveDevice(true, device().leaving)).toEqual({ how: "gone" });
});

it("[AC37] what cannot be read is told, and nothing is ended or removed", async () => {
  const { leaving, steps } = device({ notSent: breaks });
  expect(await leaveDevice(true, leaving)).toEqual({ how: "unreadable" });
  expect(steps).toEqual(["asked"]);
});

it("[AC37] whoever lets the records stay is signed out also where they cannot be read", async () => {
  const { leaving, steps } = device({ notSent: breaks });
  expect(await leaveDevice(false, leaving)).toEqual({ how: "out" });
  expect(steps).toEqual(["ended"]);
});

it("[AC37] what was not sent, and a service that does not answer, hold the records and the session", async () => {
  const left = { entries: 0, files: 2 };
  const unsent = device({ notSent: async () => left });
  expect(await leaveDevice(true, unsent.leaving)).toEqual({ how: "not-sent", left });
  const unreached = device({ end: async () => false });
  expect(await leaveDevice(true, unreached.leaving)).toEqual({ how: "unreached" });
  expect([unsent.steps, unreached.steps]).toEqual([["asked"], ["asked", "ended"]]);
});
