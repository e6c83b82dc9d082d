/** What a glycol mixture does to frost, heat and expansion. */
import { glycolMassPct } from '../../../domain/hydronics/fluid/glycolConcentration.ts';
import { glycolFreezingPoint } from '../../../domain/hydronics/fluid/glycolFreezingPoint.ts';
import type { Glycol } from '../../../domain/hydronics/fluid/glycolKind.ts';
import { glycolProperties } from '../../../domain/hydronics/fluid/glycolProperties.ts';
import { liquidExpansion } from '../../../domain/hydronics/fluid/liquidExpansion.ts';
import { ok } from '../../../domain/result.ts';
import { curveOver } from '../chart/chart.ts';
import { choice, number, reading } from '../core/fields.ts';
import { numberLine } from '../core/line.ts';
import type { Measure } from '../core/measure.ts';
import { PERCENT_FINE, SHARE, TEMPERATURE } from '../core/measures.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';

const KINDS: Readonly<Record<Glycol, string>> = {
  'propylene-glycol': 'propylene glycol',
  'ethylene-glycol': 'ethylene glycol (poisonous)',
};

export const glycol = defineWorksheet({
  key: 'glycol',
  title: 'Glycol mixture',
  answers: 'Frost point, density, heat capacity, viscosity and expansion of a mixture.',
  group: 'Water side',
  caution: 'Ethylene glycol is poisonous. No mixture goes to a drain unless the local rule says so.',
  fields: {
    glycol: choice('Kind', KINDS, 'propylene-glycol'),
    glycolPct: reading('glycolPct', { label: 'Glycol by volume', alsoCalled: ['glycolVolPct'] }),
    temperatureC: number('At', TEMPERATURE, [-60, 110], { usual: { metric: '40', us: '104' }, alsoCalled: ['hotC'] }),
  },
  workOut({ glycol: kind, glycolPct, temperatureC }) {
    const massPct = work({ glycolPct }, (known) => glycolMassPct({ glycol: kind, glycolVolPct: known.glycolPct }));
    const properties = work({ massPct, temperatureC }, (known) =>
      glycolProperties({ glycol: kind, glycolMassPct: known.massPct, temperatureC: known.temperatureC }),
    );
    return {
      lines: [
        numberLine(
          'First ice at',
          TEMPERATURE,
          work({ massPct }, (known) => glycolFreezingPoint({ glycol: kind, glycolMassPct: known.massPct })),
          { main: true },
        ),
        numberLine('Glycol by mass', PERCENT_FINE, massPct),
        numberLine(
          'Density',
          DENSITY,
          work({ properties }, (known) => ok(known.properties.densityKgPerM3)),
        ),
        numberLine(
          'Heat capacity',
          HEAT_CAPACITY,
          work({ properties }, (known) => ok(known.properties.specificHeatKjPerKgK)),
        ),
        numberLine(
          'Viscosity',
          VISCOSITY,
          work({ properties }, (known) => ok(1000 * known.properties.viscosityPaS)),
        ),
        numberLine(
          'Expansion from 10 °C (50 °F)',
          { ...PERCENT_FINE, decimals: 2 },
          work({ massPct, temperatureC }, (known) => {
            const expansion = liquidExpansion({
              fluid: { kind, glycolMassPct: known.massPct },
              coldC: FILLED_AT_C,
              hotC: known.temperatureC,
            });
            return expansion.ok ? ok(100 * expansion.value) : expansion;
          }),
        ),
      ],
      chart: {
        title: 'First ice against the mixture',
        x: { label: 'Glycol by volume', measure: SHARE },
        y: { label: 'First ice', measure: TEMPERATURE },
        curves: [
          {
            label: KINDS[kind],
            points: curveOver(0, 55, (volPct) => frostAt(kind, volPct), 40),
            weight: 'main',
          },
        ],
        marks: glycolPct.ok ? marksAt(kind, glycolPct.value) : [],
      },
    };
  },
  formula: ['double polynomials in concentration and temperature; mass % from volume % at 20 °C'],
  valid: [
    '0–60 % by mass, from the frost point to 100 °C; above 40 °C the open test data end: allow ±1 %. Without inhibitors: the product’s sheet comes first.',
    'First ice is not burst protection, which products state several kelvin lower.',
  ],
  source: ['IIR 2010 (Melinder).'],
});

const FILLED_AT_C = 10;
const DENSITY: Measure = plain('kg/m³', 0);
const HEAT_CAPACITY: Measure = plain('kJ/(kg K)', 2);
const VISCOSITY: Measure = plain('mPa s', 2);

function plain(symbol: string, decimals: number): Measure {
  return {
    dimension: null,
    units: [{ symbol, spellings: [], toOwn: (typed) => typed, fromOwn: (own) => own }],
    decimals,
  };
}

function frostAt(kind: Glycol, volPct: number) {
  const mass = glycolMassPct({ glycol: kind, glycolVolPct: volPct });
  return mass.ok ? glycolFreezingPoint({ glycol: kind, glycolMassPct: mass.value }) : mass;
}

function marksAt(kind: Glycol, volPct: number) {
  const frost = frostAt(kind, volPct);
  return frost.ok ? [{ label: 'this mixture', at: [volPct, frost.value] as const }] : [];
}
