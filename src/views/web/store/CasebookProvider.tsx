/** Opens the records of this device, shows them to the pages, and exchanges them in the background. */
import { type ReactNode, useCallback, useEffect, useMemo, useState, useSyncExternalStore } from "react";
import { type DeviceStore, openDeviceStore, recordingTrouble } from "../../../storage/device.ts";
import type { Day, Problem } from "../../../units/index.ts";
import { Answer } from "../parts/Answer.tsx";
import { words } from "../words.ts";
import { type CasebookAccess, CasebookContext, type Programme } from "./context.ts";
import { bringDemonstration, dayOfDemonstration, removeDemonstrationEverywhere } from "./demonstration.ts";
import { headsNote, headsWereNoted } from "./heads-note.ts";
import { useToday } from "./today.ts";
import { useCleared } from "./use-cleared.ts";
import { useExchange } from "./use-exchange.ts";

/** Until someone signs, entries say that nobody did. */
const unsigned = "not signed";
const key = "skepsis.programme";

const lastProgramme = (): Programme => {
  try {
    return sessionStorage.getItem(key) === "demonstration" ? "demonstration" : "main";
  } catch {
    return "main";
  }
};

/** The store of a programme, opened once for the whole page. */
interface Opening {
  readonly store: DeviceStore | null;
  readonly failed: boolean;
  /** The day that stands still in the demonstration; null where today is today. */
  readonly heldDay: Day | null;
}
const notYet: Opening = { store: null, failed: false, heldDay: null };

function useStore(programme: Programme): Opening {
  const [opened, setOpened] = useState<Opening>(notYet);
  useEffect(() => {
    let here = true;
    let store: DeviceStore | null = null;
    setOpened(notYet);
    const open = async () => {
      const ready = await openDeviceStore({ programme, author: unsigned });
      store = ready;
      if (programme === "demonstration") await bringDemonstration(ready);
      const heldDay = programme === "demonstration" ? await dayOfDemonstration(ready) : null;
      if (here) setOpened({ store: ready, failed: false, heldDay });
      else await ready.close();
    };
    open().catch(() => here && setOpened({ ...notYet, failed: true }));
    return () => {
      here = false;
      void store?.close();
    };
  }, [programme]);
  return opened;
}

/** Asks the browser once to keep what is stored; the answer is shown, not hidden. */
function usePersistence(): boolean | null {
  const [persisted, setPersisted] = useState<boolean | null>(null);
  useEffect(() => {
    if (!navigator.storage?.persist) return;
    void navigator.storage
      .persisted()
      .then((already) => already || navigator.storage.persist())
      .then(setPersisted, () => setPersisted(false));
  }, []);
  return persisted;
}

export function CasebookProvider({ children }: { readonly children: ReactNode }) {
  const [programme, setProgramme] = useState<Programme>(lastProgramme);
  const { store, failed, heldDay } = useStore(programme);
  const openProgramme = useCallback((next: Programme) => {
    try {
      sessionStorage.setItem(key, next);
    } catch {
      // the programme is then forgotten with the tab
    }
    setProgramme(next);
  }, []);
  if (failed)
    return (
      <main className="plain" role="alert">
        <Answer text={words.shell.noStore} under={words.shell.noStoreDetail} />
        <p>
          <button type="button" className="press" onClick={() => location.reload()}>
            {words.shell.again}
          </button>
        </p>
      </main>
    );
  // The programme of the store, not of the choice: between two programmes there is a moment without a store.
  if (!store || store.programme !== programme) return <p className="plain busy">{words.shell.openingRecords}</p>;
  return (
    <Opened key={programme} store={store} programme={programme} heldDay={heldDay} openProgramme={openProgramme}>
      {children}
    </Opened>
  );
}

interface OpenedProps {
  readonly store: DeviceStore;
  readonly programme: Programme;
  readonly heldDay: Day | null;
  readonly openProgramme: (programme: Programme) => void;
  readonly children: ReactNode;
}

function Opened({ store, programme, heldDay, openProgramme, children }: OpenedProps) {
  const snapshot = useSyncExternalStore(store.subscribe, store.snapshot);
  const calendarDay = useToday();
  const today = heldDay ?? calendarDay;
  const persisted = usePersistence();
  const { refused, troubles, reached, soon } = useExchange(store);
  const [author, setAuthor] = useState(store.author());
  const [notKept, setNotKept] = useState<Problem | null>(null);
  const cleared = useCleared(store, snapshot);
  /** Writing that says so when it fails, wherever on the page it was asked for. */
  const kept = useCallback(async <T,>(write: () => Promise<T>): Promise<T> => {
    try {
      const written = await write();
      setNotKept(null);
      return written;
    } catch (trouble) {
      setNotKept(recordingTrouble(trouble));
      throw trouble;
    }
  }, []);
  const access = useMemo<CasebookAccess>(
    () => ({
      programme,
      casebook: snapshot.casebook,
      keeping: {
        savedAt: snapshot.lastSafeAt,
        unsent: snapshot.unsentCount,
        refused,
        troubles: cleared ? [cleared, ...troubles] : troubles,
        reached,
        notKept,
        persisted,
        stopped: snapshot.stopped,
      },
      today,
      author: author === unsigned ? "" : author,
      signAs: async (name) => {
        await store.signAs(name);
        setAuthor(name);
      },
      record: async (drafts) => {
        const entries = await kept(async () => store.record([...drafts, ...(await headsNote(store, calendarDay))]));
        headsWereNoted(programme, calendarDay);
        soon();
        return entries.slice(0, drafts.length);
      },
      entries: () => store.all(),
      takeCopy: async (entries) => {
        const reply = await kept(() => store.push(entries));
        soon();
        return reply;
      },
      device: store.device(),
      heads: () => store.heads(),
      openProgramme,
      removeDemonstration: async () => {
        await removeDemonstrationEverywhere(store);
        openProgramme("main");
      },
    }),
    [
      programme,
      snapshot,
      refused,
      troubles,
      reached,
      notKept,
      cleared,
      kept,
      persisted,
      today,
      calendarDay,
      author,
      store,
      soon,
      openProgramme,
    ],
  );
  return <CasebookContext value={access}>{children}</CasebookContext>;
}
