/** Short ways to write a citation, one for each mark. */
import type { Citation } from "./fact.ts";
import type { SourceKey } from "./sources.ts";

/** Read in the cited text. */
export const seen = (source: SourceKey, at: string): Citation<"seen"> => ({ source, at, read: "seen" });

/** Recalled, not read again; the work is named where it is remembered. */
export const recalled = (at: string, source: SourceKey | null = null): Citation<"memory"> => ({
  source,
  at,
  read: "memory",
});

/** Lore of the trade without a study. */
export const commonPractice = (at: string, source: SourceKey | null = null): Citation<"common-practice"> => ({
  source,
  at,
  read: "common-practice",
});

/** An expert's estimate. */
export const judged = (at: string): Citation<"judgement"> => ({ source: null, at, read: "judgement" });

/** Arithmetic from seen inputs. */
export const computed = (at: string, source: SourceKey | null = null): Citation<"computed"> => ({
  source,
  at,
  read: "computed",
});
