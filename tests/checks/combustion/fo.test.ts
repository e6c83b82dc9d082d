/** The Fo test of an O2/CO2 pair. Sources by code in ../README.md. */
import { foFromFFactors } from '../../../domain/combustion/fFactors.ts';
import { foPlausibility } from '../../../domain/combustion/foPlausibility.ts';
import { G20 } from '../../../domain/combustion/fuels.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

function foOnG20(o2DryVolPct: number, co2DryVolPct: number, coPpmDry: number): number {
  return unwrap(foPlausibility({ fuel: G20, o2DryVolPct, co2DryVolPct, coPpmDry })).fo;
}

const rows: readonly CheckRow[] = [
  {
    id: 'FO-01',
    inputs: 'Fd 8710, Fc 1040',
    quantity: 'Fo = 0.209 Fd/Fc, natural gas',
    expected: 1.75,
    tolerance: 0.002,
    kind: 'C',
    source: 'S4/S5 [B]',
    compute: () => unwrap(foFromFFactors({ fdDscfPerMmbtu: 8710, fcScfPerMmbtu: 1040 })),
  },
  {
    id: 'FO-02',
    inputs: 'Fd 8710, Fc 1190',
    quantity: 'Fo, propane',
    expected: 1.53,
    tolerance: 0.002,
    kind: 'C',
    source: 'S5 [B]',
    compute: () => unwrap(foFromFFactors({ fdDscfPerMmbtu: 8710, fcScfPerMmbtu: 1190 })),
  },
  {
    id: 'FO-03',
    inputs: 'Fd 8710, Fc 1250',
    quantity: 'Fo, butane',
    expected: 1.456,
    tolerance: 0.002,
    kind: 'C',
    source: 'S5 [B]',
    compute: () => unwrap(foFromFFactors({ fdDscfPerMmbtu: 8710, fcScfPerMmbtu: 1250 })),
  },
  {
    id: 'FO-04',
    inputs: 'Fd 9190, Fc 1420',
    quantity: 'Fo, oil',
    expected: 1.353,
    tolerance: 0.002,
    kind: 'C',
    source: 'S4',
    fromMemory: true,
    compute: () => unwrap(foFromFFactors({ fdDscfPerMmbtu: 9190, fcScfPerMmbtu: 1420 })),
  },
  {
    id: 'FO-05',
    inputs: 'G20: O2 5.0, CO2 8.91',
    quantity: 'Fo → pass for natural gas',
    expected: 1.785,
    tolerance: 0.003,
    kind: 'C',
    source: 'calc',
    compute: () => foOnG20(5, 8.91, 0),
  },
  {
    id: 'FO-06',
    inputs: 'textbook CH4: O2 2.95, CO2 9.7, CO 0.5 % (adjust O2−½CO, CO2+CO)',
    quantity: 'Fo → pass',
    expected: 1.784,
    tolerance: 0.003,
    kind: 'C',
    source: 'S10 Ex. 13.2 data [B]',
    compute: () => foOnG20(2.95, 9.7, 5000),
  },
  {
    id: 'FO-07',
    inputs: 'textbook gas: O2 7.0, CO2 7.8, CO 0.2 % (adjusted)',
    quantity: 'Fo → pass',
    expected: 1.75,
    tolerance: 0.003,
    kind: 'C',
    source: 'S10 Ex. 13.3 data [B]',
    compute: () => foOnG20(7, 7.8, 2000),
  },
  {
    id: 'FO-08',
    inputs: 'G20, values swapped: O2 8.91, CO2 5.0',
    quantity: 'Fo → fail',
    expected: 2.398,
    tolerance: 0.003,
    kind: 'C',
    source: 'calc',
    compute: () => foOnG20(8.91, 5, 0),
  },
  {
    id: 'FO-09',
    inputs: 'G20, wet readings typed as dry: O2 4.24, CO2 7.56',
    quantity: 'Fo → fail',
    expected: 2.2,
    tolerance: 0.01,
    kind: 'C',
    source: 'calc',
    compute: () => foOnG20(4.24, 7.56, 0),
  },
  {
    id: 'FO-10',
    inputs: 'G20, analyser set to propane: O2 5.0, CO2 10.44',
    quantity: 'Fo → fail (propane band)',
    expected: 1.523,
    tolerance: 0.003,
    kind: 'C',
    source: 'calc',
    compute: () => foOnG20(5, 10.44, 0),
  },
  {
    id: 'FO-11',
    inputs: 'G20, digit slip: O2 5.0, CO2 9.81',
    quantity: 'Fo → inside EPA band, outside ±0.08 band',
    expected: 1.621,
    tolerance: 0.003,
    kind: 'C',
    source: 'calc',
    compute: () => foOnG20(5, 9.81, 0),
  },
  {
    id: 'FO-12',
    inputs: 'G20 flue diluted 20 % with air: O2 8.19, CO2 7.13',
    quantity: 'Fo → pass (NOT caught)',
    expected: 1.783,
    tolerance: 0.003,
    kind: 'C',
    source: 'calc',
    compute: () => foOnG20(8.19, 7.13, 0),
  },
];

describeCheckRows('Fo plausibility (FO)', rows, { published: 0, computed: 12 });
