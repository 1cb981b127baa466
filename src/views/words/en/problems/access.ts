/** What can go wrong with coming in and with what a member may do: what it means, what to do. */
import type { Slots } from "./index.ts";

export const accessProblems = {
  "sign-in-needed": () => "Sign in to exchange records. What was written here stays here until then.",
  "too-many-requests": (slots: Slots) => `Too many requests from here. Try again in ${slots.seconds} seconds.`,
  "not-allowed": () => "Your role in this programme does not include this. An administrator can change the role.",
  "entry-not-allowed": () =>
    "Your role does not include this entry, so it was not taken in. It stays on this device; ask an administrator.",
  "device-of-another": () =>
    "This device is another member’s, or wrote here before there were members. Its entries were not taken in.",
  "device-lost": () =>
    "This device was reported lost. What it sends is kept apart until an administrator says that it is back.",
};
