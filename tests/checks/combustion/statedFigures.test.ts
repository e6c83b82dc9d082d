/** Figures stated in words beside the formulas: traps, rules of thumb and their exact counterparts. */
import { excessAirFromCo2, lambdaFromO2 } from '../../../domain/combustion/airRatio.ts';
import { lambdaFromCarbonBalance } from '../../../domain/combustion/carbonBalance.ts';
import { combustionAirM3PerH } from '../../../domain/combustion/combustionAir.ts';
import { NORMAL_MOLAR_VOLUME_M3_PER_MOL } from '../../../domain/combustion/combustionConstants.ts';
import { combustionEfficiency } from '../../../domain/combustion/combustionEfficiency.ts';
import { flueDewPointC } from '../../../domain/combustion/dewPoint.ts';
import { mgPerKwhFromPpm, noxPpmFromNoPpm } from '../../../domain/combustion/emissionMass.ts';
import { excessAirFromAnalysis } from '../../../domain/combustion/epaExcessAir.ts';
import {
  fcFromUltimateAnalysis,
  fdFromUltimateAnalysis,
  lbPerMmbtuFromPpm,
} from '../../../domain/combustion/fFactors.ts';
import { foPlausibility } from '../../../domain/combustion/foPlausibility.ts';
import { G20, G31, HD_5, NG_US, OIL_2 } from '../../../domain/combustion/fuels.ts';
import { co2MaxOfPair, o2FromCo2 } from '../../../domain/combustion/o2Co2.ts';
import { flueLossFromCo2, flueLossFromO2, SIEGERT_CONSTANTS } from '../../../domain/combustion/siegert.ts';
import { stackLossShortForm } from '../../../domain/combustion/stackLoss.ts';
import { dryFromWet, dryO2FromWetO2 } from '../../../domain/combustion/wetToDry.ts';
import { standardAtmosphere } from '../../../domain/gas/standardAtmosphere.ts';
import { fahrenheitToCelsius, feetToMetres } from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';
import { TEXTBOOK_GAS } from './textbookGas.ts';

const DRY_AIR = { airC: 20, relativeHumidityPct: 0 };
/** No. 2 oil of the nominal composition; 45.40 MJ/kg is 19 518 Btu/lb. */
const OIL_ANALYSIS = {
  carbonMassPct: 87,
  hydrogenMassPct: 12.8,
  sulphurMassPct: 0.2,
  nitrogenMassPct: 0,
  oxygenMassPct: 0,
  gcvBtuPerLb: 19_518,
};

function dewPointDropPer5000Ft(): number {
  const at = (elevationFt: number) => {
    const { pressureKpaAbs } = unwrap(standardAtmosphere({ elevationM: feetToMetres(elevationFt) }));
    return unwrap(flueDewPointC({ fuel: G20, lambda: 1.25, pressureKpaAbs, air: DRY_AIR }));
  };
  return at(0) - at(5000);
}

function dewPointAt5PctO2(fuel: typeof NG_US): number {
  const lambda = unwrap(lambdaFromO2({ fuel, o2DryVolPct: 5 }));
  return unwrap(flueDewPointC({ fuel, lambda, pressureKpaAbs: 101.325, air: DRY_AIR }));
}

function siegertGapToRigorous(): number {
  const exact = unwrap(
    combustionEfficiency({
      fuel: G20,
      o2DryVolPct: 5,
      flueGasC: 180,
      airC: 20,
      airRelativeHumidityPct: 0,
      pressureKpaAbs: 101.325,
    }),
  ).sensibleLossPctNet;
  const short = unwrap(
    flueLossFromO2({ constants: SIEGERT_CONSTANTS['public-network-gas'], flueGasC: 180, airC: 20, o2DryVolPct: 5 }),
  );
  return exact - short;
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

const rows: readonly CheckRow[] = [
  {
    id: 'STA-01',
    inputs: 'textbook gas; dry CO2 7.8 CO 0.2 O2 7.0, carbon balance',
    quantity: 'excess air, %',
    expected: 44.6,
    tolerance: 0.05,
    kind: 'P',
    source: 'S10 Ex. 13.3 [B]',
    compute: () =>
      100 *
      (unwrap(lambdaFromCarbonBalance({ fuel: TEXTBOOK_GAS, o2DryVolPct: 7, co2DryVolPct: 7.8, coPpmDry: 2000 })) - 1),
  },
  {
    id: 'STA-02',
    inputs: 'O2 4.2 % wet on natural gas',
    quantity: 'O2 dry, %',
    expected: 5.0,
    tolerance: 0.06,
    kind: 'C',
    source: 'calc',
    compute: () => unwrap(dryO2FromWetO2({ fuel: G20, o2WetVolPct: 4.2 })),
  },
  {
    id: 'STA-03',
    inputs: 'O2 4.24 % wet with 15.12 % water vapour',
    quantity: 'O2 dry, %',
    expected: 5.0,
    tolerance: 0.005,
    kind: 'C',
    source: 'calc (FO-09)',
    compute: () => unwrap(dryFromWet({ wetVolPct: 4.24, waterVapourVolPct: 15.12 })),
  },
  {
    id: 'STA-04',
    inputs: 'O2 5.0, CO2 10.4: which fuel the analyser was set to',
    quantity: 'implied CO2max, %',
    expected: 13.7,
    tolerance: 0.05,
    kind: 'C',
    source: 'calc',
    compute: () => unwrap(co2MaxOfPair({ o2DryVolPct: 5, co2DryVolPct: 10.4 })),
  },
  {
    id: 'STA-05',
    inputs: 'US natural gas, CO2 6.0 %',
    quantity: 'O2, %',
    expected: 10.3,
    tolerance: 0.05,
    kind: 'C',
    source: 'calc',
    compute: () => unwrap(o2FromCo2({ fuel: NG_US, co2DryVolPct: 6 })),
  },
  {
    id: 'STA-06',
    inputs: 'G20, CO2 9.0 %',
    quantity: 'excess air, %',
    expected: 26.84,
    tolerance: 0.01,
    kind: 'C',
    source: 'calc (EXA-14)',
    compute: () => unwrap(excessAirFromCo2({ fuel: G20, co2DryVolPct: 9 })),
  },
  {
    id: 'STA-07',
    inputs: 'natural gas, 5 % O2',
    quantity: 'return temperature below which flue water condenses, °C',
    expected: 54,
    tolerance: 0.5,
    kind: 'C',
    source: 'calc',
    compute: () => dewPointAt5PctO2(NG_US),
  },
  {
    id: 'STA-08',
    inputs: 'LP, 5 % O2',
    quantity: 'return temperature below which flue water condenses, °C',
    expected: 50,
    tolerance: 0.5,
    kind: 'C',
    source: 'calc',
    compute: () => dewPointAt5PctO2(HD_5),
  },
  {
    id: 'STA-09',
    inputs: 'G20, λ 1.25, sea level → 5000 ft',
    quantity: 'fall of the dew point, K',
    expected: 4,
    tolerance: 0.5,
    kind: 'C',
    source: 'calc',
    compute: dewPointDropPer5000Ft,
  },
  {
    id: 'STA-10',
    inputs: 'ideal gas, 0 °C, 101.325 kPa',
    quantity: 'molar volume, L/mol',
    expected: 22.41397,
    tolerance: 5e-6,
    kind: 'P',
    source: 'CODATA molar volume of an ideal gas',
    compute: () => NORMAL_MOLAR_VOLUME_M3_PER_MOL * 1000,
  },
  {
    id: 'STA-11',
    inputs: '100 ppm NO',
    quantity: 'NOx, ppm',
    expected: 105,
    tolerance: 1e-9,
    kind: 'P',
    source: 'common practice',
    fromMemory: true,
    compute: () => unwrap(noxPpmFromNoPpm(100)),
  },
  {
    id: 'STA-12',
    inputs: 'OIL-2 ultimate analysis, Method 19',
    quantity: 'Fd, dscf/MMBtu',
    expected: 9190,
    tolerance: 60,
    kind: 'P',
    source: 'S4',
    fromMemory: true,
    compute: () => unwrap(fdFromUltimateAnalysis(OIL_ANALYSIS)),
  },
  {
    id: 'STA-13',
    inputs: 'OIL-2 ultimate analysis, Method 19',
    quantity: 'Fc, scf CO2/MMBtu',
    expected: 1430.8,
    tolerance: 0.1,
    kind: 'C',
    source: '10⁶ × 0.321 × 87/19 518 by hand',
    compute: () => unwrap(fcFromUltimateAnalysis(OIL_ANALYSIS)),
  },
  {
    id: 'STA-14',
    inputs: '83 ppm NOx dry at 3 % O2, Fd 8710',
    quantity: 'lb/MMBtu',
    expected: 0.1,
    tolerance: 0.001,
    kind: 'P',
    source: 'S11 [B], the inverse of CO-18',
    compute: () => unwrap(lbPerMmbtuFromPpm({ pollutant: 'nox', ppmDry: 83, o2DryVolPct: 3, fdDscfPerMmbtu: 8710 })),
  },
  {
    id: 'STA-15',
    inputs: 'heating oil, 1000 ppm CO at 5 % O2',
    quantity: 'CO on HHV, mg/kWh',
    expected: 1359.3,
    tolerance: 0.2,
    kind: 'C',
    source: '1.24967 × 0.8281 × 20.946/15.946 × 1000 by hand, from table 2.2',
    compute: () =>
      unwrap(mgPerKwhFromPpm({ fuel: OIL_2, pollutant: 'co', ppmDry: 1000, o2DryVolPct: 5, basis: 'gross' })),
  },
  {
    id: 'STA-16',
    inputs: 'gas, 180/20 °C, CO2 8.99 with CO2max 11.8 (O2 5.0)',
    quantity: 'qA by the CO2 form, %',
    expected: 8.04,
    tolerance: 0.01,
    kind: 'C',
    source: 'SIE-01: both forms are one line; CO2 = 11.8 × 16/21',
    compute: () =>
      unwrap(
        flueLossFromCo2({
          constants: SIEGERT_CONSTANTS['public-network-gas'],
          flueGasC: 180,
          airC: 20,
          co2DryVolPct: (11.8 * 16) / 21,
          co2MaxDryVolPct: 11.8,
        }),
      ),
  },
  {
    id: 'STA-17',
    inputs: 'coke-oven gas, 180/20 °C, O2 5.0',
    quantity: 'qA, A .60 B .011, %',
    expected: 7.76,
    tolerance: 1e-9,
    kind: 'C',
    source: 'S7 constants [A], 160 × (0.60/16 + 0.011) by hand',
    compute: () =>
      unwrap(
        flueLossFromO2({ constants: SIEGERT_CONSTANTS['coke-oven-gas'], flueGasC: 180, airC: 20, o2DryVolPct: 5 }),
      ),
  },
  {
    id: 'STA-18',
    inputs: 'G20, 180/20 °C, O2 5.0: exact enthalpies less the short rule',
    quantity: 'gap, points',
    expected: 0.09,
    tolerance: 0.05,
    kind: 'C',
    source: 'SIE-03 − SIE-01',
    compute: siegertGapToRigorous,
  },
  {
    id: 'STA-19',
    inputs: 'G20, 29.307 kW gross (100 MBH), λ 1, 60 °F, 101.325 kPa',
    quantity: 'combustion air, m³/h',
    expected: 26.77,
    tolerance: 0.01,
    kind: 'C',
    source: '9.548 × 8.314463 × 288.706/101 325 × 29.307 × 3600/891.51 by hand',
    compute: () =>
      unwrap(
        combustionAirM3PerH({
          fuel: G20,
          lambda: 1,
          airC: fahrenheitToCelsius(60),
          pressureKpaAbs: 101.325,
          inputKwGross: 29.307,
        }),
      ),
  },
  {
    id: 'STA-20',
    inputs: 'propane, theoretical air 23.871 ft³/ft³',
    quantity: 'air, kg per kg',
    expected: 15.68,
    tolerance: 0.05,
    kind: 'P',
    source: 'stoichiometric air–fuel ratio of propane in handbooks, 15.67–15.71',
    fromMemory: true,
    compute: () => (G31.theoreticalAirMol * 28.96546) / G31.massGPerAmount,
  },
  {
    id: 'STA-21',
    inputs: 'CH4; dry CO2 9.7 CO 0.5 O2 2.95, carbon balance (EXA-08)',
    quantity: 'theoretical air, %',
    expected: 113.2353,
    tolerance: 0.0001,
    kind: 'C',
    source: '100 × (1 + 2.7/20.4) by hand',
    compute: () =>
      100 * unwrap(lambdaFromCarbonBalance({ fuel: G20, o2DryVolPct: 2.95, co2DryVolPct: 9.7, coPpmDry: 5000 })),
  },
  {
    id: 'STA-22',
    inputs: 'dry CO2 9.7 CO 0.5 O2 2.95 N2 86.85, EPA form (EXA-09)',
    quantity: 'excess air, %',
    expected: 13.3476,
    tolerance: 0.0001,
    kind: 'C',
    source: '100 × 2.7/(0.264 × 86.85 − 2.7) by hand',
    compute: () => unwrap(excessAirFromAnalysis({ o2DryVolPct: 2.95, co2DryVolPct: 9.7, coPpmDry: 5000 })),
  },
  {
    id: 'STA-23',
    inputs: 'dry CO2 9.7 CO 0.5 O2 2.95 (FO-06)',
    quantity: 'Fo',
    expected: 1.784314,
    tolerance: 0.000001,
    kind: 'C',
    source: '(20.9 − 2.7)/10.2 by hand',
    compute: () => unwrap(foPlausibility({ fuel: G20, o2DryVolPct: 2.95, co2DryVolPct: 9.7, coPpmDry: 5000 })).fo,
  },
  {
    id: 'STA-24',
    inputs: 'coal-like analysis C 70 H 5 S 3 N 1.5 O 20, 12 000 Btu/lb, Method 19',
    quantity: 'Fd, dscf/MMBtu',
    expected: 9835,
    tolerance: 0.001,
    kind: 'C',
    source: '10⁶ × (18.2 + 107.1 + 1.71 + 0.21 − 9.2)/12 000 by hand, coefficients S4',
    compute: () =>
      unwrap(
        fdFromUltimateAnalysis({
          carbonMassPct: 70,
          hydrogenMassPct: 5,
          sulphurMassPct: 3,
          nitrogenMassPct: 1.5,
          oxygenMassPct: 20,
          gcvBtuPerLb: 12_000,
        }),
      ),
  },
  {
    id: 'STA-25',
    inputs: 'CH4, O2 3 %, 470/70 °F (EFF-08)',
    quantity: 'dry-gas loss, % of HHV',
    expected: 7.4712,
    tolerance: 0.0002,
    kind: 'C',
    source: '18.576 lb/lb × 0.24 × 400/23 867 by hand',
    compute: () => methaneShortForm().dryGasLossPctGross,
  },
  {
    id: 'STA-26',
    inputs: 'CH4, O2 3 %, 470/70 °F (EFF-09)',
    quantity: 'hydrogen-moisture loss, % of HHV',
    expected: 11.6235,
    tolerance: 0.0002,
    kind: 'C',
    source: '8.936 × 0.25134 × (1089 − 70 + 0.46 × 470)/23 867 by hand',
    compute: () => methaneShortForm().hydrogenMoistureLossPctGross,
  },
];

describeCheckRows('figures stated beside the formulas (STA)', rows, { published: 6, computed: 20 });
