import fc from "fast-check";
import { expect, it } from "vitest";
import { textHash } from "../journal/index.ts";
import { nativeDigest } from "./native-digest.ts";

it("gives what the journal's own gives, whatever the text", () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 300, unit: "grapheme" }), (text) => {
      expect(textHash(text, nativeDigest)).toBe(textHash(text));
    }),
    { seed: 1921, numRuns: 200 },
  );
});
