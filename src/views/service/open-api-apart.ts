/** The part of the OpenAPI document about what the service keeps apart. */
type Json = Readonly<Record<string, unknown>>;

/** The answer, over the shape of an entry and of a hash. */
export const apartOver = (entry: Json, hash: Json): Json => ({
  type: "object",
  properties: {
    apart: {
      type: "array",
      items: {
        type: "object",
        properties: {
          hash: { ...hash, description: "Of its header: what a settlement names." },
          entry,
          why: { enum: ["number-taken", "from-lost"] },
          standing: { description: "The entry that stands under its number.", anyOf: [entry, { type: "null" }] },
          cameInAs: {
            type: ["string", "null"],
            description: "The entry of the journal that says the same in its place.",
          },
          earlierCameInAs: {
            type: "array",
            items: { type: "string" },
            description: "Entries of the journal that came in for entries kept apart which it replaces.",
          },
          withdrawnBy: {
            type: ["string", "null"],
            description: "The withdrawal in the journal that names it.",
          },
          isIdTaken: { type: "boolean", description: "An entry of the journal has its id." },
          settlements: {
            type: "array",
            description:
              "What was decided and stands; more than one where people decided without knowing of each other.",
            items: {
              type: "object",
              properties: {
                value: {
                  type: "object",
                  properties: { decision: { enum: ["taken-in", "left-out"] }, reason: { type: "string" } },
                  required: ["decision", "reason"],
                },
                entry: { type: "string" },
                author: { type: "string" },
                recordedAt: { type: "string" },
              },
              required: ["value", "entry", "author", "recordedAt"],
            },
          },
          mayTakeIn: { type: "boolean", description: "Whoever asks may add an entry of its kind there." },
        },
        required: [
          "hash",
          "entry",
          "why",
          "standing",
          "cameInAs",
          "earlierCameInAs",
          "withdrawnBy",
          "isIdTaken",
          "settlements",
          "mayTakeIn",
        ],
      },
    },
    waiting: { type: "integer", minimum: 0, description: "So many of all, told or not, wait for a person." },
    more: { type: "integer", minimum: 0, description: "So many more are not told in this answer." },
  },
  required: ["apart", "more", "waiting"],
});
