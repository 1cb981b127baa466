/** Opens the records of this device, shows them to the pages, and exchanges them in the background. */
import { type ReactNode, useCallback, useEffect, useMemo, useState, useSyncExternalStore } from "react";
import { mayEverAdd, notAddable } from "../../../access/index.ts";
import type { Entry } from "../../../journal/index.ts";
import {
  type DeviceFile,
  type DeviceStore,
  demonstration,
  fetchFile,
  openDeviceStore,
  recordingTrouble,
  StoreStopped,
} from "../../../storage/device.ts";
import type { Day, Problem } from "../../../units/index.ts";
import { onceWritten } from "../../model/index.ts";
import { useSession } from "../account/SessionProvider.tsx";
import { Answer } from "../parts/Answer.tsx";
import { words } from "../words.ts";
import { type CasebookAccess, CasebookContext, type Casebooks } from "./context.ts";
import { bringDemonstration, dayOfDemonstration, removeDemonstrationEverywhere } from "./demonstration.ts";
import { headsNote, headsWereNoted } from "./heads-note.ts";
import { useToday } from "./today.ts";
import { useCleared } from "./use-cleared.ts";
import { useExchange } from "./use-exchange.ts";

/** Until someone signs, entries say that nobody did. */
const unsigned = "not signed";
const key = "skepsis.programme";

const lastCasebook = (): Casebooks => {
  try {
    return sessionStorage.getItem(key) === "demonstration" ? "demonstration" : "own";
  } catch {
    return "own";
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

/** The programme whose records are shown, and the member whose they are where members sign in. */
interface Shown {
  readonly programme: string;
  readonly owner: string | null;
  readonly name: string | null;
}

function useStore({ programme, owner, name }: Shown): Opening {
  const [opened, setOpened] = useState<Opening>(notYet);
  useEffect(() => {
    let here = true;
    let store: DeviceStore | null = null;
    setOpened(notYet);
    const open = async () => {
      const ready = await openDeviceStore({
        programme,
        author: name ?? unsigned,
        ...(owner === null ? {} : { owner }),
      });
      store = ready;
      if (programme === demonstration) await bringDemonstration(ready);
      const heldDay = programme === demonstration ? await dayOfDemonstration(ready) : null;
      if (here) setOpened({ store: ready, failed: false, heldDay });
      else await ready.close();
    };
    open().catch(() => here && setOpened({ ...notYet, failed: true }));
    return () => {
      here = false;
      void store?.close();
    };
  }, [programme, owner, name]);
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
  const [which, setWhich] = useState<Casebooks>(lastCasebook);
  const { member } = useSession();
  const isDemonstration = which === "demonstration";
  const programme = isDemonstration ? demonstration : (member?.programme ?? "main");
  const owner = isDemonstration ? null : (member?.id ?? null);
  const { store, failed, heldDay } = useStore({
    programme,
    owner,
    name: isDemonstration ? null : (member?.name ?? null),
  });
  const openCasebook = useCallback((next: Casebooks) => {
    try {
      sessionStorage.setItem(key, next);
    } catch {
      // the programme is then forgotten with the tab
    }
    setWhich(next);
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
    <Opened
      key={`${programme} ${owner}`}
      store={store}
      isDemonstration={isDemonstration}
      heldDay={heldDay}
      openCasebook={openCasebook}
    >
      {children}
    </Opened>
  );
}

interface OpenedProps {
  readonly store: DeviceStore;
  readonly isDemonstration: boolean;
  readonly heldDay: Day | null;
  readonly openCasebook: (which: Casebooks) => void;
  readonly children: ReactNode;
}

function Opened({ store, isDemonstration, heldDay, openCasebook, children }: OpenedProps) {
  const { programme } = store;
  const session = useSession();
  const member = isDemonstration ? null : session.member;
  const snapshot = useSyncExternalStore(store.subscribe, store.snapshot);
  const calendarDay = useToday();
  const today = heldDay ?? calendarDay;
  const persisted = usePersistence();
  const { refused, troubles, reached, needsSignIn, soon } = useExchange(store, isDemonstration);
  const [author, setAuthor] = useState(store.author());
  const [notMine, setNotMine] = useState<Problem | null>(null);
  const [notKept, setNotKept] = useState<Problem | null>(null);
  const cleared = useCleared(store, snapshot, member?.id ?? null);
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
  const [once] = useState(() => onceWritten<readonly Entry[], readonly DeviceFile[]>(() => performance.now()));
  const file = useCallback((sha256: string) => store.file(sha256), [store]);
  const fetched = useCallback(
    async (sha256: string) => {
      const found = await fetchFile({ fetch: (...request) => fetch(...request), base: "/api", store }, sha256);
      if (found) await store.keepFile(found).catch(() => {}); // shown all the same where there is no room
      return found;
    },
    [store],
  );
  const access = useMemo<CasebookAccess>(
    () => ({
      programme,
      isDemonstration,
      casebook: snapshot.casebook,
      keeping: {
        savedAt: snapshot.lastSafeAt,
        unsent: snapshot.unsentCount,
        unsentFiles: snapshot.unsentFiles,
        refused,
        troubles: cleared ? [cleared, ...troubles] : troubles,
        reached,
        notKept,
        persisted,
        needsSignIn,
        stopped: snapshot.stopped ?? notMine,
      },
      today,
      author: author === unsigned ? "" : author,
      signAs: async (name) => {
        await store.signAs(name);
        setAuthor(name);
      },
      record: once(snapshot.casebook, async (drafts, files = []) => {
        const foreign = member ? drafts.find(({ kind }) => !mayEverAdd(member.role, kind)) : undefined;
        if (member && foreign) {
          // Written here it would hold up everything after it: the service takes a chain in without a gap.
          const trouble = notAddable(member.role, foreign.kind);
          setNotMine(trouble);
          window.scrollTo(0, 0); // where it is told
          throw new StoreStopped(trouble);
        }
        const entries = await kept(async () =>
          store.record([...drafts, ...(await headsNote(store, calendarDay))], files),
        );
        headsWereNoted(programme, calendarDay);
        soon();
        return entries.slice(0, drafts.length);
      }),
      file,
      fetchFile: fetched,
      may: (kind) => member === null || mayEverAdd(member.role, kind),
      entries: () => store.all(),
      takeCopy: async (entries, files = []) => {
        const reply = await kept(() => store.push(entries));
        const added = files.length === 0 ? 0 : await kept(() => store.takeFiles(files));
        soon();
        return { ...reply, files: added };
      },
      device: store.device(),
      heads: () => store.heads(),
      openCasebook,
      removeDemonstration: async () => {
        await removeDemonstrationEverywhere(store);
        openCasebook("own");
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
      needsSignIn,
      today,
      calendarDay,
      author,
      store,
      soon,
      openCasebook,
      isDemonstration,
      member,
      notMine,
      file,
      fetched,
      once,
    ],
  );
  return <CasebookContext value={access}>{children}</CasebookContext>;
}
