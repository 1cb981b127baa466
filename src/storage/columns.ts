/** Every column of every table by its name: what is copied whole, or looked for, goes by this list. */
import type { Tables } from "./tables.ts";

export const columnsOf: { readonly [Table in keyof Tables]: readonly (keyof Tables[Table] & string)[] } = {
  entries: ["position", "id", "device", "seq", "root", "kind", "hash", "header", "body"],
  heads: ["device", "seq", "hash"],
  erased: ["id", "root"],
  quarantine: ["hash", "entry"],
  counters: ["programme", "position"],
  migrations: ["number", "name"],
  states: ["root", "fold_version", "position", "part"],
  attached: ["entry", "root", "sha256", "bytes", "media_type", "arrived"],
  files: ["sha256", "bytes"],
  chunks: ["sha256", "start", "data"],
  uploads: ["sha256", "sender", "bytes", "held"],
  pieces: ["sha256", "sender", "start", "data"],
  members: [
    ...(["id", "name", "sign_in", "role", "password", "password_ends_at", "places"] as const),
    ...(["failures", "failed_at", "admitted_at", "ended_at"] as const),
  ],
  sessions: [
    ...(["hash", "id", "member", "device", "client", "began_at", "seen_at", "ends_at", "ended_at", "why"] as const),
  ],
  invitations: ["hash", "id", "role", "by", "made_at", "ends_at", "used_at", "member"],
  devices: ["device", "member", "name", "registered_at", "lost_at"],
  passkeys: ["id", "member", "public_key", "counter", "transports", "name", "made_at", "used_at"],
  challenges: ["hash", "purpose", "member", "ends_at"],
  scopes: ["member", "root", "since"],
  parents: ["root", "parent"],
  nights: ["night", "stood_at", "position"],
  night_chunks: ["night", "number", "text"],
  forecasts: ["root", "colony", "night", "stood_at", "position", "text"],
};
