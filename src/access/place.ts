/** Places as they may be shown to those who may not know them exactly. */
import { DomainError, ensure } from "../units/index.ts";

export interface Place {
  readonly latitude: number;
  readonly longitude: number;
}

export interface CoarsePlace extends Place {
  /** Metres from the shown point within which the true one lies. */
  readonly coordinateUncertaintyMetres: number;
  readonly gridDegrees: number;
}

/** Side of a cell in degrees when nothing else is said: about 11 km from north to south. A choice of ours. */
export const gridDegrees = 0.1;

const equatorialRadiusMetres = 6_378_137;
const eccentricitySquared = 0.00669437999014;

/**
 * The middle of the grid cell that a place lies in, with the distance to the cell's farthest corner in metres. Every
 * place of a cell gives the same answer, so no number of askings narrows it down.
 * Not for people who live alone in a cell: there the cell itself may name them.
 * @throws DomainError when the place is none on the earth or the grid is not between 0 and 10 degrees
 * @source WGS 84 ellipsoid: semi-major axis 6 378 137 m, first eccentricity squared 0.00669437999014 (from memory)
 * @example
 * coarsened({ latitude: 45.137, longitude: -93.761 }).latitude  // → 45.15
 */
export function coarsened({ latitude, longitude }: Place, grid: number = gridDegrees): CoarsePlace {
  ensure(Math.abs(latitude) <= 90, "latitude", latitude, "from -90 to 90 degrees");
  ensure(Math.abs(longitude) <= 180, "longitude", longitude, "from -180 to 180 degrees");
  if (!(grid > 0 && grid <= 10)) throw new DomainError("grid", grid, "above 0, at most 10 degrees");
  const middle = cellMiddle(latitude, grid);
  // Meridians lie farthest apart at the edge that is nearer the equator.
  const nearest = Math.max(0, Math.abs(middle) - grid / 2);
  const halfNorth = (metresOfLatitudeDegree(middle) * grid) / 2;
  const halfEast = (metresOfLongitudeDegree(nearest) * grid) / 2;
  return {
    latitude: middle,
    longitude: cellMiddle(longitude, grid),
    coordinateUncertaintyMetres: Math.ceil(Math.hypot(halfNorth, halfEast)),
    gridDegrees: grid,
  };
}

/** Rounded to a billionth of a degree, so that the middle of a cell has one spelling. */
const cellMiddle = (degrees: number, grid: number): number =>
  Math.round((Math.floor(degrees / grid + 1e-9) * grid + grid / 2) * 1e9) / 1e9;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Length of a degree of latitude there, in metres. */
function metresOfLatitudeDegree(latitude: number): number {
  const sine = Math.sin(radians(latitude));
  return (
    radians(1) * ((equatorialRadiusMetres * (1 - eccentricitySquared)) / (1 - eccentricitySquared * sine ** 2) ** 1.5)
  );
}

/** Length of a degree of longitude there, in metres. */
function metresOfLongitudeDegree(latitude: number): number {
  const sine = Math.sin(radians(latitude));
  const across = equatorialRadiusMetres / Math.sqrt(1 - eccentricitySquared * sine ** 2);
  return radians(1) * across * Math.cos(radians(latitude));
}
