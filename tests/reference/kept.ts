/** One kept reference case by its file and id, for tests of what stands above the library. */
import { readFileSync } from "node:fs";
import path from "node:path";

interface Kept<Input, Expected> {
  readonly id: string;
  readonly input: Input;
  readonly expected: Expected;
}

/** The case of this id; throws where the file keeps none. The caller says what shape it has. */
export function keptCase<Input, Expected>(topic: string, id: string): Kept<Input, Expected> {
  const file = path.join(import.meta.dirname, "values", `${topic}.json`);
  const { cases } = JSON.parse(readFileSync(file, "utf8")) as { readonly cases: readonly Kept<Input, Expected>[] };
  const found = cases.find((each) => each.id === id);
  if (!found) throw new Error(`${topic} keeps no case ${id}`);
  return found;
}
