/** A control plan as a calendar file: all-day events that a later version moves or cancels. */
import { ICalCalendar, ICalCalendarMethod, ICalEventStatus } from "ical-generator";
import type { BodyOf } from "../journal/index.ts";
import { addDays, ensure } from "../units/index.ts";

export type PlanBody = BodyOf<"plan-made">;
export type PlanStepBody = PlanBody["steps"][number];

export interface PlanCalendar {
  /** Id of the plan: part of every event's id, so it must not change between versions. */
  readonly plan: string;
  /** Versions of the plan, oldest first; the last one stands. Steps of earlier ones that it lacks are cancelled. */
  readonly versions: readonly [PlanBody, ...PlanBody[]];
  /** Name of the calendar. */
  readonly name: string;
  /** Short text of a step in the reader's language. */
  readonly titleOf: (step: PlanStepBody) => string;
  /** When the file is made: an instant, ISO text with Z. */
  readonly madeAt: string;
}

/**
 * The calendar as RFC 5545 text, CRLF line ends, lines folded at 75 octets.
 *
 * Each step is one all-day event (`VALUE=DATE`, the end is the next day). Its UID is the plan's id with the
 * step's, its SEQUENCE the plan's version, so that a program replaces the event instead of doubling it. A step
 * that the newest version dropped is sent once more with STATUS:CANCELLED.
 *
 * @throws DomainError when versions are not in order or `madeAt` is no instant
 * @source RFC 5545 from memory; the text is made by a general calendar library and read back in the tests
 */
export function planCalendar({ plan, versions, name, titleOf, madeAt }: PlanCalendar): string {
  const numbers = versions.map(({ version }) => version);
  ensure(
    numbers.every((version, index) => index === 0 || version > (numbers[index - 1] as number)),
    "versions",
    numbers.join(", "),
    "oldest first, each number greater than the one before",
  );
  const stamp = new Date(madeAt);
  ensure(madeAt.endsWith("Z") && Number.isFinite(stamp.getTime()), "madeAt", madeAt, "an instant with Z");

  const newest = versions.at(-1) as PlanBody;
  const standing = new Set(newest.steps.map(({ step }) => step));
  const dropped = new Map(
    versions
      .slice(0, -1)
      .flatMap(({ steps }) => steps.filter(({ step }) => !standing.has(step)).map((each) => [each.step, each])),
  );
  const calendar = new ICalCalendar({
    name,
    method: ICalCalendarMethod.PUBLISH,
    prodId: { company: "Skepsis", product: "control plan", language: "EN" },
  });
  const add = (step: PlanStepBody, status: ICalEventStatus) =>
    calendar.createEvent({
      id: `${plan}.${step.step}@skepsis`,
      sequence: newest.version,
      stamp,
      start: midnight(step.on),
      end: midnight(addDays(step.on, 1)),
      allDay: true,
      summary: titleOf(step),
      description: step.note,
      status,
    });
  for (const step of newest.steps) add(step, ICalEventStatus.CONFIRMED);
  for (const step of dropped.values()) add(step, ICalEventStatus.CANCELLED);
  return `${calendar.toString()}\r\n`;
}

/** The library writes an all-day date from the UTC day. */
const midnight = (day: string): Date => new Date(`${day}T00:00:00Z`);
