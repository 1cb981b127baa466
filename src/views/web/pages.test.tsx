/** Pages as plain markup: the answer comes first, every act has a name, nothing is told by colour alone. */
import type { ReactNode } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { Router } from "wouter";
import { answerFlags, colony, following, opened, see, today } from "../../../tests/case-story.ts";
import { type Casebook, emptyCasebook } from "../../casebook/index.ts";
import { differential } from "../../reasoning/index.ts";
import { casesView, couldView, differentialInput, redFlags, spineView } from "../model/index.ts";
import { Causes } from "./case/could/Causes.tsx";
import { causesSvg } from "./case/could/causes-svg.ts";
import { dotPlaces } from "./case/could/Dots.tsx";
import { Spine } from "./case/Spine.tsx";
import { move } from "./case/seen/move.ts";
import { CasesTable } from "./cases/CasesTable.tsx";
import { Answer } from "./parts/Answer.tsx";
import { TextField } from "./parts/Form.tsx";
import { ThreeStates } from "./parts/ThreeStates.tsx";
import { SaveJournal } from "./shell/SaveJournal.tsx";
import { type CasebookAccess, CasebookContext } from "./store/context.ts";
import { words } from "./words.ts";

const drawn = (page: ReactNode): string => renderToStaticMarkup(<Router ssrPath="/cases">{page}</Router>);

const story = opened();
const first = colony(following(story).casebook, 1);
const { casebook, state } = following(
  story,
  answerFlags(story.caseId),
  see(story.caseId, first, "crawlers", "present"),
);

describe("the list of cases", () => {
  const markup = drawn(<CasesTable view={casesView({ casebook, today, who: null, words })} />);
  it("is a table whose rows lead to the case and say the open question in words", () => {
    expect(markup).toContain(`href="/cases/${story.caseId}"`);
    expect(markup).toContain("What could it be?");
    expect(markup).toContain('aria-label="Open question: 2 of 6"');
    expect(markup).toMatch(/<th scope="rowgroup"|<th colSpan="7" scope="rowgroup"|scope="rowgroup"/);
  });
});

describe("the spine", () => {
  const view = spineView(casebook, story.caseId, words);
  const markup = view ? drawn(<Spine view={view} here={2} />) : "";
  it("names all six questions and marks the one that is open", () => {
    for (const asks of Object.values(words.case.questions)) expect(markup).toContain(asks);
    expect(markup.match(/aria-current="step"/g)).toHaveLength(1);
  });
  it("draws a tick for each entry, twenty at most", () => {
    const ticks = [...markup.matchAll(/--entries:(\d+)/g)].map((match) => Number(match[1]));
    expect(ticks).toHaveLength(6);
    expect(Math.max(...ticks)).toBeLessThanOrEqual(20);
  });
});

describe("the ranked causes", () => {
  const { input } = differentialInput(casebook, state, first);
  const answer = differential.differential({ ...input, draws: 60 });
  const dots = differential.quantiles({ ...input, draws: 60 }, 20);
  if (!answer.ok || !dots.ok) throw new Error("no answer");
  const view = couldView({ answer: answer.value, input, draws: 60, dots: dots.value, words });
  const markup = drawn(<Causes view={view} name="WB-01" />);
  it("gives number, then range, then word", () => {
    const top = view.causes[0];
    const [number, range, word] = [top?.number ?? "?", top?.range ?? "?", top?.word ?? "?"].map((each) =>
      markup.indexOf(`>${each}<`),
    );
    expect(number).toBeLessThan(range as number);
    expect(range).toBeLessThan(word as number);
  });
  it("offers its twins: table, picture to keep, figures to keep", () => {
    for (const twin of ["Table", "SVG", "CSV"]) expect(markup).toContain(`>${twin}</button>`);
  });
  it("draws twenty dots for each cause, none on another and none off the scale", () => {
    for (const cause of view.causes) {
      const places = dotPlaces(cause.dots ?? []);
      expect(new Set(places.map(({ x, y }) => `${x} ${y}`)).size).toBe(20);
      expect(places.every(({ x }) => x > 0 && x < 200)).toBe(true);
    }
  });
  it("keeps its picture as a file that needs no style of the page", () => {
    const svg = causesSvg(view.causes.slice(0, 3), "causes");
    expect(svg).not.toContain("var(--");
    expect(svg.match(/<circle/g)).toHaveLength(60);
  });
});

describe("parts", () => {
  it("an answer is the heading of its page", () => {
    expect(renderToStaticMarkup(<Answer text="**Cannot tell yet.** Look." />)).toBe(
      '<h1 class="answer"><b>Cannot tell yet.</b> Look.</h1>',
    );
  });
  it("a field ties its trouble to its input", () => {
    const problems = [{ code: "field-empty", severity: "blocked", field: "name", slots: {} }] as const;
    const markup = renderToStaticMarkup(<TextField name="name" label="Name" problems={problems} />);
    const id = /aria-describedby="([^"]+)"/.exec(markup)?.[1] ?? "none";
    expect(markup).toContain(`id="${id}"`);
    expect(markup).toContain('aria-invalid="true"');
  });
  it("three states are three named buttons, and a mark of its own beside each word", () => {
    const markup = renderToStaticMarkup(
      <ThreeStates of="Robbing" state="absent" says={words.seen.states} answer={() => {}} />,
    );
    expect(markup.match(/<button/g)).toHaveLength(3);
    expect(markup.match(/aria-pressed="true"/g)).toHaveLength(1);
    for (const mark of ["m present", "m absent", "m unlooked"]) expect(markup).toContain(mark);
  });
  it("red flags name what to do only when present", () => {
    expect(redFlags(state).every((flag) => flag.act === null)).toBe(true);
  });
});

describe("arrow keys on the sheet", () => {
  const widths = [3, 1, 3];
  it("keep the column across a row of one cell", () => {
    const down = move("ArrowDown", { row: 0, column: 2 }, widths);
    expect(down).toEqual({ row: 1, column: 2 });
    expect(move("ArrowDown", down ?? { row: 0, column: 0 }, widths)).toEqual({ row: 2, column: 2 });
  });
  it("stop at the edges", () => {
    expect(move("ArrowUp", { row: 0, column: 0 }, widths)).toBeNull();
    expect(move("ArrowRight", { row: 1, column: 2 }, widths)).toBeNull();
    expect(move("ArrowDown", { row: 2, column: 0 }, widths)).toBeNull();
    expect(move("Enter", { row: 0, column: 0 }, widths)).toBeNull();
  });
});

describe("saving a copy", () => {
  const shown = (casebook: Partial<Casebook>, savedAt: string | null = null): boolean => {
    const access = { casebook: { ...emptyCasebook, ...casebook }, keeping: { savedAt } } as unknown as CasebookAccess;
    const markup = drawn(
      <CasebookContext value={access}>
        <SaveJournal />
      </CasebookContext>,
    );
    return markup.includes(words.shell.saveJournal);
  };
  it("is offered as soon as there is an entry, also to who has vials alone", () => {
    expect(shown({})).toBe(false);
    expect(shown({ specimens: { "specimen-1": {} as Casebook["specimens"][string] } })).toBe(true);
    expect(shown({ unread: [{ entry: "e", root: "r", kind: "k", why: "newer-schema" } as never] })).toBe(true);
    expect(shown({}, "2026-04-02T08:00:00.000Z")).toBe(true);
  });
});
