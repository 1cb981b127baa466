/** What came to the bench, and every bee that was read. */
import type { Casebook, Kept, ReadingState, SpecimenState } from "../../casebook/index.ts";
import { isInConflict } from "../../casebook/index.ts";
import type { BodyOf } from "../../journal/index.ts";
import { type Codes, codesOf, first } from "./codes.ts";
import { tidy } from "./tidy.ts";

const codesFor = (casebook: Casebook, { case: id }: SpecimenState): Codes | null =>
  id === null ? null : codesOf(casebook, id);
const codeOf = (specimen: SpecimenState): string => first(specimen.label)?.code ?? specimen.id;

interface Vial {
  readonly specimen: SpecimenState;
  readonly codes: Codes | null;
}

/** One row a vial; where two people's words stand side by side, the first by id of entry. */
export const specimens = tidy<Vial>({
  name: "specimens",
  says: "a vial of bees, labelled and perhaps received",
  key: ["specimen"],
  columns: [
    { name: "specimen", type: "string", says: "Code on the vial.", of: ({ specimen }) => codeOf(specimen) },
    { name: "case", type: "string", says: "Code of the case.", of: ({ codes }) => codes?.kase ?? null },
    { name: "apiary", type: "string", says: "Code of the apiary.", of: ({ codes }) => codes?.apiary ?? null },
    {
      name: "colony",
      type: "string",
      says: "Code of the colony.",
      of: ({ codes, specimen }) => codes?.colony(specimen.colony) ?? null,
    },
    {
      ...{ name: "purpose", type: "string", words: ["detect", "estimate", "recheck"], says: "What it is to answer." },
      of: ({ specimen }) => first(specimen.label)?.purpose ?? null,
    },
    {
      ...{ name: "taken_from", type: "string", words: ["S", "E", "B", "F", "D"] },
      says: "Where the bees were taken: S super, E honey edge, B brood, F entrance, D dead.",
      of: ({ specimen }) => first(specimen.label)?.from ?? null,
    },
    {
      name: "kept",
      type: "string",
      says: "How the bees are kept.",
      of: ({ specimen }) => first(specimen.label)?.preservative ?? null,
    },
    {
      ...{
        name: "taken_on",
        type: "date",
        says: "Day on which the bees were taken; as told on arrival, else by the label.",
      },
      of: ({ specimen }) => first(specimen.received)?.takenOn ?? first(specimen.label)?.takenOn ?? null,
    },
    {
      name: "received_on",
      type: "date",
      says: "Day of arrival; empty while it is awaited.",
      of: ({ specimen }) => first(specimen.received)?.on ?? null,
    },
    {
      ...{
        name: "condition",
        type: "integer",
        says: "0 fresh and firm, 1 slightly soft, 2 soft, partly readable, 3 rotten or mouldy.",
      },
      of: ({ specimen }) => first(specimen.received)?.condition ?? null,
    },
    {
      name: "bees_received",
      type: "integer",
      says: "Bees in the vial.",
      of: ({ specimen }) => first(specimen.received)?.beesReceived ?? null,
    },
    {
      ...{ name: "alive_when_taken", type: "boolean", says: "Whether the bees were alive when they were taken." },
      of: ({ specimen }) => first(specimen.received)?.aliveWhenTaken ?? null,
    },
    {
      ...{ name: "acceptance", type: "string", words: ["accepted", "accepted-with-limits", "rejected"] },
      says: "Whether the laboratory took it.",
      of: ({ specimen }) => first(specimen.received)?.acceptance ?? null,
    },
  ],
  rows: (casebook) =>
    Object.values(casebook.specimens).map((specimen) => ({ specimen, codes: codesFor(casebook, specimen) })),
});

interface Bee {
  readonly specimen: SpecimenState;
  readonly reading: ReadingState;
  readonly body: BodyOf<"bee-read">;
  readonly inConflict: boolean;
}

const trunkWords = ["clear", "mites", "mites-blotches", "mites-dark", "dark-no-mite", "unreadable"] as const;
const beesOf = (reading: ReadingState): readonly Kept<BodyOf<"bee-read">>[] => Object.values(reading.bees);

/** One row a bee and reading held: two readings of one bee are two rows, both marked as in conflict. */
export const bees = tidy<Bee>({
  name: "bees",
  says: "one bee of a reading, with both trunks",
  key: ["specimen", "reading", "bee"],
  columns: [
    { name: "specimen", type: "string", says: "Code on the vial.", of: ({ specimen }) => codeOf(specimen) },
    { name: "reading", type: "string", says: "Id of the reading.", of: ({ reading }) => reading.id },
    { name: "reader", type: "string", says: "Who read.", of: ({ reading }) => first(reading.started)?.reader ?? null },
    {
      name: "started_on",
      type: "date",
      says: "Day on which the reading began.",
      of: ({ reading }) => first(reading.started)?.on ?? null,
    },
    {
      name: "finished_on",
      type: "date",
      says: "Day on which it was locked; empty while it is open.",
      of: ({ reading }) => first(reading.finished)?.on ?? null,
    },
    {
      ...{
        name: "stop",
        type: "string",
        words: ["target-reached", "no-more-bees", "stopped-early"],
        says: "Why it ended.",
      },
      of: ({ reading }) => first(reading.finished)?.stop ?? null,
    },
    { name: "bee", type: "integer", says: "Number of the bee, as read.", of: ({ body }) => body.bee },
    {
      name: "lost",
      type: "boolean",
      says: "The bee was lost before it could be read; it counts for nothing.",
      of: ({ body }) => body.lost,
    },
    {
      name: "left",
      type: "string",
      words: trunkWords,
      says: "Left trunk; empty for a lost bee.",
      of: ({ body }) => body.left,
    },
    {
      name: "right",
      type: "string",
      words: trunkWords,
      says: "Right trunk; empty for a lost bee.",
      of: ({ body }) => body.right,
    },
    {
      name: "mites",
      type: "integer",
      says: "Mites in both trunks together, where they were counted.",
      of: ({ body }) => body.mites ?? null,
    },
    {
      name: "in_conflict",
      type: "boolean",
      says: "Two readings of this bee stand side by side, unsettled.",
      of: ({ inConflict }) => inConflict,
    },
  ],
  rows: (casebook) =>
    Object.values(casebook.specimens).flatMap((specimen) =>
      Object.values(specimen.readings).flatMap((reading) =>
        beesOf(reading).flatMap((kept) =>
          kept.candidates.map(({ value: body }) => ({ specimen, reading, body, inConflict: isInConflict(kept) })),
        ),
      ),
    ),
});
