/**
 * Places drawn without a map behind them: where they lie to each other, how far a kilometre is, and where north is.
 *
 * Formula  equirectangular, x = R·Δλ·cos φm, y = R·Δφ, φm the middle latitude of what is drawn
 * Units    degrees in, kilometres between, pixels out
 * Valid    a firm's own ground: within 1.3 % of the great circle over 90 km up to 60° of latitude; not over a pole
 * Source   mean Earth radius 6371.0088 km (IUGG); the projection is Ptolemy's, after Snyder, Map Projections (USGS 1395, 1987), § 12
 * Checked  tests/renderer/board/mapFrame.test.ts
 */
import type { Coordinates } from '../../../domain/schedule/travel.ts';

export type Point = { readonly x: number; readonly y: number };

export type MapFrame = {
  readonly pointOf: (at: Coordinates) => Point;
  readonly pxPerKm: number;
};

export type Box = { readonly width: number; readonly height: number; readonly padding: number };

const KM_PER_DEGREE = (6371.0088 * Math.PI) / 180;
/** Of a single place, or of several at one door, this much around is shown. */
const LEAST_KM = 2;

/** The largest scale at which all of them are inside the box, in its middle; null: nothing to draw. */
export function frameOf(places: readonly Coordinates[], box: Box): MapFrame | null {
  const [first] = places;
  if (first === undefined) return null;
  // Round the world from the first of them, so that a firm on both sides of the date line stays in one piece.
  const east = (at: Coordinates): number => ((at.longitude - first.longitude + 540) % 360) - 180;
  const latitudes = places.map(({ latitude }) => latitude);
  const easts = places.map(east);
  const middle = { latitude: middleOf(latitudes), east: middleOf(easts) };
  const kmPerDegreeEast = KM_PER_DEGREE * Math.cos((middle.latitude * Math.PI) / 180);
  const wideKm = Math.max(LEAST_KM, spanOf(easts) * kmPerDegreeEast);
  const highKm = Math.max(LEAST_KM, spanOf(latitudes) * KM_PER_DEGREE);
  const { width, height, padding } = box;
  const pxPerKm = Math.min((width - 2 * padding) / wideKm, (height - 2 * padding) / highKm);
  return {
    pxPerKm,
    pointOf: (at) => ({
      x: width / 2 + (east(at) - middle.east) * kmPerDegreeEast * pxPerKm,
      y: height / 2 - (at.latitude - middle.latitude) * KM_PER_DEGREE * pxPerKm,
    }),
  };
}

/** 1, 2 or 5 of a power of ten: the longest of them that is no longer than `mostPx`. */
export function scaleBarOf(pxPerUnit: number, mostPx: number): { readonly length: number; readonly px: number } {
  const most = mostPx / pxPerUnit;
  const power = 10 ** Math.floor(Math.log10(most));
  const length = ([5, 2, 1].find((step) => step * power <= most) ?? 1) * power;
  return { length, px: length * pxPerUnit };
}

function middleOf(values: readonly number[]): number {
  return (Math.min(...values) + Math.max(...values)) / 2;
}

function spanOf(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}
