/** The ids that may stand in a verb's input, with their plain names, as help prints them. */
import { conditions, findings, tests } from "../../knowledge/index.ts";

export function idLists(verb: string): string {
  if (verb !== "differential") return "";
  return [list("Findings", findings), list("Tests", tests), list("Conditions", conditions)].join("\n");
}

function list(title: string, facts: Readonly<Record<string, { readonly term: string }>>): string {
  const rows = Object.entries(facts);
  const width = Math.max(...rows.map(([id]) => id.length)) + 2;
  return `${title} (${rows.length})\n${rows.map(([id, { term }]) => `  ${id.padEnd(width)}${term}\n`).join("")}`;
}
