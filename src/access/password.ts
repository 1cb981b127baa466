/** What a password must be, before it is ever stored. */
import { type Problem, problem } from "../units/index.ts";

/** Signs that a password must have at least; its make-up is free, and it is never asked to change. */
export const shortestPassword = 12;
/** Signs that are taken in whole. */
export const longestPassword = 256;

/** Words of this trade and tool that a password may not consist of, whatever digits and signs stand around them. */
const tradeWords =
  "skepsis apiary apiaries beekeeper beekeeping bees honey honeybee hive inspector keeper password passwort administrator programme mites varroa".split(
    " ",
  );

/**
 * Why a password is not taken; null when it is. Length first; then that it is not the name it belongs to, not one sign
 * or a run of neighbours over and over, and not made of the words of this trade alone.
 * @source OWASP ASVS 5.0.0, 6.1.2, 6.2.1 and 6.2.5: length from 8 (15 recommended), no rules of make-up, context words
 */
export function passwordTrouble(password: string, name: string): Problem | null {
  const signs = [...password].length;
  if (signs < shortestPassword || signs > longestPassword)
    return problem("password-length", "blocked", "password", {
      slots: { least: shortestPassword, most: longestPassword },
    });
  return isEasy(password, name) ? problem("password-easy", "blocked", "password") : null;
}

function isEasy(password: string, name: string): boolean {
  const plain = password.toLowerCase();
  const letters = plain.replaceAll(/[^\p{L}]/gu, "");
  const own = name
    .toLowerCase()
    .split(/\s+/)
    .filter((each) => each.length > 2);
  const rest = [...own, ...tradeWords].reduce((left, word) => left.replaceAll(word, ""), letters);
  if (letters.length > 0 && rest.length < 4 && rest.length < letters.length) return true;
  return new Set(plain).size < 5 || isRun(plain);
}

/** Each sign the neighbour of the one before it, such as abcdefghijkl or 987654321098. */
function isRun(text: string): boolean {
  const steps = [...text].slice(1).map((sign, index) => sign.charCodeAt(0) - text.charCodeAt(index));
  return steps.filter((step) => Math.abs(step) <= 1).length >= steps.length - 2;
}
