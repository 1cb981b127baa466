/** Cells from above and cappings from the side: sound, sunken, domed, opened, and where the eggs lie. */
import { cell, Figure } from "./Figure.tsx";

const size = 13.8;
const rows = [
  [24, 48, 72],
  [36, 60],
  [24, 48, 72],
] as const;
const cells = rows.flatMap((row, index) => row.map((x): readonly [number, number] => [x, 15 + index * 20.8]));

/** Capped cells, but those told: they lie open, with the head of a pupa. */
const Comb = ({ open }: { readonly open: readonly number[] }) => (
  <Figure>
    {cells.map(([x, y], index) => (
      <g key={`${x} ${y}`}>
        <polygon points={cell(x, y, size)} className={open.includes(index) ? "clear" : "tint"} />
        {open.includes(index) ? (
          <>
            <circle cx={x} cy={y} r="7" className="thin" />
            <path d={`M${x - 3} ${y - 1}v3M${x + 3} ${y - 1}v3`} />
          </>
        ) : null}
      </g>
    ))}
  </Figure>
);

export const OpenedScattered = () => <Comb open={[1, 4, 5]} />;
export const OpenedInLine = () => <Comb open={[0, 3, 6]} />;

/** Cappings seen from the side, over the walls of three cells. */
const Side = ({ caps }: { readonly caps: string }) => (
  <Figure>
    <path d="M12 66V34M36 66V34M60 66V34M84 66V34" />
    <path d={caps} className="tint" />
  </Figure>
);

export const CapsSound = () => <Side caps="M12 34Q24 26 36 34Q48 26 60 34Q72 26 84 34" />;
export const CapsDomed = () => <Side caps="M12 34C12 4 36 4 36 34C36 4 60 4 60 34C60 4 84 4 84 34" />;
export const CapsSunken = () => (
  <Figure>
    <path d="M12 66V34M36 66V34M60 66V34M84 66V34" />
    <path d="M12 34Q24 26 36 34M36 34Q40 44 45 45M51 45Q56 44 60 34M60 34Q72 46 84 34" />
    <path d="M45 45L44 49M51 45L53 48M45 45L47 43M51 45L50 42" className="thin" />
  </Figure>
);

const egg = (x: number, y: number, turn: number) => (
  <ellipse
    key={`${x} ${y}`}
    cx={x}
    cy={y}
    rx="2.2"
    ry="6.5"
    transform={`rotate(${turn} ${x} ${y})`}
    className="clear"
  />
);

export const EggOne = () => (
  <Figure>
    <polygon points={cell(48, 36, 32)} />
    <circle cx="48" cy="36" r="16" className="thin" />
    {egg(48, 36, 10)}
  </Figure>
);

export const EggsMany = () => (
  <Figure>
    <polygon points={cell(48, 36, 32)} />
    <circle cx="48" cy="36" r="16" className="thin" />
    {egg(30, 28, 60)}
    {egg(64, 24, -50)}
    {egg(66, 46, 60)}
    {egg(44, 40, 15)}
    {egg(36, 56, -30)}
  </Figure>
);
