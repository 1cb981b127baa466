/** A service without a network: answers the two exchange requests from a store, as JSON that went over a wire. */
import type { Entry } from "../../src/journal/index.ts";
import type { JournalStore } from "../../src/storage/index.ts";

export interface ServiceSettings {
  readonly store: JournalStore;
  /** Called before each answer: may throw as a lost connection does. */
  readonly before?: (request: { readonly method: string; readonly url: string }) => void;
  /** Called after the store has worked and before the answer leaves: a connection lost here loses the answer alone. */
  readonly after?: (request: { readonly method: string; readonly url: string }) => void;
  readonly date?: string;
}

export function serviceFetch({ store, before, after, date }: ServiceSettings): typeof fetch {
  return async (input, init) => {
    const url = String(input);
    const method = init?.method ?? "GET";
    before?.({ method, url });
    const query = new URL(url, "http://localhost").searchParams;
    const answer =
      method === "POST"
        ? await store.push((JSON.parse(String(init?.body)) as { entries: Entry[] }).entries)
        : await store.pull(Number(query.get("cursor")), Number(query.get("limit")));
    after?.({ method, url });
    return new Response(JSON.stringify(answer), { headers: date ? { date } : {} });
  };
}
