/** Linear equations against their own right-hand side, and a matrix of no full rank. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { cholesky } from "./index.ts";

const entry = fc.double({ min: -3, max: 3, noNaN: true });
const squareMatrix = fc
  .integer({ min: 1, max: 5 })
  .chain((size) =>
    fc.array(fc.array(entry, { minLength: size, maxLength: size }), { minLength: size, maxLength: size }),
  );

it("[NU200] the solution put back gives the right-hand side, and the inverse its diagonal", () => {
  fc.assert(
    fc.property(squareMatrix, (rows) => {
      const size = rows.length;
      // A times its transpose plus the unit matrix is positive definite.
      const matrix = rows.map((a, i) =>
        rows.map((b, j) => a.reduce((sum, each, k) => sum + each * (b[k] as number), i === j ? 1 : 0)),
      );
      const factor = cholesky(matrix);
      if (!factor.isPositiveDefinite) throw new Error("refused");
      const right = rows.map((row) => row[0] as number);
      const x = factor.solve(right);
      for (const [i, row] of matrix.entries()) {
        const back = row.reduce((sum, each, k) => sum + each * (x[k] as number), 0);
        expect(Math.abs(back - (right[i] as number))).toBeLessThan(1e-9); // condition number up to about 1e3
      }
      const column = factor.solve(Array.from({ length: size }, (_, i) => (i === 0 ? 1 : 0)));
      expect(factor.inverseDiagonal()[0]).toBe(column[0]);
    }),
    { seed: 1924, numRuns: 200 },
  );
});

it("[NU201] a matrix of less than full rank, or not positive, is said to be so", () => {
  expect(
    cholesky([
      [1, 2],
      [2, 4],
    ]).isPositiveDefinite,
  ).toBe(false);
  expect(
    cholesky([
      [1, 2],
      [2, 1],
    ]).isPositiveDefinite,
  ).toBe(false);
  expect(cholesky([[0]]).isPositiveDefinite).toBe(false);
  expect(() => cholesky([[1, 2]])).toThrow("matrix must be");
  expect(() => cholesky([[Number.NaN]])).toThrow("matrix must be");
});
