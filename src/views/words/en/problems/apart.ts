/** Why an entry kept apart cannot be settled so: what it means, what to do. */
import type { Slots } from "./index.ts";

export const apartProblems = {
  "apart-no-reason": () => "Say why: the reason stands on record with the decision.",
  "apart-came-in": (slots: Slots) =>
    `Its words were taken in already. To leave them out, withdraw entry ${slots.entry} where it stands.`,
  "apart-of-newer-version": (slots: Slots) =>
    `A newer version wrote it (${String(slots.kind).replaceAll("-", " ")}), and this one cannot read it. Bring this version up to date before it is taken in.`,
  "apart-does-not-fit": () => "Its words do not fit its kind as this version reads it, so they cannot be taken in.",
  "apart-without-body": () => "Its words were erased or are withheld from you, so they cannot be taken in.",
  "apart-changed": () =>
    "Its words are not those that its header names: it was damaged or changed, and is not taken in.",
  "apart-of-service": () => "The service alone writes entries of this kind; one from a device is not taken in.",
  "apart-erases": () =>
    "It erases words for good, so it is not taken in. An administrator who means it erases them where they stand.",
  "apart-names-file": () =>
    "It names a photo or voice note, which opens for entries of whoever sent it alone. Attach it again from the device that has it.",
  "apart-unknown": (slots: Slots) =>
    `Nothing is kept apart under ${slots.hash}, or more than one is. skepsis apart list shows the first digits of each.`,
};
