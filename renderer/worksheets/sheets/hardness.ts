/** One hardness in every unit the trade writes. */
import { convertHardness, type HardnessUnit } from '../../../domain/water/hardness.ts';
import { reading } from '../core/fields.ts';
import { numberLine } from '../core/line.ts';
import type { Measure } from '../core/measure.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';

const UNITS: readonly (readonly [unit: HardnessUnit, label: string, decimals: number])[] = [
  ['mmol/L', 'Alkaline earths, the same as mol/m³', 2],
  ['mg/L CaCO3', 'As CaCO₃, the same as ppm', 0],
  ['°dH', 'German degrees', 1],
  ['°fH', 'French degrees', 1],
  ['gpg US', 'Grains per US gallon', 1],
  ['°Clark', 'English (Clark) degrees', 1],
];

export const hardness = defineWorksheet({
  key: 'hardness',
  title: 'Hardness in other units',
  answers: 'One hardness in mmol/L, mg/L, German, French and English degrees and grains per gallon.',
  group: 'Hot water and water quality',
  fields: { hardnessMmolPerL: reading('hardnessMmolPerL', { alsoCalled: ['hardness'] }) },
  workOut: ({ hardnessMmolPerL }) => ({
    lines: UNITS.map(([unit, label, decimals]) =>
      numberLine(
        label,
        inUnit(unit, decimals),
        work({ hardnessMmolPerL }, (known) =>
          convertHardness({ value: known.hardnessMmolPerL, from: 'mmol/L', to: unit }),
        ),
      ),
    ),
  }),
  formula: ['through mmol/L: CaCO₃ 100.0869 g/mol, CaO 56.0774 g/mol; 1 °dH = 10 mg/L CaO, 1 °fH = 10 mg/L CaCO₃'],
  valid: ['mg/L and ppm always as CaCO₃, never as Ca.'],
  source: ['Definitions and molar masses; NIST SP 811 for the grain.'],
});

function inUnit(unit: HardnessUnit, decimals: number): Measure {
  return {
    dimension: null,
    units: [{ symbol: unit.replace('CaCO3', 'CaCO₃'), spellings: [], toOwn: (typed) => typed, fromOwn: (own) => own }],
    decimals,
  };
}
