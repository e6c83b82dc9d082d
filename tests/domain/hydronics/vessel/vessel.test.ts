import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LINEAR_EXPANSION_PER_K } from '../../../../domain/hydronics/vessel/pipeGrowth.ts';
import { diaphragmTankVolume, plainTankVolume, type TankDuty } from '../../../../domain/hydronics/vessel/tankVolume.ts';
import { vesselFillWindow } from '../../../../domain/hydronics/vessel/vesselFillWindow.ts';
import {
  effectivePreCharge,
  vesselGasVolume,
  vesselHotPressure,
  vesselWaterHeld,
} from '../../../../domain/hydronics/vessel/vesselGas.ts';
import { vesselSizeToChoose, vesselVolumeNeeded } from '../../../../domain/hydronics/vessel/vesselVolumeNeeded.ts';
import { waterReserve } from '../../../../domain/hydronics/vessel/waterReserve.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges, expectSoundAnswer } from '../describeRanges.ts';

const tank: TankDuty = {
  systemVolumeL: 1000,
  expansionFraction: 0.04,
  temperatureRiseK: 80,
  pipeMetal: null,
  coldPressureBarAbs: 2,
  hotPressureBarAbs: 4,
};
const duty = { systemVolumeL: 150, expansionFraction: 0.03, preChargeBarG: 1, endPressureBarG: 2.5 };

describe('tanks', () => {
  it('diaphragm: 40 L of growth over half the pressure makes 80 L', () => {
    expect(unwrap(diaphragmTankVolume(tank))).toBeCloseTo(80, 10);
  });

  it('plain: the same growth over Pa/P1 − Pa/P2, standard air unless told', () => {
    expect(unwrap(plainTankVolume({ ...tank, atmosphericPressureBarAbs: 1 }))).toBeCloseTo(160, 10);
    expect(unwrap(plainTankVolume(tank))).toBeCloseTo(40 / (1.01325 / 2 - 1.01325 / 4), 10);
  });

  it('lets the pipes take up three times their length’s growth', () => {
    const steel = unwrap(diaphragmTankVolume({ ...tank, pipeMetal: 'steel' }));
    expect(steel).toBeCloseTo(2 * 1000 * (0.04 - 3 * 11.7e-6 * 80), 10);
    // ASHRAE per °F, printed per K as 11.7e-6 and 17.1e-6.
    expect(LINEAR_EXPANSION_PER_K.steel).toBeCloseTo(11.7e-6, 15);
    expect(LINEAR_EXPANSION_PER_K.copper).toBeCloseTo(17.1e-6, 15);
  });

  it('refuses a system whose pipes grow more than its water', () => {
    expect(diaphragmTankVolume({ ...tank, expansionFraction: 0.001, pipeMetal: 'copper' })).toMatchObject({
      ok: false,
      error: { quantity: 'expansionBeyondThePipes' },
    });
    expect(plainTankVolume({ ...tank, expansionFraction: 0.001, pipeMetal: 'copper' })).toMatchObject({ ok: false });
  });
});

describe('European vessel', () => {
  it('needs (Ve + reserve)(pe + 1)/(pe − p0)', () => {
    expect(unwrap(vesselVolumeNeeded({ ...duty, waterReserveL: 3 }))).toBeCloseTo((7.5 * 3.5) / 1.5, 12);
  });

  it('keeps 20 % of a small vessel, else 0.5 % of the system or 3 L', () => {
    const reserve = (systemVolumeL: number, vesselVolumeL: number) =>
      unwrap(waterReserve({ systemVolumeL, vesselVolumeL }));
    expect([reserve(150, 15), reserve(150, 15.01), reserve(600, 100), reserve(1000, 100)]).toEqual([3, 3, 3, 5]);
    expect(reserve(150, 8)).toBeCloseTo(1.6, 12);
    expect(reserve(5000, 10)).toBe(2);
  });

  it('chooses the first size that is large enough with its own reserve', () => {
    const choose = (systemVolumeL: number) => unwrap(vesselSizeToChoose({ ...duty, systemVolumeL }));
    expect(choose(1)).toBe(8);
    // (2.7 + 20 % of 12)·3.5/1.5 = 11.9; with 8 L it would be 10.0.
    expect(choose(90)).toBe(12);
    // The catalogue: growing the system by small steps meets every size once.
    const met = new Set<number | undefined>();
    for (let litres = 1; litres < 20_000; litres *= 1.01) met.add(choose(litres));
    expect([...met]).toEqual([8, 12, 18, 25, 35, 50, 80, 100, 140, 200, 250, 300, 400, 500, 600, 800, 1000, undefined]);
  });

  it('passes on what the duty may not be', () => {
    expect(vesselSizeToChoose({ ...duty, endPressureBarG: 1 })).toMatchObject({ ok: false });
    expect(vesselSizeToChoose({ ...duty, systemVolumeL: -1 })).toMatchObject({ ok: false });
  });

  it('is too small exactly when its fill window closes', () => {
    const window = (vesselVolumeL: number) => unwrap(vesselFillWindow({ ...duty, vesselVolumeL, waterReserveL: 3 }));
    const needed = unwrap(vesselVolumeNeeded({ ...duty, waterReserveL: 3 }));
    expect(window(needed * 1.001).isVesselTooSmall).toBe(false);
    expect(window(needed * 0.999).isVesselTooSmall).toBe(true);
    expect(window(needed).lowestBarG).toBeCloseTo(window(needed).highestBarG, 9);
  });
});

describe('vessel gas', () => {
  const vessel = { vesselVolumeL: 12, preChargeBarG: 0.75 };

  it('fills the whole vessel up to the pre-charge', () => {
    expect(unwrap(vesselGasVolume({ ...vessel, pressureBarG: 0.5 }))).toBe(12);
    expect(unwrap(vesselWaterHeld({ ...vessel, pressureBarG: 0.75 }))).toBe(0);
    expect(unwrap(vesselWaterHeld({ ...vessel, pressureBarG: 0 }))).toBe(0);
  });

  it('takes 1.013 bar of air unless told', () => {
    const standard = unwrap(vesselGasVolume({ ...vessel, pressureBarG: 1 }));
    expect(standard).toBeCloseTo((12 * 1.763) / 2.013, 12);
    const high = unwrap(vesselGasVolume({ ...vessel, pressureBarG: 1, atmosphericPressureBarAbs: 0.8 }));
    expect(high).toBeCloseTo((12 * 1.55) / 1.8, 12);
  });

  it('gives the pre-charge back from its own two pressures', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1.5, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (preChargeBarG, overBar, expandedWaterL) => {
          const coldPressureBarG = preChargeBarG + overBar;
          const at = { vesselVolumeL: 18, coldPressureBarG, expandedWaterL };
          const hotPressureBarG = unwrap(vesselHotPressure({ ...at, preChargeBarG }));
          const found = effectivePreCharge({ ...at, hotPressureBarG });
          // Exactly at the pre-charge the gas fills the vessel, and rounding may ask for a hair more.
          if (overBar > 1e-9) expect(unwrap(found)).toBeCloseTo(preChargeBarG, 9);
        },
      ),
    );
  });

  it('rises with every litre of expansion and with every loss of pre-charge', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 4, noNaN: true }),
        (preChargeBarG, expandedWaterL) => {
          const hot = (charge: number, litres: number) =>
            unwrap(
              vesselHotPressure({
                vesselVolumeL: 18,
                preChargeBarG: charge,
                coldPressureBarG: 1,
                expandedWaterL: litres,
              }),
            );
          expect(hot(preChargeBarG, expandedWaterL + 0.1)).toBeGreaterThan(hot(preChargeBarG, expandedWaterL));
          expect(hot(preChargeBarG - 0.1, expandedWaterL + 0.1)).toBeGreaterThan(
            hot(preChargeBarG, expandedWaterL + 0.1),
          );
        },
      ),
    );
  });

  it('counts a cold pressure below the pre-charge as the pre-charge', () => {
    const hot = (coldPressureBarG: number) =>
      unwrap(vesselHotPressure({ ...vessel, coldPressureBarG, expandedWaterL: 2 }));
    expect(hot(0.2)).toBe(hot(0.75));
  });

  it('says so when readings need more gas than the vessel has room for', () => {
    expect(
      effectivePreCharge({ vesselVolumeL: 4, coldPressureBarG: 1, hotPressureBarG: 1.5, expandedWaterL: 2 }),
    ).toMatchObject({ ok: false, error: { quantity: 'gasVolumeL', validMax: 4 } });
  });

  it('never answers with something else than numbers', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 100_000, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (vesselVolumeL, preChargeBarG, pressureBarG) => {
          expectSoundAnswer(vesselGasVolume({ vesselVolumeL, preChargeBarG, pressureBarG }));
          expectSoundAnswer(
            vesselHotPressure({ vesselVolumeL, preChargeBarG, coldPressureBarG: pressureBarG, expandedWaterL: 0.01 }),
          );
        },
      ),
    );
  });
});

describeRanges('diaphragmTankVolume', diaphragmTankVolume, tank, [
  ['systemVolumeL', 0, 1_000_000],
  ['expansionFraction', 0, 0.2],
  ['temperatureRiseK', 0, 200],
  ['coldPressureBarAbs', 0.1, 30, { hotPressureBarAbs: 31 }],
  ['hotPressureBarAbs', 2.01, 31],
]);
describeRanges('plainTankVolume', plainTankVolume, { ...tank, atmosphericPressureBarAbs: 1 }, [
  ['atmosphericPressureBarAbs', 0.5, 1.1],
]);
describeRanges('waterReserve', waterReserve, { systemVolumeL: 150, vesselVolumeL: 18 }, [
  ['systemVolumeL', 0, 1_000_000],
  ['vesselVolumeL', 0, 100_000],
]);
describeRanges('vesselVolumeNeeded', vesselVolumeNeeded, { ...duty, waterReserveL: 3 }, [
  ['systemVolumeL', 0, 1_000_000],
  ['expansionFraction', 0, 0.2],
  ['preChargeBarG', 0, 16, { endPressureBarG: 17 }],
  ['endPressureBarG', 1.01, 17],
  ['waterReserveL', 0, 10_000],
]);
describeRanges('vesselFillWindow', vesselFillWindow, { ...duty, vesselVolumeL: 18, waterReserveL: 3 }, [
  ['systemVolumeL', 0, 1_000_000],
  ['vesselVolumeL', 1, 100_000, { waterReserveL: 0.5 }],
  ['waterReserveL', 0, 0.9 * 18],
]);
const gas = { vesselVolumeL: 12, preChargeBarG: 0.75, atmosphericPressureBarAbs: 1 };
describeRanges('vesselGasVolume', vesselGasVolume, { ...gas, pressureBarG: 1 }, [
  ['vesselVolumeL', 0.5, 100_000],
  ['preChargeBarG', 0, 20],
  ['pressureBarG', 0, 20],
  ['atmosphericPressureBarAbs', 0.5, 1.1],
]);
describeRanges('vesselHotPressure', vesselHotPressure, { ...gas, coldPressureBarG: 1, expandedWaterL: 2 }, [
  ['coldPressureBarG', 0, 20, { expandedWaterL: 0.1 }],
  ['expandedWaterL', 0, (0.95 * 12 * 1.75) / 2],
]);
describeRanges(
  'effectivePreCharge',
  effectivePreCharge,
  { vesselVolumeL: 100, coldPressureBarG: 1, hotPressureBarG: 2, expandedWaterL: 2, atmosphericPressureBarAbs: 1 },
  [
    ['vesselVolumeL', 0.5, 100_000, { expandedWaterL: 0.1 }],
    ['coldPressureBarG', 0, 20, { hotPressureBarG: 40 }],
    ['hotPressureBarG', 1.02, 40, { expandedWaterL: 0.1 }],
    ['expandedWaterL', 0.001, 10_000, { vesselVolumeL: 100_000 }],
    ['atmosphericPressureBarAbs', 0.5, 1.1],
  ],
);
