/** What the papers show: plain values, already in words and rounded for the reader. */

/** One vial label; printed as often as `copies` says. */
export interface VialLabel {
  readonly code: string;
  readonly colony: string;
  /** ISO day, or null to leave a line to write on. */
  readonly takenOn: string | null;
  /** Where the bees are taken: letter and words, such as `E honey, pollen edge`. */
  readonly from: string;
  readonly keptIn: string;
}

/** The sheets on which labels are printed; sizes in millimetres. */
export interface LabelStock {
  readonly id: string;
  readonly name: string;
  readonly page: "A4" | "Letter";
  readonly columns: number;
  readonly rows: number;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  readonly pitchX: number;
  readonly pitchY: number;
}

/**
 * Sheet geometry of general label stock, by the number of labels on a sheet.
 * Source: open label-template data, as named in docs/methods/paper.md; US sizes are inches turned to millimetres.
 */
export const labelStocks = [
  {
    id: "a4-65",
    name: "A4, 65 labels of 38.1 × 21.2 mm",
    page: "A4",
    columns: 5,
    rows: 13,
    width: 38.1,
    height: 21.2,
    left: 4.7,
    top: 10.9,
    pitchX: 40.6,
    pitchY: 21.2,
  },
  {
    id: "letter-80",
    name: "US Letter, 80 labels of 44.5 × 12.7 mm",
    page: "Letter",
    columns: 4,
    rows: 20,
    width: 44.45,
    height: 12.7,
    left: 7.14,
    top: 12.7,
    pitchX: 52.39,
    pitchY: 12.7,
  },
] as const satisfies readonly LabelStock[];

export interface LabelSheet {
  readonly stock: LabelStock;
  readonly caseCode: string;
  readonly title: string;
  readonly labels: readonly VialLabel[];
  /** Labels already used on the first sheet, 0 when it is whole. */
  readonly used: number;
  readonly isDemonstration: boolean;
}

/** The card that travels with the vials, written for the laboratory they go to. */
export interface KitCard {
  readonly caseCode: string;
  readonly place: string;
  readonly laboratory: string;
  readonly question: string;
  readonly rows: readonly {
    readonly code: string;
    readonly colony: string;
    readonly from: string;
    readonly bees: number;
  }[];
  /** Codes of the colonies that looks are made at. */
  readonly colonies: readonly string[];
  /** Looks that were chosen and are not made yet, each with what to look for. */
  readonly looks: readonly { readonly term: string; readonly how: string }[];
  /** Other tests that were chosen, each with the specimen it needs. */
  readonly tests: readonly { readonly term: string; readonly specimen: string }[];
  readonly steps: readonly string[];
  readonly promise: string;
  /** What stops the apiary, each in a sentence: it stands before all else. */
  readonly stops: readonly string[];
  /** Some of the bees are in alcohol. */
  readonly isInAlcohol: boolean;
  readonly cautions: readonly string[];
  readonly isDemonstration: boolean;
}

/** One specimen as the report tells it. Shares are per 100 bees. */
export interface ReportRow {
  readonly code: string;
  readonly colony: string;
  readonly from: string;
  readonly condition: string;
  readonly read: string;
  readonly withMites: string;
  /** Null when no bee could be read. */
  readonly estimate: { readonly value: number; readonly low: number; readonly high: number } | null;
  readonly isLimited: boolean;
}

export interface Report {
  readonly code: string;
  readonly caseCode: string;
  readonly place: string;
  readonly area: string;
  readonly colonies: string;
  /** The last day of the specimens read; null when none was. */
  readonly sampledOn: string | null;
  /** Day it was printed: what it says is as the records stood then. */
  readonly printedOn: string;
  readonly asked: string;
  /** The answer: the part in heavy type, then the rest. */
  readonly answer: { readonly heavy: string; readonly rest: string };
  readonly below: readonly string[];
  /** The specimen drawn as 100 squares; null when none was read. */
  readonly picture: {
    readonly colony: string;
    readonly value: number;
    readonly low: number;
    readonly high: number;
  } | null;
  readonly rows: readonly ReportRow[];
  /** Published lines drawn through the intervals, per 100 bees. */
  readonly lines: readonly number[];
  /** Signs present and absent, a line for each colony that was looked at. */
  /** What stops the apiary, each in a sentence: it stands before all else. */
  readonly stops: readonly string[];
  readonly signs: readonly { readonly colony: string; readonly says: string }[];
  /** Leading causes of each colony ranked, out of 10 with their ranges; judgement. */
  readonly causes: readonly {
    readonly colony: string;
    /** The season that was ranked for, and the day it follows from. */
    readonly season: string;
    readonly verdict: string;
    /** What must be known beside it: what was left out, and what a neighbour's find did. */
    readonly notes: readonly string[];
    readonly rows: readonly {
      readonly term: string;
      readonly number: string;
      readonly range: string;
      readonly word: string;
    }[];
  }[];
  /** Steps of plans that were marked, with their dose. */
  readonly done: readonly { readonly on: string; readonly what: string }[];
  /** Before and after; null without a recheck. */
  readonly effect: {
    readonly groups: readonly { readonly name: string; readonly before: string; readonly after: string }[];
    readonly methods: readonly {
      readonly name: string;
      readonly value: string;
      readonly range: string;
      readonly rule: string;
    }[];
    readonly says: readonly string[];
  } | null;
  readonly howRead: string;
  readonly missed: readonly string[];
  readonly toDo: readonly { readonly on: string; readonly what: string }[];
  readonly heed: readonly string[];
  readonly rules: string;
  /** Heads of the journal it rests on, such as `device 3f2a0b11, entry 41, seal 9c04e7d2`; empty when not at hand. */
  readonly heads: readonly string[];
  readonly isDemonstration: boolean;
}
