/** The part of the OpenAPI document about what a night found. */
type Json = Readonly<Record<string, unknown>>;

const range: Json = {
  type: "object",
  properties: Object.fromEntries(["q05", "q25", "q50", "q75", "q95"].map((name) => [name, { type: "number" }])),
  required: ["q05", "q25", "q50", "q75", "q95"],
};

const ofColony: Json = {
  night: { type: "string", format: "date" },
  stoodAt: { type: "string", format: "date-time", description: "Instant at which the records stood so." },
  position: { type: "integer", description: "Place of the last entry that was in it." },
  caseId: { type: "string" },
  colony: { type: "string" },
};

export const forecasts: Json = {
  type: "object",
  properties: {
    forecasts: {
      type: "array",
      items: {
        oneOf: [
          {
            type: "object",
            properties: {
              ...ofColony,
              from: { type: "string", format: "date" },
              until: { type: "string", format: "date" },
              afterDone: { type: "boolean", description: "Actions on record are in its course." },
              days: {
                type: "array",
                description: "A week apart, the last day at the end.",
                items: {
                  type: "object",
                  properties: {
                    date: { type: "string", format: "date" },
                    bees: range,
                    infestedShare: range,
                    survival: range,
                  },
                  required: ["date", "bees", "infestedShare", "survival"],
                },
              },
            },
            required: [...Object.keys(ofColony), "from", "until", "afterDone", "days"],
          },
          {
            type: "object",
            description: "A colony that cannot be reckoned from what is on record.",
            properties: {
              ...ofColony,
              problems: {
                type: "array",
                description: "Why: codes and values; the sentences are the page's.",
                items: {
                  type: "object",
                  properties: { code: { type: "string" }, field: { type: ["string", "null"] } },
                  required: ["code", "field"],
                },
              },
            },
            required: [...Object.keys(ofColony), "problems"],
          },
        ],
      },
    },
  },
  required: ["forecasts"],
};
