/**
 * Pictures of the reckoner as data: ranges, curves, bars; each can be told as a table.
 *
 * @module views/model
 */

/** A scale: from, to, and what one step of it means. */
export interface Axis {
  /** What is measured: `Bees infested, of 100`. */
  readonly says: string;
  readonly from: number;
  readonly to: number;
  /** Values are multiplied by this to be read: 100 for shares. */
  readonly per: 1 | 100;
  /** Only whole numbers are on it. */
  readonly isWhole?: true;
}

interface Common {
  /** The sentence above the picture: what it shows. */
  readonly title: string;
  readonly under?: string;
  /** What the picture shows, in words, for those who do not see it. */
  readonly label: string;
  /** Name of the files it is saved as. */
  readonly name: string;
}

/** Intervals one under the other on one scale, and lines to read them against. */
export interface RangesPicture extends Common {
  readonly kind: "ranges";
  readonly axis: Axis;
  /** What the rows are: `Method`. */
  readonly rowsSay: string;
  readonly rows: readonly {
    readonly name: string;
    readonly value: number | null;
    readonly low: number | null;
    readonly high: number | null;
  }[];
  readonly lines: readonly { readonly at: number; readonly says: string }[];
}

export interface Series {
  readonly name: string;
  readonly points: readonly (readonly [x: number, y: number])[];
  /** `steps` holds each value until the next x; `points` draws no line. */
  readonly style: "full" | "dashed" | "dotted" | "steps" | "points";
}

/** One or more curves over one scale; regions behind them, points and lines told in words. */
export interface CurvesPicture extends Common {
  readonly kind: "curves";
  readonly x: Axis;
  readonly y: Axis;
  readonly series: readonly Series[];
  readonly areas?: readonly {
    readonly says: string;
    readonly tone: 1 | 2 | 3 | 4;
    readonly edge: readonly (readonly [x: number, low: number, high: number])[];
  }[];
  /** Ranges that stand upright at a place of x, behind the curves; x is that of a point of a series. */
  readonly uprights?: readonly { readonly x: number; readonly low: number; readonly high: number }[];
  readonly marks?: readonly { readonly x: number; readonly y: number; readonly says: string }[];
  readonly lines?: readonly (
    | { readonly x: number; readonly says: string }
    | { readonly y: number; readonly says: string }
  )[];
}

/** Counts or shares by class, one bar a series. */
export interface BarsPicture extends Common {
  readonly kind: "bars";
  /** What the classes are: `Mites in a bee`. */
  readonly classesSay: string;
  readonly classes: readonly string[];
  readonly y: Axis;
  readonly series: readonly { readonly name: string; readonly values: readonly (number | null)[] }[];
}

export type PictureView = RangesPicture | CurvesPicture | BarsPicture;

export interface PictureTable {
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** The words a table of ranges needs. */
export interface RangeColumns {
  readonly value: string;
  readonly low: string;
  readonly high: string;
}

/**
 * The figures of a picture as a table, in the units of its scales.
 * @example
 * pictureTable({ kind: "bars", title: "", label: "", name: "loads", classesSay: "Mites", classes: ["0", "1"], y: { says: "Bees", from: 0, to: 9, per: 1 }, series: [{ name: "seen", values: [7, 2] }] }, { value: "", low: "", high: "" }).rows  // → [["0",7],["1",2]]
 */
export function pictureTable(picture: PictureView, columns: RangeColumns): PictureTable {
  const { name } = picture;
  switch (picture.kind) {
    case "ranges":
      return {
        name,
        columns: [picture.rowsSay, columns.value, columns.low, columns.high],
        rows: picture.rows.map((row) => [row.name, ...[row.value, row.low, row.high].map(scaled(picture.axis))]),
      };
    case "curves":
      return {
        name,
        columns: [
          picture.x.says,
          ...picture.series.map((each) => each.name),
          ...(picture.uprights ? [columns.low, columns.high] : []),
        ],
        rows: curveRows(picture),
      };
    case "bars":
      return {
        name,
        columns: [picture.classesSay, ...picture.series.map((each) => each.name)],
        rows: picture.classes.map((each, index) => [
          each,
          ...picture.series.map(({ values }) => scaled(picture.y)(values[index] ?? null)),
        ]),
      };
  }
}

const scaled =
  ({ per }: Axis) =>
  (value: number | null): number | null =>
    value === null ? null : per * value;

/** One row for each x that any curve has; a curve without that x leaves its cell empty. */
function curveRows({ x, y, series, uprights }: CurvesPicture): PictureTable["rows"] {
  const at = [...new Set(series.flatMap(({ points }) => points.map(([each]) => each)))].sort((a, b) => a - b);
  const reach = (each: number) => {
    const range = uprights?.find((one) => one.x === each);
    return uprights ? [scaled(y)(range?.low ?? null), scaled(y)(range?.high ?? null)] : [];
  };
  const found = series.map(({ points }) => new Map(points));
  return at.map((each) => [
    scaled(x)(each),
    ...found.map((points) => scaled(y)(points.get(each) ?? null)),
    ...reach(each),
  ]);
}
