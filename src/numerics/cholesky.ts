/** Linear equations with a symmetric matrix, by Cholesky's factor: what least squares and likelihoods ask for. */
import { ensure } from "../units/index.ts";

/** A positive definite matrix taken apart, or the plain statement that it is none. */
export type CholeskyFactor =
  | {
      readonly isPositiveDefinite: true;
      /** The x with matrix · x = right; one number per row of the matrix. */
      readonly solve: (right: readonly number[]) => readonly number[];
      /** Diagonal of the inverse: variances, when the matrix is an information. */
      readonly inverseDiagonal: () => readonly number[];
    }
  | { readonly isPositiveDefinite: false };

/** A pivot below this share of its diagonal entry counts as 0: the column depends on those before it. */
const smallestPivot = 1e-13;

/**
 * Cholesky's factor of a symmetric matrix, given by rows; only the lower triangle is read.
 *
 * Says so, rather than dividing, when the matrix is not positive definite to the digits of a double.
 *
 * @throws DomainError unless there are as many entries in each row as rows, all finite
 * @source Golub & Van Loan, Matrix computations, section on Cholesky's factor (from memory)
 * @example
 * cholesky([[4, 2], [2, 3]]).solve([10, 9])  // → [1.5, 2]
 * cholesky([[1, 1], [1, 1]]).isPositiveDefinite  // → false
 */
export function cholesky(matrix: readonly (readonly number[])[]): CholeskyFactor {
  const size = matrix.length;
  for (const row of matrix) {
    ensure(row.length === size && row.every(Number.isFinite), "matrix", row, `${size} finite numbers in each row`);
  }
  const lower: number[][] = matrix.map(() => new Array<number>(size).fill(0));
  const at = (i: number, j: number) => lower[i]?.[j] as number;
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let rest = matrix[i]?.[j] as number;
      for (let k = 0; k < j; k += 1) rest -= at(i, k) * at(j, k);
      if (i > j) (lower[i] as number[])[j] = rest / at(j, j);
      else if (rest > smallestPivot * (matrix[i]?.[i] as number)) (lower[i] as number[])[i] = Math.sqrt(rest);
      else return { isPositiveDefinite: false };
    }
  }
  const solve = (right: readonly number[]): readonly number[] => {
    ensure(right.length === size, "right", right, `${size} numbers`);
    const x = [...right];
    for (let i = 0; i < size; i += 1) {
      for (let k = 0; k < i; k += 1) x[i] = (x[i] as number) - at(i, k) * (x[k] as number);
      x[i] = (x[i] as number) / at(i, i);
    }
    for (let i = size - 1; i >= 0; i -= 1) {
      for (let k = i + 1; k < size; k += 1) x[i] = (x[i] as number) - at(k, i) * (x[k] as number);
      x[i] = (x[i] as number) / at(i, i);
    }
    return x;
  };
  const unit = (place: number) => matrix.map((_, i) => (i === place ? 1 : 0));
  return {
    isPositiveDefinite: true,
    solve,
    inverseDiagonal: () => matrix.map((_, place) => solve(unit(place))[place] as number),
  };
}
