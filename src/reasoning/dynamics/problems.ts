/** Every trouble the daily model can report, with the slots its sentence needs. */
import { type Problem, problem, type Severity } from "../../units/index.ts";

/** Codes of this step with their slots; views/words holds one sentence for each. */
export interface DynamicsProblems {
  /** blocked: bees at the start outside what a colony has. */
  readonly "season-bees-out-of-range": { readonly bees: number; readonly least: number; readonly most: number };
  /** blocked: the infested share at the start is not from 0 to the most a colony of that day can have. */
  readonly "season-share-out-of-range": { readonly share: number; readonly most: number };
  /** blocked: the susceptibility of a stock outside the range the model can speak of. */
  readonly "season-stock-out-of-range": { readonly value: number; readonly least: number; readonly most: number };
  /** blocked: no day, or a day that does not exist. */
  readonly "season-day-unknown": { readonly date: string };
  /** blocked: the end does not lie after the start, or too far. */
  readonly "season-span-out-of-range": { readonly days: number; readonly most: number };
  /** blocked: two actions at once of which the model knows no joint effect. */
  readonly "season-actions-overlap": { readonly first: string; readonly second: string; readonly date: string };
  /** blocked: an action that began before the first day. */
  readonly "season-action-before-start": { readonly action: string; readonly date: string };
  /** blocked: the other colony of a uniting is told of on its day or later. */
  readonly "season-donor-too-late": { readonly date: string; readonly latest: string; readonly from: string };
  /** blocked: the bees lost in a uniting are no share. */
  readonly "season-lost-out-of-range": { readonly value: number };
  /** blocked: colonies are not to be united while a suspicion is to be reported. */
  readonly "season-uniting-stopped": { readonly date: string };
  /** noted: an action after the last day, which changes nothing. */
  readonly "season-action-after-end": { readonly action: string; readonly date: string };
  /** blocked: an action ends before it begins. */
  readonly "season-action-ends-early": { readonly action: string; readonly from: string; readonly to: string };
  /** blocked: the reduction by a patty is not a share. */
  readonly "season-reduction-out-of-range": { readonly value: number };
  /** blocked: a nectar flow that is none. */
  readonly "season-flow-out-of-range": { readonly flow: number };
  /** blocked: a latitude that is none. */
  readonly "season-latitude-out-of-range": { readonly latitude: number };
  /** blocked: fewer or more draws than can be reckoned. */
  readonly "season-draws-out-of-range": { readonly draws: number; readonly least: number; readonly most: number };
  /** blocked: more draws of so many days and colonies than can be kept; at most so many draws, or so many days. */
  readonly "season-run-too-large": {
    readonly draws: number;
    readonly days: number;
    readonly most: number;
    readonly longest: number;
    /** Colonies united with it, which take room too. */
    readonly unitings: number;
  };
  /** blocked: a count that cannot be: no bees, more than a colony has, or more infested than examined. */
  readonly "season-count-impossible": { readonly infested: number; readonly examined: number; readonly most: number };
  /** blocked: a count before the first or after the last day. */
  readonly "season-count-outside": { readonly date: string; readonly from: string; readonly until: string };
  /** blocked: a count that does not end as its own rule says. */
  readonly "season-count-unlike-its-stop": {
    readonly infested: number;
    readonly examined: number;
    readonly stopInfested: number;
    readonly stopExamined: number;
  };
  /** warned: a count or a size leaves so few of the particles worth that ranges after it are rough. */
  readonly "season-particles-few": { readonly date: string; readonly worth: number };
  /** blocked: a start without a mite, and a count that found some. */
  readonly "season-share-none-counted": {
    readonly date: string;
    readonly infested: number;
    readonly examined: number;
  };
  /** blocked: a size, its scatter or what is on a frame that cannot be. A least of 0 means above it. */
  readonly "season-size-impossible": { readonly value: number; readonly least: number; readonly most: number };
  /** blocked: a size before the first or after the last day. */
  readonly "season-size-outside": { readonly date: string; readonly from: string; readonly until: string };
  /** warned: no colony that the model holds possible could be as large or as small. */
  readonly "season-size-left-out": { readonly date: string; readonly what: string; readonly number: number };
  /** warned: hardly a colony that the model holds possible would be as large or as small. */
  readonly "season-size-contradicts": { readonly date: string; readonly what: string; readonly number: number };
  /** noted: frames were turned into bees or brood by what is common practice. */
  readonly "season-frames-by-common-practice": { readonly what: string; readonly perFrame: number };
  /** warned: hardly a colony that the model holds possible would have given this count. */
  readonly "season-count-contradicts": { readonly date: string; readonly infested: number; readonly examined: number };
  /** warned: no colony that the model holds possible could have given this count. */
  readonly "season-count-left-out": { readonly date: string; readonly infested: number; readonly examined: number };
  /** blocked: varroa on bees, or what leaves a cell, outside what can be meant. */
  readonly "season-varroa-out-of-range": { readonly value: number; readonly most: number };
  /** noted: varroa was coupled, but its own harm is left out. */
  readonly "season-varroa-harm-left-out": Readonly<Record<never, never>>;
  /** warned: the colony is more likely lost than not before the end. */
  readonly "season-colony-likely-lost": { readonly date: string };
  /** warned: the middle of its bees falls below so many. */
  readonly "season-colony-dwindles": { readonly date: string; readonly bees: number };
  /** warned: already within weeks of the start. */
  readonly "season-colony-lost-at-once": { readonly date: string; readonly bees: number };
  /** warned: highs of days with vapour of formic acid lie under its window, where it does nothing here: first and last, how many of how many, the lowest high. */
  readonly "season-formic-cold": {
    readonly date: string;
    readonly last: string;
    readonly days: number;
    readonly of: number;
    readonly high: number;
    readonly bound: number;
    readonly highs: "assumed" | "known";
  };
  /** warned: highs of days with vapour of formic acid lie above its window: queen and brood are in danger. */
  readonly "season-formic-hot": {
    readonly date: string;
    readonly last: string;
    readonly days: number;
    readonly of: number;
    readonly high: number;
    readonly bound: number;
    readonly highs: "assumed" | "known";
  };
  /** warned: a colony is opened, for a new queen or to be united, on a day that is too cold. */
  readonly "season-opened-in-cold": {
    readonly action: string;
    readonly date: string;
    readonly high: number;
    readonly least: number;
    readonly highs: "assumed" | "known";
  };
  /** warned: means of the months lie outside what the model's calendar was made for. */
  readonly "season-months-outside": {
    readonly coldest: number;
    readonly warmest: number;
    readonly coldestLeast: number;
    readonly between: number;
    readonly warmestMost: number;
  };
  /** noted: temperatures of the invented site were used. */
  readonly "season-site-invented": Readonly<Record<never, never>>;
  /** noted: no highs are known; they are assumed to lie as far above the means as the model says. */
  readonly "season-highs-assumed": Readonly<Record<never, never>>;
  /** noted: daily highs alone are known; means, and highs of other days, are those of the invented site. */
  readonly "season-highs-alone": Readonly<Record<never, never>>;
  /** noted: the calendar of laying and winter bees is that of a cool-temperate place. */
  readonly "season-calendar-cool-temperate": Readonly<Record<never, never>>;
}

/** All codes of `DynamicsProblems`, for tests of completeness. */
export const dynamicsProblemCodes = [
  "season-bees-out-of-range",
  "season-share-out-of-range",
  "season-stock-out-of-range",
  "season-day-unknown",
  "season-span-out-of-range",
  "season-actions-overlap",
  "season-action-before-start",
  "season-donor-too-late",
  "season-lost-out-of-range",
  "season-uniting-stopped",
  "season-action-after-end",
  "season-action-ends-early",
  "season-reduction-out-of-range",
  "season-flow-out-of-range",
  "season-latitude-out-of-range",
  "season-draws-out-of-range",
  "season-run-too-large",
  "season-count-impossible",
  "season-count-outside",
  "season-count-contradicts",
  "season-count-unlike-its-stop",
  "season-particles-few",
  "season-size-impossible",
  "season-size-contradicts",
  "season-share-none-counted",
  "season-size-outside",
  "season-size-left-out",
  "season-count-left-out",
  "season-frames-by-common-practice",
  "season-varroa-out-of-range",
  "season-varroa-harm-left-out",
  "season-colony-likely-lost",
  "season-colony-lost-at-once",
  "season-colony-dwindles",
  "season-months-outside",
  "season-formic-cold",
  "season-formic-hot",
  "season-opened-in-cold",
  "season-site-invented",
  "season-highs-assumed",
  "season-highs-alone",
  "season-calendar-cool-temperate",
] as const satisfies readonly (keyof DynamicsProblems)[];

/** A Problem of this step: code and slots must fit each other. */
export const dynamicsProblem = <Code extends keyof DynamicsProblems>(
  code: Code,
  severity: Severity,
  field: string | null,
  slots: DynamicsProblems[Code],
): Problem => problem(code, severity, field, { slots: { ...slots } });
