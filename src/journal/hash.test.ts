import { createHash } from "node:crypto";
import fc from "fast-check";
import { validate, version } from "uuid";
import { expect, it } from "vitest";
import canonicalSamples from "../../tests/golden/rfc-8785-section-3-2.json" with { type: "json" };
import uuidSample from "../../tests/golden/rfc-9562-appendix-a-6.json" with { type: "json" };
import { bee } from "../../tests/journals/every-kind.ts";
import { writer } from "../../tests/journals/writer.ts";
import { DomainError } from "../units/index.ts";
import { canonicalJson, contentHash, type Entry, headerHash, newEntryId, newSalt } from "./index.ts";

it("[JN1] makes the id printed in RFC 9562, appendix A.6", () => {
  expect(newEntryId(uuidSample.milliseconds, Uint8Array.from(Buffer.from(uuidSample.random, "hex")))).toBe(
    uuidSample.id,
  );
});

it("[JN1] makes ids that another library takes for version 7, sorted by time", () => {
  const times = fc.integer({ min: 0, max: 2 ** 48 - 1 });
  const random = fc.uint8Array({ minLength: 16, maxLength: 16 });
  fc.assert(
    fc.property(times, times, random, random, (one, other, first, second) => {
      const [a, b] = [newEntryId(one, first), newEntryId(other, second)];
      expect([validate(a), version(a)]).toEqual([true, 7]);
      if (one !== other) expect(a < b).toBe(one < other);
    }),
    { seed: 9562, numRuns: 300 },
  );
});

it("[JN1] refuses a time that has no id, and too little chance", () => {
  expect(() => newEntryId(-1, new Uint8Array(16))).toThrow(DomainError);
  expect(() => newEntryId(2 ** 48, new Uint8Array(16))).toThrow(DomainError);
  expect(() => newEntryId(0, new Uint8Array(15))).toThrow(DomainError);
  expect(() => newSalt(new Uint8Array(8))).toThrow(DomainError);
});

it.each(canonicalSamples.samples)("[JN2] spells as RFC 8785 prints: $canonical", ({ input, canonical }) => {
  expect(canonicalJson(JSON.parse(input))).toBe(canonical);
});

it("[JN2] spells equal values alike, whatever the order of their members", () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      const reordered = JSON.parse(JSON.stringify(value), (_, member: unknown) =>
        typeof member === "object" && member !== null && !Array.isArray(member)
          ? Object.fromEntries(Object.entries(member).reverse())
          : member,
      ) as unknown;
      expect(canonicalJson(reordered)).toBe(canonicalJson(JSON.parse(JSON.stringify(value))));
    }),
    { seed: 8785, numRuns: 200 },
  );
});

it.each([Number.NaN, Number.POSITIVE_INFINITY, "half \ud800", undefined])(
  "[JN2] refuses what JSON cannot spell: %s",
  (value) => {
    expect(() => canonicalJson(value === undefined ? value : { value })).toThrow(DomainError);
  },
);

it("[JN3] hashes as another implementation of SHA-256 does", () => {
  const [entry] = writer().write(bee(1)) as [Entry];
  const salted = Buffer.concat([
    Buffer.from(entry.body?.salt ?? "", "hex"),
    Buffer.from(canonicalJson(entry.body?.data), "utf8"),
  ]);
  expect(entry.header.content).toBe(createHash("sha256").update(salted).digest("hex"));
  expect(headerHash(entry.header)).toBe(createHash("sha256").update(canonicalJson(entry.header), "utf8").digest("hex"));
});

it("[JN4] gives the same data another hash under another salt", () => {
  const data = { state: "present" };
  expect(contentHash({ salt: "0".repeat(32), data })).not.toBe(contentHash({ salt: `${"0".repeat(31)}1`, data }));
  expect(() => contentHash({ salt: "short", data })).toThrow(DomainError);
});
