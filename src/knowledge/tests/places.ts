/** Where the specimen of a test can come from. */
import { commonPractice } from "../cite.ts";
import type { Places } from "./test-fact.ts";

/** Brood is in comb. It strays into a super and to the edge of the nest, so those two are not ruled out. */
export const inComb: Places = {
  from: ["S", "E", "B"],
  why: "it is made on comb, and there is none at the entrance or among the bees found dead",
  citations: [commonPractice("brood tests are made on comb, no source")],
};
