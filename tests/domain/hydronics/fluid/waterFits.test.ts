/** The short fits stay within the errors they claim against IF97, and they are the printed polynomials to the last digit. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  waterDensityFit,
  waterSpecificHeatFit,
  waterVapourPressureFit,
} from '../../../../domain/hydronics/fluid/waterFits.ts';
import { waterProperties, waterVapourPressure } from '../../../../domain/hydronics/fluid/waterProperties.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

const temperature = fc.double({ min: 0, max: 100, noNaN: true });

describe('water fits', () => {
  it('density is within 0.012 kg/m³ of IF97', async () => {
    await fc.assert(
      fc.property(temperature, (temperatureC) => {
        const exact = unwrap(waterProperties({ temperatureC })).densityKgPerM3;
        expect(Math.abs(unwrap(waterDensityFit({ temperatureC })) - exact)).toBeLessThanOrEqual(0.012);
      }),
    );
  });

  // The reference prints 0.0008 for the whole range; close to freezing the fit misses by more.
  it('heat capacity is within 0.0008 kJ/(kg K) of IF97 from 1 °C up, within 0.0013 from 0 °C', async () => {
    await fc.assert(
      fc.property(temperature, (temperatureC) => {
        const exact = unwrap(waterProperties({ temperatureC })).specificHeatKjPerKgK;
        expect(Math.abs(unwrap(waterSpecificHeatFit({ temperatureC })) - exact)).toBeLessThanOrEqual(
          temperatureC < 1 ? 0.0013 : 0.0008,
        );
      }),
    );
  });

  it('vapour pressure is within 0.11 % of IF97', async () => {
    await fc.assert(
      fc.property(temperature, (temperatureC) => {
        const exact = unwrap(waterVapourPressure({ temperatureC }));
        expect(Math.abs(unwrap(waterVapourPressureFit({ temperatureC })) / exact - 1)).toBeLessThanOrEqual(0.0011);
      }),
    );
  });

  // Worked out a second time from the printed coefficients, in a language with its own arithmetic.
  it.each([
    [37, 993.328656917628, 4.17878650698152, 6.2798847276505],
    [100, 958.363657051658, 4.2161, 101.307780897225],
  ])('is the printed formula at %s °C', (temperatureC, density, heat, vapour) => {
    expect(unwrap(waterDensityFit({ temperatureC }))).toBeCloseTo(density, 9);
    expect(unwrap(waterSpecificHeatFit({ temperatureC }))).toBeCloseTo(heat, 12);
    expect(unwrap(waterVapourPressureFit({ temperatureC }))).toBeCloseTo(vapour, 10);
  });
});

describeRanges('waterDensityFit', waterDensityFit, { temperatureC: 50 }, [['temperatureC', 0, 100]]);
describeRanges('waterSpecificHeatFit', waterSpecificHeatFit, { temperatureC: 50 }, [['temperatureC', 0, 100]]);
describeRanges('waterVapourPressureFit', waterVapourPressureFit, { temperatureC: 50 }, [['temperatureC', 0, 100]]);
