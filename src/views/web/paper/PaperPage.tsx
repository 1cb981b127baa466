/** Papers of a case to print: labels, the kit card, the report. Nothing but the paper is printed. */
import { useEffect, useMemo, useState } from "react";
import { Link } from "wouter";
import { destinationRules } from "../../../knowledge/index.ts";
import {
  type Destination,
  destinations,
  hasVialsToCome,
  kitCard,
  labelSheet,
  labelStocks,
  spineView,
  stockOf,
  stopsSay,
} from "../../model/index.ts";
import type { Paper } from "../../report/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { Missing } from "../parts/Missing.tsx";
import { useOwn } from "../reckon/use-own.ts";
import { useRanked } from "../reckon/use-ranked.ts";
import type { PageProps } from "../routes.ts";
import { useCasebook } from "../store/context.ts";
import { useHeads } from "../store/use-heads.ts";
import { PaperSheet } from "./PaperSheet.tsx";
import { words } from "./paper-words.ts";
import "./paper.css";

const kinds = ["labels", "kit", "report"] as const;
type Kind = (typeof kinds)[number];

interface Wishes {
  readonly stock: string;
  readonly startAt: number;
  readonly onlyWaiting: boolean;
  readonly destination: Destination | null;
  readonly size: "A4" | "Letter";
}

type Makers = typeof import("../../report/index.ts");

/** What draws papers is fetched apart: the 2-D codes are half of it, and the page with its choices stands before. */
function useMakers(): Makers | null {
  const [makers, setMakers] = useState<Makers | null>(null);
  useEffect(() => {
    let here = true;
    void import("../../report/index.ts").then((loaded) => here && setMakers(loaded));
    return () => {
      here = false;
    };
  }, []);
  return makers;
}

type CaseReport = typeof import("./case-report.ts") & typeof import("./case-rank.ts");

/** The report tells of everything in the case, which no other paper does: what it takes is fetched only for it. */
function useCaseReport(isWanted: boolean): CaseReport | null {
  const [caseReport, setCaseReport] = useState<CaseReport | null>(null);
  useEffect(() => {
    if (!isWanted) return;
    let here = true;
    void Promise.all([import("./case-report.ts"), import("./case-rank.ts")]).then(
      ([told, rank]) => here && setCaseReport({ ...told, ...rank }),
    );
    return () => {
      here = false;
    };
  }, [isWanted]);
  return caseReport;
}

export default function PaperPage({ params }: PageProps) {
  const { casebook, isDemonstration, today } = useCasebook();
  const say = words.paper.screen;
  const caseId = params.case ?? "";
  const kind = kinds.find((each) => each === params.paper) ?? "report";
  const spine = spineView(casebook, caseId, words);
  const [wishes, set] = useState<Wishes>(() => ({
    stock: labelStocks[0].id,
    startAt: 1,
    onlyWaiting: hasVialsToCome(casebook, caseId),
    destination: null,
    size: "A4",
  }));
  const makers = useMakers();
  const heads = useHeads();
  const caseReport = useCaseReport(kind === "report");
  const toRank = useMemo(
    () => (kind === "report" ? (caseReport?.reportToRank(casebook, caseId) ?? null) : null),
    [caseReport, casebook, caseId, kind],
  );
  const inputs = useMemo(() => toRank?.map(({ input }) => input) ?? null, [toRank]);
  const own = useOwn();
  const ranked = useRanked(own.waits ? null : inputs, own.own);
  const report = useMemo(
    () =>
      kind === "report" && ranked && toRank
        ? (caseReport?.caseReport(casebook, caseId, { today, words, isDemonstration, heads, own, toRank, ranked }) ??
          null)
        : null,
    [caseReport, casebook, caseId, kind, today, isDemonstration, heads, own, toRank, ranked],
  );
  const made = useMemo((): { readonly paper: Paper; readonly vials: number } | null => {
    if (!makers) return null;
    if (kind === "labels") {
      const sheet = labelSheet(casebook, caseId, {
        wish: { stock: stockOf(wishes.stock), startAt: wishes.startAt, onlyWaiting: wishes.onlyWaiting },
        words,
        isDemonstration,
      });
      return { paper: makers.labelPaper(sheet), vials: sheet.labels.length };
    }
    if (kind === "kit") {
      const card = kitCard(casebook, caseId, { destination: wishes.destination, words, isDemonstration });
      return { paper: makers.kitCardPaper(card, wishes.size), vials: card.rows.length };
    }
    return report ? { paper: makers.reportPaper(report, wishes.size), vials: report.rows.length } : null;
  }, [makers, casebook, caseId, kind, wishes, isDemonstration, report]);
  if (!spine) return <Missing text={words.case.missing} />;
  const size = kind === "labels" ? stockOf(wishes.stock).page : wishes.size;
  return (
    <main id="page" className="paper-page">
      <div className="paper-controls">
        <p className="note">
          <Link className="act" href={`/cases/${caseId}/4`}>
            {say.back}
          </Link>{" "}
          <span className="c">{spine.code}</span> {spine.place}
        </p>
        <Answer
          text={kind !== "labels" ? say.answer[kind] : made ? say.answer.labels(made.vials) : words.shell.opening}
        />
        <nav className="paper-kinds" aria-label={say.page}>
          {kinds.map((each) => (
            <Link
              key={each}
              className="act"
              href={`/cases/${caseId}/paper/${each}`}
              aria-current={each === kind ? "page" : undefined}
            >
              {words.case.papers[each]}
            </Link>
          ))}
        </nav>
        {kind === "labels"
          ? stopsSay(casebook, caseId, words).map((stop) => (
              <p key={stop} className="heed">
                {stop}
              </p>
            ))
          : null}
        <Choices kind={kind} wishes={wishes} set={(change) => set((now) => ({ ...now, ...change }))} />
        <p className="acts">
          <button type="button" className="press" disabled={!made} onClick={() => window.print()}>
            {say.print}
          </button>
          <span className="note q3">{say.printHint}</span>
        </p>
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: a paper is shown here, it is no section of the page */}
      <div
        className="paper-desk"
        role="region"
        aria-label={say.preview}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a sheet wider than the screen is moved by the arrow keys
        tabIndex={0}
      >
        {made ? <PaperSheet paper={made.paper} size={size} isWhole={kind === "labels"} /> : null}
      </div>
    </main>
  );
}

function Choices({
  kind,
  wishes,
  set,
}: {
  readonly kind: Kind;
  readonly wishes: Wishes;
  readonly set: (change: Partial<Wishes>) => void;
}) {
  const say = words.paper.screen;
  if (kind === "labels")
    return (
      <div className="line-form">
        <label className="field">
          {say.stock}
          <select value={wishes.stock} onChange={(event) => set({ stock: event.target.value })}>
            {labelStocks.map((stock) => (
              <option key={stock.id} value={stock.id}>
                {say.stocks[stock.id]}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          {say.start}
          <input
            type="number"
            min={1}
            max={stockOf(wishes.stock).columns * stockOf(wishes.stock).rows}
            value={wishes.startAt}
            onChange={(event) => set({ startAt: Math.max(1, Number(event.target.value) || 1) })}
          />
        </label>
        <label className="field">
          {say.which}
          <select
            value={wishes.onlyWaiting ? "waits" : "all"}
            onChange={(event) => set({ onlyWaiting: event.target.value === "waits" })}
          >
            <option value="waits">{say.whichWaits}</option>
            <option value="all">{say.whichAll}</option>
          </select>
        </label>
      </div>
    );
  return (
    <div className="line-form">
      <label className="field">
        {say.page}
        <select
          value={wishes.size}
          onChange={(event) => set({ size: event.target.value === "Letter" ? "Letter" : "A4" })}
        >
          <option value="A4">A4</option>
          <option value="Letter">US Letter</option>
        </select>
      </label>
      {kind === "kit" ? (
        <label className="field">
          {say.destination}
          <select
            value={wishes.destination ?? ""}
            onChange={(event) => set({ destination: destinations.find((each) => each === event.target.value) ?? null })}
          >
            <option value="">{words.paper.ownBench}</option>
            {destinations.map((each) => (
              <option key={each} value={each}>
                {destinationRules[each].destination}, {destinationRules[each].purpose}
              </option>
            ))}
          </select>
        </label>
      ) : null}
    </div>
  );
}
