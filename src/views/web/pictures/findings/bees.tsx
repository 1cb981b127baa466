/** Heads of a worker and a drone, and bees before a hive: practice flight and robbing. */
import { Figure } from "./Figure.tsx";

export const HeadWorker = () => (
  <Figure>
    <path d="M48 10C66 10 72 24 68 40L56 62H40L28 40C24 24 30 10 48 10Z" className="clear" />
    <ellipse cx="29" cy="32" rx="7" ry="15" className="dark" />
    <ellipse cx="67" cy="32" rx="7" ry="15" className="dark" />
    <path d="M43 40L38 50L34 66M53 40L58 50L62 66" className="thin" />
    <circle cx="48" cy="17" r="1.5" className="dark" />
  </Figure>
);

export const HeadDrone = () => (
  <Figure>
    <circle cx="48" cy="36" r="27" className="clear" />
    <path d="M48 9C34 9 22 20 22 38C30 46 44 38 48 12Z" className="dark" />
    <path d="M48 9C62 9 74 20 74 38C66 46 52 38 48 12Z" className="dark" />
    <path d="M43 46L37 56M53 46L59 56" className="thin" />
  </Figure>
);

const Hive = () => (
  <>
    <path d="M50 12H90V62H50Z" className="tint" />
    <path d="M47 12H93" />
    <path d="M50 54H60" className="thick" />
  </>
);

/** A small bee that heads to the right, turned. */
const Bee = ({ x, y, turn = 0 }: { readonly x: number; readonly y: number; readonly turn?: number }) => (
  <g transform={`translate(${x} ${y}) rotate(${turn})`}>
    <ellipse rx="6" ry="3" className="dark" />
    <path d="M-1 -2L-5 -7M1 -2L1 -8" className="thin" />
  </g>
);

export const Hover = () => (
  <Figure>
    <Hive />
    <Bee x={34} y={54} />
    <Bee x={22} y={42} />
    <Bee x={30} y={28} />
    <Bee x={12} y={56} />
    <Bee x={10} y={30} />
  </Figure>
);

export const Pry = () => (
  <Figure>
    <Hive />
    <Bee x={46} y={16} turn={-30} />
    <Bee x={46} y={62} turn={20} />
    <Bee x={70} y={8} turn={80} />
    <Bee x={22} y={48} turn={40} />
    <Bee x={29} y={53} turn={220} />
    <path d="M18 60L14 66M28 62V68M36 60L40 66" className="thin" />
  </Figure>
);
