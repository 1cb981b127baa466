/** Draws the table of boundaries as text for ARCHITECTURE.md. Run by itself it writes the diagram to standard output. */
import { fileURLToPath } from "node:url";
import { type Part, parts } from "./boundaries.ts";

/** One line a part: what it may import, its packages, and whether it is pure. */
export function drawBoundaries(table: readonly Part[]): string {
  const width = Math.max(...table.map((part) => part.folder.length));
  const lines = table.map((part) => {
    const packages = part.packages === "any" ? "any package" : part.packages.join(" ");
    const from = part.imports.join(" ") || "nothing";
    return `${part.pure ? "○" : "●"} ${part.folder.padEnd(width)} ← ${from}${packages ? `  [${packages}]` : ""}`;
  });
  return ["```text", "○ pure   ● touches the outside   ← may import   [packages]", ...lines, "```"].join("\n");
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.stdout.write(`${drawBoundaries(parts)}\n`);
