import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bareBaseboardOutput,
  FIN_TUBE_RULE_BTU_PER_H_FT,
  US_EMITTER_EXPONENTS,
  type UsEmitter,
  usEmitterFactor,
} from '../../../../domain/hydronics/emitters/baseboardOutput.ts';
import { floorOutput, floorSurfaceOverRoom } from '../../../../domain/hydronics/emitters/floorOutput.ts';
import {
  logarithmicMeanDifference,
  RADIATOR_EXPONENT,
  radiatorFactor,
  radiatorOutput,
} from '../../../../domain/hydronics/emitters/radiatorOutput.ts';
import { CONTROL_SETTINGS, DESIGN_SUPPLY } from '../../../../domain/hydronics/emitters/supplyTemperatures.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

const radiator = { ratedOutputW: 1000, supplyC: 55, returnC: 45, roomC: 20, exponent: 1.3 };

describe('radiator', () => {
  it('gives its rating at its rating point, by either mean', () => {
    const rated = { ratedOutputW: 1234, supplyC: 75, returnC: 65, roomC: 20 };
    expect(unwrap(radiatorOutput({ ...rated, mean: 'arithmetic' }))).toBeCloseTo(1234, 9);
    expect(unwrap(radiatorOutput({ ...rated, mean: 'logarithmic' }))).toBeCloseTo(1234, 9);
    expect(unwrap(radiatorFactor({ meanDifferenceK: 50 }))).toBe(1);
    expect(RADIATOR_EXPONENT).toBe(1.3);
  });

  it('changes to the logarithmic mean below a ratio of 0.7', () => {
    const at = (returnC: number, mean: 'by-spread' | 'arithmetic' | 'logarithmic') =>
      unwrap(radiatorOutput({ ratedOutputW: 1000, supplyC: 70, returnC, roomC: 20, mean }));
    expect(at(55.01, 'by-spread')).toBe(at(55.01, 'arithmetic'));
    expect(at(54.99, 'by-spread')).toBe(at(54.99, 'logarithmic'));
    expect(at(54.99, 'by-spread')).not.toBe(at(54.99, 'arithmetic'));
  });

  it('gives more the hotter it is', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 22, max: 100, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        (returnC, hotterK) => {
          const at = (shiftK: number) =>
            unwrap(
              radiatorOutput({
                ...radiator,
                supplyC: returnC + 10 + shiftK,
                returnC: returnC + shiftK,
                mean: 'arithmetic',
              }),
            );
          expect(at(hotterK)).toBeGreaterThan(at(0));
        },
      ),
    );
  });

  it('has a logarithmic mean between the ends and below the arithmetic one', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 21, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (returnC, spreadK) => {
          const mean = unwrap(logarithmicMeanDifference({ supplyC: returnC + spreadK, returnC, roomC: 20 }));
          expect(mean).toBeGreaterThanOrEqual(returnC - 20 - 1e-9);
          expect(mean).toBeLessThanOrEqual(returnC - 20 + spreadK / 2 + 1e-9);
        },
      ),
    );
    expect(unwrap(logarithmicMeanDifference({ supplyC: 60, returnC: 60, roomC: 20 }))).toBe(40);
  });
});

describe('baseboard and convectors', () => {
  it('give their rating at 180 °F average in 65 °F air', () => {
    for (const kind of ['cast-iron', 'baseboard', 'convector'] as const) {
      expect(unwrap(usEmitterFactor({ kind, averageWaterC: (180 - 32) / 1.8 }))).toBeCloseTo(1, 12);
    }
  });

  it('have the exponents of their kind', () => {
    expect(US_EMITTER_EXPONENTS).toEqual({ 'cast-iron': 1.2, baseboard: 1.31, convector: 1.42 });
    const half = (kind: UsEmitter) => unwrap(usEmitterFactor({ kind, averageWaterC: (122.5 - 32) / 1.8 }));
    expect(half('cast-iron')).toBeCloseTo(0.5 ** 1.2, 12);
    expect(half('baseboard')).toBeCloseTo(0.5 ** 1.31, 12);
  });

  it('count a room of its own temperature', () => {
    expect(unwrap(usEmitterFactor({ kind: 'baseboard', averageWaterC: 80, airC: 20 }))).toBeCloseTo(
      ((60 * 1.8) / 115) ** 1.31,
      12,
    );
  });

  it('lose 15 % of heating effect', () => {
    expect(unwrap(bareBaseboardOutput({ ratedOutput: 575 }))).toBeCloseTo(500, 12);
    expect(FIN_TUBE_RULE_BTU_PER_H_FT).toEqual([550, 600]);
  });
});

describe('floor', () => {
  it('follows its curve and comes back', async () => {
    expect(unwrap(floorOutput({ surfaceOverRoomK: 1 }))).toBeCloseTo(8.92, 12);
    expect(unwrap(floorOutput({ surfaceOverRoomK: 10 }))).toBeCloseTo(8.92 * 10 ** 1.1, 12);
    await fc.assert(
      fc.property(fc.double({ min: 0, max: 19.9, noNaN: true }), (surfaceOverRoomK) => {
        const outputWPerM2 = unwrap(floorOutput({ surfaceOverRoomK }));
        expect(unwrap(floorSurfaceOverRoom({ outputWPerM2 }))).toBeCloseTo(surfaceOverRoomK, 9);
      }),
    );
  });
});

describe('supply temperatures', () => {
  it('are as printed', () => {
    expect(DESIGN_SUPPLY.map(({ emitter, leastC, mostC }) => [emitter, leastC, mostC])).toEqual([
      ['fin-tube-baseboard', 60, 82],
      ['cast-iron-or-steel-radiators', 70, 80],
      ['condensing-radiators', null, 55],
      ['fan-coils', 45, 60],
      ['floor-slab', 35, 50],
      ['floor-joist', 45, 60],
      ['hot-water-primary', 65, 80],
    ]);
    expect(CONTROL_SETTINGS.map(({ emitter, highestSupplyC, deltaTK }) => [emitter, highestSupplyC, deltaTK])).toEqual([
      ['floor-slab', [30, 45], [5, 10]],
      ['floor-under-wood', null, [5, 8]],
      ['panel-radiators', [45, 60], [10, 20]],
      ['old-radiators', [55, 75], [10, 20]],
      ['fin-tube-baseboard', [60, 82], [10, expect.closeTo(11.111, 3)]],
      ['fan-coil-or-air-handler', [50, 70], [10, 15]],
      ['hot-water-cylinder', [65, 80], null],
    ]);
  });
});

describeRanges('radiatorOutput', radiatorOutput, radiator, [
  ['ratedOutputW', 0, 1_000_000],
  ['exponent', 1, 1.5],
]);
describeRanges('radiatorFactor', radiatorFactor, { meanDifferenceK: 40, exponent: 1.3 }, [
  ['meanDifferenceK', 0, 100],
  ['exponent', 1, 1.5],
]);
describeRanges('logarithmicMeanDifference', logarithmicMeanDifference, { supplyC: 70, returnC: 60, roomC: 20 }, [
  ['roomC', 0, 40],
  ['returnC', 20.5, 70],
  ['supplyC', 60, 120],
]);
describeRanges('usEmitterFactor', usEmitterFactor, { kind: 'baseboard' as UsEmitter, averageWaterC: 60, airC: 20 }, [
  ['averageWaterC', 20, 120],
  ['airC', 0, 40],
]);
describeRanges('bareBaseboardOutput', bareBaseboardOutput, { ratedOutput: 580 }, [['ratedOutput', 0, 1_000_000]]);
describeRanges('floorOutput', floorOutput, { surfaceOverRoomK: 9 }, [['surfaceOverRoomK', 0, 20]]);
describeRanges('floorSurfaceOverRoom', floorSurfaceOverRoom, { outputWPerM2: 50 }, [
  ['outputWPerM2', 0, 8.92 * 20 ** 1.1],
]);
