/** Mappings used before on this device, found again by the names of the columns. */
import { type Mapping, readMapping } from "../../../transfer/index.ts";

const slotOf = (header: readonly string[]): string => `skepsis.mapping ${JSON.stringify(header)}`;

/** The mapping last used for a table with these columns; null when there is none. */
export function mappingFor(header: readonly string[]): Mapping | null {
  try {
    const read = readMapping(JSON.parse(localStorage.getItem(slotOf(header)) ?? "null"));
    return read.ok ? read.value : null;
  } catch {
    return null;
  }
}

export function keepMapping(header: readonly string[], mapping: Mapping): void {
  try {
    localStorage.setItem(slotOf(header), JSON.stringify(mapping));
  } catch {
    // a browser that keeps nothing: the mapping can be saved as a file
  }
}
