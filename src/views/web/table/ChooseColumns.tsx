/** What each column is, and which apiaries the table speaks of: proposed, and changed by hand. */
import { type FormEvent, useState } from "react";
import type { ColumnUse, Mapping, StateWords } from "../../../transfer/index.ts";
import type { Day } from "../../../units/index.ts";
import { ChoiceField, TextField } from "../parts/Form.tsx";
import { words } from "../whole-words.ts";
import type { OpenedTable } from "./messages.ts";

export interface Chosen {
  readonly uses: ReadonlyMap<string, ColumnUse>;
  readonly words: ReadonlyMap<string, StateWords>;
  /** As the table names them. */
  readonly places: readonly string[];
  /** How the file is to be read. */
  readonly reading: Pick<Mapping, "delimiter" | "decimal">;
}

interface Props {
  readonly table: OpenedTable;
  readonly fileName: string;
  readonly reading: Chosen["reading"];
  readonly today: Day;
  /** Apiaries on record. */
  readonly known: readonly KnownApiary[];
  readonly choose: (chosen: Chosen, form: HTMLFormElement) => void;
}

/** An apiary on record, as a table may mean it. */
export interface KnownApiary {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly place: string;
  /** Those not closed. */
  readonly cases: readonly KnownCase[];
}

export interface KnownCase {
  readonly id: string;
  readonly code: string;
  readonly question: string;
  /** Ids; none where it is about all colonies of the apiary. */
  readonly colonies: readonly string[];
}

const sameAs = (name: string, known: readonly KnownApiary[]): KnownApiary | undefined =>
  known.find((each) => [each.code, each.name].some((text) => text.toLowerCase() === name.toLowerCase()));

/** Which apiary a name of the table means: one on record, or a new one. */
function Place({
  name,
  index,
  known,
  meant,
  choose,
}: {
  readonly name: string;
  readonly index: number;
  readonly known: readonly KnownApiary[];
  readonly meant: string;
  readonly choose: (id: string) => void;
}) {
  const say = words.table;
  const cases = known.find(({ id }) => id === meant)?.cases ?? [];
  return (
    <>
      {known.length > 0 ? (
        <ChoiceField
          name={`apiary-${index}`}
          label={say.meant({ name })}
          problems={[]}
          value={meant}
          onChoose={choose}
          choices={[
            { value: "", says: say.newApiary },
            ...known.map((each) => ({ value: each.id, says: `${each.name} (${each.code})` })),
          ]}
        />
      ) : null}
      {cases.length > 0 ? (
        <ChoiceField
          key={meant}
          name={`case-${index}`}
          label={say.goesTo({ name })}
          problems={[]}
          value=""
          choices={[
            { value: "", says: say.newCase },
            ...cases.map(({ id, code, question }) => ({ value: id, says: `${code}: ${question}` })),
          ]}
        />
      ) : null}
      {meant === "" ? (
        <div className="pair">
          <TextField name={`code-${index}`} label={say.placeCode({ name })} needed problems={[]} value={name} />
          <TextField name={`name-${index}`} label={say.placeName({ name })} needed problems={[]} value={name} />
        </div>
      ) : null}
    </>
  );
}

/** Values of a column that are shown. */
const mostShown = 4;

/** Small letters, digits and hyphens, as a key must be. */
const keyFrom = (name: string): string =>
  `table-${name
    .toLowerCase()
    .replace(/\.\w+$/, "")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")}`.slice(0, 60);

export function ChooseColumns({ table, fileName, reading, today, known, choose }: Props) {
  const say = words.table;
  const [uses, setUses] = useState(table.uses);
  const placeColumn = [...uses].find(([, use]) => use.is === "place")?.[0];
  // Without a column of apiaries all rows are of one, named like the file until it is named.
  const places = placeColumn === undefined ? [fileName.replace(/\.\w+$/, "")] : (table.first.get(placeColumn) ?? []);
  const [meant, setMeant] = useState<ReadonlyMap<string, string>>(new Map());
  /** Id of the apiary on record that a name means; empty for a new one. */
  const meantBy = (name: string): string => meant.get(name) ?? sameAs(name, known)?.id ?? "";
  const send = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    choose({ uses, words: table.words, places, reading }, event.currentTarget);
  };
  return (
    <form className="form flush" onSubmit={send}>
      <section aria-labelledby="h-columns">
        <h2 id="h-columns">{say.columnsHead}</h2>
        <p className="q2">{say.columnsUnder}</p>
        <table className="by-row columns">
          <thead>
            <tr>
              <th scope="col">{say.column}</th>
              <th scope="col">{say.first}</th>
              <th scope="col">{say.is}</th>
            </tr>
          </thead>
          <tbody>
            {table.header.map((column) => (
              <tr key={column}>
                <th scope="row">{column}</th>
                <td className="q2">{(table.first.get(column) ?? []).slice(0, mostShown).join(" · ")}</td>
                <td>
                  <Use column={column} table={table} uses={uses} change={setUses} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <section aria-labelledby="h-places">
        <h2 id="h-places">{say.placesHead}</h2>
        <p className="q2">{placeColumn === undefined ? say.noPlace : say.placesUnder}</p>
        {places.map((name, index) => (
          <Place
            key={name}
            name={name}
            index={index}
            known={known}
            meant={meantBy(name)}
            choose={(id) => setMeant(new Map([...meant, [name, id]]))}
          />
        ))}
        {places.some((name) => meantBy(name) === "") ? (
          <TextField name="district" label={say.district} hint={say.districtHint} needed problems={[]} />
        ) : null}
      </section>
      <section aria-labelledby="h-itself">
        <h2 id="h-itself">{say.tableHead}</h2>
        <TextField name="key" label={say.key} hint={say.keyHint} needed problems={[]} value={keyFrom(fileName)} />
        <TextField name="source" label={say.source} needed problems={[]} value={fileName} />
        <TextField name="asOf" label={say.asOf} type="date" needed problems={[]} value={today} />
        <TextField name="question" label={say.question} needed problems={[]} value={fileName} />
      </section>
      <p className="acts">
        <button type="submit" className="press" disabled={places.length === 0}>
          {say.try}
        </button>
      </p>
    </form>
  );
}

const plainUses = [
  "left-out",
  "place",
  "colony",
  "day",
  "positive",
  "examined",
  "mites",
  "bees",
  "laboratory",
] as const;

function Use({
  column,
  table,
  uses,
  change,
}: {
  readonly column: string;
  readonly table: OpenedTable;
  readonly uses: OpenedTable["uses"];
  readonly change: (uses: OpenedTable["uses"]) => void;
}) {
  const say = words.table;
  const use = uses.get(column) ?? { is: "left-out" };
  const states = table.words.get(column);
  const take = (value: string) => {
    const plainUse = plainUses.find((each) => each === value);
    const next: ColumnUse = plainUse === undefined ? { is: "finding", finding: value } : { is: plainUse };
    // A use but "left out" belongs to one column: the other gives it up.
    const others = [...uses].map(([name, other]): readonly [string, ColumnUse] =>
      next.is !== "left-out" && keyOf(other) === keyOf(next) ? [name, { is: "left-out" }] : [name, other],
    );
    change(new Map([...others, [column, next]]));
  };
  return (
    <div className="field">
      <select aria-label={say.isOf({ column })} value={keyOf(use)} onChange={(event) => take(event.target.value)}>
        {plainUses.map((each) => (
          <option key={each} value={each}>
            {say.uses[each]}
          </option>
        ))}
        {table.findings.map(([id, term]) => (
          <option key={id} value={id}>
            {say.finding({ term })}
          </option>
        ))}
      </select>
      {use.is === "finding" && states ? (
        <p className="hint">
          {say.states({
            present: states.present.join(", "),
            absent: states.absent.join(", "),
            notLooked: states.notLooked.join(", "),
          })}
        </p>
      ) : null}
    </div>
  );
}

const keyOf = (use: ColumnUse): string => (use.is === "finding" ? use.finding : use.is);
