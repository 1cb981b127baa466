/** Text that is safe to print: every value put into a piece of HTML is escaped unless it is HTML itself. */

export interface Html {
  readonly html: string;
}

type Slot = string | number | Html | null | false | readonly (string | Html)[];

const escaped = (text: string): string =>
  text.replace(
    /[&<>"']/g,
    (sign) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" })[sign] ?? sign,
  );

function render(slot: Slot): string {
  if (slot === null || slot === false) return "";
  if (typeof slot === "string") return escaped(slot);
  if (typeof slot === "number") return String(slot);
  if (Array.isArray(slot)) return slot.map(render).join("");
  return (slot as Html).html;
}

/** Builds HTML from a template; slots are escaped, lists are joined, null and false vanish. */
export function html(parts: TemplateStringsArray, ...slots: readonly Slot[]): Html {
  return {
    html: parts.reduce(
      (text, part, index) => text + part + (index < slots.length ? render(slots[index] ?? null) : ""),
      "",
    ),
  };
}
