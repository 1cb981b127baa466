/** Findings in the history. */
import type { FindingFact } from "../fact.ts";

/** What is looked for in the history. */
export const historyFindings = {
  onset_sudden: {
    id: "onset_sudden",
    kind: "sign",
    place: "history",
    group: "onset",
    term: "Sudden start",
    question: "Ill within a week?",
    lookFor: "The keeper saw the colony normal and then clearly ill, dying or dead within 7 days or less.",
    exclusiveWith: "onset_gradual",
    minutes: 1,
  },
  onset_gradual: {
    id: "onset_gradual",
    kind: "sign",
    place: "history",
    group: "onset",
    term: "Slow start",
    question: "Going down for weeks?",
    lookFor: "The decline was noticed over three weeks or longer.",
    exclusiveWith: "onset_sudden",
    minutes: 1,
  },
  recent_hive_treatment: {
    id: "recent_hive_treatment",
    kind: "circumstance",
    place: "history",
    group: "exposure",
    term: "Recent hive treatment",
    question: "Treated in the last three weeks?",
    lookFor:
      "A mite treatment, acid, antibiotic or other chemical was put in the hive within the 21 days before the trouble began.",
    minutes: 2,
  },
  closed_or_overheated: {
    id: "closed_or_overheated",
    kind: "circumstance",
    place: "history",
    group: "exposure",
    term: "Shut in, moved or overheated",
    question: "Shut in, moved or overheated?",
    lookFor:
      "In the 48 hours before the trouble began the hive was shut in, moved, or left in heat above about 35 °C (95 °F) without water or air.",
    minutes: 1,
  },
  new_stock_12m: {
    id: "new_stock_12m",
    kind: "circumstance",
    place: "history",
    group: "history",
    term: "New bees in the last year",
    question: "New bees in the last year?",
    lookFor: "Bees, queens, packages or nuclei were brought into the apiary from elsewhere in the last 12 months.",
    minutes: 2,
  },
  used_comb_or_gear: {
    id: "used_comb_or_gear",
    kind: "circumstance",
    place: "history",
    group: "history",
    term: "Used comb or gear",
    question: "Used comb or gear given?",
    lookFor: "Second-hand equipment, or combs from a dead colony, were given to the colony in the last 12 months.",
    minutes: 2,
  },
  no_mite_control: {
    id: "no_mite_control",
    kind: "circumstance",
    place: "history",
    group: "history",
    term: "No varroa control on record",
    question: "No varroa control on record?",
    lookFor: "No varroa control, and no mite count within the acceptable range, is recorded for the last six months.",
    minutes: 2,
  },
  small_or_late_start: {
    id: "small_or_late_start",
    kind: "circumstance",
    place: "history",
    group: "history",
    term: "Small or late start",
    question: "Late or small colony?",
    lookFor: "The colony was a late split, swarm or nucleus, or covered fewer than about five combs in autumn.",
    minutes: 2,
  },
  swarmed_5w: {
    id: "swarmed_5w",
    kind: "circumstance",
    place: "history",
    group: "history",
    term: "Swarm, split or queen change",
    question: "Swarm, split or new queen lately?",
    lookFor: "A swarm, split, queen removal or queen introduction happened in the last five weeks.",
    minutes: 2,
  },
} as const satisfies {
  readonly [Id in
    | "onset_sudden"
    | "onset_gradual"
    | "recent_hive_treatment"
    | "closed_or_overheated"
    | "new_stock_12m"
    | "used_comb_or_gear"
    | "no_mite_control"
    | "small_or_late_start"
    | "swarmed_5w"]: FindingFact<Id>;
};
