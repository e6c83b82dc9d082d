/** Water a condensing boiler drains, and where it may go. */
import { combustionEfficiency } from '../../../domain/combustion/combustionEfficiency.ts';
import { condensateKgPerKwh, condensateLPerH } from '../../../domain/combustion/condensate.ts';
import { STANDARD_ATMOSPHERE_KPA } from '../../../domain/quantity/conversions.ts';
import { ok } from '../../../domain/result.ts';
import {
  meetsSewerFloor,
  NEUTRALISED_PH,
  neutraliserByGermanGuidance,
  REAL_CONDENSATE_SHARE,
  USUAL_CONDENSATE_PH,
} from '../../../domain/water/condensate.ts';
import { choice, number, reading } from '../core/fields.ts';
import { numberLine, rangeLine, wordsLine } from '../core/line.ts';
import { GRAMS_PER_KWH, LITRES_PER_HOUR, PERCENT_FINE, PH, POWER, TIMES } from '../core/measures.ts';
import { between } from '../core/usual.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { FUELS, fuelField } from './fuelChoice.ts';

export const condensate = defineWorksheet({
  key: 'condensate',
  title: 'Condensate',
  answers: 'How much water a condensing boiler drains at most, and whether it may go to the sewer as it is.',
  group: 'Burner and flue',
  caution: 'Condensate is acid. A dry trap lets flue gas, and with it carbon monoxide, into the room: fill it first.',
  fields: {
    fuel: fuelField,
    inputKwGross: number('Gross input', POWER, [0, 10_000]),
    o2DryVolPct: reading('o2DryVolPct'),
    flueGasC: reading('flueGasC'),
    intakeAirC: reading('intakeAirC', { usual: { metric: '20', us: '68' }, alsoCalled: ['airC'] }),
    condensateOutletPh: reading('condensateOutletPh', { alsoCalled: ['outletPh'] }),
    localFloorPh: number('Lowest pH the sewer takes', PH, [0, 14], { usual: '5', help: 'The local rule comes first.' }),
    outputKw: number('Output of the boilers', POWER, [0, 100_000], { help: 'For the German guidance.' }),
    dischargesTo: choice(
      'Drains to',
      { 'public-sewer': 'a public sewer', 'septic-plant': 'a septic plant' },
      'public-sewer',
    ),
    dilutionTimes: number('Diluted by other waste water', TIMES, [0, 1_000_000]),
    pipes: choice('Pipes withstand acid', { yes: 'yes', no: 'no or not known' }, 'no'),
  },
  workOut(given) {
    const fuel = FUELS[given.fuel];
    const {
      inputKwGross,
      o2DryVolPct,
      flueGasC,
      intakeAirC,
      condensateOutletPh,
      localFloorPh,
      outputKw,
      dilutionTimes,
    } = given;
    const flue = work({ o2DryVolPct, flueGasC, intakeAirC }, (known) =>
      combustionEfficiency({
        fuel,
        o2DryVolPct: known.o2DryVolPct,
        flueGasC: known.flueGasC,
        airC: known.intakeAirC,
        airRelativeHumidityPct: 0,
        pressureKpaAbs: STANDARD_ATMOSPHERE_KPA,
      }),
    );
    const condensedFraction = work({ flue }, (known) => ok(known.flue.condensedFraction));
    const atMost = work({ inputKwGross, condensedFraction }, (known) => condensateLPerH({ fuel, ...known }));
    const ceiling = condensateKgPerKwh({ fuel, basis: 'gross', condensedFraction: 1 });
    return {
      lines: [
        numberLine('Drains at most', LITRES_PER_HOUR, atMost, { main: true }),
        rangeLine(
          'Of that in practice',
          LITRES_PER_HOUR,
          work({ atMost }, (known) => {
            const [least, most] = REAL_CONDENSATE_SHARE;
            return ok([least * known.atMost, most * known.atMost] as const);
          }),
        ),
        numberLine(
          'If all of it condensed',
          LITRES_PER_HOUR,
          work({ inputKwGross }, (known) => condensateLPerH({ fuel, condensedFraction: 1, ...known })),
        ),
        numberLine(
          'If all of it condensed, per kWh gross',
          { ...GRAMS_PER_KWH, decimals: 0 },
          work({}, () => (ceiling.ok ? ok(1000 * ceiling.value) : ceiling)),
        ),
        numberLine(
          'Fuel’s water condensed, at best',
          PERCENT_FINE,
          work({ condensedFraction }, (known) => ok(100 * known.condensedFraction)),
        ),
        wordsLine(
          'At this pH the sewer',
          work({ condensateOutletPh, localFloorPh }, (known) => {
            const meets = meetsSewerFloor({ outletPh: known.condensateOutletPh, localFloorPh: known.localFloorPh });
            if (!meets.ok) return meets;
            return ok(
              meets.value
                ? ({ words: 'takes it, by this floor', tone: 'good' } as const)
                : ({ words: 'does not take it: neutralise', tone: 'bad' } as const),
            );
          }),
          { extra: true },
        ),
        wordsLine(
          'Neutraliser, by German guidance',
          work({ outputKw, dilutionTimes }, (known) => {
            const needed = neutraliserByGermanGuidance({
              ...known,
              dischargesTo: given.dischargesTo,
              hasAcidProofPipes: given.pipes === 'yes',
            });
            if (!needed.ok) return needed;
            return ok(needed.value === 'needed' ? 'needed' : 'normally not needed');
          }),
          { extra: true },
        ),
      ],
    };
  },
  formula: [
    'L/h = input · water of the fuel per kWh · share that condenses',
    'share that condenses: flue gas saturated at its temperature',
  ],
  valid: [
    'An upper estimate: a real exchanger does not saturate the flue gas. Moisture of the combustion air is not in it; air pressure at sea level.',
    'German guidance is for gas boilers: above 200 kW or into a septic plant a neutraliser is needed.',
  ],
  usual: [
    {
      title: 'What condensate measures',
      columns: ['pH'],
      rows: [
        {
          label: 'As it leaves the boiler',
          figures: [between(PH, USUAL_CONDENSATE_PH)],
          notes: ['common practice, no source', '2.9–4 is reported too'],
        },
        {
          label: 'Behind a neutraliser',
          figures: [between(PH, NEUTRALISED_PH)],
          notes: ['common practice, no source', 'checked every year'],
        },
      ],
    },
  ],
  source: [
    'Mass balance; IAPWS R7-97(2012). In practice 40–80 % of it: common practice, no source.',
    'pH floor 5.0: 40 CFR 403.5(b), for discharges that are not domestic. Guidance: DWA-A 251 as quoted by a town and trade journals.',
  ],
});
