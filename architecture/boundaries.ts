/** Who may import whom. The diagram in ARCHITECTURE.md and the boundary test are made from this table. */

export interface Part {
  /** Folder under src. */
  readonly folder: string;
  /** Folders it may import, through their entrance. */
  readonly imports: readonly string[];
  /** Packages it may import; a pure folder has few or none. */
  readonly packages: readonly string[] | "any";
  /** Pure: no clock, chance, network, disk or screen. */
  readonly pure: boolean;
}

const facts = ["units", "knowledge"] as const;
const step = (name: string, imports: readonly string[] = []): Part => ({
  folder: `reasoning/${name}`,
  imports: ["units", "numerics", "knowledge", "casebook", ...imports.map((each) => `reasoning/${each}`)],
  packages: [],
  pure: true,
});

export const parts: readonly Part[] = [
  { folder: "units", imports: [], packages: [], pure: true },
  { folder: "numerics", imports: ["units"], packages: [], pure: true },
  { folder: "knowledge", imports: ["units"], packages: [], pure: true },
  {
    folder: "journal",
    imports: [...facts],
    packages: ["zod", "@noble/hashes", "canonicalize"],
    pure: true,
  },
  { folder: "casebook", imports: [...facts, "journal"], packages: [], pure: true },
  step("site"),
  step("sampling"),
  step("bench", ["sampling"]),
  step("efficacy", ["bench"]),
  step("differential"),
  step("decision"),
  step("surveillance"),
  step("control", ["site"]),
  step("dynamics", ["site"]),
  step("next-step", ["differential", "decision"]),
  step("experience", ["differential", "surveillance"]),
  {
    folder: "reasoning",
    imports: [
      ...facts,
      "numerics",
      "casebook",
      ...[
        "site",
        "sampling",
        "bench",
        "efficacy",
        "differential",
        "decision",
        "surveillance",
        "control",
        "dynamics",
        "next-step",
        "experience",
      ].map((each) => `reasoning/${each}`),
    ],
    packages: ["zod"],
    pure: true,
  },
  { folder: "storage", imports: ["units", "journal", "casebook"], packages: "any", pure: false },
  {
    folder: "transfer",
    imports: [...facts, "journal", "casebook"],
    packages: ["fflate", "ical-generator", "zod"],
    pure: true,
  },
  { folder: "access", imports: ["units", "journal", "casebook"], packages: [], pure: true },
  { folder: "views/words", imports: [...facts, "casebook", "reasoning"], packages: [], pure: true },
  {
    folder: "views/model",
    imports: [...facts, "journal", "casebook", "reasoning", "views/words"],
    packages: [],
    pure: true,
  },
  { folder: "views/report", imports: ["units", "views/model", "views/words"], packages: ["bwip-js"], pure: true },
  {
    folder: "views/web",
    imports: [
      ...facts,
      "journal",
      "casebook",
      "reasoning",
      "storage",
      "transfer",
      "access",
      "views/words",
      "views/model",
      "views/report",
    ],
    packages: "any",
    pure: false,
  },
  {
    folder: "views/service",
    imports: [
      ...facts,
      "journal",
      "casebook",
      "reasoning",
      "storage",
      "transfer",
      "access",
      "views/words",
      "views/model",
      "views/report",
    ],
    packages: "any",
    pure: false,
  },
  {
    folder: "views/cli",
    imports: [
      ...facts,
      "numerics",
      "journal",
      "casebook",
      "reasoning",
      "storage",
      "transfer",
      "access",
      "views/words",
      "views/model",
      "views/report",
      "views/service",
    ],
    packages: "any",
    pure: false,
  },
];
