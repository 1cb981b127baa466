/** Draws which causes a full look can tell apart as an SVG picture for the documents. */
import { conditions } from "../../src/knowledge/index.ts";
import { inOrder, type Separation } from "./separation.ts";

const cell = 20;
const nameWidth = 286;
const top = 84;
/** Desk light: ground, ink, second voice and the blue of the data. */
const colours = { ground: "#f2f3ef", ink: "#14181a", second: "#43494c", rule: "#c9ccc4", blue: "#0072b2" } as const;

/** From each chance on, how full the blue is. A cell below the last but one also says its figure. */
const steps = [
  { from: 0.995, fill: 0, word: "99.5 or more of 100" },
  { from: 0.98, fill: 0.15, word: "98 to 99.5" },
  { from: 0.95, fill: 0.35, word: "95 to 98" },
  { from: 0.9, fill: 0.6, word: "90 to 95" },
  { from: 0, fill: 1, word: "below 90" },
] as const;
const saysFigureBelow = 0.98;

/** The lower half of a table of causes against causes, in the order in which near ones stand side by side. */
export function separationPicture(separation: Separation): string {
  const order = inOrder(separation);
  const names = order.map((at) => conditions[separation.causes[at] as keyof typeof conditions].term);
  const [width, height] = [nameWidth + order.length * cell + 16, top + order.length * cell + 28];
  const rows = order.flatMap((a, row) => [
    text({ x: nameWidth - 30, y: middle(row), anchor: "end", content: names[row] ?? "" }),
    text({ x: nameWidth - 6, y: middle(row), anchor: "end", content: String(row + 1), fill: colours.second }),
    ...order.slice(0, row).map((b, column) => square(separation.right[a]?.[b] ?? 1, row, column)),
  ]);
  const columns = order.map((_, column) =>
    text({
      x: nameWidth + column * cell + cell / 2,
      y: top + column * cell + 14,
      anchor: "middle",
      content: String(column + 1),
      fill: colours.second,
    }),
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="Atkinson Hyperlegible Next, system-ui, sans-serif" font-size="12" role="img" aria-labelledby="title">
<title id="title">How often a full look tells two causes apart</title>
<rect width="${width}" height="${height}" fill="${colours.ground}"/>
${text({ x: 16, y: 26, anchor: "start", content: "How often a full look, without a test, puts the right one of two causes first, of 100", size: 15 })}
${legend()}
${[...rows, ...columns].join("\n")}
</svg>
`;
}

const middle = (row: number): number => top + row * cell + 14;

function square(right: number, row: number, column: number): string {
  const { fill } = steps.find(({ from }) => right >= from) ?? steps[4];
  const [x, y] = [nameWidth + column * cell, top + row * cell];
  const box = `<rect x="${x + 1}" y="${y + 1}" width="${cell - 2}" height="${cell - 2}" fill="${fill === 0 ? colours.ground : colours.blue}" fill-opacity="${fill === 0 ? 1 : fill}" stroke="${colours.rule}" stroke-width="0.5"/>`;
  if (right >= saysFigureBelow) return box;
  const ink = fill === 1 ? "#ffffff" : colours.ink;
  return (
    box + text({ x: x + cell / 2, y: y + 14, anchor: "middle", content: (100 * right).toFixed(0), fill: ink, size: 10 })
  );
}

function legend(): string {
  return steps
    .map(({ fill, word }, index) => {
      const x = 16 + index * 160;
      const colour = fill === 0 ? colours.ground : colours.blue;
      const box = `<rect x="${x}" y="42" width="16" height="16" fill="${colour}" fill-opacity="${fill === 0 ? 1 : fill}" stroke="${colours.rule}"/>`;
      return box + text({ x: x + 22, y: 54, anchor: "start", content: word, fill: colours.second });
    })
    .join("\n");
}

interface Text {
  readonly x: number;
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
  readonly content: string;
  readonly fill?: string;
  readonly size?: number;
}

const text = ({ x, y, anchor, content, fill = colours.ink, size }: Text): string =>
  `<text x="${x}" y="${y}" text-anchor="${anchor}" fill="${fill}"${size === undefined ? "" : ` font-size="${size}"`}>${content}</text>`;
