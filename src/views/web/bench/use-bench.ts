/** The bench at work: presses one after the other, each bee on the disk before it is shown, undo, resuming at the exact bee. */
import { useCallback, useEffect, useRef, useState } from "react";
import { bench } from "../../../reasoning/index.ts";
import {
  type BenchState,
  type BenchView,
  beeDraft,
  correctionDraft,
  type KeyMap,
  type OpenReading,
  pressKey,
  type ReadBee,
  resumedBench,
  type StoredBee,
  undoDraft,
  whatOf,
} from "../../model/index.ts";
import { useCasebook } from "../store/context.ts";
import { words } from "../words.ts";
import type { BenchSettings } from "./settings.ts";
import { play, type Sound } from "./sounds.ts";

/** What the last line says. */
export type LastAct =
  | { readonly kind: "nothing" }
  | { readonly kind: "bee"; readonly bee: StoredBee }
  | { readonly kind: "undone"; readonly bee: number };

/** A key that was pressed, or its twin that was touched. */
export interface Press {
  readonly key: string;
  /** When it was pressed, by the event: a page that was busy meanwhile must not take two presses for a bounce. */
  readonly at: number;
  readonly held?: boolean;
}

export interface BenchAtWork {
  readonly state: BenchState;
  readonly bees: readonly StoredBee[];
  readonly tally: bench.Tally;
  readonly next: number;
  readonly last: LastAct;
  /** Presses that wait for the disk. */
  readonly isStoring: boolean;
  /** Storing failed: nothing more is taken in. */
  readonly isHalted: boolean;
  /** Why no further bee is taken in without a word from the reader. */
  readonly stop: "target" | "vial-empty" | null;
  readonly flash: Sound | null;
  readonly press: (press: Press) => void;
  /** The reader says that there are more bees than were counted in. */
  readonly readBeyond: () => void;
  /** One bee read anew under its number. */
  readonly correct: (bee: StoredBee, read: ReadBee) => Promise<void>;
}

/** Milliseconds the edge of the screen lights up. */
const flashMilliseconds = 120;

export function useBench(input: {
  readonly view: BenchView;
  readonly reading: OpenReading;
  readonly keys: KeyMap;
  readonly settings: BenchSettings;
  readonly onConfirm: () => void;
}): BenchAtWork {
  const { view, reading, keys, settings, onConfirm } = input;
  const { record, today } = useCasebook();
  const [state, setState] = useState<BenchState>(() => resumedBench(reading.last?.read ?? null));
  const [bees, setBees] = useState<readonly StoredBee[]>(reading.bees);
  const [last, setLast] = useState<LastAct>(() =>
    reading.last ? { kind: "bee", bee: reading.last } : { kind: "nothing" },
  );
  const [waiting, setWaiting] = useState(0);
  const [isHalted, setHalted] = useState(false);
  const [beyond, setBeyond] = useState(false);
  const [flash, setFlash] = useState<Sound | null>(null);
  // Presses run one after the other on these, never on what a render happened to see.
  const now = useRef({ state, bees, halted: false });
  const queue = useRef<Promise<void>>(Promise.resolve());
  const latest = useRef({ view, reading, keys, settings, onConfirm, beyond, record, today });
  latest.current = { view, reading, keys, settings, onConfirm, beyond, record, today };

  useEffect(() => {
    if (!flash) return;
    const timer = setTimeout(() => setFlash(null), flashMilliseconds);
    return () => clearTimeout(timer);
  }, [flash]);

  const signal = useCallback((sound: Sound) => {
    setFlash(sound);
    if (latest.current.settings.sound) play(sound);
  }, []);

  const put = useCallback((next: Partial<{ state: BenchState; bees: readonly StoredBee[] }>) => {
    now.current = { ...now.current, ...next };
    setState(now.current.state);
    setBees(now.current.bees);
  }, []);

  const takeIn = useCallback(
    async (after: BenchState, read: ReadBee) => {
      const { view, reading, record, today, beyond } = latest.current;
      const before = now.current.bees;
      if (stopOf(before, { view, reading, beyond })) return signal("refused");
      const bee = (before.at(-1)?.bee ?? 0) + 1;
      const [entry] = await record([beeDraft(view.id, reading, { bee, read, today })]);
      const stored: StoredBee = {
        bee,
        entries: entry ? [entry.header.id] : [],
        recordedAt: entry?.header.recordedAt ?? "",
        read,
        what: whatOf(read, words),
      };
      const all = [...before, stored];
      put({ state: after, bees: all });
      setLast({ kind: "bee", bee: stored });
      signal(soundOf(all, { isBlind: reading.isBlind, target: reading.started.target }));
    },
    [put, signal],
  );

  const takeBack = useCallback(
    async (after: BenchState) => {
      const { view, reading, record, today } = latest.current;
      const bee = now.current.bees.at(-1);
      if (!bee) return signal("refused");
      await record([undoDraft(view.id, reading, { bee, today })]);
      const rest = now.current.bees.slice(0, -1);
      put({ state: { ...after, last: rest.at(-1)?.read ?? null }, bees: rest });
      setLast({ kind: "undone", bee: bee.bee });
      signal("unreadable");
    },
    [put, signal],
  );

  const handle = useCallback(
    async ({ key, at, held = false }: Press) => {
      if (now.current.halted) return;
      const { keys, settings, onConfirm } = latest.current;
      const step = pressKey(now.current.state, { key, at, held }, keys, settings.bounceMilliseconds);
      const { effect } = step;
      if (effect.kind === "bee") return takeIn(step.state, effect.bee);
      if (effect.kind === "undo-bee") return takeBack(step.state);
      put({ state: step.state });
      if (effect.kind === "dropped") signal("refused");
      if (effect.kind === "confirm") onConfirm();
    },
    [put, signal, takeIn, takeBack],
  );

  const press = useCallback(
    (pressed: Press) => {
      setWaiting((count) => count + 1);
      queue.current = queue.current
        .then(() => handle(pressed))
        .catch(() => {
          now.current = { ...now.current, halted: true };
          setHalted(true);
        })
        .finally(() => setWaiting((count) => count - 1));
    },
    [handle],
  );

  const correct = useCallback(
    async (bee: StoredBee, read: ReadBee) => {
      const { view, reading, record, today } = latest.current;
      const [entry] = await record([correctionDraft(view.id, reading, { bee, read, today })]);
      const anew: StoredBee = {
        ...bee,
        entries: entry ? [entry.header.id] : [],
        recordedAt: entry?.header.recordedAt ?? bee.recordedAt,
        read,
        what: whatOf(read, words),
      };
      const all = now.current.bees.map((each) => (each.bee === bee.bee ? anew : each));
      put({ bees: all, state: { ...now.current.state, last: all.at(-1)?.read ?? null } });
      setLast({ kind: "bee", bee: anew });
    },
    [put],
  );

  return {
    state,
    bees,
    correct,
    tally: bench.tally(bees.map((bee) => bee.read)),
    next: (bees.at(-1)?.bee ?? 0) + 1,
    last,
    isStoring: waiting > 0,
    isHalted,
    stop: stopOf(bees, { view, reading, beyond }),
    flash,
    press,
    readBeyond: () => setBeyond(true),
  };
}

function stopOf(
  bees: readonly StoredBee[],
  { view, reading, beyond }: { readonly view: BenchView; readonly reading: OpenReading; readonly beyond: boolean },
): BenchAtWork["stop"] {
  if (bench.tally(bees.map((bee) => bee.read)).read >= reading.started.target) return "target";
  return view.received && bees.length >= view.received.beesReceived && !beyond ? "vial-empty" : null;
}

function soundOf(
  bees: readonly StoredBee[],
  { isBlind, target }: { readonly isBlind: boolean; readonly target: number },
): Sound {
  if (bench.tally(bees.map((bee) => bee.read)).read >= target) return "target";
  if (bees.length % 10 === 0) return "ten";
  const read = bees.at(-1)?.read;
  if (isBlind || !read) return "clear";
  const result = bench.beeResult(read);
  return result === "positive" ? "mites" : result === "clear" ? "clear" : "unreadable";
}
