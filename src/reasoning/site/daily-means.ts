/** From twelve monthly means to a smooth mean for each day, without moving any month's mean. */
import { daysInMonth, ensure, isLeapYear } from "../../units/index.ts";

/**
 * Mean temperature of each day of a year, Celsius, 1 January first (365 or 366 numbers).
 *
 * Model: the running sum of (temperature − year's mean) is known at the end of each month; a periodic cubic
 * spline is laid through those twelve points and its daily differences are the daily means. Each month's mean
 * is kept exactly, because its days telescope to the known sum; the curve has no step at a month's end, and
 * 31 December meets 1 January. It may rise a little above the warmest month's mean, as real years do.
 *
 * An ordinary year, not a forecast: real days scatter around it by several degrees.
 *
 * @throws DomainError unless twelve finite numbers are given
 * @source mean-preserving spline: own derivation; the idea of a spline on the running sum is common practice of climatology
 */
export function dailyMeans(monthlyMeanCelsius: readonly number[], year: number): readonly number[] {
  ensure(monthlyMeanCelsius.length === 12, "monthlyMeanCelsius", monthlyMeanCelsius.length, "twelve numbers");
  ensure(monthlyMeanCelsius.every(Number.isFinite), "monthlyMeanCelsius", monthlyMeanCelsius, "finite numbers");
  const lengths = monthlyMeanCelsius.map((_, month) => daysInMonth(year, month + 1));
  const yearLength = isLeapYear(year) ? 366 : 365;
  const at = <T>(list: readonly T[], index: number): T => list[((index % 12) + 12) % 12] as T;

  const yearMean = monthlyMeanCelsius.reduce((sum, mean, month) => sum + mean * at(lengths, month), 0) / yearLength;
  const slopes = monthlyMeanCelsius.map((mean) => mean - yearMean);
  const bends = secondDerivatives(lengths, slopes);

  const days: number[] = [];
  let sumBefore = 0;
  for (let month = 0; month < 12; month++) {
    const length = at(lengths, month);
    const sumAfter = sumBefore + at(slopes, month) * length;
    const sumAt = (day: number): number => {
      const right = day / length;
      const left = 1 - right;
      const curve = (left ** 3 - left) * at(bends, month) + (right ** 3 - right) * at(bends, month + 1);
      return left * sumBefore + right * sumAfter + (curve * length * length) / 6;
    };
    for (let day = 1; day <= length; day++) days.push(sumAt(day) - sumAt(day - 1) + yearMean);
    sumBefore = sumAfter;
  }
  return days;
}

/** Second derivatives at the twelve knots of the periodic spline: a diagonally dominant system, solved without pivoting. */
function secondDerivatives(lengths: readonly number[], slopes: readonly number[]): readonly number[] {
  const size = 12;
  const rows = lengths.map((length, knot) => {
    const before = (knot + size - 1) % size;
    const row = new Array<number>(size + 1).fill(0);
    row[before] = lengths[before] as number;
    row[knot] = 2 * ((lengths[before] as number) + length);
    row[(knot + 1) % size] = length;
    row[size] = 6 * ((slopes[knot] as number) - (slopes[before] as number));
    return row;
  });
  for (let pivot = 0; pivot < size; pivot++) {
    const pivotRow = rows[pivot] as number[];
    for (const row of rows) {
      if (row === pivotRow) continue;
      const factor = (row[pivot] as number) / (pivotRow[pivot] as number);
      if (factor === 0) continue;
      for (let column = pivot; column <= size; column++)
        row[column] = (row[column] as number) - factor * (pivotRow[column] as number);
    }
  }
  return rows.map((row, knot) => (row[size] as number) / (row[knot] as number));
}

/** A year's temperature as one wave: `mean − halfRange·cos(2π(day − coldestDay)/365)`. */
export interface SineYear {
  /** Mean of the year, Celsius. */
  readonly meanCelsius: number;
  /** Half the way from the coldest to the warmest day, Celsius, ≥ 0. */
  readonly halfRangeCelsius: number;
  /** Day of the year of the lowest temperature, 1 on 1 January; may carry a fraction. */
  readonly coldestDay: number;
}

/**
 * The year as one wave, for a seasonal model that wants three numbers.
 *
 * First harmonic of the twelve means. Averaging over a month shrinks a wave by sin(π/12)/(π/12), so the half
 * range is divided by that. Months are taken as equally long. Loses spring and autumn that differ; for
 * single days use `dailyMeans`.
 *
 * @throws DomainError unless twelve finite numbers are given
 */
export function sineYear(monthlyMeanCelsius: readonly number[]): SineYear {
  ensure(monthlyMeanCelsius.length === 12, "monthlyMeanCelsius", monthlyMeanCelsius.length, "twelve numbers");
  ensure(monthlyMeanCelsius.every(Number.isFinite), "monthlyMeanCelsius", monthlyMeanCelsius, "finite numbers");
  const wave = (shape: (angle: number) => number): number =>
    monthlyMeanCelsius.reduce((sum, mean, month) => sum + mean * shape((2 * Math.PI * (month + 0.5)) / 12), 0) / 6;
  const [cosine, sine] = [wave(Math.cos), wave(Math.sin)];
  const shrink = Math.sin(Math.PI / 12) / (Math.PI / 12);
  // Coldest where −(cosine, sine) points: mean + cosine·cos(x) + sine·sin(x) is least there.
  const coldest = (Math.atan2(-sine, -cosine) / (2 * Math.PI)) * 365;
  return {
    meanCelsius: monthlyMeanCelsius.reduce((sum, mean) => sum + mean, 0) / 12,
    halfRangeCelsius: Math.hypot(cosine, sine) / shrink,
    coldestDay: (coldest + 365) % 365,
  };
}
