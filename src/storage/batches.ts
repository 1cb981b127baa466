/** Lists cut to what one statement may hold. */

/** Databases take only so many values in one statement. */
const batch = 400;

export function batches<T>(values: readonly T[]): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(values.length / batch) }, (_, index) =>
    values.slice(index * batch, (index + 1) * batch),
  );
}
