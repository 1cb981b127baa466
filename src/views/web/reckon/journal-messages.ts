/** What a page and the worker that checks journals say to each other. */
import type { Entry } from "../../../journal/index.ts";
import type { Result } from "../../../units/index.ts";
import type { ChainCheck, CopyCheck } from "../../model/index.ts";

export type JournalQuestion =
  | {
      readonly kind: "here";
      readonly entries: readonly Entry[];
      /** This device, when its member is given only a part of the records; null when all are. */
      readonly onlyWhole: string | null;
    }
  | { readonly kind: "copy"; readonly text: string; readonly entries: readonly Entry[]; readonly programme: string };

export type JournalAnswer =
  | { readonly kind: "here"; readonly check: ChainCheck }
  | { readonly kind: "copy"; readonly copy: Result<CopyCheck> };
