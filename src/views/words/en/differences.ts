/** Sentences of the page that shows where people differ. */
import { some } from "./numbers.ts";

export const differences = {
  title: (slots: { readonly count: number }) =>
    slots.count === 0
      ? "**Nowhere do people differ.**"
      : `**${some(slots.count, "answer", "answers")} in which people differ.**`,
  under:
    "Two devices wrote different things without knowing of each other. Neither is right by its clock. Choose what stands: a new entry says so, and both stay on record.",
  ofCase: (slots: { readonly code: string }) => `Case ${slots.code}`,
  ofApiary: (slots: { readonly name: string }) => `Apiary ${slots.name}`,
  ofVial: (slots: { readonly code: string }) => `Vial ${slots.code}`,
  ofPlan: "A plan",
  ofProgramme: "The programme",
  wholeApiary: "whole apiary",
  slots: {
    record: "record",
    redFlags: "red flags",
    colonyStates: "state of the colony",
    handedOn: "who it waits on",
    decision: "decision",
    outcomes: "outcome",
    closed: "closing",
    samplePlans: "sample plan",
    steps: "planned steps",
    region: "region",
    weather: "weather year",
    flows: "forage",
    supers: "honey supers",
    treatments: "treatments",
    colonies: "colony",
    label: "label",
    received: "reception",
    readings: "reading",
    bees: "bee",
    started: "begin",
    finished: "end",
    done: "step done",
    changes: "evidence changed",
    settings: "settings",
    settlements: "entry kept apart",
  },
  by: (slots: { readonly author: string; readonly when: string }) => `${slots.author}, written ${slots.when}`,
  nothing: "says nothing",
  stands: "This stands",
  standsOf: (slots: { readonly author: string; readonly what: string }) => `of ${slots.author} for ${slots.what}`,
  settled: "**Settled.** The new entry is sent with the next exchange.",
  notHere: "The words of this entry are not on this device: settle it where they are.",
  toPlace: "Where it is",
  link: (slots: { readonly count: number }) => `${some(slots.count, "answer", "answers")} in which people differ`,
  head: "Where people differ",
  none: "Nowhere now.",
};
