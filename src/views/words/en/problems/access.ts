/** What can go wrong with coming in and with what a member may do: what it means, what to do. */
import type { Slots } from "./index.ts";

export const accessProblems = {
  "sign-in-needed": () => "Sign in to exchange records. What was written here stays here until then.",
  "sign-in-failed": () => "Name and password do not go together. Check both; capitals count in the password.",
  "sign-in-waits": (slots: Slots) =>
    `The password was wrong too often. The next try is possible in ${slots.seconds} seconds.`,
  "too-many-requests": (slots: Slots) => `Too many requests from here. Try again in ${slots.seconds} seconds.`,
  "not-allowed": () => "Your role in this programme does not include this. An administrator can change the role.",
  "entry-not-allowed": () =>
    "Your role does not include writing this entry, so the service did not take it in. It stays on this device; ask an administrator.",
  "password-length": (slots: Slots) => `A password needs ${slots.least} to ${slots.most} signs. A few words do well.`,
  "password-easy": () => "This password is easy to guess: your name, a run of signs, or words of this trade alone.",
  "name-taken": () => "Another member has this name. Choose one that tells you apart.",
  "invitation-over": () => "This invitation was used, cancelled or has run out. Ask for another one; each works once.",
  "member-unknown": () => "There is no such member, or the member has left.",
  "last-administrator": () => "This is the last administrator. Make another one first.",
  "apiary-unknown": () => "There is no such apiary on record here.",
  "device-unknown": () => "There is no such device.",
  "device-of-another": () =>
    "This device belongs to another member, or wrote here before there were members. Its entries were not taken in.",
  "device-lost": () =>
    "This device was reported lost. What it sends is kept apart until an administrator says that it is back.",
  "session-unknown": () => "There is no such session, or it has ended.",
  "passkey-needs-name": () =>
    "A passkey is bound to a name, and this address has none. On the machine itself open the page as localhost.",
  "passkey-failed": () => "The passkey was not accepted. Try again, or sign in with your password.",
};
