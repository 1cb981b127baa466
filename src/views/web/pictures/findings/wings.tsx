/** A bee from above with its wings: folded, unhooked, crumpled from birth, worn with age. */
import { BothSides, Figure } from "./Figure.tsx";

const Body = () => (
  <>
    <circle cx="48" cy="12" r="6" />
    <circle cx="48" cy="25" r="8" />
    <ellipse cx="48" cy="48" rx="9" ry="16" />
    <path d="M40 43H56M39.5 49H56.5M41 55H55" className="thin" />
    <path d="M45 7L41 2M51 7L55 2" className="thin" />
  </>
);

export const WingFolded = () => (
  <Figure>
    <Body />
    <BothSides>
      <path d="M42 22C30 32 27 50 34 62C41 54 44 38 42 22Z" className="clear" />
      <path d="M42 24C39 38 38 50 36 58" className="thin" />
    </BothSides>
  </Figure>
);

export const WingK = () => (
  <Figure>
    <Body />
    <BothSides>
      <path d="M41 25C28 30 14 42 9 54C22 54 36 42 41 25Z" className="clear" />
      <path d="M41 23C32 14 20 9 9 10C14 20 28 26 41 23Z" className="clear" />
    </BothSides>
  </Figure>
);

export const WingCrumpled = () => (
  <Figure>
    <Body />
    <BothSides>
      <path d="M41 23L33 25L37 29L29 32L35 35L30 40L38 38L41 30Z" className="clear" />
    </BothSides>
  </Figure>
);

export const WingWorn = () => (
  <Figure>
    <Body />
    <BothSides>
      <path d="M42 22C30 32 26 44 29 54L33 50L33 58L37 52L38 57C42 48 44 36 42 22Z" className="clear" />
      <path d="M42 24C39 36 37 44 35 50" className="thin" />
    </BothSides>
  </Figure>
);
