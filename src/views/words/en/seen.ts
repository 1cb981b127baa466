/** Sentences of question 1: red flags and findings. */
import { day, some, whole } from "./numbers.ts";

export const seen = {
  places: {
    entrance: "At the entrance",
    ground: "On the ground",
    "under-lid": "Under the lid",
    combs: "On the combs",
    brood: "In the brood",
    stores: "The stores",
    apiary: "The apiary",
    history: "The history",
    own: "Signs of this programme’s own",
  },
  states: { present: "Present", absent: "Absent", "not-looked": "Not looked" },
  flagStates: { present: "Yes", absent: "No", "not-looked": "Not looked" },
  stateNone: "not asked yet",
  stateConflict: "two people differ",
  suchAs: (slots: { readonly signs: readonly string[] }) => `${slots.signs.join("; ")}.`,
  firstFlags: (slots: { readonly left: number }) =>
    `**Red flags first.** ${some(slots.left, "question", "questions")} still to be asked.`,
  flagHead: "Red flags",
  flagHint: "Every one gets an answer. Not looked is an answer too.",
  answer: (slots: { readonly answered: number; readonly present: number }) =>
    slots.answered === 0
      ? "**Nothing looked at yet.** Begin at the entrance, before smoke."
      : `**${whole(slots.present)} present**, ${whole(slots.answered - slots.present)} absent of the ${whole(slots.answered)} findings looked at.`,
  under: "Not looked for is not absent: it counts for nothing. What nobody looked at, leave at not looked.",
  seenOn: "Seen on",
  seenOnHint: "Every answer you give from now on carries this day. The causes are ranked for its season.",
  onDayOfCall: (slots: { readonly on: string }) => `On the day of the call, ${day(slots.on)}`,
  seasonTurns: (slots: { readonly from: string; readonly to: string; readonly last: string }) =>
    `This case was last looked at on ${day(slots.last)}, in ${slots.from}. An answer of the day chosen here ranks all of it for ${slots.to}.`,
  onLastDay: (slots: { readonly on: string }) => `Answer for ${day(slots.on)}`,
  stillDated: (slots: { readonly on: string }) => `Until then answers carry ${day(slots.on)}.`,
  seenToday: (slots: { readonly on: string }) => `Seen today, ${day(slots.on)}`,
  anotherDay: "Another day",
  whichDay: "Of which day?",
  seenOnDay: (slots: { readonly on: string }) => `Seen on ${day(slots.on)}`,
  findings: "Findings",
  goTo: "Go to:",
  seeStop: "What to do is said at the top.",
  stopRead: "Read; go on",
  colony: "Colony",
  apiaryWide: "whole apiary",
  cell: (slots: { readonly finding: string; readonly colony: string; readonly state: string }) =>
    `${slots.finding}, ${slots.colony}: ${slots.state}`,
  pastEdge: ({ codes }: { readonly codes: readonly string[] }) =>
    `${codes.length > 1 ? `${codes[0]} to ${codes.at(-1)} lie` : `${codes[0]} lies`} past the right edge: draw the sheet sideways.`,
  keys: "P present, A absent, N not looked; arrows move.",
  oneByOne: "One finding a screen",
  lookFor: "What to look for",
  tellApart: "How to tell it apart",
  hideLookFor: "Hide it",
  progress: (slots: { readonly now: number; readonly all: number }) => `${slots.now}/${slots.all}`,
  progressLong: (slots: { readonly now: number; readonly all: number }) => `Finding ${slots.now} of ${slots.all}`,
  colonyOf: (slots: { readonly now: number; readonly all: number }) => `colony ${slots.now} of ${slots.all}`,
  undo: "Undo",
  undoWhat: (slots: { readonly finding: string; readonly state: string }) =>
    `${slots.finding.toLowerCase()}: ${slots.state.toLowerCase()}`,
  nothingToUndo: "nothing yet",
  savedOnPhone: "Saved on this device",
  toSend: (slots: { readonly entries: number; readonly reached: boolean | null }) =>
    slots.entries === 0
      ? slots.reached === false
        ? "not reachable, working here"
        : "all sent"
      : `${whole(slots.entries)} to send`,
  hand: "The hand that holds the phone",
  hands: { right: "right hand", left: "left hand" },
  pen: "A press marks",
  flagsAgain: "See them all, or change an answer",
  flagCount: (slots: { readonly present: number; readonly absent: number; readonly notLooked: number }) =>
    `${slots.present} yes, ${slots.absent} no, ${slots.notLooked} not looked.`,
  leave: "Leave",
  invented: (slots: { readonly place: string }) => `${slots.place}, invented`,
  roundDone: (slots: { readonly colony: string }) => `**${slots.colony} is done.** Every finding has an answer.`,
  nextColony: (slots: { readonly colony: string }) => `Go on with ${slots.colony}`,
  noColonies: "**No colonies in this case yet.** Add them on the page of the apiary, or record the whole apiary here.",
  state: "State of the colony",
  diedOn: "died about",
  diedOnOf: (slots: { readonly colony: string }) => `${slots.colony} died about`,
  setBack: (slots: { readonly finding: string; readonly other: string; readonly colony: string }) =>
    `${slots.finding} is present in ${slots.colony}, so “${slots.other}” went back to not looked: only one of the two can be.`,
  flagAgainst: (slots: { readonly signs: readonly string[]; readonly isNo: boolean }) =>
    slots.isNo
      ? `Answered no, and yet on record as present: ${slots.signs.join("; ")}. Which one holds?`
      : `On record as present: ${slots.signs.join("; ")}. Then this is to be answered with yes, or the sign set back.`,
  colonyStates: { alive: "alive", dying: "dying", dead: "dead" },
  clash: (slots: { readonly finding: string; readonly colony: string }) =>
    `Two people answered ${slots.finding} of ${slots.colony} differently. Which one holds? Press present, absent or not looked.`,
};
