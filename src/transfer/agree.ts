/** A mend that a person agreed to, as a change of the mapping: the file stays as it is. */
import { plainCell } from "./cells.ts";
import type { ImportProblem } from "./import-problem.ts";
import type { Mapping } from "./mapping.ts";
import type { Table } from "./table.ts";

/**
 * The mapping with the mend of a problem in it; null when there is none, or none that a mapping can hold. What is mended
 * in one cell is written down with what stood there and why.
 */
export function agreed(
  mapping: Mapping,
  { mend, line, column }: ImportProblem,
  table: Table,
  reason: string,
): Mapping | null {
  if (mend === null) return null;
  switch (mend.kind) {
    case "nothing-recorded":
      return { ...mapping, missing: [...new Set([...mapping.missing, mend.use])] };
    case "delimiter":
      return { ...mapping, delimiter: mend.use as Mapping["delimiter"] };
    case "date-order":
      return { ...mapping, dates: mend.use as Mapping["dates"] };
    case "unit":
      return mapping.temperatures ? { ...mapping, temperatures: { ...mapping.temperatures, unit: mend.use } } : null;
    default:
  }
  const row = table.rows.find((each) => each.line === line);
  if (!row || column === null) return null;
  const named = mapping.colony?.column ?? mapping.apiary.column;
  if (named === undefined) return null;
  const at = (name: string): string => plainCell(row.cells[table.header.indexOf(name)] ?? "");
  const change = (name: string, use: string): Mapping["mends"][number] => ({
    ...{ row: at(named), column: name, given: at(name), use, reason },
  });
  const changes = (): readonly Mapping["mends"][number][] => {
    if (mend.kind === "use") return [change(column, mend.use)];
    if (mend.kind === "swap") return [change(mend.column, at(mend.with)), change(mend.with, at(mend.column))];
    const other = otherHalf(mapping, column);
    return other === null ? [] : [change(other, "")];
  };
  const made = changes();
  return made.length === 0 ? null : { ...mapping, mends: [...mapping.mends, ...made] };
}

/** The other column of a count and what it was counted on. */
function otherHalf(mapping: Mapping, column: string): string | null {
  for (const { positive, examined, mites, bees } of mapping.results)
    for (const [one, other] of [
      [positive, examined],
      [mites, bees],
    ]) {
      if (one === column) return other ?? null;
      if (other === column) return one ?? null;
    }
  return null;
}
