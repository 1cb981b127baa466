/** The programmes of a data folder: each has a file of its own, opened when it is first asked for. */
import { existsSync, mkdirSync } from "node:fs";
import path from "node:path";
import {
  demonstration,
  onlyDemonstration,
  openServerStore,
  removeDemonstration,
  type ServerStore,
} from "../../storage/server.ts";
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

const programmeFile = (dataFolder: string, programme: string): string => path.join(dataFolder, `${programme}.sqlite`);

export function openProgrammes(dataFolder: string): Programmes {
  const opened = new Map<string, Promise<ServerStore>>();
  const open = (programme: string): Promise<ServerStore> => {
    const known = opened.get(programme);
    if (known) return known;
    mkdirSync(dataFolder, { recursive: true, mode: 0o700 }); // for this account alone
    const store = openServerStore({ file: programmeFile(dataFolder, programme), programme });
    opened.set(programme, store);
    // A file that could not be opened may be mended while the service runs.
    store.catch(() => opened.delete(programme));
    return store;
  };
  const find = async (programme: string) =>
    opened.has(programme) || existsSync(programmeFile(dataFolder, programme)) ? open(programme) : null;
  return {
    open,
    find,
    async remove(programme) {
      if (programme !== demonstration) return blocked(onlyDemonstration(programme));
      const store = await find(programme);
      opened.delete(programme);
      return store ? removeDemonstration(store) : answered(null);
    },
    async close() {
      const stores = await Promise.allSettled(opened.values());
      opened.clear();
      await Promise.all(stores.map((each) => (each.status === "fulfilled" ? each.value.close() : null)));
    },
  };
}
