/** What the address of a PostgreSQL says: how it may be shown, and whether others on the way could read along. */

/** The address without password and options; null when it is none, or when a password may have slipped beside its place. */
export function withoutPassword(address: string): string | null {
  if (!/^postgres(ql)?:\/\//.test(address) || !URL.canParse(address)) return null;
  const url = new URL(address);
  if (url.hash !== "" || `${url.pathname}${url.search}`.includes("@") || !isDecodable(url)) return null;
  const user = url.username === "" ? "" : `${url.username}@`;
  return `postgres://${user}${url.host}${url.pathname}`;
}

/** Whether each part that is written as %XX is some text: the driver takes them apart. */
function isDecodable({ username, password, hostname, pathname }: URL): boolean {
  try {
    for (const part of [username, password, hostname, pathname]) decodeURIComponent(part);
    return true;
  } catch {
    return false;
  }
}

/** How the way to the database is kept from others. */
export type DatabaseWay =
  /** It ends on this machine, at a loopback address or a socket of the system. */
  | "this-machine"
  /** By TLS alone, to a server whose certificate holds its name. */
  | "tls"
  /** Neither: without TLS, or without looking whose certificate it is. */
  | "open";

/**
 * The way that an address asks for. Only `sslmode=verify-full` counts as TLS: what the driver makes of the weaker modes
 * changes from version to version. An address without a host is open: the environment may then name any.
 * The address must be one that `withoutPassword` shows.
 */
export function wayTo(address: string): DatabaseWay {
  const url = new URL(address);
  const host = url.searchParams.getAll("host").at(-1) || decodeURIComponent(url.hostname); // once, as the driver
  if (host.startsWith("/") || /^(localhost|\[?::1\]?|127(\.\d{1,3}){3})$/i.test(host)) return "this-machine";
  return url.searchParams.getAll("sslmode").at(-1) === "verify-full" ? "tls" : "open";
}
