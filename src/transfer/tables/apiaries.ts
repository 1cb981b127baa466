/** Apiaries and their colonies, each with the middle of a wide grid cell in place of where it stands. */
import type { BodyOf } from "../../journal/index.ts";
import { first } from "./codes.ts";
import { type Column, tidy } from "./tidy.ts";

/** Width of a grid cell, degrees: about 55 km from south to north. Judgement: wider than a flight, narrower than a region. */
export const gridDegrees = 0.5;

/**
 * The middle of the grid cell that a coordinate lies in.
 * @example
 * gridMiddle(45.13)  // → 45.25
 * gridMiddle(-0.2)  // → -0.25
 */
export const gridMiddle = (degrees: number): number => (Math.floor(degrees / gridDegrees) + 0.5) * gridDegrees;

interface Row {
  readonly apiary: string;
  readonly record: BodyOf<"apiary-registered"> | null;
  readonly colony: string;
  readonly colonyRecord: BodyOf<"colony-registered"> | null;
}

const grid = (name: string, of: "latitude" | "longitude"): Column<Row> => ({
  ...{ name, type: "number" as const },
  says: `Middle of the cell of ${gridDegrees} degrees in which the apiary lies, degrees; exact places are not exported.`,
  of: ({ record }) => (record?.[of] === undefined ? null : gridMiddle(record[of])),
});

/** One row a colony; where two people's words stand side by side, the first by id of entry. */
export const colonies = tidy<Row>({
  name: "colonies",
  says: "a colony and the apiary it stands in",
  key: ["apiary", "colony"],
  columns: [
    { name: "apiary", type: "string", says: "Code of the apiary.", of: ({ apiary, record }) => record?.code ?? apiary },
    { name: "district", type: "string", says: "District, as it was named.", of: ({ record }) => record?.place ?? null },
    grid("grid_latitude", "latitude"),
    grid("grid_longitude", "longitude"),
    {
      name: "colony",
      type: "string",
      says: "Code of the colony.",
      of: ({ colony, colonyRecord }) => colonyRecord?.code ?? colony,
    },
    {
      name: "installed_on",
      type: "date",
      says: "Day on which it came to the apiary.",
      of: ({ colonyRecord }) => colonyRecord?.installedOn ?? null,
    },
    {
      name: "hive_type",
      type: "string",
      says: "Hive, as it was named.",
      of: ({ colonyRecord }) => colonyRecord?.hiveType ?? null,
    },
    {
      name: "stock",
      type: "string",
      says: "Race or strain, as the keeper names it.",
      of: ({ colonyRecord }) => colonyRecord?.stock ?? null,
    },
  ],
  rows: (casebook) =>
    Object.values(casebook.apiaries).flatMap(({ id, record, colonies: own }) =>
      Object.entries(own).map(([colony, state]) => ({
        apiary: id,
        record: first(record),
        colony,
        colonyRecord: first(state.record),
      })),
    ),
});
