/** Sentences of the bench: vials that wait, receiving one, reading it bee by bee. */
import { day, dayAndMonth, list, some, whole } from "./numbers.ts";

const trunks = {
  clear: "clear",
  mites: "mites, tube clear",
  "mites-blotches": "mites and blotches",
  "mites-dark": "mites, tube dark",
  "dark-no-mite": "dark, no mite",
  unreadable: "unreadable",
} as const;

const from = {
  S: "super or inner cover",
  E: "honey and pollen edge",
  B: "open brood",
  F: "entrance",
  D: "found dead",
} as const;

export const bench = {
  title: "Bench",
  trunks,
  from,
  keptIn: { "ethanol-70": "70 % ethanol", frozen: "frozen", fresh: "fresh", dry: "dry" },
  none: "**No vials yet.** Label specimens for a case in its question 3; they are then listed here.",
  answer: (slots: { readonly reading: number; readonly waits: number; readonly toArrive: number }) =>
    slots.reading > 0
      ? `**${some(slots.reading, "reading is", "readings are")} under way.** ${slots.waits === 0 ? "No other vial waits." : `${some(slots.waits, "more vial waits", "more vials wait")} to be read.`}`
      : slots.waits > 0
        ? `**${some(slots.waits, "vial waits", "vials wait")} to be read.** ${slots.toArrive === 0 ? "" : `${some(slots.toArrive, "more is", "more are")} not here yet.`}`
        : slots.toArrive > 0
          ? `**Nothing waits to be read.** ${some(slots.toArrive, "vial is", "vials are")} not here yet.`
          : "**Nothing waits at the bench.**",
  groups: {
    reading: "Being read",
    waits: "Waits to be read",
    held: "Held: two vials with one code",
    "to-arrive": "Not here yet",
    read: "Read and locked",
    rejected: "Not accepted",
  },
  columns: { code: "Code", place: "Place, colony", from: "From", kept: "Kept in", state: "State", act: "Next" },
  states: {
    reading: (slots: { readonly bees: number; readonly target: number }) =>
      `bee ${whole(slots.bees)} of ${whole(slots.target)}`,
    waits: (slots: { readonly bees: number; readonly condition: string }) =>
      `${some(slots.bees, "bee", "bees")}, ${slots.condition}`,
    toArrive: (slots: { readonly takenOn: string | null }) =>
      slots.takenOn === null ? "not taken yet" : `taken ${dayAndMonth(slots.takenOn)}`,
    held: "not numbered until settled",
    read: (slots: { readonly readings: number }) =>
      slots.readings > 1 ? `${whole(slots.readings)} readings` : "one reading",
    rejected: (slots: { readonly reason: string }) => slots.reason,
  },
  conditions: {
    0: "fresh and firm",
    1: "slightly soft",
    2: "soft, partly readable",
    3: "rotten or mouldy",
  },
  conditionChoice: (slots: { readonly score: number; readonly says: string }) => `${slots.score} ${slots.says}`,
  acceptances: { accepted: "accepted", "accepted-with-limits": "accepted with limits", rejected: "rejected" },
  find: "Code on the vial",
  findHint: "Type or scan it, such as TV26-0147-M.",
  findGo: "Find the vial",
  orphan: (slots: { readonly code: string }) =>
    `No vial labelled ${slots.code} is on record here. Hold it apart, photograph it, and ask the sender; give it no number.`,
  heldNote: (slots: { readonly code: string }) =>
    `Two vials carry ${slots.code}. Neither is received until they differ: give one of them a new code, and write it on vial and slip.`,
  relabel: (slots: { readonly code: string }) => `Give this one ${slots.code}`,
  openReading: "Read on",
  startReading: "Read",
  receive: "Receive",
  see: "Look at it",
  method: "both prothoracic trunks, bee by bee",

  receiveHead: (slots: { readonly code: string }) => `**${slots.code} has come.** How is it?`,
  receiveUnder: "Look before you open it. What is written here stands on the report.",
  on: "Received on",
  takenOn: "Taken on",
  condition: "Condition",
  beesReceived: "Bees received",
  beesReceivedHint: "Count them out; the bench stops when more are read.",
  alive: "Alive when taken?",
  aliveHint: "Mites leave dead bees: none found in bees long dead is a weak answer.",
  yes: "yes",
  no: "no, or not known",
  chooseOne: "choose",
  acceptance: "Accepted?",
  acceptanceHint: "With limits: it is read, and the report says what it cannot tell.",
  reason: "Reason",
  reasonHint: "Needed for limits and for a rejection.",
  keepReceipt: "Keep the receipt",
  rejectedNote: (slots: { readonly reason: string }) => `**Not accepted.** ${slots.reason}`,

  startHead: "Begin a reading",
  reader: "Reader",
  target: "Bees to read",
  targetHint: "Bees that count: both trunks read, or mites found.",
  blind: "Blind: show how many bees are read, not how many have mites",
  again: "Read it again",
  againNote: (slots: { readonly readings: number }) =>
    `Read ${slots.readings === 1 ? "once" : `${whole(slots.readings)} times`} and locked. A second reader reads blind.`,
  start: "Begin",

  readingOf: (slots: { readonly code: string }) => `Reading ${slots.code}`,
  specimenLabel: "Specimen label",
  invented: "invented, for demonstration",
  beeOf: (slots: { readonly target: number }) => `bee, of ${whole(slots.target)} at most`,
  readSoFar: (slots: { readonly read: number }) => `${whole(slots.read)} read`,
  bee: "Bee",
  trunksOf: (slots: { readonly bee: number }) => `Trunks of bee ${whole(slots.bee)}`,
  left: "left, as you see it",
  right: "right",
  askLeft: "Left?",
  askRight: "Right?",
  scale: (slots: { readonly read: number; readonly target: number }) =>
    `${whole(slots.read)} of ${whole(slots.target)} bees read`,
  openBy: (slots: { readonly reader: string }) => `**Open reading**, ${slots.reader}`,
  blindBy: (slots: { readonly reader: string; readonly number: string }) =>
    `**Blind reading ${slots.number}**, ${slots.reader}`,
  received: (slots: { readonly bees: number; readonly condition: string; readonly acceptance: string }) =>
    `**${some(slots.bees, "bee", "bees")} received**, ${slots.condition}, ${slots.acceptance}.`,
  readOn: (slots: { readonly target: number }) =>
    `Read until ${whole(slots.target)} bees count. Left trunk first, then right.`,
  tallyHead: (slots: { readonly positive: number; readonly read: number }) =>
    `With mites: ${whole(slots.positive)} of ${whole(slots.read)}`,
  tallyBlind: (slots: { readonly read: number }) => `${some(slots.read, "bee", "bees")} read`,
  tallyBlindNote: "Blind: what was found is shown when the reading is locked.",
  tally: {
    clear: "both trunks clear",
    darkNoMite: "of these, a dark trunk without a mite",
    partlyRead: "partly read",
    unreadable: "unreadable",
    lost: "lost",
  },
  outside: "Partly read, unreadable and lost bees stay outside the count.",
  rack: (slots: { readonly vials: number }) => some(slots.vials, "vial", "vials"),
  rackHead: "This case",
  rackStates: { reading: "being read", waits: "waits", read: "locked" },
  rackBee: (slots: { readonly bee: number }) => `bee ${whole(slots.bee)}`,

  last: "Last:",
  lastBee: (slots: { readonly bee: number; readonly what: string }) => `**bee ${whole(slots.bee)}, ${slots.what}.**`,
  lastBlind: (slots: { readonly bee: number }) => `**bee ${whole(slots.bee)}.**`,
  what: (slots: { readonly left: keyof typeof trunks; readonly right: keyof typeof trunks }) =>
    slots.left === slots.right
      ? `both trunks ${trunks[slots.left]}`
      : `left ${trunks[slots.left]}; right ${trunks[slots.right]}`,
  lost: "lost",
  flagged: "flagged for a second reader",
  stored: (slots: { readonly time: string }) => `Stored ${slots.time}`,
  half: (slots: { readonly bee: number; readonly trunk: keyof typeof trunks }) =>
    `**bee ${whole(slots.bee)}, left trunk, ${trunks[slots.trunk]}.** Stored with the right one.`,
  halfBlind: (slots: { readonly bee: number }) => `**bee ${whole(slots.bee)}, left trunk.** Stored with the right one.`,
  nothingYet: "nothing read yet.",
  undone: (slots: { readonly bee: number }) => `**bee ${whole(slots.bee)} taken back.**`,
  notStored: "**That bee is not stored.** The keys are stopped. Load the page again and read on from the bee it shows.",
  dropped: (slots: { readonly key: string; readonly held: boolean }) =>
    slots.held
      ? `Key ${slots.key} was held and did not count.`
      : `Key ${slots.key} came twice within a moment; the second did not count.`,
  takeBack: "Count it after all",
  undoIt: "Undo it",
  keys: "Keys",
  sound: { on: "Sound on", off: "Sound off" },
  surface: (slots: { readonly code: string }) =>
    `Bench keys for ${slots.code}. Press ? for what each key does; Tab leaves.`,
  keysOff: "Keys are off.",
  keysOn: "Put the keys on the bench",
  legend: {
    clear: "clear; both, if none is scored",
    mites: "mites, tube clear",
    "mites-blotches": "mites, blotches",
    "mites-dark": "mites, dark",
    "right-mites": "left clear, right mites",
    "right-mites-blotches": "left clear, right blotches",
    "right-mites-dark": "left clear, right dark with mites",
    "left-only-mites": "left mites, right clear",
    "both-mites": "mites in both",
    "dark-left": "left dark, no mite; not a positive",
    "dark-right": "right dark, no mite; not a positive",
    unreadable: "this side unreadable",
    lost: "bee lost",
    repeat: "repeat the last",
    undo: "undo",
    flag: "flag for a second reader",
    "take-back": "count a dropped key",
    confirm: "confirm, go on",
  },
  /** The same acts while the right trunk is asked. */
  legendRight: { clear: "clear", "dark-right": "dark, no mite; not a positive" },
  legendNote: (slots: { readonly milliseconds: number }) =>
    `The same key within ${whole(slots.milliseconds)} ms, or a held key, is ignored with a click.`,
  bounce: "Ignore the same key within",
  bounceChoice: (slots: { readonly milliseconds: number }) => `${whole(slots.milliseconds)} ms`,
  keyNames: { space: "Space", enter: "Enter" },
  pads: { numeric: "Number pad", left: "Left hand" },

  reached: (slots: { readonly target: number }) => `**${whole(slots.target)} bees count: the target is reached.**`,
  reachedNext: "Look it over and lock it, or undo the last bee.",
  beyond: (slots: { readonly received: number }) =>
    `**All ${whole(slots.received)} bees received are read.** Another one would be more than were counted in.`,
  readBeyond: "There are more bees: read on",
  review: "Look it over",
  reviewHead: "Look it over, then lock it",
  reviewRow: (slots: { readonly bee: number; readonly what: string }) => `bee ${whole(slots.bee)}: ${slots.what}`,
  correct: "Correct it",
  correctBee: (slots: { readonly bee: number }) => `Correct it: bee ${whole(slots.bee)}`,
  keepCorrection: "Keep it so",
  reviewBlind: "Blind: the bees are listed when the reading is locked.",
  back: "Back to the bees",
  lock: "Lock the reading",
  lockNote: "A locked reading is not changed; a second reading can stand beside it.",
  stops: {
    "target-reached": "The target is reached",
    "no-more-bees": "No more bees in the vial",
    "stopped-early": "Stopped before the target",
  },
  stop: "Why it ends here",
  note: "Note",
  locked: (slots: { readonly positive: number; readonly read: number }) =>
    slots.read === 0
      ? "**No bee could be read.** The reading is locked."
      : slots.positive === 0
        ? `**None found in ${some(slots.read, "bee", "bees")}.** The reading is locked.`
        : `**Mites in ${whole(slots.positive)} of ${some(slots.read, "bee", "bees")}.** The reading is locked.`,
  toBench: "To the bench",
  missing: "**There is no such vial here.** It may not have arrived on this device yet.",
  codes: (slots: { readonly codes: readonly string[] }) => list(slots.codes),
  takenDay: (slots: { readonly day: string }) => day(slots.day),
};
