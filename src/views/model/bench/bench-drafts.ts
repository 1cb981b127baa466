/**
 * The entries that acts at the bench become: receipt, new label, begin, bee, undo, lock.
 *
 * @module views/model
 */
import type { BodyOf, EntryDraft, Trunk } from "../../../journal/index.ts";
import { type Day, problem, type Result } from "../../../units/index.ts";
import { type Fields, present, readForm } from "../form.ts";
import { happenedOn, heedDay } from "../happened.ts";
import type { ReadBee } from "./keys.ts";
import type { BenchView, OpenReading, StoredBee } from "./reading.ts";

/** Body of `specimen-received` from the form; a reason is needed unless the vial is accepted without limits. */
export function readReception(fields: Fields, today: Day): Result<BodyOf<"specimen-received">> {
  const form = readForm(fields);
  const acceptance = form.oneOf("acceptance", ["accepted", "accepted-with-limits", "rejected"]);
  const on = happenedOn(form, "on", today);
  const takenOn = form.day("takenOn");
  heedDay(form, "takenOn", { day: takenOn, today });
  if (takenOn > on && takenOn <= today)
    form.complain(
      problem("taken-after-received", "blocked", "takenOn", {
        given: takenOn,
        slots: { taken: takenOn, received: on },
      }),
    );
  return form.result(
    present({
      on,
      takenOn,
      condition: Number(form.oneOf("condition", ["0", "1", "2", "3"])),
      beesReceived: form.number("beesReceived", { min: 0, max: 5000, whole: true }),
      aliveWhenTaken: form.oneOf("aliveWhenTaken", ["yes", "no"]) === "yes",
      acceptance,
      reason: acceptance === "accepted" ? form.maybeText("reason") : form.text("reason"),
    }),
  );
}

/** The receipt; it replaces every receipt that stands. */
export const receptionDraft = (view: BenchView, data: BodyOf<"specimen-received">, today: Day): EntryDraft => ({
  kind: "specimen-received",
  at: today,
  about: [view.id],
  replaces: view.receivedEntries,
  data,
});

/** A new code for a vial whose code another one carries. */
export const relabelDraft = (view: BenchView, code: string, today: Day): EntryDraft => ({
  kind: "specimen-labelled",
  at: today,
  about: [view.id, view.caseId, view.label.colony],
  replaces: view.labelEntries,
  data: { ...view.label, code },
});

export interface ReadingStart {
  readonly reader: string;
  readonly target: number;
  readonly isBlind: boolean;
}

/** Who reads, how many bees, blind or not. */
export function readReadingStart(fields: Fields): Result<ReadingStart> {
  const form = readForm(fields);
  return form.result({
    reader: form.text("reader"),
    target: form.number("target", { min: 1, max: 1000, whole: true }),
    isBlind: fields.blind !== undefined,
  });
}

/** Someone sits down to read. A blind reading gets a number of its own. */
export function startDraft(input: {
  readonly view: BenchView;
  readonly start: ReadingStart;
  readonly readingId: string;
  readonly method: string;
  readonly today: Day;
}): EntryDraft {
  const { view, start, readingId, method, today } = input;
  return {
    kind: "reading-started",
    at: today,
    about: [view.id, readingId],
    data: present({
      reading: readingId,
      reader: start.reader,
      on: today,
      method,
      target: start.target,
      blindNumber: start.isBlind ? `R-${view.locked.length + 1}` : undefined,
    }),
  };
}

/** One bee as read. */
export function beeDraft(
  specimen: string,
  reading: OpenReading,
  { bee, read, today }: { readonly bee: number; readonly read: ReadBee; readonly today: Day },
): EntryDraft {
  return {
    kind: "bee-read",
    at: today,
    about: [specimen, reading.id],
    data: present({
      reading: reading.id,
      bee,
      lost: read.lost,
      left: read.lost ? null : read.left,
      right: read.lost ? null : read.right,
      flagged: read.flagged || undefined,
    }),
  };
}

/** The trunks as the form of one bee has them; lost bees have none. */
export function readCorrection(fields: Fields, before: ReadBee): Result<ReadBee> {
  const form = readForm(fields);
  const lost = fields.lost !== undefined;
  const trunk = (name: "left" | "right") => (lost ? null : form.oneOf(name, trunkWords));
  return form.result({ lost, left: trunk("left"), right: trunk("right"), flagged: before.flagged });
}

/** What one trunk can show, in the order of the form. */
export const trunkWords: readonly Trunk[] = [
  "clear",
  "mites",
  "mites-blotches",
  "mites-dark",
  "dark-no-mite",
  "unreadable",
];

/** A bee read wrongly, read anew under its number: it takes the place of every entry that stands for it. */
export const correctionDraft = (
  specimen: string,
  reading: OpenReading,
  { bee, read, today }: { readonly bee: StoredBee; readonly read: ReadBee; readonly today: Day },
): EntryDraft => ({ ...beeDraft(specimen, reading, { bee: bee.bee, read, today }), replaces: bee.entries });

/** Takes back the last bee. The bee stays in the journal; it no longer counts. */
export const undoDraft = (
  specimen: string,
  reading: OpenReading,
  { bee, today }: { readonly bee: StoredBee; readonly today: Day },
): EntryDraft => ({
  kind: "entry-withdrawn",
  at: today,
  about: [specimen, reading.id],
  replaces: bee.entries,
  data: { reason: "undone at the bench" },
});

/** Why a reading would end now, as the bench proposes it. */
export const proposedStop = (reading: OpenReading): BodyOf<"reading-finished">["stop"] =>
  reading.isTargetReached ? "target-reached" : reading.isVialEmpty ? "no-more-bees" : "stopped-early";

/** The reading is over and locked. */
export function lockDraft(
  specimen: string,
  reading: OpenReading,
  { fields, today }: { readonly fields: Fields; readonly today: Day },
): EntryDraft {
  const form = readForm(fields);
  return {
    kind: "reading-finished",
    at: today,
    about: [specimen, reading.id],
    data: present({
      reading: reading.id,
      on: today,
      stop: form.oneOf("stop", ["target-reached", "no-more-bees", "stopped-early"]),
      note: form.maybeText("note"),
    }),
  };
}
