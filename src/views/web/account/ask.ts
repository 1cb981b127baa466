/** Requests to the book of members: the answer, or the sentences that the service gives for what stands in the way. */

export type Reply<T> =
  | { readonly ok: true; readonly value: T }
  /** The field is what the first sentence is about; null or left out: the request as a whole. */
  | { readonly ok: false; readonly says: readonly string[]; readonly field?: string | null };

interface Trouble {
  readonly problems?: readonly { readonly message: string; readonly field: string | null }[];
}

export async function ask<T>(
  method: "GET" | "POST" | "DELETE",
  address: string,
  unreached: string,
  body?: object,
): Promise<Reply<T>> {
  try {
    const response = await fetch(address, {
      method,
      cache: "no-store",
      ...(body === undefined ? {} : { body: JSON.stringify(body), headers: { "content-type": "application/json" } }),
    });
    if (response.status === 204) return { ok: true, value: undefined as T };
    const said = (await response.json()) as unknown;
    if (response.ok) return { ok: true, value: said as T };
    const { problems = [] } = said as Trouble;
    const says = problems.map(({ message }) => message.replace(/^[a-zA-Z.]+: /, ""));
    return { ok: false, says: says.length > 0 ? says : [unreached], field: problems[0]?.field ?? null };
  } catch {
    return { ok: false, says: [unreached] };
  }
}
