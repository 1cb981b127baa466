/** The programmes of the service: each has a store of its own, opened when it is first asked for. */
import { demonstration, inFolder, onlyDemonstration, type Records, type ServerStore } from "../../storage/server.ts";
import { answered, blocked, type Result } from "../../units/index.ts";

export interface Programmes {
  /** The store of a programme, made when there is none yet. */
  readonly open: (programme: string) => Promise<ServerStore>;
  /** The store of a programme; null when nothing was ever kept there. */
  readonly find: (programme: string) => Promise<ServerStore | null>;
  /** Removes the demonstration; blocked for any other programme. */
  readonly remove: (programme: string) => Promise<Result<null>>;
  readonly close: () => Promise<void>;
}

/** The programmes of a data folder. */
export const openProgrammes = (dataFolder: string): Programmes => programmesOf(inFolder(dataFolder));

/** The programmes of these records, which are closed with them. */
export function programmesOf(records: Records): Programmes {
  const opened = new Map<string, Promise<ServerStore>>();
  const open = (programme: string): Promise<ServerStore> => {
    const known = opened.get(programme);
    if (known) return known;
    const store = records.open(programme);
    opened.set(programme, store);
    // Records that could not be opened may be mended while the service runs.
    store.catch(() => opened.delete(programme));
    return store;
  };
  const find = async (programme: string) =>
    opened.has(programme) || (await records.has(programme)) ? open(programme) : null;
  return {
    open,
    find,
    async remove(programme) {
      if (programme !== demonstration) return blocked(onlyDemonstration(programme));
      const store = await find(programme);
      if (!store) return answered(null);
      const removed = await store.removeDemonstration();
      opened.delete(programme);
      return removed;
    },
    async close() {
      const stores = await Promise.allSettled(opened.values());
      opened.clear();
      await Promise.all(stores.map((each) => (each.status === "fulfilled" ? each.value.close() : null)));
      await records.close();
    },
  };
}
