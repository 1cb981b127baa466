/** Where the arrow keys lead on a sheet whose rows may have one cell or many. */

interface Place {
  readonly row: number;
  readonly column: number;
}

/** The next cell for a key, or null when the key does not move. `widths`: cells of each row. The column is kept across short rows. */
export function move(key: string, from: Place, widths: readonly number[]): Place | null {
  const last = (row: number) => (widths[row] ?? 1) - 1;
  const column = Math.min(from.column, last(from.row));
  switch (key) {
    case "ArrowRight":
      return column < last(from.row) ? { row: from.row, column: column + 1 } : null;
    case "ArrowLeft":
      return column > 0 ? { row: from.row, column: column - 1 } : null;
    case "ArrowDown":
      return from.row < widths.length - 1 ? within(from.row + 1) : null;
    case "ArrowUp":
      return from.row > 0 ? within(from.row - 1) : null;
    case "Home":
      return { row: from.row, column: 0 };
    case "End":
      return { row: from.row, column: last(from.row) };
    default:
      return null;
  }
  function within(row: number): Place {
    return { row, column: from.column };
  }
}
