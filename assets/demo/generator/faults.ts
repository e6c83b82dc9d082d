/** What goes wrong now and then, in the boiler or in the writing: every kind of finding occurs somewhere in the demo. */
import type { RecordedRun } from '../../../electron/demo/recordedRun.ts';

type Entry = { readonly text: string; readonly unit: string };

export type Fault = {
  readonly key: string;
  /** So bad that the visit ends with the gas shut. */
  readonly makesSafe: boolean;
  readonly apply: (notes: RecordedRun) => RecordedRun;
};

export const FAULTS: readonly Fault[] = [
  {
    key: 'o2-co2-swapped',
    makesSafe: false,
    apply: (notes) =>
      changeSeries(notes, 'high-flue', (series) => ({
        ...series,
        o2DryVolPct: series['co2DryVolPct'] ?? [],
        co2DryVolPct: series['o2DryVolPct'] ?? [],
      })),
  },
  {
    key: 'co-high',
    makesSafe: false,
    apply: (notes) =>
      changeSeries(notes, 'high-flue', (series) => ({
        ...series,
        coPpm: (series['coPpm'] ?? []).map(() => ({ text: '118', unit: 'ppm' })),
      })),
  },
  {
    key: 'co-stop',
    makesSafe: true,
    apply: (notes) =>
      changeSeries(notes, 'high-flue', (series) => ({
        ...series,
        coPpm: (series['coPpm'] ?? []).map(() => ({ text: '460', unit: 'ppm' })),
      })),
  },
  {
    key: 'over-range',
    makesSafe: true,
    apply: (notes) =>
      changeSeries(notes, 'high-flue', (series) => ({
        ...series,
        coPpm: (series['coPpm'] ?? []).map(() => ({ text: '>4000', unit: 'ppm' })),
      })),
  },
  {
    key: 'not-steady',
    makesSafe: false,
    apply: (notes) =>
      changeSeries(notes, 'low-flue', (series) => ({
        ...series,
        o2DryVolPct: drift(series['o2DryVolPct'] ?? [], 0.6),
      })),
  },
  {
    key: 'too-lean',
    makesSafe: false,
    apply: (notes) =>
      changeSeries(notes, 'low-flue', (series) => ({
        ...series,
        o2DryVolPct: shift(series['o2DryVolPct'] ?? [], 2.2),
        co2DryVolPct: shift(series['co2DryVolPct'] ?? [], -1.25),
      })),
  },
  {
    key: 'fahrenheit',
    makesSafe: false,
    apply: (notes) => changeReading(notes, 'high-supply', () => ({ text: '102', unit: '°C' })),
  },
  {
    key: 'low-gas-pressure',
    makesSafe: false,
    apply: (notes) => changeReading(notes, 'inlet-dynamic', () => ({ text: '9.2', unit: 'mbar' })),
  },
  {
    key: 'under-filled',
    makesSafe: false,
    apply: (notes) => changeReading(notes, 'pressure-after-purge', () => ({ text: '0.6', unit: 'bar' })),
  },
  {
    key: 'meter-not-possible',
    makesSafe: false,
    apply: (notes) => changeReading(notes, 'meter-seconds', () => ({ notMeasured: 'meter behind a locked door' })),
  },
  {
    key: 'hard-water',
    makesSafe: false,
    apply: (notes) => changeReading(notes, 'system-ph', () => ({ text: '9.9', unit: '' })),
  },
  {
    key: 'setting-left',
    makesSafe: false,
    apply: (notes) => ({ ...notes, answers: { ...notes.answers, 'settings-chosen': 'left' } }),
  },
];

function changeSeries(
  notes: RecordedRun,
  key: string,
  change: (series: Record<string, Entry[]>) => Record<string, Entry[]>,
): RecordedRun {
  const series = notes.series[key];
  return series === undefined ? notes : { ...notes, series: { ...notes.series, [key]: change(series) } };
}

function changeReading(notes: RecordedRun, key: string, change: () => RecordedRun['readings'][string]): RecordedRun {
  return key in notes.readings ? { ...notes, readings: { ...notes.readings, [key]: change() } } : notes;
}

function drift(entries: readonly Entry[], perSample: number): Entry[] {
  return entries.map((entry, index) => ({ ...entry, text: (Number(entry.text) + perSample * index).toFixed(1) }));
}

function shift(entries: readonly Entry[], by: number): Entry[] {
  return entries.map((entry) => ({ ...entry, text: (Number(entry.text) + by).toFixed(1) }));
}
