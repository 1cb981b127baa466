/** Sentences of question 1: red flags and findings. */
import { some, whole } from "./numbers.ts";

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
  },
  states: { present: "Present", absent: "Absent", "not-looked": "Not looked" },
  stateNone: "not asked yet",
  stateConflict: "two people differ",
  flags: {
    sudden_mass_death: {
      question: "Many dead within three days?",
      lookFor: "Heaps or carpets of fresh dead bees at most colonies, and the keeper saw them well a week ago or less.",
    },
    person_reacts_to_stings: {
      question: "Does anyone there react badly to stings?",
      lookFor: "Someone who was ever short of breath, faint or swollen far from the sting.",
    },
  },
  flagActs: {
    ropy_thread:
      "This can be American foulbrood. Tell the competent authority today. Move, burn and treat nothing before they answer; close dead hives so that no bee gets in.",
    hard_flat_scale:
      "This can be American foulbrood. Tell the competent authority today. Move, burn and treat nothing before they answer; close dead hives so that no bee gets in.",
    twisted_discoloured_larva:
      "This can be European foulbrood, which many countries want reported. Ask the competent authority today. Move and treat nothing first.",
    fast_small_mites:
      "These can be Tropilaelaps mites. Put some in alcohol and tell the competent authority today. Move nothing.",
    beetles_or_spined_larvae:
      "This can be the small hive beetle. Put some in alcohol. Where it is not established, tell the competent authority today.",
    green_hard_mummies:
      "This can be stonebrood; its dust harms lungs. Close the hive, do not crush anything, wear a mask that filters spores.",
    sudden_mass_death:
      "This can be poisoning. Photograph it and note the time. Freeze 300 fresh dead bees today; ask the pesticide authority before you disturb the hives.",
    stores_exhausted: "Feed today: this colony can die within days.",
    person_reacts_to_stings:
      "That person stays away from the hives. Do not work alone; know the way to help before you open a lid.",
  },
  firstFlags: (slots: { readonly left: number }) =>
    `**Red flags first.** ${some(slots.left, "question", "questions")} still to be asked.`,
  stop: "Stop and report",
  flagHead: "Red flags",
  flagHint: "Every one gets an answer. Not looked is an answer too.",
  answer: (slots: { readonly answered: number; readonly present: number }) =>
    slots.answered === 0
      ? "**Nothing looked at yet.** Begin at the entrance, before smoke."
      : `**${whole(slots.present)} present**, ${whole(slots.answered - slots.present)} absent of the ${whole(slots.answered)} findings looked at.`,
  under: "Not looked for is not absent: it counts for nothing. What nobody looked at, leave at not looked.",
  findings: "Findings",
  colony: "Colony",
  apiaryWide: "whole apiary",
  cell: (slots: { readonly finding: string; readonly colony: string; readonly state: string }) =>
    `${slots.finding}, ${slots.colony}: ${slots.state}`,
  keys: "P present, A absent, N not looked; arrows move.",
  oneByOne: "One finding a screen",
  oneByOneFor: (slots: { readonly colony: string }) => `${slots.colony}, one finding a screen`,
  grid: "All findings at once",
  lookFor: "What to look for",
  progress: (slots: { readonly now: number; readonly all: number }) => `${slots.now}/${slots.all}`,
  progressLong: (slots: { readonly now: number; readonly all: number }) => `Finding ${slots.now} of ${slots.all}`,
  colonyOf: (slots: { readonly now: number; readonly all: number }) => `colony ${slots.now} of ${slots.all}`,
  undo: "Undo",
  undoWhat: (slots: { readonly finding: string; readonly state: string }) =>
    `${slots.finding.toLowerCase()}: ${slots.state.toLowerCase()}`,
  nothingToUndo: "nothing yet",
  savedOnPhone: "Saved on this device",
  toSend: (slots: { readonly entries: number }) =>
    slots.entries === 0 ? "all sent" : `${whole(slots.entries)} to send`,
  mirror: "Other hand",
  leave: "Leave",
  skipPlace: "Next place",
  roundDone: (slots: { readonly colony: string }) => `**${slots.colony} is done.** Every finding has an answer.`,
  nextColony: (slots: { readonly colony: string }) => `Go on with ${slots.colony}`,
  toNext: "To question 2",
  noColonies: "**No colonies in this case yet.** Add them on the page of the apiary, or record the whole apiary here.",
  state: "State of the colony",
  colonyStates: { alive: "alive", dying: "dying", dead: "dead" },
  clash: (slots: { readonly finding: string; readonly colony: string }) =>
    `Two people answered ${slots.finding} of ${slots.colony} differently. Which one holds?`,
};
