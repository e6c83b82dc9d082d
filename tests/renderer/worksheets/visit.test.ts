/** What passes between a worksheet and a run: only what somebody typed, only where the run asks for it and may be written into. */
import { describe, expect, it } from 'vitest';
import { runProgress } from '../../../domain/procedure/progress.ts';
import type { RunRecord } from '../../../domain/procedure/runRecord.ts';
import type { RunAnalysis } from '../../../renderer/run/analyseRun.ts';
import type { TypedInputs } from '../../../renderer/worksheets/core/evaluate.ts';
import { keep, readKept } from '../../../renderer/worksheets/core/keptInputs.ts';
import type { Worksheet } from '../../../renderer/worksheets/core/worksheet.ts';
import { combustion } from '../../../renderer/worksheets/sheets/combustion.ts';
import { hardness } from '../../../renderer/worksheets/sheets/hardness.ts';
import { vesselCheck } from '../../../renderer/worksheets/sheets/vesselCheck.ts';
import { fillFromRun } from '../../../renderer/worksheets/visit/fillFromRun.ts';
import { placesInRun } from '../../../renderer/worksheets/visit/placesInRun.ts';
import { DAY_START, emptyRecord, reading, secondsAfter, withReading } from '../../support/runRecordBuilder.ts';
import { readShippedSheet } from '../../support/shippedSheets.ts';

const sheet = readShippedSheet('general-practice-natural-gas.json');
const empty = emptyRecord('natural-gas');

function analysisOf(record: RunRecord): RunAnalysis {
  const progress = runProgress({ sheet, steps: 'startup', record, findings: [], now: secondsAfter(DAY_START, 600) });
  return { steps: sheet.startup, findings: [], progress };
}

function placesOf(worksheet: Worksheet, typed: TypedInputs, record: RunRecord) {
  return placesInRun(worksheet, typed, 'metric', { record, analysis: analysisOf(record) });
}

describe('places in a run', () => {
  it('offers what is typed where the quantity and the point match, in the unit it was typed in', () => {
    const { places } = placesOf(vesselCheck, { preChargeBarG: { text: '12 psi' } }, empty);
    expect(places.map(({ item, words, standing }) => [item.key, words, standing])).toEqual([
      ['vessel-pre-charge', '12 psi', null],
    ]);
  });

  it('offers a cold gauge for the cold reading only, and nothing for the hot one before the burner may fire', () => {
    const typed = { coldPressureBarG: { text: '1.2' }, hotPressureBarG: { text: '1.8' } };
    const { places } = placesOf(vesselCheck, typed, empty);
    expect(places.map(({ item, point }) => [item.key, point])).toEqual([['cold-pressure', 'cold']]);
  });

  it('offers no usual figure that nobody read, and nothing that is no reading', () => {
    expect(placesOf(vesselCheck, {}, empty).places).toEqual([]);
    for (const text of ['', 'abc', '999', '3 °C']) {
      expect(placesOf(vesselCheck, { reliefSettingBarG: { text } }, empty).places, text).toEqual([]);
    }
  });

  it('names what is kept there, and does not offer the same number again', () => {
    const kept = reading('vessel-pre-charge', 'vesselPreChargeBarG', 0.8, DAY_START);
    const record = withReading(empty, kept);
    const [place] = placesOf(vesselCheck, { preChargeBarG: { text: '1' } }, record).places;
    expect(place?.standing).toEqual(kept);
    expect(placesOf(vesselCheck, { preChargeBarG: { text: '0,80' } }, record).places).toEqual([]);
  });

  it('knows that a run asks for readings of a worksheet in steps still locked, without offering to write them', () => {
    const atLowFire = placesOf(combustion, { o2DryVolPct: { text: '5' } }, empty);
    expect(atLowFire).toEqual({ asked: true, places: [] });
  });
});

describe('a worksheet filled from a run', () => {
  it('takes text and unit as typed, of one sample together, and what is on file for site and fuel', () => {
    const at = (seconds: number) => secondsAfter(DAY_START, seconds);
    const series = (itemKey: string, sample: number, o2: number, flue: number, seconds: number) => [
      reading(itemKey, 'o2DryVolPct', o2, at(seconds), { sample, typedUnit: '%' }),
      reading(itemKey, 'flueGasC', flue, at(seconds + 1), { sample, typedText: `${flue} C`, typedUnit: '°C' }),
    ];
    const record = [...series('high-flue', 1, 4.9, 50, 0), ...series('low-flue', 1, 5.6, 44, 60)].reduce(
      withReading,
      empty,
    );
    expect(fillFromRun(combustion, record)).toEqual({
      fuel: { text: 'natural-gas' },
      o2DryVolPct: { text: '5.6', unit: '%' },
      flueGasC: { text: '44 C', unit: '°C' },
      altitudeM: { text: '120', unit: 'm' },
    });
  });

  it('takes nothing that was replaced, not measured or over the range', () => {
    const at = DAY_START;
    const record = [
      reading('system-hardness', 'hardnessMmolPerL', 1, at, { supersededById: 'other' }),
      reading('system-hardness', 'hardnessMmolPerL', null, at),
      reading('fill-hardness', 'hardnessMmolPerL', 3, at, { comparator: '>' }),
    ].reduce(withReading, empty);
    expect(fillFromRun(hardness, record)).toEqual({});
  });
});

describe('what is kept of a worksheet', () => {
  it('comes back as typed, and rubbish in its place is nothing', () => {
    const memory = new Map<string, string>();
    const storage = {
      getItem: (key: string) => memory.get(key) ?? null,
      setItem: (key: string, value: string) => void memory.set(key, value),
      removeItem: (key: string) => void memory.delete(key),
    };
    keep(storage, 'combustion', { o2DryVolPct: { text: '5,0', unit: '%' } });
    expect(readKept(storage, 'combustion')).toEqual({ o2DryVolPct: { text: '5,0', unit: '%' } });
    keep(storage, 'combustion', {});
    expect(readKept(storage, 'combustion')).toBeNull();
    for (const rubbish of ['{', '7', '{"a":1,"b":{"text":4}}', 'null']) {
      memory.set('lightoff.worksheet.combustion', rubbish);
      expect(Object.keys(readKept(storage, 'combustion') ?? {}), rubbish).toEqual([]);
    }
  });
});
