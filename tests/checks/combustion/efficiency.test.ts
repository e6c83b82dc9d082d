/** Combustion efficiency and stack loss on the higher heating value. Sources by code in ../README.md. */
import { combustionEfficiency } from '../../../domain/combustion/combustionEfficiency.ts';
import {
  fuelSavingPct,
  grossFromNetEfficiency,
  netFromGrossEfficiency,
} from '../../../domain/combustion/efficiencyBasis.ts';
import { G20, G31 } from '../../../domain/combustion/fuels.ts';
import { dryGasLoss, stackLossShortForm } from '../../../domain/combustion/stackLoss.ts';
import { fahrenheitToCelsius } from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

/** The table states flue minus air; the air is taken at 70 °F. */
function grossEfficiencyPct(o2DryVolPct: number, flueMinusAirF: number): number {
  return unwrap(
    combustionEfficiency({
      fuel: G20,
      o2DryVolPct,
      flueGasC: fahrenheitToCelsius(70 + flueMinusAirF),
      airC: fahrenheitToCelsius(70),
      airRelativeHumidityPct: 0,
      pressureKpaAbs: 101.325,
    }),
  ).efficiencyGrossPct;
}

function methaneShortForm() {
  return unwrap(
    stackLossShortForm({
      fuel: G20,
      o2DryVolPct: 3,
      flueGasC: fahrenheitToCelsius(470),
      airC: fahrenheitToCelsius(70),
    }),
  );
}

const KJ_PER_KCAL = 4.1868;

const rows: readonly CheckRow[] = [
  {
    id: 'EFF-01',
    inputs: 'natural gas, O2 2 %, flue − air 200 °F',
    quantity: 'combustion efficiency, HHV, %',
    expected: 85.4,
    tolerance: 0.7,
    kind: 'P',
    source: 'S9 DOE table [A]',
    compute: () => grossEfficiencyPct(2, 200),
  },
  {
    id: 'EFF-02',
    inputs: 'natural gas, O2 3 %, flue − air 400 °F',
    quantity: 'combustion efficiency, HHV, %',
    expected: 80.4,
    tolerance: 0.7,
    kind: 'P',
    source: 'S9 DOE table [A]',
    compute: () => grossEfficiencyPct(3, 400),
  },
  {
    id: 'EFF-03',
    inputs: 'natural gas, O2 5 %, flue − air 300 °F',
    quantity: 'combustion efficiency, HHV, %',
    expected: 82.1,
    tolerance: 0.7,
    kind: 'P',
    source: 'S9 DOE table [A]',
    compute: () => grossEfficiencyPct(5, 300),
  },
  {
    id: 'EFF-04',
    inputs: 'natural gas, O2 7 %, flue − air 400 °F',
    quantity: 'combustion efficiency, HHV, %',
    expected: 78.2,
    tolerance: 0.7,
    kind: 'P',
    source: 'S9 DOE table [A]',
    compute: () => grossEfficiencyPct(7, 400),
  },
  {
    id: 'EFF-05',
    inputs: 'natural gas, O2 10 %, flue − air 500 °F',
    quantity: 'combustion efficiency, HHV, %',
    expected: 71.9,
    tolerance: 0.7,
    kind: 'P',
    source: 'S9 DOE table [A]',
    compute: () => grossEfficiencyPct(10, 500),
  },
  {
    id: 'EFF-06',
    inputs: 'natural gas, O2 3 %, flue − air 600 °F',
    quantity: 'combustion efficiency, HHV, %',
    expected: 75.4,
    tolerance: 0.7,
    kind: 'P',
    source: 'S9 DOE table [A]',
    compute: () => grossEfficiencyPct(3, 600),
  },
  {
    id: 'EFF-07',
    inputs: 'E1 78.2 %, E2 83.1 %',
    quantity: 'fuel saving 1−E1/E2, %',
    expected: 5.9,
    tolerance: 0.05,
    kind: 'C',
    source: 'S9 worked case [A] inputs',
    compute: () => unwrap(fuelSavingPct({ efficiencyBeforePct: 78.2, efficiencyAfterPct: 83.1 })),
  },
  {
    id: 'EFF-08',
    inputs: 'CH4, O2 3 %, 470/70 °F, cp .24',
    quantity: 'dry-gas loss, HHV, %',
    expected: 7.47,
    tolerance: 0.03,
    kind: 'C',
    source: 'calc',
    compute: () => methaneShortForm().dryGasLossPctGross,
  },
  {
    id: 'EFF-09',
    inputs: 'same: 8.936·H·(1089−ta+0.46tf)/HHV',
    quantity: 'hydrogen-moisture loss, HHV, %',
    expected: 11.62,
    tolerance: 0.03,
    kind: 'C',
    source: 'calc',
    compute: () => methaneShortForm().hydrogenMoistureLossPctGross,
  },
  {
    id: 'EFF-10',
    inputs: 'same',
    quantity: '100 − both losses, %',
    expected: 80.9,
    tolerance: 0.1,
    kind: 'C',
    source: 'calc',
    compute: () => methaneShortForm().efficiencyGrossPct,
  },
  {
    id: 'EFF-11',
    inputs: 'm 20 kg/kg, cp .20, ΔT 175, GCV 13 000 (kcal)',
    quantity: 'dry-gas loss, %',
    expected: 5.38,
    tolerance: 0.01,
    kind: 'P',
    source: 'S27 tutorial [B]',
    compute: () =>
      unwrap(
        dryGasLoss({
          dryGasKgPerKgFuel: 20,
          cpKjPerKgK: 0.2 * KJ_PER_KCAL,
          riseK: 175,
          hhvKjPerKg: 13_000 * KJ_PER_KCAL,
        }),
      ),
  },
  {
    id: 'EFF-12',
    inputs: 'η(LHV) 98.2 %, G20',
    quantity: 'η(HHV) = ×0.9012, %',
    expected: 88.5,
    tolerance: 0.1,
    kind: 'C',
    source: 'calc',
    compute: () => unwrap(grossFromNetEfficiency({ fuel: G20, efficiencyNetPct: 98.2 })),
  },
  {
    id: 'EFF-13',
    inputs: 'η(HHV) 87.5 %, G31',
    quantity: 'η(LHV) = ÷0.9207, %',
    expected: 95,
    tolerance: 0.1,
    kind: 'C',
    source: 'calc',
    compute: () => unwrap(netFromGrossEfficiency({ fuel: G31, efficiencyGrossPct: 87.5 })),
  },
];

describeCheckRows('efficiency and stack loss (EFF)', rows, { published: 7, computed: 6 });
