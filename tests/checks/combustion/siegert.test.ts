/** Flue loss by the short German rule, beside exact enthalpies. Sources by code in ../README.md. */
import { combustionEfficiency } from '../../../domain/combustion/combustionEfficiency.ts';
import { G20, G31 } from '../../../domain/combustion/fuels.ts';
import { flueLossFromO2, SIEGERT_CONSTANTS, siegertA1 } from '../../../domain/combustion/siegert.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

const rows: readonly CheckRow[] = [
  {
    id: 'SIE-01',
    inputs: 'gas, tA 180, tL 20 °C, O2 5.0',
    quantity: 'qA, A .66 B .009, %',
    expected: 8.04,
    tolerance: 0.01,
    kind: 'C',
    source: 'S7 formula [A]',
    compute: () =>
      unwrap(
        flueLossFromO2({ constants: SIEGERT_CONSTANTS['public-network-gas'], flueGasC: 180, airC: 20, o2DryVolPct: 5 }),
      ),
  },
  {
    id: 'SIE-02',
    inputs: 'same',
    quantity: 'qA, A .65 (Flanders), %',
    expected: 7.94,
    tolerance: 0.01,
    kind: 'C',
    source: 'S8 formula [A]',
    compute: () =>
      unwrap(
        flueLossFromO2({
          constants: SIEGERT_CONSTANTS['public-network-gas-flanders'],
          flueGasC: 180,
          airC: 20,
          o2DryVolPct: 5,
        }),
      ),
  },
  {
    id: 'SIE-03',
    inputs: 'same, G20, rigorous enthalpies',
    quantity: 'sensible loss on LHV, %',
    expected: 8.13,
    tolerance: 0.05,
    kind: 'C',
    source: 'calc',
    compute: () =>
      unwrap(
        combustionEfficiency({
          fuel: G20,
          o2DryVolPct: 5,
          flueGasC: 180,
          airC: 20,
          airRelativeHumidityPct: 0,
          pressureKpaAbs: 101.325,
        }),
      ).sensibleLossPctNet,
  },
  {
    id: 'SIE-04',
    inputs: 'gas, 65/20 °C, O2 4.7',
    quantity: 'qA, %',
    expected: 2.23,
    tolerance: 0.01,
    kind: 'C',
    source: 'S7 formula [A]',
    compute: () =>
      unwrap(
        flueLossFromO2({
          constants: SIEGERT_CONSTANTS['public-network-gas'],
          flueGasC: 65,
          airC: 20,
          o2DryVolPct: 4.7,
        }),
      ),
  },
  {
    id: 'SIE-05',
    inputs: 'heating oil, 190/20 °C, O2 4.0',
    quantity: 'qA, A .68 B .007, %',
    expected: 7.99,
    tolerance: 0.01,
    kind: 'C',
    source: 'S7 formula [A]',
    compute: () =>
      unwrap(
        flueLossFromO2({ constants: SIEGERT_CONSTANTS['light-heating-oil'], flueGasC: 190, airC: 20, o2DryVolPct: 4 }),
      ),
  },
  {
    id: 'SIE-06',
    inputs: 'LPG, 160/20 °C, O2 5.0',
    quantity: 'qA, A .63 B .008, %',
    expected: 6.63,
    tolerance: 0.01,
    kind: 'C',
    source: 'S7 formula [A]',
    compute: () =>
      unwrap(flueLossFromO2({ constants: SIEGERT_CONSTANTS['lpg'], flueGasC: 160, airC: 20, o2DryVolPct: 5 })),
  },
  {
    id: 'SIE-07',
    inputs: 'LPG, same, rigorous',
    quantity: 'sensible loss on LHV, %',
    expected: 6.91,
    tolerance: 0.05,
    kind: 'C',
    source: 'calc',
    compute: () =>
      unwrap(
        combustionEfficiency({
          fuel: G31,
          o2DryVolPct: 5,
          flueGasC: 160,
          airC: 20,
          airRelativeHumidityPct: 0,
          pressureKpaAbs: 101.325,
        }),
      ).sensibleLossPctNet,
  },
  {
    id: 'SIE-08',
    inputs: 'A2 .66, CO2max 11.8',
    quantity: 'A1 = A2·CO2max/21',
    expected: 0.371,
    tolerance: 0.001,
    kind: 'C',
    source: 'calc',
    compute: () => unwrap(siegertA1({ constants: SIEGERT_CONSTANTS['public-network-gas'], co2MaxDryVolPct: 11.8 })),
  },
];

describeCheckRows('Siegert flue loss (SIE)', rows, { published: 0, computed: 8 });
