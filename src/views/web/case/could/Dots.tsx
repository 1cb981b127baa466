/** How an answer could fall: twenty dots, each 1 in 20, over a bar that holds 90 in 100, with a tick at the estimate. */

interface Props {
  readonly posterior: number;
  readonly low: number;
  readonly high: number;
  readonly dots: readonly number[] | null;
}

const [width, ground, step, radius] = [200, 53, 7.2, 3.1];
/** A column of more dots than this is drawn with smaller ones. */
const tallAtFullSize = 10;

/** Places of the dots: those of one column stand on each other. */
export function dotPlaces(dots: readonly number[]): readonly DotPlace[] {
  const columnOf = (dot: number) => Math.min(Math.floor(width / step) - 1, Math.floor((dot * width) / step));
  const tallest = Math.max(0, ...[...Map.groupBy(dots, columnOf).values()].map((column) => column.length));
  const [rise, size] = tallest > tallAtFullSize ? [3.8, 1.7] : [7.4, radius];
  const heights = new Map<number, number>();
  return dots.map((dot) => {
    const column = columnOf(dot);
    const height = heights.get(column) ?? 0;
    heights.set(column, height + 1);
    return { x: (column + 0.5) * step, y: ground - 4.5 - height * rise, size };
  });
}

export interface DotPlace {
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

const ticks = Array.from({ length: 11 }, (_, index) => `M${index * 20} ${ground}v${index % 5 === 0 ? 7 : 4}`).join("");

/** The drawing alone, in a frame of 200 by 64, taller when a column is. */
export function DotsDrawing({ posterior, low, high, dots }: Props) {
  return (
    <>
      {dots ? (
        <g fill="var(--ink)">
          {dotPlaces(dots).map(({ x, y, size }) => (
            <circle key={`${x} ${y}`} cx={x} cy={y} r={size} />
          ))}
        </g>
      ) : null}
      <path d={`M0 ${ground}H${width}${ticks}`} fill="none" stroke="var(--edge)" />
      <path
        d={`M${low * width} ${ground}H${Math.max(high * width, low * width + 2)}`}
        stroke="var(--ink)"
        strokeWidth="3"
      />
      <path d={`M${posterior * width} 50v12`} stroke="var(--ink)" strokeWidth="2" />
    </>
  );
}

export function Dots(props: Props) {
  const top = Math.min(0, ...(props.dots ? dotPlaces(props.dots).map(({ y }) => y - 4) : []));
  return (
    <svg width={width} height={64 - top} viewBox={`0 ${top} ${width} ${64 - top}`} aria-hidden="true">
      <DotsDrawing {...props} />
    </svg>
  );
}
