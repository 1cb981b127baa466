/** What the page and the reckoner of methods say to each other. */
import type { Reply, Verb } from "../../../reasoning/index.ts";

export type MethodMeta = Pick<Verb, "summary" | "assumptions" | "source" | "example" | "inputShape">;

export type MethodQuestion =
  | { readonly kind: "describe"; readonly verb: string }
  | { readonly kind: "ask"; readonly verb: string; readonly number: number; readonly question: object };

export type MethodAnswer =
  | { readonly kind: "described"; readonly verb: string; readonly method: MethodMeta }
  | { readonly kind: "progress"; readonly number: number; readonly share: number }
  | { readonly kind: "answered"; readonly number: number; readonly reply: Reply };
