/** Hardness units, blending and scale: H1–H4, H7, H8. */
import { unwrap } from '../../../domain/result.ts';
import { demineralisedShare } from '../../../domain/water/demineralisedShare.ts';
import { convertHardness, type HardnessUnit } from '../../../domain/water/hardness.ts';
import { scalePotential } from '../../../domain/water/scalePotential.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, lastFigure, percent, published } from '../hydronics/rowKinds.ts';

const DEFINITIONS = 'hardness definitions and molar masses';
const GRAIN = 'NIST SP 811 grain and hardness definitions';
const VDI = 'VDI 2035 Part 1:2005 as quoted in third-party manuals';

function converted(value: number, from: HardnessUnit, to: HardnessUnit): () => number {
  return () => unwrap(convertHardness({ value, from, to }));
}
const h7 = () => unwrap(demineralisedShare({ raw: 18, demineralised: 0.1, target: 11.2, volumeL: 800 }));

export const waterQualityRows: readonly CheckRow[] = [
  published('H1.mg', '1 °dH', 'mg/L CaCO3', 17.85, percent(0.1), DEFINITIONS, converted(1, '°dH', 'mg/L CaCO3')),
  published('H1.mmol', '1 °dH', 'mmol/L', 0.1783, percent(0.1), DEFINITIONS, converted(1, '°dH', 'mmol/L')),
  computed('H1.gpg', '1 °dH', 'gpg (US)', 1.043, percent(0.1), GRAIN, converted(1, '°dH', 'gpg US')),
  published('H2.mg', '10 gpg (US)', 'mg/L CaCO3', 171.2, percent(0.1), GRAIN, converted(10, 'gpg US', 'mg/L CaCO3')),
  computed('H2.dh', '10 gpg (US)', '°dH', 9.59, percent(0.1), GRAIN, converted(10, 'gpg US', '°dH')),
  // Printed ±0.1 %, but 17.1 itself is rounded by more than that from 17.118: half a unit of the printed figure instead.
  computed('H2.fh', '10 gpg (US)', '°fH', 17.1, lastFigure(1), GRAIN, converted(10, 'gpg US', '°fH')),
  computed('H2.mmol', '10 gpg (US)', 'mmol/L', 1.71, percent(0.1), GRAIN, converted(10, 'gpg US', 'mmol/L')),
  ...(
    [
      [3.0, 16.8],
      [2.0, 11.2],
      [1.5, 8.4],
    ] as const
  ).map(([molPerM3, expected]) =>
    published(
      `H3.${molPerM3 * 10}`,
      `${molPerM3} mol/m³`,
      '°dH',
      expected,
      0.1,
      VDI,
      converted(molPerM3, 'mmol/L', '°dH'),
    ),
  ),
  published('H4', '1 °Clark', 'mg/L CaCO3', 14.25, percent(0.1), DEFINITIONS, converted(1, '°Clark', 'mg/L CaCO3')),
  published(
    'H7.share',
    '18 °dH tap, 0.1 °dH demin, to 11.2 °dH, 800 L',
    'demin, %',
    38,
    1,
    `${VDI}, worked example`,
    () => 100 * h7().share,
  ),
  published('H7.litres', 'same', 'demin, L', 304, 1, `${VDI}, worked example`, () => h7().demineralisedL),
  computed('H8', '200 L at 18 °dH', 'g CaCO3', 64, 1, 'arithmetic', () =>
    unwrap(scalePotential({ volumeL: 200, hardnessDh: 18 })),
  ),
  // The factors of the text beside the table, all printed figures.
  ...(
    [
      ['mmol/L', 'mg/L CaCO3', 100.09, 0.005],
      ['mmol/L', '°dH', 5.608, 0.0005],
      ['mmol/L', '°fH', 10.01, 0.005],
      ['°dH', 'mg/L CaCO3', 17.848, 0.0005],
      ['°fH', 'mg/L CaCO3', 10, 1e-9],
      ['gpg US', 'mg/L CaCO3', 17.118, 0.0005],
      ['°Clark', 'mg/L CaCO3', 14.254, 0.0005],
    ] as const
  ).map(([from, to, expected, tolerance]) =>
    computed(`HF ${from} → ${to}`, `1 ${from}`, to, expected, tolerance, DEFINITIONS, converted(1, from, to)),
  ),
];
