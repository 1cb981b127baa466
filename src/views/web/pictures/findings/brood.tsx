/** Dead brood: a thread or none; scale, mummy and sac; larvae as they lie. */
import { cell, Figure } from "./Figure.tsx";

const Match = () => <path d="M60 4L50 24" className="thick" />;

export const Thread = () => (
  <Figure>
    <polygon points={cell(44, 50, 19)} />
    <Match />
    <path d="M50 24C49 32 46 42 44 50" className="thick tinted" />
    <ellipse cx="44" cy="53" rx="10" ry="5" className="dark" />
  </Figure>
);

export const NoThread = () => (
  <Figure>
    <polygon points={cell(44, 50, 19)} />
    <Match />
    <circle cx="50" cy="26" r="3" className="dark" />
    <path d="M36 52Q40 46 46 52T54 50" className="thick tinted" />
  </Figure>
);

/** A cell cut open along its length: mouth at the right. */
const OpenCell = () => <path d="M82 14H20L10 36L20 58H82" />;

export const Scale = () => (
  <Figure>
    <OpenCell />
    <path d="M20 57Q46 47 74 57Z" className="dark" />
  </Figure>
);

export const Mummy = () => (
  <Figure>
    <OpenCell />
    <path d="M30 36C30 26 42 26 50 27C60 26 68 30 67 37C66 45 56 45 48 45C40 46 30 45 30 36Z" className="tint" />
    <path d="M36 33L40 36M46 31L49 35M56 34L60 37M42 41L46 40" className="thin" />
    <path d="M34 51L38 54M50 50V54M64 50L60 54" className="thin" />
  </Figure>
);

export const Sac = () => (
  <Figure>
    <path d="M14 40C22 56 54 60 74 48C80 44 82 36 80 28C72 38 40 44 14 40Z" className="clear" />
    <path d="M80 28C84 22 78 14 72 18C70 24 76 28 80 28Z" className="dark" />
    <path d="M30 44Q40 52 60 48" className="thin" />
    <path d="M22 46C30 52 46 55 58 53" className="thin" />
  </Figure>
);

export const LarvaCoiled = () => (
  <Figure>
    <polygon points={cell(48, 36, 32)} />
    <path d="M60 30A13 13 0 1 0 58 46" className="skin" />
    <path d="M60 30A13 13 0 1 0 58 46" className="flesh" />
  </Figure>
);

export const LarvaTwisted = () => (
  <Figure>
    <polygon points={cell(48, 36, 32)} />
    <path d="M30 30C38 18 44 34 49 36C58 40 52 54 66 44" className="skin" />
    <path d="M30 30C38 18 44 34 49 36C58 40 52 54 66 44" className="flesh stained" />
  </Figure>
);
