/** What the columns of a table may be, told by their names and words: proposals for a person, never taken unasked. */
import { plainCell } from "./cells.ts";
import type { Table } from "./table.ts";

/** What a column is for. `finding` columns name the finding. */
export type ColumnUse =
  | { readonly is: "place" | "colony" | "day" | "positive" | "examined" | "mites" | "bees" | "laboratory" | "left-out" }
  | { readonly is: "finding"; readonly finding: string };

/** The words of a column that stand for the three states; a word in none of them is refused until a person has said. */
export interface StateWords {
  readonly present: readonly string[];
  readonly absent: readonly string[];
  readonly notLooked: readonly string[];
}

const names: readonly (readonly [RegExp, Exclude<ColumnUse["is"], "finding" | "left-out">])[] = [
  [/^(apiary|yard|site|place|location|bee ?yard)( ?(name|code|id))?$/, "place"],
  [/^(colony|hive|colony ?(code|id|no|number|name)|hive ?(code|id|no|number|name))$/, "colony"],
  [/^(date|day|on|sampled|sample ?date|date ?(taken|sampled|of sample)|taken ?on)$/, "day"],
  [/^(positive|pos|infested|with ?mites|bees ?(positive|infested|with ?mites))$/, "positive"],
  [/^(examined|exam|read|dissected|bees ?(examined|read|dissected)|n)$/, "examined"],
  [/^(mites|varroa|mite ?count|varroa ?(count|mites)|mites ?(counted|washed))$/, "mites"],
  [/^(bees|bees ?washed|bee ?count|washed)$/, "bees"],
  [/^(lab|laboratory|reported ?by|(lab|laboratory) ?name)$/, "laboratory"],
];

const bare = (name: string): string =>
  name
    .trim()
    .toLowerCase()
    .replace(/[_.\-\s]+/g, " ");

/** By column, what its name says; each use but findings goes to the first column that claims it. */
export function suggestUses(table: Table, findings: Readonly<Record<string, string>>): ReadonlyMap<string, ColumnUse> {
  const taken = new Set<string>();
  const named = new Map(
    Object.entries(findings).flatMap(([id, term]) => [[bare(id), id] as const, [bare(term), id] as const]),
  );
  return new Map(
    table.header.map((column): readonly [string, ColumnUse] => {
      const name = bare(column);
      const is = names.find(([pattern]) => pattern.test(name))?.[1];
      if (is !== undefined && !taken.has(is)) {
        taken.add(is);
        return [column, { is }];
      }
      const finding = named.get(name);
      if (finding === undefined || taken.has(finding)) return [column, { is: "left-out" }];
      taken.add(finding);
      return [column, { is: "finding", finding }];
    }),
  );
}

/** Plain words of the three states, in any case; 0 and blank are never the same, and neither is "n/a". */
const plainWords: StateWords = {
  present: ["present", "yes", "y", "1", "true", "seen", "found", "+"],
  absent: ["absent", "no", "n", "0", "false", "not seen", "none", "none found"],
  notLooked: ["not looked", "not looked for", "not-looked", "not examined", "not checked", "?"],
};

/** The words of a column sorted into the three states, as far as they are plain; the rest is left for a person. */
export function suggestWords(table: Table, column: string): StateWords {
  const words = wordsOf(table, column);
  const those = (plain: readonly string[]) => words.filter((word) => plain.includes(word.toLowerCase()));
  return {
    present: those(plainWords.present),
    absent: those(plainWords.absent),
    notLooked: those(plainWords.notLooked),
  };
}

/** The different texts of a column, as they are first met; blank is none. */
export function wordsOf(table: Table, column: string): readonly string[] {
  const at = table.header.indexOf(column);
  return [...new Set(table.rows.map((row) => plainCell(row.cells[at] ?? "")))].filter((word) => word !== "");
}

/** An apiary of the table: its code and name, and where it stands on record if it does. */
export interface ChosenPlace {
  readonly code: string;
  readonly name: string;
  readonly place: string;
  readonly onRecord?: string;
  readonly colonies?: Readonly<Record<string, string>>;
  readonly caseOnRecord?: { readonly id: string; readonly colonies: readonly string[] };
}

export interface ChosenUses {
  readonly uses: ReadonlyMap<string, ColumnUse>;
  readonly words: ReadonlyMap<string, StateWords>;
  /** Stays the same for all versions of one table. */
  readonly key: string;
  readonly source: string;
  /** Day the table describes the places on. */
  readonly asOf: string;
  /** By the name that the table uses. */
  readonly places: Readonly<Record<string, ChosenPlace>>;
  /** What the cases that results and findings go to are about. */
  readonly question: string;
}

/**
 * The shape of a mapping, before it is read, from what a person chose for each column. Without a column of places all rows
 * are of the one that was named.
 */
export function mappingOf(chosen: ChosenUses): Record<string, unknown> {
  const { uses, words, key, source, asOf, places, question } = chosen;
  const columnFor = (is: ColumnUse["is"]): string | undefined => [...uses].find(([, use]) => use.is === is)?.[0];
  const [place, colony, day] = [columnFor("place"), columnFor("colony"), columnFor("day")];
  const laboratory = columnFor("laboratory");
  const on = day === undefined ? { from: asOf, days: 0 } : { column: day };
  const counted = (test: string, name: string, of: Record<string, string | undefined>) =>
    Object.values(of).some((column) => column !== undefined) ? [{ name, test, on, ...of, laboratory }] : [];
  const findings = [...uses].flatMap(([column, use]) =>
    use.is === "finding"
      ? [{ finding: use.finding, column, on, ...(words.get(column) ?? { present: [], absent: [], notLooked: [] }) }]
      : [],
  );
  const results = [
    ...counted("tracheal-dissection", "Dissection", {
      positive: columnFor("positive"),
      examined: columnFor("examined"),
    }),
    ...counted("varroa-wash", "Wash", { mites: columnFor("mites"), bees: columnFor("bees") }),
  ];
  return {
    ...{ key, source, asOf, results, findings },
    apiary: { ...(place === undefined ? {} : { column: place }), places },
    ...(colony === undefined ? {} : { colony: { column: colony } }),
    ...(colony !== undefined && results.length + findings.length > 0
      ? { case: { code: `{apiary}-${asOf}`, question, openedOn: asOf } }
      : {}),
    leftOut: [...uses].flatMap(([column, use]) => (use.is === "left-out" ? [column] : [])),
  };
}
