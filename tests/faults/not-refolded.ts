/** What of the service's tables no journal can be held against, column by column, and why a flipped byte there is borne. */

/** By table and column, or by table and `*`: the reason. Whatever is not named here must be found by the check. */
export const notRefolded: Readonly<Record<string, string>> = {
  "members.name":
    "is in no journal, so that it can be erased; but for capitals it is held against the name to sign in with",
  "members.password": "a secret is in no journal; a hash that was changed lets nobody in",
  "members.password_ends_at": "how long a drawn password opens; it goes with the password",
  "members.failures": "wrong passwords since the last right one: more or less waiting",
  "members.failed_at": "as the count of wrong passwords",
  "devices.name": "what its owner calls it, shown to members alone",
  "passkeys.id": "named by the authenticator alone; another one lets nobody in",
  "passkeys.public_key": "another one lets nobody in",
  "passkeys.counter": "a count that is off refuses, or refuses a copy later",
  "passkeys.transports": "a hint to the browser",
  "passkeys.name": "what its owner calls it",
  "passkeys.used_at": "shown to its owner",
  "sessions.hash": "of a token that is in no journal; another one lets nobody in",
  "sessions.id": "names it in the list of sessions",
  "sessions.client": "what the browser calls itself",
  "sessions.seen_at": "a session that is unused ends sooner or later than it should, never after its last day",
  "sessions.ends_at": "the journal says when a session began, not when it ends",
  "sessions.ended_at": "the journal says whose session was ended, not which of several",
  "sessions.why": "a word for the person who comes back to it",
  "invitations.hash": "of a secret that is in no journal; another one lets nobody in",
  "invitations.id": "names it in the list of invitations",
  "invitations.ends_at": "the journal says to which role and when, not until when",
  "challenges.*": "questions that stand for minutes and are answered once",
  "nights.*": "derived, and replaced by the next night",
  "night_chunks.*": "derived, and gone when it is reckoned",
  "forecasts.*": "derived, and replaced by the next night",
  "attached.arrived":
    "that its writer sent the file is in no journal; told where no file is here or no entry opens it, borne where another's does",
  "pieces.data":
    "of a file on its way: with its last piece it is held against its hash, and begins anew when it is another",
  "migrations.name": "read by nobody: the number counts",
};
