/** Mites and a fly to one scale, and the two larvae that live on combs. */
import { BothSides, Figure } from "./Figure.tsx";

export const MiteVarroa = () => (
  <Figure>
    <ellipse cx="48" cy="36" rx="26" ry="18" className="tint" />
    <BothSides>
      <path d="M36 20L32 13M30 24L23 18M26 30L17 27M25 38L17 39" className="thin" />
    </BothSides>
  </Figure>
);

export const MiteTropilaelaps = () => (
  <Figure>
    <ellipse cx="48" cy="37" rx="8" ry="15" className="tint" />
    <BothSides>
      <path d="M43 26L36 14M41 31L29 24M40 38L28 40M42 45L32 54" className="thin" />
    </BothSides>
  </Figure>
);

export const FlyBraula = () => (
  <Figure>
    <ellipse cx="48" cy="38" rx="19" ry="21" className="tint" />
    <path d="M34 24Q48 14 62 24" />
    <BothSides>
      <path d="M33 26L20 14L14 18M29 38H14L9 44M34 50L22 61L16 60" />
      <path d="M40 33L38 29M40 43L38 39M40 53L38 49" className="thin" />
    </BothSides>
  </Figure>
);

export const LarvaBeetle = () => (
  <Figure>
    <path d="M12 40C12 32 20 30 28 30H78C86 30 88 36 86 40C84 45 78 46 74 46H24C16 46 12 45 12 40Z" className="tint" />
    <circle cx="13" cy="38" r="5" className="dark" />
    <path d="M22 46L20 56M29 46L28 56M36 46L36 56" />
    <path d="M30 30V25M40 30V25M50 30V25M60 30V25M70 30V25M80 31L83 25M86 40L92 38" className="thin" />
    <path d="M44 30V46M56 30V46M68 30V46" className="thin" />
  </Figure>
);

export const LarvaMoth = () => (
  <Figure>
    <path d="M12 36C12 26 22 24 30 24H74C84 24 88 30 87 36C86 43 78 46 72 46H26C16 46 12 43 12 36Z" className="clear" />
    <circle cx="13" cy="35" r="5" className="tint" />
    <path d="M22 46V51M27 46V51M32 46V51" />
    <path d="M48 46Q50 52 52 46M58 46Q60 52 62 46M68 46Q70 52 72 46" />
    <path d="M38 24V46M50 24V46M62 24V46M74 24V46" className="thin" />
    <path d="M4 62Q30 54 50 62T92 58M4 10Q28 18 52 8T92 14" className="thin" />
  </Figure>
);
