/** Steps over threads that share no memory, as a page's workers: copies go out, what became of them is put back. */
import { describe, expect, it } from "vitest";
import { compareChoices, compareInThreads } from "../what-if/choices.ts";
import type { ChoicesQuestion } from "../what-if/question.ts";
import { colonyForecast } from "./forecast.ts";
import { forecastInThreads, pieceAnswers, type Thread, type Threads } from "./in-threads.ts";

/** A thread as a page has it: every word to and from it is a copy. */
function farThread(): Thread {
  const answer = pieceAnswers();
  return {
    begin: (question) => answer(structuredClone({ kind: "question", question })),
    reckon: async (piece) => {
      await Promise.resolve();
      const said = structuredClone(answer(structuredClone({ kind: "piece", piece })));
      if (said === null || !("done" in said)) throw new Error(said?.broke ?? "no answer");
      return said.done;
    },
  };
}

const far = (count: number): Threads => ({ threads: Array.from({ length: count }, farThread), isShared: false });

const question: ChoicesQuestion = {
  site: {},
  start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" },
  actions: [],
  counts: [
    { date: "2026-08-20", infested: 4, examined: 50 },
    { date: "2026-08-24", infested: 4, examined: 50 },
  ],
  decideOn: "2026-08-25",
  until: "2026-11-15",
  draws: 103,
  seed: 3,
  line: 0.1,
  choices: [
    { name: "menthol", actions: [{ kind: "menthol", from: "2026-09-01" }] },
    { name: "new queen", actions: [{ kind: "requeen", from: "2026-09-01", susceptibility: 0.7 }] },
    {
      name: "uniting",
      actions: [
        {
          kind: "unite",
          from: "2026-08-25",
          donor: {
            start: { date: "2026-08-10", bees: 9000, infestedShare: 0.1, brood: "usual" },
            counts: [{ date: "2026-08-20", infested: 3, examined: 30 }],
          },
        },
      ],
    },
  ],
};

describe("threads that share no memory", () => {
  it.each([1, 2, 3])("[SE107] %i of them give the bytes of none", async (count) => {
    expect(await forecastInThreads(question, far(count), {})).toEqual(colonyForecast(question));
    for (const every of [null, 3, 7])
      expect(await compareInThreads(question, { every }, far(count))).toEqual(compareChoices(question, { every }));
  });

  it("[SE107] what was made for an earlier question is made once", async () => {
    const kept = new Map<string, unknown>();
    const again = { ...question, line: 0.2, moreBees: 20 };
    await compareInThreads(question, { every: 3 }, far(2), { kept });
    const { size } = kept;
    expect(await compareInThreads(again, { every: 3 }, far(2), { kept })).toEqual(compareChoices(again, { every: 3 }));
    expect(kept.size).toBe(size);
  });

  it("[SE105] once stopped, tell of no piece that was still in hand", async () => {
    const { threads, isShared } = far(2);
    let isStopped = false;
    let [reckoned, late] = [0, 0];
    const stopping = threads.map(({ begin, reckon }) => ({
      begin,
      reckon: async (piece: Parameters<typeof reckon>[0]) => {
        const done = await reckon(piece);
        reckoned += 1;
        if (reckoned === 3) isStopped = true;
        return done;
      },
    }));
    const tell = () => {
      if (isStopped) late += 1;
    };
    const heard = { tell, isStopped: () => isStopped };
    expect(await forecastInThreads(question, { threads: stopping, isShared }, heard)).toBeNull();
    expect(reckoned).toBeGreaterThanOrEqual(3);
    expect(late).toBe(0);
  });
});
