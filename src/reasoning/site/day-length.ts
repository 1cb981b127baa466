/** How long the day is at a latitude. */
import { type Day, dayNumber, ensure } from "../../units/index.ts";

export interface DayLengthQuestion {
  /** Degrees, north positive, −90 to 90. */
  readonly latitude: number;
  readonly day: Day;
}

const radians = Math.PI / 180;
/** Sun's centre below the horizon at rise and set: 34′ refraction and 16′ half disc. */
const altitudeAtRise = -(50 / 60) * radians;

/**
 * Hours from sunrise to sunset (upper edge of the sun, ordinary refraction, flat horizon).
 *
 * Low-precision place of the sun at noon of the day at longitude 0, good to about 0.01 degree from 1950 to 2050; hills, height
 * and unusual air change real days by minutes. 24 where the sun stays up all day, 0 where it does not rise.
 *
 * @throws DomainError for a latitude outside −90 to 90 or a day that does not exist
 * @source low-precision solar coordinates of the Astronomical Almanac [memory]; checked against two independent programs (tests/golden/day-length-two-programs.json)
 *
 * @example
 * Math.round(dayLength({ latitude: 45, day: "2024-06-20" }) * 10) / 10  // → 15.6
 */
export function dayLength({ latitude, day }: DayLengthQuestion): number {
  ensure(latitude >= -90 && latitude <= 90, "latitude", latitude, "from −90 to 90 degrees");
  const daysSince2000 = dayNumber(day) - dayNumber("2000-01-01"); // noon of 1 January 2000 is 0
  const meanLongitude = (280.46 + 0.9856474 * daysSince2000) * radians;
  const anomaly = (357.528 + 0.9856003 * daysSince2000) * radians;
  const longitude = meanLongitude + (1.915 * Math.sin(anomaly) + 0.02 * Math.sin(2 * anomaly)) * radians;
  const obliquity = (23.439 - 4e-7 * daysSince2000) * radians;
  const declination = Math.asin(Math.sin(obliquity) * Math.sin(longitude));
  const phi = latitude * radians;
  const cosine =
    (Math.sin(altitudeAtRise) - Math.sin(phi) * Math.sin(declination)) / (Math.cos(phi) * Math.cos(declination));
  if (cosine <= -1) return 24;
  if (cosine >= 1) return 0;
  return (Math.acos(cosine) / Math.PI) * 24;
}
