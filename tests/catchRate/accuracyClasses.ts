/**
 * How far an instrument in date may be off, as its class states it: the larger of an absolute and a relative figure.
 *
 * Source: figures of the EN 50379 kind for portable combustion analysers and of usual manometers and thermometers, from
 * memory; CO ± 3 ppm up to 20 ppm, then ± 5 %, as a maker's public sheet has it.
 */
export type AccuracyClass = { readonly abs: number; readonly relPct: number };

export const ACCURACY = {
  o2VolPct: { abs: 0.3, relPct: 0 },
  co2VolPct: { abs: 0.3, relPct: 0 },
  coPpm: { abs: 3, relPct: 5 },
  flueGasC: { abs: 2, relPct: 1 },
  airC: { abs: 1, relPct: 0 },
  waterC: { abs: 0.5, relPct: 0 },
  gasPressureMbar: { abs: 0.05, relPct: 0.5 },
  systemPressureBar: { abs: 0.05, relPct: 0 },
  stopwatchS: { abs: 1, relPct: 0 },
} as const satisfies Record<string, AccuracyClass>;

export function classLimit({ abs, relPct }: AccuracyClass, value: number): number {
  return Math.max(abs, (Math.abs(value) * relPct) / 100);
}
