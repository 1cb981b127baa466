/** Prints, for each function of src/numerics, the number of tabled cases and the worst relative error. */
import { outcomes, tables, worst } from "./cases.ts";

for (const table of tables) {
  const all = outcomes(table);
  console.log(`${table}: ${all.length} cases`);
  for (const each of worst(all)) {
    const count = all.filter((other) => other.function === each.function).length;
    const error = each.relativeError.toExponential(1).padStart(8);
    console.log(`  ${each.function.padEnd(28)} ${String(count).padStart(3)}  ${error}  at ${each.args.join(", ")}`);
  }
}
