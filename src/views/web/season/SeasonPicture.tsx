/** The picture of a season with its twins; flags of the choice shown can be dragged, or moved by the keys. */
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from "react";
import type { dynamics } from "../../../reasoning/index.ts";
import { addDays, type Day, daysBetween } from "../../../units/index.ts";
import { flagsOf, type SeasonAsk, type SeasonView, type SeasonYear } from "../../model/index.ts";
import { seasonWords } from "../../words/index.ts";
import { Picture } from "../pictures/Picture.tsx";
import { Fan } from "./Fan.tsx";
import { type FanFrame, fanFrame, flagSide, flagStep, type PlacedFlag } from "./frame.ts";

/** Which flag is moved, and to which day. */
export interface FlagMoved {
  readonly action: number;
  readonly isLast: boolean;
  readonly date: Day;
}

interface Props {
  readonly view: SeasonView;
  readonly ask: SeasonAsk;
  readonly year: SeasonYear | null;
  readonly supers: readonly { readonly from: Day; readonly to: Day }[];
  /** Actions of the choice shown, as they stand now. */
  readonly actions: readonly dynamics.Action[];
  readonly move: (moved: FlagMoved) => void;
}

interface Handle extends PlacedFlag {
  readonly action: number;
}

export function SeasonPicture({ view, ask, year, supers, actions, move }: Props) {
  const [holder, width] = useWidth(736);
  const [dragged, setDragged] = useState<{ readonly key: string; readonly date: Day } | null>(null);
  const { x } = fanFrame(view, width, { isSmall: false, flagRows: 0 });
  const handles = placed(actions, view.done, x, dragged);
  const flagRows = handles.reduce((most, { row }) => Math.max(most, row + 1), 0);
  const frame = fanFrame(view, width, { isSmall: false, flagRows });
  return (
    <div ref={holder} className="season-picture">
      <Picture
        title={seasonWords.picture}
        under={seasonWords.pictureUnder}
        table={{ name: "season", columns: view.table.columns, rows: view.table.rows }}
      >
        <div className="fan" style={{ width: frame.width, height: frame.height }}>
          <Fan view={view} year={year} supers={supers} frame={frame} flags={handles} />
          {handles
            .filter(({ isDone }) => !isDone)
            .map((handle) => (
              <FlagHandle
                key={handle.key}
                handle={handle}
                frame={frame}
                bounds={{ least: ask.decideOn, most: ask.until, from: view.from, to: view.to }}
                drag={(date) => setDragged(date === null ? null : { key: handle.key, date })}
                move={(date) => {
                  setDragged(null);
                  move({ action: handle.action, isLast: handle.isLast, date });
                }}
              />
            ))}
        </div>
      </Picture>
    </div>
  );
}

/** Flags in order of their days; one that would lie on the one before goes into the second row. */
function placed(
  actions: readonly dynamics.Action[],
  done: SeasonView["done"],
  x: FanFrame["x"],
  dragged: { readonly key: string; readonly date: Day } | null,
): readonly Handle[] {
  const own = actions.flatMap((action, place) =>
    flagsOf(action).map((flag) => ({
      ...flag,
      action: place,
      key: `${place}${flag.isLast ? " last" : ""}`,
      isDone: false,
    })),
  );
  const before = done
    .filter(({ isLast }) => !isLast)
    .map((flag, place) => ({ ...flag, action: -1, key: `done ${place}`, isDone: true }));
  const all = [...before, ...own]
    .map((flag) => (flag.key === dragged?.key ? { ...flag, date: dragged.date } : flag))
    .sort((one, other) => one.date.localeCompare(other.date));
  let lastAt = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  return all.map((flag) => {
    const at = x(flag.date);
    const row = at - (lastAt[0] as number) >= flagSide + 2 ? 0 : 1;
    lastAt = row === 0 ? [at, lastAt[1] as number] : [lastAt[0] as number, at];
    return { ...flag, row };
  });
}

/** A flag as it is held: by the pointer, or by the arrow keys. */
function FlagHandle({
  handle,
  frame,
  bounds,
  drag,
  move,
}: {
  readonly handle: Handle;
  readonly frame: FanFrame;
  readonly bounds: { readonly least: Day; readonly most: Day; readonly from: Day; readonly to: Day };
  readonly drag: (date: Day | null) => void;
  readonly move: (date: Day) => void;
}) {
  const held = useRef<{ readonly x: number; readonly date: Day; now: Day } | null>(null);
  const say = seasonWords;
  const { least, most, from, to } = bounds;
  const within = (date: Day): Day => (date < least ? least : date > most ? most : date);
  const perDay = (frame.right - frame.left) / Math.max(1, daysBetween(from, to));
  const onPointerMove = (event: PointerEvent) => {
    if (!held.current) return;
    held.current.now = within(addDays(held.current.date, Math.round((event.clientX - held.current.x) / perDay)));
    drag(held.current.now);
  };
  const onPointerUp = () => {
    const { current } = held;
    held.current = null;
    if (current && current.now !== current.date) move(current.now);
    else drag(null);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const step = steps[event.key];
    const wanted = event.key === "Home" ? least : event.key === "End" ? most : step ? addDays(handle.date, step) : null;
    if (wanted === null) return;
    event.preventDefault();
    move(within(wanted));
  };
  return (
    // A slider of days: an input of type range would be as wide as the picture and lie over the others.
    <button
      type="button"
      role="slider"
      className="flag-handle"
      style={{ left: frame.x(handle.date) - flagSide / 2, top: frame.flagsTop + handle.row * flagStep }}
      aria-label={say.flag(handle)}
      aria-valuemin={daysBetween(from, least)}
      aria-valuemax={daysBetween(from, most)}
      aria-valuenow={daysBetween(from, handle.date)}
      aria-valuetext={say.dayOf({ date: handle.date })}
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        held.current = { x: event.clientX, date: handle.date, now: handle.date };
      }}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={() => {
        held.current = null;
        drag(null);
      }}
    />
  );
}

const steps: Readonly<Record<string, number | undefined>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -7,
  PageUp: 7,
};

/** The width there is for a picture, in whole pixels. */
export function useWidth(usual: number) {
  const holder = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(usual);
  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    const look = () => setWidth(Math.max(280, Math.floor(element.clientWidth)));
    look();
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [holder, width] as const;
}
