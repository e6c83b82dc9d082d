/** Two degrees copied from a map: `44.618, -64.031`. */
import type { FormReader } from './FormReader.ts';

type Place = { readonly latitude: number | null; readonly longitude: number | null };
const NOWHERE: Place = { latitude: null, longitude: null };

export function readCoordinates(field: string, text: string, reader: FormReader): Place {
  if (text.trim() === '') return NOWHERE;
  const match = /^\s*([-−]?\d{1,2}(?:\.\d+)?)°?\s*[,;\s]\s*([-−]?\d{1,3}(?:\.\d+)?)°?\s*$/.exec(text);
  const [latitude, longitude] = [match?.[1], match?.[2]].map((part) => Number((part ?? '').replace('−', '-')));
  const isOnGlobe =
    match !== null &&
    latitude !== undefined &&
    longitude !== undefined &&
    Math.abs(latitude) <= 90 &&
    Math.abs(longitude) <= 180;
  if (isOnGlobe) return { latitude, longitude };
  reader.fail(field, 'Two numbers in degrees. Example: 44.618, -64.031.');
  return NOWHERE;
}
