/** A page that is fetched when it is needed, or before: once here it shows at once, without a word of waiting. */
import { type ComponentType, lazy, useState } from "react";

type Load<Props> = () => Promise<{ readonly default: ComponentType<Props> }>;

/** A page, here or on its way. */
export interface Lazily<Props> {
  /** The page itself once it is here. */
  readonly here: () => ComponentType<Props> | null;
  /** Waits for the page, inside a Suspense. */
  readonly Waiting: ComponentType<Props>;
  /** Fetches the page now. */
  readonly fetch: () => Promise<void>;
}

export function lazily<Props extends object>(load: Load<Props>): Lazily<Props> {
  let page: ComponentType<Props> | null = null;
  const fetched = async () => {
    const loaded = await load();
    page = loaded.default;
    return loaded;
  };
  return {
    here: () => page,
    Waiting: lazy(fetched) as unknown as ComponentType<Props>,
    fetch: async () => {
      await fetched();
    },
  };
}

/** Shows a page; it stays the same component while it is shown, so that nothing typed is lost when it arrives. */
export function Shown<Props extends object>({ page, props }: { readonly page: Lazily<Props>; readonly props: Props }) {
  const [Page] = useState<ComponentType<Props>>(() => page.here() ?? page.Waiting);
  return <Page {...props} />;
}

/** Fetches pages one after another while nothing else is to do. */
export function fetchWhenIdle(pages: readonly { readonly fetch: () => Promise<void> }[]): void {
  const idle = window.requestIdleCallback ?? ((work: () => void) => setTimeout(work, 200));
  const [next, ...rest] = pages;
  if (next)
    idle(
      () =>
        void next
          .fetch()
          .then(() => fetchWhenIdle(rest))
          .catch(() => {}),
    );
}
