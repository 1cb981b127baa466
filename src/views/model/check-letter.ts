/**
 * The last letter of a specimen code, which tells a mistyped or swapped character.
 *
 * @module views/model
 */
import { answered, blocked, ensure, problem, type Result } from "../../units/index.ts";

/** Letters that are read from a wet vial without doubt: no I, O or Q, which look like 1 and 0. 23 of them, a prime. */
export const safeLetters = "ABCDEFGHJKLMNPRSTUVWXYZ";

const shape = /^([A-Z]{2})(\d{2})-(\d{4,6})-([A-Z])$/;
const bodyShape = /^([A-Z]{2})(\d{2})-(\d{4,6})$/;

const amountOf = (character: string): number =>
  character >= "0" && character <= "9" ? Number(character) : safeLetters.indexOf(character);

/**
 * The check letter of the body of a code, two letters, two digits of the year, a dash and four to six digits.
 *
 * Model: sum of (place × value) modulo 23, places from 1, letters 0 to 22, digits 0 to 9. 23 is a prime and there are
 * fewer than 23 places, so one wrong letter or digit, and any two of one kind that changed places, always give another
 * letter. A letter where a digit belongs breaks the shape. Two errors at once go unseen about once in 23.
 *
 * @throws DomainError when the body has another shape or holds I, O or Q
 * @source weighted modular checks, as in ISO 7064; the modulus and alphabet are this project's own
 * @example
 * checkLetter("TV26-0147")  // → "M"
 */
export function checkLetter(body: string): string {
  ensure(bodyShape.test(body), "body", body, "two letters, two digits, a dash and four to six digits");
  const values = [...body.replace("-", "")].map(amountOf);
  ensure(!values.includes(-1), "body", body, "without I, O and Q");
  const sum = values.reduce((total, value, index) => total + (index + 1) * value, 0);
  return safeLetters[sum % 23] ?? "";
}

/**
 * A code with its check letter.
 * @throws DomainError as `checkLetter`
 * @example
 * withCheckLetter("TV26-0147")  // → "TV26-0147-M"
 */
export const withCheckLetter = (body: string): string => `${body}-${checkLetter(body)}`;

/**
 * The code someone typed, tidied: small letters raised, blanks and missing dashes mended, O and Q read as 0 and I as 1
 * where a digit belongs. Blocked with `code-shape` or `code-check-letter` when it cannot be a code.
 * @example
 * readCode("tv26 0147 m")  // → {"ok":true,"value":"TV26-0147-M","problems":[]}
 */
export function readCode(typed: string): Result<string> {
  const packed = typed.toUpperCase().replace(/[\s-]/g, "");
  const digits = (text: string) => text.replace(/[OQ]/g, "0").replace(/I/g, "1");
  const year = digits(packed.slice(2, 4));
  const serial = digits(packed.slice(4, -1));
  const code = `${packed.slice(0, 2)}${year}-${serial}-${packed.slice(-1)}`;
  const parts = shape.exec(code);
  const letters = `${parts?.[1] ?? ""}${parts?.[4] ?? ""}`;
  if (!parts || [...letters].some((letter) => !safeLetters.includes(letter)))
    return blocked(
      problem("code-shape", "blocked", "code", {
        given: typed,
        expected: "a code such as TV26-0147-M",
        slots: { typed },
      }),
    );
  const body = code.slice(0, -2);
  if (checkLetter(body) !== parts[4])
    return blocked(
      problem("code-check-letter", "blocked", "code", {
        given: typed,
        expected: "a code whose last letter fits",
        slots: { typed },
      }),
    );
  return answered(code);
}
