/** The tables as a data package: one CSV each, and a dictionary that says what stands in every column. */
import { strToU8, zipSync } from "fflate";
import type { Casebook } from "../casebook/index.ts";
import { toCsv } from "./csv.ts";
import type { TidyTable } from "./tables/index.ts";

/** Files of a package, by name. */
export type PackageFiles = Readonly<Record<string, string>>;

/**
 * The files of a package: `datapackage.json` and a CSV for each table. Two rows may share a table's key where two
 * people's words stand side by side, so keys are told in words and not as primary keys.
 *
 * @source Frictionless Data Package 1, Tabular Data Resource and Table Schema (from memory)
 */
export function dataPackage(
  casebook: Casebook,
  tables: readonly TidyTable[],
  { created, version }: { readonly created: string; readonly version: string },
): PackageFiles {
  const made = tables.map((table) => ({ table, data: table.of(casebook) }));
  const description = {
    profile: "tabular-data-package",
    name: "skepsis-tables",
    title: "Cases, findings, tests and readings of bees",
    description:
      "Tidy tables of a casebook. An empty cell is nothing recorded, never zero. Exact places and the words of callers are left out.",
    created,
    version,
    resources: made.map(({ table }) => resourceOf(table)),
  };
  return {
    "datapackage.json": `${JSON.stringify(description, null, 2)}\n`,
    ...Object.fromEntries(made.map(({ table, data }) => [`${table.name}.csv`, toCsv(data)])),
  };
}

const resourceOf = ({ name, says, key, columns }: TidyTable) => ({
  profile: "tabular-data-resource",
  name,
  path: `${name}.csv`,
  title: name,
  description: `One row: ${says}. Told apart by ${key.join(", ")}.`,
  format: "csv",
  mediatype: "text/csv",
  encoding: "utf-8",
  dialect: { delimiter: ",", lineTerminator: "\r\n", quoteChar: '"', doubleQuote: true, header: true },
  schema: {
    fields: columns.map(({ name: column, type, says: description, words }) => ({
      ...{ name: column, type, description },
      ...(words ? { constraints: { enum: words } } : {}),
    })),
    missingValues: [""],
  },
});

/** The day that all files of an archive carry: the package itself says when it was made. */
const archived = new Date(Date.UTC(1980, 0, 1, 12));

/** The files as one ZIP archive. */
export const zipped = (files: PackageFiles): Uint8Array =>
  zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])), { mtime: archived });
