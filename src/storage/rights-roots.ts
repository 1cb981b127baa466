/** Whose each root should be by the journal alone: the rules of scopes.ts once more, in memory, entry after entry. */
import { rootOf } from "../casebook/index.ts";
import type { Entry } from "../journal/index.ts";
import { everyone, parentOf, sharedKind } from "./scopes.ts";

/** Whose a root is, and the position from which on it is. */
export interface Owned {
  readonly member: string;
  readonly since: number;
}

export interface RootsRefold {
  /** What an entry says of its root, to be settled by `take`; null when nothing new. Entries must come in their order. */
  readonly tellingOf: (entry: Entry, position: number) => RootTold | null;
  /** `owner` is the member whose device wrote it; undefined where it is nobody's. */
  readonly take: (told: RootTold, owner: string | undefined) => void;
  readonly give: (member: string, root: string, since: number) => void;
  /** `ownerOf` is asked whose the devices are that wrote. All that was told must be settled. */
  readonly takeBack: (member: string, root: string, ownerOf: (device: string) => string | undefined) => void;
  /** The device that wrote about a root first. */
  readonly beginnerOf: (root: string) => string | undefined;
  /** Takes from every member what is not everyone's. */
  readonly leaveToEveryone: () => void;
  readonly scopes: Map<string, Owned[]>;
  readonly parents: Map<string, string[]>;
}

/** As much of an entry as decides whose its root is. */
export interface RootTold {
  readonly root: string;
  readonly device: string;
  readonly position: number;
  readonly begins: boolean;
  readonly isEveryones: boolean;
  readonly parent: string | null;
}

export function rootsRefold(programme: string): RootsRefold {
  /** By root the devices that wrote about it, in the order of their first entries. */
  const writers = new Map<string, string[]>();
  const scopes = new Map<string, Owned[]>();
  const parents = new Map<string, string[]>();
  const below = new Map<string, string[]>();
  const owns = (member: string, root: string) => scopes.get(root)?.some((each) => each.member === member) ?? false;

  const give: RootsRefold["give"] = (member, root, since) => {
    if (owns(member, root)) return;
    added(scopes, root, { member, since });
    for (const each of below.get(root) ?? []) give(member, each, since);
  };

  const takeBack: RootsRefold["takeBack"] = (member, root, ownerOf) => {
    if (!owns(member, root)) return;
    const others = (scopes.get(root) ?? []).filter((each) => each.member !== member);
    scopes.set(root, others);
    for (const each of below.get(root) ?? []) {
      const hangsOnHis = (parents.get(each) ?? []).some((parent) => owns(member, parent));
      const first = (writers.get(each) ?? []).find((device) => ownerOf(device) !== undefined);
      const isBegunByHim = first !== undefined && ownerOf(first) === member;
      if (!hangsOnHis && !isBegunByHim) takeBack(member, each, ownerOf);
    }
  };

  return {
    ...{ scopes, parents, give, takeBack },
    beginnerOf: (root) => writers.get(root)?.[0],
    leaveToEveryone() {
      for (const [root, owned] of scopes)
        scopes.set(
          root,
          owned.filter(({ member }) => member === everyone),
        );
    },
    tellingOf(entry, position) {
      const { about, kind, device } = entry.header;
      const root = rootOf(entry);
      const before = writers.get(root);
      if (!before?.includes(device)) added(writers, root, device);
      const [begins, isShared, parent] = [before === undefined, kind === sharedKind, parentOf({ kind, about })];
      if (!begins && !isShared && parent === null) return null;
      return { ...{ root, device, position, begins, parent }, isEveryones: isShared || root === programme };
    },
    take({ root, position, begins, isEveryones, parent }, owner) {
      if (isEveryones) give(everyone, root, position);
      if (begins && owner !== undefined && root !== programme) give(owner, root, position);
      if (parent === null) return;
      if (!parents.get(root)?.includes(parent)) {
        added(parents, root, parent);
        added(below, parent, root);
      }
      for (const { member } of [...(scopes.get(parent) ?? [])]) give(member, root, position);
    },
  };
}

function added<Each>(lists: Map<string, Each[]>, key: string, each: Each): void {
  const list = lists.get(key);
  if (list) list.push(each);
  else lists.set(key, [each]);
}
