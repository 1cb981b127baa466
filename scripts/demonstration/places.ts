/** The three invented apiaries: places, colonies, weather, forage and supers of an invented valley. */
import type { Writer } from "./writer.ts";

export interface Place {
  readonly apiary: string;
  readonly code: string;
  /** Colony ids by colony code. */
  readonly colony: (number: number) => string;
  readonly colonies: readonly string[];
}

/** Twelve invented monthly means of a cool temperate valley, Celsius, January first. */
const valleyMeans = [-3.1, -2.0, 2.2, 7.9, 13.6, 18.2, 20.9, 20.0, 15.8, 9.7, 4.2, -0.8];

const invented = "Invented for the demonstration";

function place(writer: Writer, code: string, name: string, count: number, metres: number): Place {
  const apiary = writer.id(code.toLowerCase());
  const day = "2025-10-02";
  writer.write("specialist 1", {
    kind: "apiary-registered",
    at: day,
    about: [apiary],
    data: { code, name, place: "Tarrow Valley (invented)", latitude: 45.2, elevationMetres: metres },
  });
  const colony = (number: number) => `${apiary}-${String(number).padStart(2, "0")}`;
  const colonies = Array.from({ length: count }, (_, index) => colony(index + 1));
  for (const [index, each] of colonies.entries()) {
    writer.write("specialist 1", {
      kind: "colony-registered",
      at: day,
      about: [apiary, each],
      data: { code: `${code}-${String(index + 1).padStart(2, "0")}` },
    });
  }
  writer.write("specialist 1", {
    kind: "weather-year-recorded",
    at: day,
    about: [apiary],
    data: { kind: "monthly-means", monthlyMeanCelsius: valleyMeans, station: "Lower Tarrow", source: invented },
  });
  writer.write("specialist 1", {
    kind: "region-recorded",
    at: day,
    about: [apiary],
    data: {
      varroa: "present",
      acarapisWoodi: "found",
      smallHiveBeetle: "absent",
      tropilaelaps: "absent",
      vespa: "absent",
      source: invented,
    },
  });
  return { apiary, code, colony, colonies };
}

/** Withen Bank with its flows and supers, Sedge End, Garth Hollow. */
export function writePlaces(writer: Writer): { readonly withen: Place; readonly sedge: Place; readonly garth: Place } {
  const withen = place(writer, "WB", "Withen Bank", 12, 410);
  const sedge = place(writer, "SE", "Sedge End", 6, 120);
  const garth = place(writer, "GH", "Garth Hollow", 4, 260);
  const flows = [
    ["fruit", "2026-04-25", "2026-05-20"],
    ["clover", "2026-06-12", "2026-07-20"],
  ] as const;
  for (const { apiary } of [withen, sedge, garth]) {
    for (const [name, from, to] of flows) {
      writer.write("specialist 1", {
        kind: "flow-recorded",
        at: "2025-10-02",
        about: [apiary, `${apiary}-flow-${name}`],
        data: { name, from, to },
      });
    }
  }
  return { withen, sedge, garth };
}
