/** EPA F-factors from composition and from Method 19. Sources by code in ../README.md. */
import { fdFromUltimateAnalysis, fFactors, lbPerScfPerPpm } from '../../../domain/combustion/fFactors.ts';
import { G31, NG_US, OIL_2 } from '../../../domain/combustion/fuels.ts';
import { gasFuel } from '../../../domain/combustion/gasFuel.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

const N_BUTANE = unwrap(gasFuel({ name: 'n-butane', family: 'butane', molePct: { nButane: 100 } }));

const rows: readonly CheckRow[] = [
  {
    id: 'FF-01',
    inputs: 'natural gas',
    quantity: 'Fd, dscf/MMBtu',
    expected: 8710,
    tolerance: 110,
    kind: 'P',
    source: 'S4/S5 [B]',
    compute: () => fFactors(NG_US).fdDscfPerMmbtu,
  },
  {
    id: 'FF-02',
    inputs: 'natural gas',
    quantity: 'Fw, wscf/MMBtu',
    expected: 10610,
    tolerance: 60,
    kind: 'P',
    source: 'S4',
    fromMemory: true,
    compute: () => fFactors(NG_US).fwWscfPerMmbtu,
  },
  {
    id: 'FF-03',
    inputs: 'natural gas',
    quantity: 'Fc, scf CO2/MMBtu',
    expected: 1040,
    tolerance: 25,
    kind: 'P',
    source: 'S4/S5 [B]',
    compute: () => fFactors(NG_US).fcScfPerMmbtu,
  },
  {
    id: 'FF-04',
    inputs: 'propane',
    quantity: 'Fd, dscf/MMBtu',
    expected: 8710,
    tolerance: 130,
    kind: 'P',
    source: 'S5 [B]',
    compute: () => fFactors(G31).fdDscfPerMmbtu,
  },
  {
    id: 'FF-05',
    inputs: 'propane',
    quantity: 'Fc, scf CO2/MMBtu',
    expected: 1190,
    tolerance: 25,
    kind: 'P',
    source: 'S5 [B]',
    compute: () => fFactors(G31).fcScfPerMmbtu,
  },
  {
    id: 'FF-06',
    inputs: 'butane',
    quantity: 'Fc, scf CO2/MMBtu',
    expected: 1250,
    tolerance: 10,
    kind: 'P',
    source: 'S5 [B]',
    compute: () => fFactors(N_BUTANE).fcScfPerMmbtu,
  },
  {
    id: 'FF-07',
    inputs: 'No. 2 oil',
    quantity: 'Fd, dscf/MMBtu',
    expected: 9190,
    tolerance: 60,
    kind: 'P',
    source: 'S4',
    fromMemory: true,
    compute: () => fFactors(OIL_2).fdDscfPerMmbtu,
  },
  {
    id: 'FF-08',
    inputs: 'No. 2 oil',
    quantity: 'Fc, scf CO2/MMBtu',
    expected: 1420,
    tolerance: 20,
    kind: 'P',
    source: 'S4',
    fromMemory: true,
    compute: () => fFactors(OIL_2).fcScfPerMmbtu,
  },
  {
    id: 'FF-09',
    inputs: 'CH4: %C 74.87, %H 25.13, GCV 23,867 Btu/lb; 10^6(3.64H+1.53C+0.57S+0.14N−0.46O)/GCV',
    quantity: 'Fd by Method 19 Eq., dscf/MMBtu',
    expected: 8633,
    tolerance: 6,
    kind: 'C',
    source: 'calc',
    compute: () =>
      unwrap(
        fdFromUltimateAnalysis({
          carbonMassPct: 74.87,
          hydrogenMassPct: 25.13,
          sulphurMassPct: 0,
          nitrogenMassPct: 0,
          oxygenMassPct: 0,
          gcvBtuPerLb: 23_867,
        }),
      ),
  },
  {
    id: 'FF-10',
    inputs: '385.3 scf/lb-mol, NO2 = 46.01',
    quantity: 'K for NOx, (lb/scf)/ppm',
    expected: 1.194e-7,
    tolerance: 1e-10,
    kind: 'P',
    source: 'S5 [A]',
    compute: () => unwrap(lbPerScfPerPpm({ molarMassGPerMol: 46.01, scfPerLbMol: 385.3 })),
  },
];

describeCheckRows('F-factors (FF)', rows, { published: 9, computed: 1 });
