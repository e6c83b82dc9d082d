/**
 * The state a heating value per volume refers to. Two temperatures are in it and they differ: T1 at which the heat is
 * counted (water back to liquid at T1) and T2, p2 at which the cubic metre is measured.
 *
 * Source   ISO 6976:2016 clause 4; EN 437 (15 °C / 15 °C, dry); US practice 60 °F / 60 °F at 14.696 or 14.73 psia
 * Checked  tests/checks/combustion/heatingValue.test.ts
 */
import { fahrenheitToCelsius, psiToKpa, STANDARD_ATMOSPHERE_KPA, ZERO_CELSIUS_K } from '../quantity/conversions.ts';
import type { Celsius, Kelvin, KpaAbs } from '../quantity/units.ts';

/** The temperatures ISO 6976 tabulates molar heats for (60 °F is its 15.55 °C column). */
export type CombustionTemperature = '15 °C' | '60 °F' | '25 °C';
/** The temperatures real-gas summation factors are held for. */
export type MeteringTemperature = '15 °C' | '60 °F';

export type Metering =
  | { readonly kind: 'real-gas'; readonly temperature: MeteringTemperature }
  | { readonly kind: 'ideal-gas'; readonly temperatureC: Celsius };

export type ReferenceState = {
  readonly combustionTemperature: CombustionTemperature;
  readonly metering: Metering;
  readonly pressureKpaAbs: KpaAbs;
};

const SIXTY_FAHRENHEIT_C = fahrenheitToCelsius(60);

const METERING_TEMPERATURE_C: Readonly<Record<MeteringTemperature, Celsius>> = {
  '15 °C': 15,
  '60 °F': SIXTY_FAHRENHEIT_C,
};

/** Heat counted at 15 °C, volume at 15 °C and 1013.25 mbar, dry: European test gases and appliance inputs. */
export const EN_437_STATE: ReferenceState = {
  combustionTemperature: '15 °C',
  metering: { kind: 'real-gas', temperature: '15 °C' },
  pressureKpaAbs: STANDARD_ATMOSPHERE_KPA,
};

/** US standard cubic foot at 14.696 psia; some utilities bill on 14.73 instead, so the base travels with the number. */
export const US_14_696_PSIA_STATE: ReferenceState = {
  combustionTemperature: '60 °F',
  metering: { kind: 'real-gas', temperature: '60 °F' },
  pressureKpaAbs: psiToKpa(14.696),
};

export const US_14_73_PSIA_STATE: ReferenceState = { ...US_14_696_PSIA_STATE, pressureKpaAbs: psiToKpa(14.73) };

/** As US tables of pure gases print it: no compressibility. */
export const US_14_696_PSIA_IDEAL_STATE: ReferenceState = {
  ...US_14_696_PSIA_STATE,
  metering: { kind: 'ideal-gas', temperatureC: SIXTY_FAHRENHEIT_C },
};

export function meteringTemperatureK(metering: Metering): Kelvin {
  const temperatureC =
    metering.kind === 'real-gas' ? METERING_TEMPERATURE_C[metering.temperature] : metering.temperatureC;
  return temperatureC + ZERO_CELSIUS_K;
}
