/** The timed meter of a run, with the heating value and the rating its input is held against. */
import type { AltitudeRule } from '../../gas/altitudeRule.ts';
import { standardAtmosphere } from '../../gas/standardAtmosphere.ts';
import { STANDARD_ATMOSPHERE_KPA } from '../../quantity/conversions.ts';
import type { Measured } from '../measured.ts';
import type { RunContext } from '../runContext.ts';

export type MeterReading = {
  readonly dial: Measured | undefined;
  readonly turns: Measured | undefined;
  readonly seconds: Measured | undefined;
  /** Everything of the timing that was read. */
  readonly read: readonly Measured[];
  readonly heatingValueMjPerM3: number | null;
  readonly heatingValueSource: string;
  /** Gross, as the heating value is. */
  readonly ratedInputKwGross: number | null;
};

export function meterReading(context: RunContext): MeterReading {
  const dial = context.latest('meterDialM3');
  const turns = context.latest('meterTurns');
  const seconds = context.latest('meterSeconds');
  const typedHeatingValue = context.latest('heatingValueMjPerM3');
  const { site } = context.record;
  return {
    dial,
    turns,
    seconds,
    read: [dial, turns, seconds, typedHeatingValue].filter((one): one is Measured => one !== undefined),
    heatingValueMjPerM3: typedHeatingValue?.value ?? site.heatingValueMjPerM3,
    heatingValueSource: typedHeatingValue ? 'read on site' : (site.heatingValueSource ?? 'no source noted'),
    ratedInputKwGross: ratedInputKwGross(context),
  };
}

/** A net plate is brought to the gross basis of the heating value: compare like with like. */
function ratedInputKwGross(context: RunContext): number | null {
  const { appliance } = context.record;
  const rated =
    appliance.ratedInputKw ?? context.latest('ratedInputKw')?.value ?? context.sheet.appliance.ratedInputMaxKw;
  if (rated === null) return null;
  const basis = appliance.ratedInputKw === null ? context.sheet.appliance.ratedInputBasis : appliance.ratedInputBasis;
  return basis === 'net' ? (rated * context.fuel.hhv25CKj) / context.fuel.lhv25CKj : rated;
}

/**
 * Metered volume to the cubic metre the heating value is stated for. Only the air pressure of a known altitude is allowed
 * for, on a meter that does not allow for it itself: the gas temperature at the meter is not recorded.
 */
export function meteredVolumeFactor(context: RunContext): { readonly factor: number; readonly how: string } {
  const { meterCompensation, altitudeM } = context.record.site;
  if (meterCompensation === 'temperature-pressure' || meterCompensation === null || altitudeM === null) {
    return { factor: 1, how: 'as metered' };
  }
  const air = standardAtmosphere({ elevationM: altitudeM });
  if (!air.ok) return { factor: 1, how: 'as metered' };
  const gaugeKpa = (context.latest('inletPressureMbarG', 'dynamic')?.value ?? 0) / 10;
  const factor = (air.value.pressureKpaAbs + gaugeKpa) / STANDARD_ATMOSPHERE_KPA;
  return { factor, how: 'by the air pressure of the altitude' };
}

export function altitudeRuleInWords(rule: AltitudeRule): string {
  switch (rule.method) {
    case 'not-on-sheet':
      return 'not on the sheet';
    case 'no-derate':
      return 'no derate';
    case 'per-1000-ft':
      return `${rule.pct} % per 1000 ft above ${rule.fromFt} ft, counted from ${
        rule.countedFrom === 'sea-level' ? 'sea level' : 'there'
      }`;
    case 'bands':
      return rule.bands.map(({ fromFt, toFt, pct }) => `${fromFt}–${toFt} ft: ${pct} %`).join('; ');
  }
}
