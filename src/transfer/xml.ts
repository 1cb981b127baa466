/** The little of XML that a spreadsheet's parts need: elements by name, attributes, texts. No documents of other makers. */

/** An element as it stands: its opening, and what is between opening and end. */
export interface Element {
  readonly head: string;
  readonly inside: string;
}

/**
 * All elements of a name, in order, with or without a prefix; one inside another of the same name is not looked for.
 * Reads each sign once, whatever is in it.
 *
 * @example
 * elementsOf('<a r="1"/><x:a>b</x:a>', "a").map((each) => each.inside)  // → ["","b"]
 */
export function elementsOf(xml: string, name: string): readonly Element[] {
  const found: Element[] = [];
  const opening = new RegExp(`<((?:\\w+:)?${name})(?=[\\s/>])([^<>]*)>`, "g");
  for (let met = opening.exec(xml); met; met = opening.exec(xml)) {
    const [whole, named = name, head = ""] = met;
    if (whole.endsWith("/>")) {
      found.push({ head: head.slice(0, -1), inside: "" });
      continue;
    }
    const end = xml.indexOf(`</${named}>`, opening.lastIndex);
    if (end < 0) break;
    found.push({ head, inside: xml.slice(opening.lastIndex, end) });
    opening.lastIndex = end + named.length + 3;
  }
  return found;
}

/** The attributes of an opening, by name. */
export const attributesOf = (head: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    [...head.matchAll(/([\w:]+)="([^"]*)"/g)].map(([, name = "", value = ""]) => [name, plain(value)]),
  );

/** The texts (`t`) in an element, joined. */
export const textIn = (xml: string): string =>
  elementsOf(xml, "t")
    .map(({ inside }) => plain(inside))
    .join("");

const named: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

/** Without escapes: those of XML, and `_x000D_` of spreadsheets. */
function plain(text: string): string {
  return text
    .replace(/&(?:#(\d{1,7})|#x([0-9a-f]{1,6})|(\w{2,4}));/gi, (whole, decimal, hex, name: string | undefined) => {
      if (name !== undefined) return named[name] ?? whole;
      const code = Number.parseInt(decimal ?? hex, decimal === undefined ? 16 : 10);
      return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : "\uFFFD";
    })
    .replace(/_x([0-9A-F]{4})_/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .toWellFormed();
}
