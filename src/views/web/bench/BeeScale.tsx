/** The ruled line of bees: read ones tall, the one being read heavy, those to come short. */
import { words } from "../words.ts";

interface Props {
  /** Bees read, in order; true where the bee counts. */
  readonly counted: readonly boolean[];
  readonly next: number;
  readonly target: number;
}

const width = 540;

export function BeeScale({ counted, next, target }: Props) {
  const length = Math.max(target, next);
  const step = (width - 20) / Math.max(1, length - 1);
  const at = (bee: number) => 10 + (bee - 1) * step;
  const marks = Array.from({ length }, (_, index) => index + 1);
  return (
    <svg
      className="bee-scale"
      viewBox={`0 0 ${width} 66`}
      role="img"
      aria-label={words.bench.scale({ read: counted.filter(Boolean).length, target })}
    >
      <path d={`M0 40H${width}`} stroke="var(--edge)" strokeWidth="2" />
      {marks.map((bee) => {
        const isTen = bee % 10 === 0;
        const x = at(bee);
        if (bee === next) return <path key={bee} d={`M${x} 40V0`} stroke="var(--stain)" strokeWidth="7" />;
        const isRead = bee < next;
        const counts = counted[bee - 1] ?? false;
        const height = isRead ? (isTen ? 26 : 18) : isTen ? 14 : 7;
        return (
          <path
            key={bee}
            d={`M${x} 40V${40 - height}`}
            stroke={isRead ? "var(--ink-2)" : "var(--edge)"}
            strokeWidth={isRead ? 3 : 2}
            strokeDasharray={isRead && !counts ? "3 3" : undefined}
          />
        );
      })}
      {marks
        .filter((bee) => bee % 10 === 0)
        .map((bee) => (
          <text key={bee} className="q mono" x={at(bee)} y="62" textAnchor="middle">
            {bee}
          </text>
        ))}
    </svg>
  );
}
