/** When the exchange has its rounds: one soon after something was written, else one after each rest, never two at once. */

/** Runs work later; gives back what calls it off. The page's clock, or a test's. */
export type Later = (work: () => void, milliseconds: number) => () => void;

export interface Rounds {
  /** A round after so many milliseconds, in place of the one that was to come. */
  readonly within: (milliseconds: number) => void;
  /** No further round. */
  readonly stop: () => void;
}

/**
 * Rounds of `once`, each begun by the one before it. One asked for while another runs follows at once, else a cut net
 * would be noticed a minute late.
 */
export function rounds(
  once: () => Promise<void>,
  { later, restMilliseconds }: { readonly later: Later; readonly restMilliseconds: number },
): Rounds {
  let here = true;
  let running = false;
  let isAskedAgain = false;
  let callOff: (() => void) | null = null;
  const within = (milliseconds: number) => {
    callOff?.();
    callOff = here ? later(() => void round(), milliseconds) : null;
  };
  const round = async () => {
    callOff = null;
    if (running) {
      isAskedAgain = true;
      return;
    }
    running = true;
    try {
      await once();
    } finally {
      running = false;
      // A round set meanwhile stands: a second clock beside it would begin a second row of rounds.
      if (isAskedAgain) within(0);
      else if (callOff === null) within(restMilliseconds);
      isAskedAgain = false;
    }
  };
  return {
    within,
    stop: () => {
      here = false;
      callOff?.();
    },
  };
}
