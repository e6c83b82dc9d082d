/** Gas rate and heat input by timing the meter. */
import { siteRatingKw } from '../../../domain/gas/altitudeRule.ts';
import { deviationFromRating, gasInput } from '../../../domain/gas/gasInput.ts';
import { meteredRate } from '../../../domain/gas/meterTiming.ts';
import { type HeatingValueBase, type MeterCompensation, volumeFactor } from '../../../domain/gas/volumeFactor.ts';
import { fahrenheitToCelsius, psiToKpa, STANDARD_ATMOSPHERE_KPA } from '../../../domain/quantity/conversions.ts';
import { ok } from '../../../domain/result.ts';
import { choice, number, reading } from '../core/fields.ts';
import { numberLine, rangeLine, wordsLine } from '../core/line.ts';
import { DURATION, GAS_PRESSURE, GAS_RATE, PERCENT_FINE, PLAIN, POWER, TEMPERATURE } from '../core/measures.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { airPressureKpaAbs, altitudeField } from './airFields.ts';
import { ALTITUDE_RULES, altitudeRuleField } from './altitudeRuleChoice.ts';
import { type VolumeBase, volumeBaseField } from './volumeBaseChoice.ts';

const CORRECTED = ['none', 'temperature', 'temperature-pressure'] as const;

export const gasRate = defineWorksheet({
  key: 'gas-rate',
  title: 'Gas rate by the meter',
  answers: 'Rate and input from a timed dial, with the spread of the stopwatch, against the rating.',
  group: 'Gas',
  caution:
    'Never raise a gas valve to reach a rating. Every other gas appliance off, no pilot of another one, steady full fire; gas work is for licensed people.',
  fields: {
    meterDialM3: reading('meterDialM3', { alsoCalled: ['dialM3'], help: 'What one turn of the dial measures.' }),
    meterTurns: reading('meterTurns', { alsoCalled: ['turns'], help: 'Two turns or two minutes at least.' }),
    meterSeconds: reading('meterSeconds', { alsoCalled: ['elapsedS'], help: 'For all turns; 1:10 is taken too.' }),
    timingUncertaintyS: number('Stopwatch, ±', DURATION, [0, 10], { usual: '1', help: 'Both ends together.' }),
    heatingValueMjPerM3: reading('heatingValueMjPerM3', { help: 'From the supplier.' }),
    correction: choice(
      'Meter',
      {
        'as-metered': 'heating value is per metered volume: no correction',
        none: 'without compensation',
        temperature: 'compensated for temperature (TC)',
        'temperature-pressure': 'compensated for temperature and pressure',
      },
      'as-metered',
    ),
    base: volumeBaseField('Heating value is at', { onlyFor: { field: 'correction', is: CORRECTED } }),
    gasPressureMbarG: number('Gas pressure at the meter', GAS_PRESSURE, [-5, 1000], {
      alsoCalled: ['pressureMbarG'],
      onlyFor: { field: 'correction', is: ['none', 'temperature'] },
    }),
    gasTemperatureC: number('Gas temperature at the meter', TEMPERATURE, [-40, 60], {
      alsoCalled: ['temperatureC'],
      onlyFor: { field: 'correction', is: ['none'] },
    }),
    altitudeM: altitudeField,
    ratedInputKw: reading('ratedInputKw', {
      help: 'On the basis of the heating value: US plates gross, most European ones net.',
    }),
    altitudeRule: altitudeRuleField,
  },
  workOut(given) {
    const { meterDialM3, meterTurns, meterSeconds, timingUncertaintyS, heatingValueMjPerM3 } = given;
    const timing = work({ meterDialM3, meterTurns, meterSeconds, timingUncertaintyS }, (known) =>
      ok({
        dialM3: known.meterDialM3,
        turns: known.meterTurns,
        elapsedS: known.meterSeconds,
        timingUncertaintyS: known.timingUncertaintyS,
      }),
    );
    const rate = work({ timing }, (known) => meteredRate(known.timing));
    const correction = given.correction;
    const base = BASES[given.base];
    // Compensation has made part of the correction: what it allows for need not be known.
    const gasTemperatureC = correction === 'none' ? given.gasTemperatureC : ok(base.baseC);
    const pressureMbarG = correction === 'none' || correction === 'temperature' ? given.gasPressureMbarG : ok(0);
    const factor =
      correction === 'as-metered'
        ? ok(1)
        : work({ pressureMbarG, gasTemperatureC, barometerKpaAbs: airPressureKpaAbs(given.altitudeM) }, (known) =>
            volumeFactor({
              gas: {
                barometerKpaAbs: known.barometerKpaAbs,
                pressureMbarG: known.pressureMbarG,
                temperatureC: known.gasTemperatureC,
              },
              compensation: compensationOf(correction, base),
              base,
            }),
          );
    const input = work({ timing, factor, heatingValueMjPerM3 }, (known) =>
      gasInput({
        timing: known.timing,
        volumeFactor: known.factor,
        heatingValueMjPerM3: known.heatingValueMjPerM3,
        basis: 'gross',
      }),
    );
    const rule = ALTITUDE_RULES[given.altitudeRule];
    const { ratedInputKw, altitudeM } = given;
    const rating = work({ ratedInputKw, altitudeM }, (known) =>
      siteRatingKw({ ratedInputKw: known.ratedInputKw, rule, elevationM: known.altitudeM }),
    );
    const deviation = work({ rating, input }, (known) =>
      deviationFromRating({ measured: known.input, siteRatingKw: known.rating }),
    );
    return {
      lines: [
        numberLine(
          'Gas rate, as metered',
          GAS_RATE,
          work({ rate }, (known) => ok(known.rate.rateM3PerH)),
          {
            main: true,
            plusMinus: () => (rate.ok ? (rate.value.highestM3PerH - rate.value.lowestM3PerH) / 2 : undefined),
          },
        ),
        ...(correction === 'as-metered'
          ? []
          : [numberLine('Volume factor to the base', { ...PLAIN, decimals: 4 }, factor)]),
        numberLine(
          'Input',
          POWER,
          work({ input }, (known) => ok(known.input.inputKw)),
          {
            main: true,
            plusMinus: () => (input.ok ? (input.value.highestKw - input.value.lowestKw) / 2 : undefined),
          },
        ),
        wordsLine(
          'Timing',
          work({ rate }, (known) =>
            ok(
              known.rate.isLongEnough
                ? ({ words: 'long enough', tone: 'good' } as const)
                : ({ words: 'too short: two turns or two minutes', tone: 'doubt' } as const),
            ),
          ),
        ),
        numberLine('Rating at this altitude', POWER, rating, { extra: true }),
        rangeLine(
          'Input over the rating',
          PERCENT_FINE,
          work({ deviation }, (known) => ok([known.deviation.lowestPct, known.deviation.highestPct] as const)),
          { extra: true },
        ),
        wordsLine(
          'So the input is',
          work({ deviation }, ({ deviation: { isRatingInsideInterval, deviationPct } }) =>
            ok(
              isRatingInsideInterval
                ? ({ words: 'not to be told apart from the rating by this timing', tone: 'plain' } as const)
                : ({
                    words: deviationPct > 0 ? 'above the rating' : 'below the rating',
                    tone: 'doubt',
                  } as const),
            ),
          ),
          { extra: true },
        ),
      ],
    };
  },
  formula: [
    'rate = 3600 · turns · dial / seconds',
    'F = (air pressure + gas pressure) / base pressure · base temperature / gas temperature, absolute',
    'input = rate · F · heating value / 3.6',
  ],
  valid: [
    '5 to 7200 s; steady full fire of one appliance. ±1 s on 17 s is ±6 %.',
    'The spread holds the timing only: heating value, pressure and temperature are as good as their sources.',
    'A heating value per metered volume must not be corrected again.',
    'A ½ ft³ dial taken for a 2 ft³ one is a factor of 4.',
  ],
  source: [
    'Arithmetic; how long to time as the US fuel-gas handbook and UK practice recommend. Ideal gas for the correction.',
    'Air pressure: US Standard Atmosphere 1976. Altitude rules as appliance texts quote NFPA 54 and the Canadian code: the maker’s own wins.',
  ],
});

type Base = Extract<HeatingValueBase, { kind: 'at-base' }>;

const SIXTY_F_C = fahrenheitToCelsius(60);

const BASES: Readonly<Record<VolumeBase, Base>> = {
  'europe-15': { kind: 'at-base', baseC: 15, baseKpaAbs: STANDARD_ATMOSPHERE_KPA },
  'us-14-73': { kind: 'at-base', baseC: SIXTY_F_C, baseKpaAbs: psiToKpa(14.73) },
  'us-14-696': { kind: 'at-base', baseC: SIXTY_F_C, baseKpaAbs: psiToKpa(14.696) },
};

function compensationOf(kind: (typeof CORRECTED)[number], { baseC, baseKpaAbs }: Base): MeterCompensation {
  switch (kind) {
    case 'none':
      return { kind };
    case 'temperature':
      return { kind, toC: baseC };
    case 'temperature-pressure':
      return { kind, toC: baseC, toKpaAbs: baseKpaAbs };
  }
}
