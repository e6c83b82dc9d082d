import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unwrap } from '../../../domain/result.ts';
import { demineralisedShare } from '../../../domain/water/demineralisedShare.ts';
import { austrianFillWaterLimitDh, fillWaterLimit, hasTooMuchTopUp } from '../../../domain/water/fillWaterLimit.ts';
import type { FillWaterEdition } from '../../../domain/water/fillWaterTable.ts';
import { convertHardness, type HardnessUnit } from '../../../domain/water/hardness.ts';
import { scalePotential } from '../../../domain/water/scalePotential.ts';
import { describeRanges } from '../hydronics/describeRanges.ts';

const system = {
  edition: '2021' as FillWaterEdition,
  totalOutputKw: 100,
  smallestGeneratorKw: 40,
  generatorContentLPerKw: 0.5,
  systemVolumeL: 1000,
};

describe('fillWaterLimit', () => {
  it('takes the column from the smallest generator and the row from all of them', () => {
    expect(unwrap(fillWaterLimit(system))).toEqual({
      specificVolumeLPerKw: 25,
      limitMolPerM3: 1,
      limitDh: expect.closeTo(5.608, 3),
      source: 'VDI 2035 Part 1:2021',
      fromMemory: true,
    });
    expect(unwrap(fillWaterLimit({ ...system, edition: '2005' }))).toMatchObject({
      limitMolPerM3: 1.5,
      fromMemory: false,
    });
  });

  it('has no limit, and says null, in the softest case', () => {
    expect(
      unwrap(fillWaterLimit({ ...system, totalOutputKw: 30, smallestGeneratorKw: 30, systemVolumeL: 300 })),
    ).toMatchObject({ limitMolPerM3: null, limitDh: null });
  });

  it('never loosens when the plant or its water grows', async () => {
    await fc.assert(
      fc.property(
        fc.constantFrom<FillWaterEdition>('2005', '2021'),
        fc.double({ min: 1, max: 900, noNaN: true }),
        fc.double({ min: 0, max: 80, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (edition, outputKw, litresPerKw, factor) => {
          const limit = (kw: number, perKw: number) =>
            unwrap(
              fillWaterLimit({
                edition,
                totalOutputKw: kw,
                smallestGeneratorKw: kw,
                generatorContentLPerKw: 0.2,
                systemVolumeL: perKw * kw,
              }),
            ).limitMolPerM3 ?? Number.POSITIVE_INFINITY;
          expect(limit(outputKw * factor, litresPerKw)).toBeLessThanOrEqual(limit(outputKw, litresPerKw));
          expect(limit(outputKw, litresPerKw * factor)).toBeLessThanOrEqual(limit(outputKw, litresPerKw));
        },
      ),
    );
  });
});

describe('scalePotential', () => {
  it('is volume times hardness: 1 °fH is 10 mg/L', () => {
    const hardnessDh = unwrap(convertHardness({ value: 10, from: '°fH', to: '°dH' }));
    expect(unwrap(scalePotential({ volumeL: 250, hardnessDh }))).toBeCloseTo(25, 9);
  });
});

describe('hasTooMuchTopUp', () => {
  it('begins above three system volumes', () => {
    expect(unwrap(hasTooMuchTopUp({ systemVolumeL: 100, totalFilledL: 300 }))).toBe(false);
    expect(unwrap(hasTooMuchTopUp({ systemVolumeL: 100, totalFilledL: 300.1 }))).toBe(true);
  });
});

describe('convertHardness', () => {
  it('comes back from every unit', async () => {
    const unit = fc.constantFrom<HardnessUnit>('mmol/L', 'mg/L CaCO3', '°dH', '°fH', 'gpg US', '°Clark');
    await fc.assert(
      fc.property(unit, unit, fc.double({ min: 0, max: 1000, noNaN: true }), (from, to, value) => {
        const there = unwrap(convertHardness({ value, from, to }));
        expect(unwrap(convertHardness({ value: there, from: to, to: from }))).toBeCloseTo(value, 9);
      }),
    );
  });
});

describe('demineralisedShare', () => {
  it('mixes to the target', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 5, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 1, max: 5, noNaN: true }),
        (raw, demineralised, target) => {
          const { share, demineralisedL } = unwrap(demineralisedShare({ raw, demineralised, target, volumeL: 500 }));
          expect((1 - share) * raw + share * demineralised).toBeCloseTo(target, 9);
          expect(demineralisedL).toBeCloseTo(share * 500, 9);
        },
      ),
    );
  });

  it('needs none when the tap water is soft enough', () => {
    expect(unwrap(demineralisedShare({ raw: 5, demineralised: 0.1, target: 8, volumeL: 500 }))).toEqual({
      share: 0,
      demineralisedL: 0,
    });
    expect(unwrap(demineralisedShare({ raw: 5, demineralised: 5, target: 5, volumeL: 500 })).share).toBe(0);
  });
});

describeRanges('fillWaterLimit', fillWaterLimit, system, [
  ['totalOutputKw', 0.1, 100_000, { smallestGeneratorKw: 0.1 }],
  ['smallestGeneratorKw', 0.1, 100],
  ['generatorContentLPerKw', 0, 100],
  ['systemVolumeL', 0, 10_000_000],
]);
describeRanges('austrianFillWaterLimitDh', austrianFillWaterLimitDh, { specificVolumeLPerKw: 10 }, [
  ['specificVolumeLPerKw', 0, 10_000],
]);
describeRanges('hasTooMuchTopUp', hasTooMuchTopUp, { systemVolumeL: 100, totalFilledL: 100 }, [
  ['systemVolumeL', 1, 10_000_000],
  ['totalFilledL', 0, 1e9],
]);
describeRanges(
  'convertHardness',
  convertHardness,
  { value: 10, from: '°dH' as HardnessUnit, to: 'mmol/L' as HardnessUnit },
  [['value', 0, 1_000_000]],
);
describeRanges('demineralisedShare', demineralisedShare, { raw: 18, demineralised: 0.1, target: 11, volumeL: 800 }, [
  ['raw', 0.1, 100_000],
  ['target', 0.1, 100_000],
  ['demineralised', 0, 11],
  ['volumeL', 0, 10_000_000],
]);
describeRanges('scalePotential', scalePotential, { volumeL: 200, hardnessDh: 18 }, [
  ['volumeL', 0, 10_000_000],
  ['hardnessDh', 0, 200],
]);
