import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entryUnits } from '../../../domain/quantity/entryUnits.ts';
import { parseTyped } from '../../../domain/quantity/parseTyped.ts';
import { QUANTITY_KEYS, type QuantityKey } from '../../../domain/quantity/quantities.ts';

function parsed(key: QuantityKey, text: string, defaultUnit = entryUnits(key)[0].symbol) {
  const result = parseTyped(key, text, defaultUnit);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

function refused(key: QuantityKey, text: string, defaultUnit = entryUnits(key)[0].symbol) {
  const result = parseTyped(key, text, defaultUnit);
  if (result.ok) throw new Error(`read as ${JSON.stringify(result.value)}`);
  return result.error;
}

describe('parseTyped understands what people type', () => {
  it.each([
    ['systemPressureBarG', '1,5 bar', 1.5, 'bar', 1.5],
    ['systemPressureBarG', '12 psi', 12, 'psi', 0.827371],
    ['systemPressureBarG', '83 kPa', 83, 'kPa', 0.83],
    ['inletPressureMbarG', '7 "wc', 7, 'in w.c.', 17.43622],
    ['inletPressureMbarG', '7″ w.c.', 7, 'in w.c.', 17.43622],
    ['inletPressureMbarG', '7 in. W.C.', 7, 'in w.c.', 17.43622],
    ['inletPressureMbarG', '20mbar', 20, 'mbar', 20],
    ['supplyC', '98.6F', 98.6, '°F', 37],
    ['supplyC', '140 ºF', 140, '°F', 60],
    ['supplyC', '60 deg C', 60, '°C', 60],
    ['outdoorC', '−5', -5, '°C', -5],
    ['outdoorC', '+3,5 °C', 3.5, '°C', 3.5],
    ['ratedInputKw', '110 MBH', 110, 'MBH', 32.2378],
    ['ratedInputKw', '210000 Btu/hr', 210000, 'Btu/h', 61.5449],
    ['coPpm', '1\u202f250 ppm', 1250, 'ppm', 1250],
    ['coPpm', '1 250', 1250, 'ppm', 1250],
    ['ratedInputKw', "110'000 Btu/h", 110000, 'Btu/h', 32.2378],
    ['ratedInputKw', '1,110,000 Btu/h', 1110000, 'Btu/h', 325.308],
    ['coPpm', '1.234,5', 1234.5, 'ppm', 1234.5],
    ['coPpm', '1,234.5', 1234.5, 'ppm', 1234.5],
    ['o2DryVolPct', ',5', 0.5, '%', 0.5],
    ['meterDialM3', '½ ft³', 0.5, 'ft³', 0.0141584],
    ['meterDialM3', '1/2 cu ft', 0.5, 'ft³', 0.0141584],
    ['systemPressureBarG', '12 1/2 psi', 12.5, 'psi', 0.861845],
    ['altitudeM', "9000'", 9000, 'ft', 2743.2],
    ['meterSeconds', '1:10', 70, 's', 70],
    ['flameCurrentUa', '3.2 μA', 3.2, 'µA', 3.2],
    ['hardnessMmolPerL', '10 gpg', 10, 'gpg', 1.71032],
    ['waterPh', '8,3', 8.3, '', 8.3],
  ] as const)('%s: %s', (key, text, valueTyped, unit, valueOwn) => {
    const value = parsed(key, text);
    expect(value.typedText).toBe(text);
    expect(value.valueTyped).toBeCloseTo(valueTyped, 9);
    expect(value.unit).toBe(unit);
    // The own values are printed to six figures; factors from NIST SP 811.
    expect(Math.abs(value.valueOwn - valueOwn)).toBeLessThanOrEqual(Math.abs(valueOwn) * 1e-5);
  });

  it('takes the unit shown beside the box when none is typed', () => {
    expect(parsed('supplyC', '140', '°F')).toMatchObject({ unit: '°F', valueOwn: 60 });
    expect(parsed('supplyC', '140°', '°F')).toMatchObject({ unit: '°F', valueOwn: 60 });
  });

  it('keeps an over-range display as "at least"', () => {
    expect(parsed('coPpm', '>4000 ppm')).toMatchObject({ comparator: '>', valueOwn: 4000 });
    expect(parsed('coPpm', '≥ 4 000')).toMatchObject({ comparator: '>', valueOwn: 4000 });
    expect(parsed('coPpm', '< 3')).toMatchObject({ comparator: '<', valueOwn: 3 });
  });

  it('uses what is possible to tell a decimal from a thousands mark', () => {
    expect(parsed('o2DryVolPct', '4,125').valueOwn).toBe(4.125);
    expect(parsed('heatingValueMjPerM3', '1,036 Btu/ft3').valueTyped).toBe(1036);
  });

  it('has no negative zero', () => {
    expect(Object.is(parsed('outdoorC', '-0').valueOwn, 0)).toBe(true);
  });
});

describe('parseTyped refuses and says why', () => {
  it.each(['', '   ', '\u00a0'])('empty %j', (text) => {
    expect(refused('coPpm', text).code).toBe('empty');
  });

  it.each(['abc', '-', '1.2.3', '1,23,456', '5.', '5,', '--5', '12/80', '1 5', '~40', 'NaN', 'OL', '1:10'])(
    'not a number %j',
    (text) => {
      expect(refused('coPpm', text)).toEqual({ code: 'not-a-number', typedText: text });
    },
  );

  it('unknown unit, with the accepted ones', () => {
    expect(refused('coPpm', '40 ppb')).toEqual({ code: 'unknown-unit', unitText: 'ppb', accepted: ['ppm'] });
    expect(refused('coPpm', '1e3').code).toBe('unknown-unit');
  });

  it('unit of another kind', () => {
    expect(refused('supplyC', '60 psi')).toMatchObject({
      code: 'unit-of-another-kind',
      kinds: ['gas-pressure', 'system-pressure'],
      accepted: ['°C', '°F'],
    });
    expect(refused('systemPressureBarG', '26.7 psia')).toMatchObject({ kinds: ['absolute-pressure'] });
  });

  it('ambiguous mark: asks', () => {
    expect(refused('coPpm', '1,234')).toMatchObject({
      code: 'ambiguous',
      meanings: [
        { valueOwn: 1.234, unit: 'ppm' },
        { valueOwn: 1234, unit: 'ppm' },
      ],
    });
    expect(refused('coPpm', '1.234').code).toBe('ambiguous');
  });

  it.each(['110 MBtu', '110 MBTU/h', '110 mbtu/hr', '110 MBtuh'])('%s: a thousand or a million?', (text) => {
    const problem = refused('ratedInputKw', text);
    expect(problem).toMatchObject({ code: 'ambiguous', meanings: [{ unit: 'MBH' }, { unit: 'million Btu/h' }] });
    if (problem.code === 'ambiguous') {
      const [thousand, million] = problem.meanings;
      expect((million?.valueOwn ?? 0) / (thousand?.valueOwn ?? 1)).toBeCloseTo(1000, 6);
    }
  });

  it('asks which degree of hardness is meant', () => {
    expect(refused('hardnessMmolPerL', '18°').code).toBe('ambiguous');
  });

  it('beyond the possible range: the range, the units that would fit and the missing point', () => {
    expect(refused('supplyC', '140')).toMatchObject({
      code: 'beyond-possible',
      valueOwn: 140,
      possible: [0, 120],
      wouldFitIn: ['°F'],
      tenthWouldFit: true,
    });
    expect(refused('co2DryVolPct', '92')).toMatchObject({ code: 'beyond-possible', tenthWouldFit: true });
    expect(refused('waterPh', '30')).toMatchObject({ code: 'beyond-possible', tenthWouldFit: true });
    expect(refused('ratedInputKw', '110', 'Btu/h')).toMatchObject({ wouldFitIn: ['kW', 'MBH'] });
    expect(refused('heatingValueMjPerM3', '10200', 'Btu/ft³').code).toBe('beyond-possible');
  });
});

describe('parseTyped, whatever is typed', () => {
  it('never throws, never yields a number that is not finite or not possible', async () => {
    const alphabet = fc.constantFrom(...'0123456789.,\'’ -−–+><=≥/½:"°%µCFpsiarbMBtuh\u00a0\u2009xe');
    await fc.assert(
      fc.property(
        fc.constantFrom(...QUANTITY_KEYS),
        fc.oneof(
          fc.string(),
          fc.array(alphabet, { maxLength: 14 }).map((letters) => letters.join('')),
        ),
        (key, text) => {
          const result = parseTyped(key, text, entryUnits(key)[0].symbol);
          if (result.ok) {
            expect(Number.isFinite(result.value.valueOwn)).toBe(true);
            expect(result.value.typedText).toBe(text);
          } else if (result.error.code === 'ambiguous') {
            expect(result.error.meanings.length).toBeGreaterThan(1);
          }
        },
      ),
      { numRuns: 4000 },
    );
  });

  it('takes every unit in its own symbol and in each of its spellings', () => {
    for (const key of QUANTITY_KEYS) {
      for (const unit of entryUnits(key)) {
        for (const spelling of [unit.symbol, ...unit.spellings]) {
          const result = parseTyped(key, `1 ${spelling}`, entryUnits(key)[0].symbol);
          if (result.ok) expect(result.value.unit, `${key}: 1 ${spelling}`).toBe(unit.symbol);
          else expect(result.error.code, `${key}: 1 ${spelling}`).toBe('beyond-possible');
        }
      }
    }
  });
});
