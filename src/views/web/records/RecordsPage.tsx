/** The records themselves: how many, sent or not, whether they are whole, a copy elsewhere, the newest entry of each device. */
import { useEffect, useMemo, useState } from "react";
import { Link } from "wouter";
import type { Head } from "../../../journal/index.ts";
import { type ChainCheck, differences } from "../../model/index.ts";
import { useSession } from "../account/SessionProvider.tsx";
import { Answer } from "../parts/Answer.tsx";
import { Rich } from "../parts/Rich.tsx";
import { askJournal } from "../reckon/ask-journal.ts";
import { SaveJournal } from "../shell/SaveJournal.tsx";
import { useCasebook } from "../store/context.ts";
import { localTime } from "../store/today.ts";
import { words } from "../whole-words.ts";
import { OpenCopy } from "./OpenCopy.tsx";
import "./records.css";

export default function RecordsPage() {
  const { casebook, keeping, heads, device, entries: all, may, isDemonstration } = useCasebook();
  const isPart = useIsPart();
  const [given, setGiven] = useState(0);
  const [newest, setNewest] = useState<readonly Head[]>([]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read again whenever something was written or pulled
  useEffect(() => {
    let here = true;
    void heads().then((read) => here && setNewest(read));
    return () => {
      here = false;
    };
  }, [heads, casebook, keeping.savedAt]);
  // A whole chain is as long as its last number says; one with holes is counted.
  // biome-ignore lint/correctness/useExhaustiveDependencies: counted again whenever something was written or pulled
  useEffect(() => {
    let here = true;
    if (isPart) void all().then((read) => here && setGiven(read.length));
    return () => {
      here = false;
    };
  }, [isPart, casebook, keeping.savedAt]);
  const say = words.records;
  const apart = useMemo(() => differences(casebook, words).length, [casebook]);
  const entries = isPart ? given : newest.reduce((sum, { seq }) => sum + seq, 0);
  return (
    <main id="page" className="plain records-page">
      <Answer
        text={say.answer({ entries, devices: newest.length, unsent: keeping.unsent })}
        under={say.under({
          saved: keeping.savedAt ? localTime(keeping.savedAt) : null,
          reached: keeping.reached,
          persisted: keeping.persisted,
        })}
      />
      <Whole />
      <section aria-labelledby="h-copy">
        <h2 id="h-copy">{say.copyHead}</h2>
        <p className="q2">{say.copyUnder}</p>
        <p className="acts">
          <SaveJournal />
        </p>
        <OpenCopy />
      </section>
      <section aria-labelledby="h-differ">
        <h2 id="h-differ">{words.differences.head}</h2>
        <p className="acts">
          {apart > 0 ? (
            <Link className="press quiet" href="/records/differences">
              {words.differences.link({ count: apart })}
            </Link>
          ) : (
            words.differences.none
          )}
        </p>
      </section>
      {!isDemonstration && may("kept-apart-settled") ? (
        <section aria-labelledby="h-apart">
          <h2 id="h-apart">{say.apartHead}</h2>
          <p className="q2">{say.apartUnder}</p>
          <p className="acts">
            <Link className="press quiet" href="/records/apart">
              {say.apart}
            </Link>
          </p>
        </section>
      ) : null}
      <section aria-labelledby="h-table">
        <h2 id="h-table">{say.tableHead}</h2>
        <p className="q2">{say.tableUnder}</p>
        <p className="acts">
          <Link className="press quiet" href="/records/table">
            {say.bringTable}
          </Link>
        </p>
      </section>
      {newest.length > 0 ? (
        <section aria-labelledby="h-heads">
          <h2 id="h-heads">{say.headsHead}</h2>
          <p className="q2">{say.headsUnder}</p>
          <table className="by-row">
            <thead>
              <tr>
                <th scope="col">{say.heads.device}</th>
                <th scope="col" className="num-r">
                  {say.heads.entry}
                </th>
                <th scope="col">{say.heads.seal}</th>
              </tr>
            </thead>
            <tbody>
              {newest.map((head) => (
                <tr key={head.device}>
                  <th scope="row" className="c">
                    {head.device} {head.device === device ? <span className="q3">{say.thisDevice}</span> : null}
                  </th>
                  <td className="num-r">{head.seq}</td>
                  <td className="c seal">{head.hash}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ) : null}
    </main>
  );
}

/** Whether the member is given only a part of the records. */
function useIsPart(): boolean {
  const { isDemonstration } = useCasebook();
  const { member } = useSession();
  return !isDemonstration && (member?.role === "keeper" || member?.role === "reader");
}

/** The check of the chains on this device, when it is asked for. */
function Whole() {
  const { entries, device } = useCasebook();
  const isPart = useIsPart();
  const say = words.records;
  const [check, setCheck] = useState<ChainCheck | "checking" | "failed" | null>(null);
  const ask = async () => {
    setCheck("checking");
    try {
      setCheck((await askJournal({ kind: "here", entries: await entries(), onlyWhole: isPart ? device : null })).check);
    } catch {
      setCheck("failed");
    }
  };
  return (
    <section aria-labelledby="h-whole">
      <h2 id="h-whole">{say.wholeHead}</h2>
      <p className="q2">{say.wholeUnder}</p>
      <p className="acts">
        <button type="button" className="press quiet" onClick={() => void ask()} disabled={check === "checking"}>
          {say.check}
        </button>
      </p>
      <div role="status">
        {check === "checking" ? <p>{say.checking}</p> : null}
        {check === "failed" ? <p>{say.failed}</p> : null}
        {check && typeof check === "object" ? <Found check={check} /> : null}
      </div>
    </section>
  );
}

/** Faults told at most. */
const mostTold = 20;

/** What a check of chains found. */
export function Found({ check }: { readonly check: ChainCheck }) {
  const say = words.records;
  const { checked, devices, faults, bodiless, holes } = check;
  return (
    <>
      <p>
        <Rich
          text={faults.length === 0 ? say.intact({ entries: checked, devices }) : say.broken({ faults: faults.length })}
        />
      </p>
      {faults.length > 0 ? (
        <ul className="notes">
          {faults.slice(0, mostTold).map((fault) => (
            <li key={`${fault.device} ${fault.seq} ${fault.reason}`}>{say.fault(fault)}</li>
          ))}
          {faults.length > mostTold ? <li>{say.more({ count: faults.length - mostTold })}</li> : null}
        </ul>
      ) : null}
      {holes > 0 ? <p className="q2">{say.holes({ holes })}</p> : null}
      {bodiless > 0 ? <p className="q2">{say.bodiless({ entries: bodiless })}</p> : null}
    </>
  );
}
