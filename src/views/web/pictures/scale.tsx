/** Scales of pictures told as data: places of values, round steps, the line below and at the left. */
import type { Axis } from "../../model/index.ts";

/** Place of a value between two ends of the picture; values beyond the scale stay at its end. */
export const placeOn =
  ({ from, to }: Axis, start: number, end: number) =>
  (value: number): number =>
    start + ((Math.min(Math.max(value, Math.min(from, to)), Math.max(from, to)) - from) / (to - from)) * (end - start);

/** Round values along a scale, at most seven. */
export function ticksOf({ from, to, per, isWhole }: Axis): readonly number[] {
  const span = per * (to - from);
  const rough = span / 6;
  const size = 10 ** Math.floor(Math.log10(rough));
  // Counts have no halves.
  const steps = per === 1 && size === 1 ? [1, 2, 5, 10] : [1, 2, 2.5, 5, 10];
  const fine = (steps.find((each) => each * size >= rough * 0.999) ?? 10) * size;
  const step = isWhole ? Math.max(1, fine) : fine;
  const first = Math.ceil((per * from) / step - 1e-9);
  const last = Math.floor((per * to) / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => ((first + index) * step) / per);
}

/** A value of a scale as it is read. */
export const tickText = (value: number, { per }: Axis): string => {
  const read = Number((per * value).toPrecision(6));
  return String(read).replace("-", "−");
};

const x0 = 6;

/** The scale below: a line, its steps, and what it measures. */
export function Below({
  axis,
  left,
  right,
  y,
}: {
  readonly axis: Axis;
  readonly left: number;
  readonly right: number;
  readonly y: number;
}) {
  const place = placeOn(axis, left, right);
  return (
    <g>
      <path d={`M${left} ${y}H${right}`} stroke="var(--edge)" />
      {ticksOf(axis).map((tick) => (
        <g key={tick}>
          <path d={`M${place(tick)} ${y}v6`} stroke="var(--edge)" />
          <text className="q mono" x={place(tick)} y={y + 21} textAnchor="middle">
            {tickText(tick, axis)}
          </text>
        </g>
      ))}
      <text className="q" x={right} y={y + 40} textAnchor="end">
        {axis.says}
      </text>
    </g>
  );
}

/** The scale at the left; what it measures stands above it. */
export function AtLeft({
  axis,
  x,
  top,
  bottom,
}: {
  readonly axis: Axis;
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
}) {
  const place = placeOn(axis, bottom, top);
  return (
    <g>
      <path d={`M${x} ${top}V${bottom}`} stroke="var(--edge)" />
      {ticksOf(axis).map((tick) => (
        <g key={tick}>
          <path d={`M${x} ${place(tick)}h-6`} stroke="var(--edge)" />
          <text className="q mono" x={x - 10} y={place(tick) + 4} textAnchor="end">
            {tickText(tick, axis)}
          </text>
        </g>
      ))}
      <text className="q" x={x0} y={top - 14}>
        {axis.says}
      </text>
    </g>
  );
}
