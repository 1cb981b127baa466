/** Reading a vial: one bee, two trunks, one key; everything that was said is on the disk before it is shown. */
import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import { Link } from "wouter";
import { bench } from "../../../reasoning/index.ts";
import type { BenchView, OpenReading } from "../../model/index.ts";
import { Rich } from "../parts/Rich.tsx";
import { words } from "../words.ts";
import { BeeScale } from "./BeeScale.tsx";
import { Legend, mapOf, TouchKeys } from "./KeyCaps.tsx";
import { LastLine } from "./LastLine.tsx";
import { Rack } from "./Rack.tsx";
import { Review } from "./Review.tsx";
import { SpecimenLabel } from "./SpecimenLabel.tsx";
import { useBenchSettings } from "./settings.ts";
import { TallyColumn } from "./TallyColumn.tsx";
import { Trunk } from "./Trunk.tsx";
import { type BenchAtWork, useBench } from "./use-bench.ts";

interface Props {
  readonly view: BenchView;
  readonly reading: OpenReading;
}

export function Reading({ view, reading }: Props) {
  const say = words.bench;
  const [settings, change] = useBenchSettings();
  const [isReviewing, setReviewing] = useState(false);
  const [showsKeys, setShowsKeys] = useState(false);
  const [hasFocus, setHasFocus] = useState(false);
  const surface = useRef<HTMLDivElement>(null);
  const down = useRef(new Set<string>());
  const keys = mapOf(settings.pad);
  const work = useBench({ view, reading, keys, settings, onConfirm: () => setReviewing(true) });

  useEffect(() => {
    // The key that opened the review came up there: it is not held here.
    down.current.clear();
    if (!isReviewing) surface.current?.focus({ preventScroll: true });
  }, [isReviewing]);

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.target !== surface.current || event.ctrlKey || event.altKey || event.metaKey) return;
    if (event.key === "?" || (event.key === "Escape" && showsKeys)) {
      setShowsKeys((shown) => event.key === "?" && !shown);
      return;
    }
    if (!(event.key in keys) && !(event.key.toLowerCase() in keys)) return;
    event.preventDefault();
    const held = event.repeat || down.current.has(event.code);
    down.current.add(event.code);
    work.press({ key: event.key, at: event.timeStamp, held });
  };

  if (isReviewing)
    return (
      <Review
        view={view}
        reading={reading}
        bees={work.bees}
        tally={work.tally}
        correct={work.correct}
        back={() => setReviewing(false)}
      />
    );
  return (
    <main id="page" className="bench" data-flash={work.flash ?? undefined}>
      <h1 className="vh">{say.readingOf({ code: view.label.code })}</h1>
      <header className="bench-head">
        <SpecimenLabel view={view} reading={reading} />
        <p>
          {view.received ? (
            <Rich
              text={say.received({
                bees: view.received.beesReceived,
                condition: say.conditions[view.received.condition as 0 | 1 | 2 | 3],
                acceptance: say.acceptances[view.received.acceptance],
              })}
            />
          ) : null}{" "}
          {say.readOn({ target: reading.started.target })}
        </p>
        <p className="who-reads">
          <span>
            <Rich
              text={
                reading.started.blindNumber
                  ? say.blindBy({ reader: reading.started.reader, number: reading.started.blindNumber })
                  : say.openBy({ reader: reading.started.reader })
              }
            />
          </span>
          <span>{reading.started.method}</span>
          <Link className="act" href="/bench">
            {say.toBench}
          </Link>
        </p>
      </header>
      <div
        ref={surface}
        className="surface"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: keys count only while the bench has the focus, so it must take it
        tabIndex={0}
        aria-label={say.surface({ code: view.label.code })}
        onKeyDown={onKeyDown}
        onKeyUp={(event) => down.current.delete(event.code)}
        onFocus={() => setHasFocus(true)}
        onBlur={() => {
          down.current.clear();
          setHasFocus(false);
        }}
      >
        <BeePanel work={work} target={reading.started.target} />
        <TrunksPanel work={work} isBlind={reading.isBlind} />
        <TallyColumn tally={work.tally} isBlind={reading.isBlind} />
      </div>
      <Rack view={view} />
      {work.stop ? (
        <div className="stop-line" role="alert">
          <p>
            <Rich
              text={
                work.stop === "target"
                  ? say.reached({ target: reading.started.target })
                  : say.beyond({ received: view.received?.beesReceived ?? 0 })
              }
            />{" "}
            {work.stop === "target" ? say.reachedNext : null}
          </p>
          {work.stop === "vial-empty" ? (
            <button type="button" className="press quiet" onClick={work.readBeyond}>
              {say.readBeyond}
            </button>
          ) : null}
        </div>
      ) : null}
      <footer className="bench-foot">
        <TouchKeys state={work.state} press={work.press} />
        <LastLine work={work} isBlind={reading.isBlind} />
        <span className="foot-acts">
          {/* Its room is kept while the keys are on: a press beside it must not move what is pressed. */}
          <button
            type="button"
            className="key-act keys-off"
            data-off={!hasFocus || undefined}
            onClick={() => surface.current?.focus()}
          >
            {say.keysOff} {say.keysOn}
          </button>
          <button type="button" className="key-act" onClick={() => setReviewing(true)}>
            {say.review}
          </button>
          <button
            type="button"
            className="key-act"
            aria-pressed={settings.sound}
            onClick={() => change({ sound: !settings.sound })}
          >
            {settings.sound ? say.sound.on : say.sound.off}
          </button>
          <button
            type="button"
            className="key-act"
            aria-expanded={showsKeys}
            onClick={() => setShowsKeys((shown) => !shown)}
          >
            <kbd className="cap">?</kbd>
            {say.keys}
          </button>
        </span>
        {showsKeys ? (
          <div className="legend-box">
            <Legend keys={keys} milliseconds={settings.bounceMilliseconds} />
            <Choices settings={settings} change={change} />
          </div>
        ) : null}
      </footer>
    </main>
  );
}

function BeePanel({ work, target }: { readonly work: BenchAtWork; readonly target: number }) {
  const say = words.bench;
  const counted = work.bees.map(({ read }) => {
    const result = bench.beeResult(read);
    return result === "positive" || result === "clear";
  });
  return (
    <section className="bee" aria-label={say.bee}>
      <p className="count" data-long={work.next > 99 || undefined}>
        {work.next}
      </p>
      <p className="of">
        <span>{say.beeOf({ target })}</span>
        <span>{say.readSoFar({ read: work.tally.read })}</span>
      </p>
      <BeeScale counted={counted} next={work.next} target={target} />
    </section>
  );
}

function TrunksPanel({ work, isBlind }: { readonly work: BenchAtWork; readonly isBlind: boolean }) {
  const say = words.bench;
  const { asked, left } = work.state;
  return (
    <section className="trunks" aria-label={say.trunksOf({ bee: work.next })}>
      <div>
        <h2>{say.left}</h2>
        <Trunk reading={left} side="left" isAsked={asked === "left"} />
        {asked === "left" ? (
          <p className="ask">{say.askLeft}</p>
        ) : (
          <p className="is">{left && !isBlind ? say.trunks[left] : ""}</p>
        )}
      </div>
      <div>
        <h2>{say.right}</h2>
        <Trunk reading={null} side="right" isAsked={asked === "right"} />
        {asked === "right" ? <p className="ask">{say.askRight}</p> : <p className="is" />}
      </div>
    </section>
  );
}

function Choices({
  settings,
  change,
}: {
  readonly settings: ReturnType<typeof useBenchSettings>[0];
  readonly change: ReturnType<typeof useBenchSettings>[1];
}) {
  const say = words.bench;
  return (
    <div className="choices">
      <label>
        {say.keys}{" "}
        <select
          value={settings.pad}
          onChange={(event) => change({ pad: event.target.value === "left" ? "left" : "numeric" })}
        >
          <option value="numeric">{say.pads.numeric}</option>
          <option value="left">{say.pads.left}</option>
        </select>
      </label>
      <label>
        {say.bounce}{" "}
        <select
          value={settings.bounceMilliseconds}
          onChange={(event) => change({ bounceMilliseconds: Number(event.target.value) })}
        >
          {[70, 100, 150].map((milliseconds) => (
            <option key={milliseconds} value={milliseconds}>
              {say.bounceChoice({ milliseconds })}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}
