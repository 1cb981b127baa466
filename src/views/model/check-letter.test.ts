/** The check letter tells every single slip it promises to tell. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { checkLetter, readCode, safeLetters, withCheckLetter } from "./check-letter.ts";

const letter = fc.constantFrom(...safeLetters);
const digit = fc.constantFrom(..."0123456789");
const code = fc
  .tuple(letter, letter, digit, digit, digit, digit, digit, digit)
  .map(([a, b, c, d, ...serial]) => withCheckLetter(`${a}${b}${c}${d}-${serial.join("")}`));

it("uses 23 letters, none of which is read as a digit", () => {
  expect(new Set(safeLetters).size).toBe(23);
  expect(safeLetters).not.toMatch(/[IOQ]/);
});

it("is the weighted sum modulo 23, worked by hand for TV26-0147", () => {
  // T 16, V 18: 1·16 + 2·18 + 3·2 + 4·6 + 5·0 + 6·1 + 7·4 + 8·7 = 172 = 7·23 + 11, and letter 11 counted from A is M
  expect(checkLetter("TV26-0147")).toBe(safeLetters[172 % 23]);
});

it("refuses every code with one wrong character", () => {
  fc.assert(
    fc.property(code, fc.nat(), letter, digit, (right, where, otherLetter, otherDigit) => {
      const places = [...right]
        .map((character, index) => ({ character, index }))
        .filter(({ character }) => character !== "-");
      const { character, index } = places[where % places.length] ?? { character: "", index: 0 };
      const other = /\d/.test(character) ? otherDigit : otherLetter;
      fc.pre(other !== character);
      expect(readCode(right.slice(0, index) + other + right.slice(index + 1)).ok).toBe(false);
    }),
    { seed: 1921, numRuns: 1000 },
  );
});

it("refuses every code in which two neighbours changed places", () => {
  fc.assert(
    fc.property(code, fc.nat(), (right, where) => {
      const packed = right.replaceAll("-", "");
      const index = where % (packed.length - 1);
      fc.pre(packed[index] !== packed[index + 1]);
      const swapped = `${packed.slice(0, index)}${packed[index + 1]}${packed[index]}${packed.slice(index + 2)}`;
      expect(readCode(swapped).ok).toBe(false);
    }),
    { seed: 1922, numRuns: 1000 },
  );
});

it("reads a right code as typed by a tired hand", () => {
  fc.assert(
    fc.property(code, (right) => {
      const typed = right.toLowerCase().replaceAll("-", " ").replace(/0/g, "o");
      expect(readCode(typed)).toMatchObject({ ok: true, value: right });
    }),
    { seed: 1923, numRuns: 200 },
  );
});

it("says which of the two is wrong: the shape or the letter", () => {
  expect(readCode("hive 7")).toMatchObject({ ok: false, problems: [{ code: "code-shape" }] });
  expect(readCode("TV26-0147-A")).toMatchObject({ ok: false, problems: [{ code: "code-check-letter" }] });
});
