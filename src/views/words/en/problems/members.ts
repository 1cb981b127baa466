/** What can go wrong with coming in and with the book of members: the service says these, no page does. */
import type { Slots } from "./index.ts";

export const memberProblems = {
  "sign-in-failed": () => "Name and password do not go together. Check both; capitals count in the password.",
  "sign-in-waits": (slots: Slots) =>
    `The password was wrong too often. The next try is possible in ${slots.seconds} seconds.`,
  "password-length": (slots: Slots) => `A password needs ${slots.least} to ${slots.most} signs. A few words do well.`,
  "password-easy": () => "This password is easy to guess: your name, a run of signs, or words of this trade alone.",
  "password-common": () => "This password is on the list of common ones. Choose another.",
  "password-same": () => "The new password is the old one. Choose another.",
  "password-drawn": () =>
    "This password was drawn for you and is good for coming in once. Choose your own: you sign in with it from now on.",
  "password-not-drawn": () => "This password is your own already. Another one is chosen once you are signed in.",
  "password-over": () =>
    "This password was drawn for you and has run out. Ask whoever looks after the service for another one.",
  "name-taken": () => "Another member has this name. Choose one that tells you apart.",
  "invitation-over": () => "This invitation was used, cancelled or has run out. Ask for another one; each works once.",
  "member-unknown": () => "There is no such member, or the member has left.",
  "last-administrator": () => "This is the last administrator. Make another one first.",
  "apiary-unknown": () => "There is no such apiary on record here.",
  "device-unknown": () => "There is no such device.",
  "session-unknown": () => "There is no such session, or it has ended.",
  "passkey-needs-name": () =>
    "A passkey is bound to a name, and this address has none. On the machine itself open the page as localhost.",
  "passkey-unknown": () => "There is no such passkey; it was taken away before.",
  "passkey-failed": () => "The passkey was not accepted. Try again, or sign in with your password.",
};
