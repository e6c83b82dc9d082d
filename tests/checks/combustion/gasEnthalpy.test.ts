/**
 * Sensible heat of flue-gas components against the NIST-JANAF thermochemical tables (4th edition, 1998), from memory, and
 * against the cp values at 400 K printed beside the polynomials.
 */
import { enthalpyDifferenceKjPerMol, type FlueGasComponent } from '../../../domain/combustion/gasEnthalpy.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

const KELVIN = 273.15;
const JANAF = 'NIST-JANAF tables, H°(T) − H°(298.15 K)';
/** The polynomials were fitted to another evaluation of the same measurements. */
const EVALUATIONS_AGREE_WITHIN = { relative: 0.003 };

function janafRow(id: string, component: FlueGasComponent, toK: number, expected: number): CheckRow {
  return {
    id,
    inputs: `${component}, 298.15 → ${toK} K`,
    quantity: 'enthalpy difference, kJ/mol',
    expected,
    tolerance: EVALUATIONS_AGREE_WITHIN,
    kind: 'P',
    source: JANAF,
    fromMemory: true,
    compute: () => unwrap(enthalpyDifferenceKjPerMol({ component, fromC: 25, toC: toK - KELVIN })),
  };
}

function meanCp(component: FlueGasComponent, fromC: number, toC: number): number {
  return (1000 * unwrap(enthalpyDifferenceKjPerMol({ component, fromC, toC }))) / (toC - fromC);
}

function cpRow(id: string, component: FlueGasComponent, expected: number): CheckRow {
  return {
    id,
    inputs: `${component}, 400 K`,
    quantity: 'cp, J/(mol K)',
    expected,
    tolerance: 0.05,
    kind: 'C',
    source: 'calc',
    compute: () => meanCp(component, 400 - KELVIN - 0.5, 400 - KELVIN + 0.5),
  };
}

/** Below the 300 K the polynomials are fitted from: the extrapolation the docstring answers for. */
function coldRow(id: string, component: FlueGasComponent, expected: number): CheckRow {
  return {
    id,
    inputs: `${component}, mean of −40…0 °C`,
    quantity: 'cp, J/(mol K)',
    expected,
    tolerance: { relative: 0.01 },
    kind: 'P',
    source: 'NIST-JANAF tables, cp between 200 and 300 K',
    fromMemory: true,
    compute: () => meanCp(component, -40, 0),
  };
}

/** The same polynomials integrated a second time, in Python: every coefficient counts. */
function integralRow(id: string, component: FlueGasComponent, expected: number): CheckRow {
  return {
    id,
    inputs: `${component}, 0 → 500 °C`,
    quantity: 'enthalpy difference, kJ/mol',
    expected,
    tolerance: 1e-7,
    kind: 'C',
    source: 'calc',
    compute: () => unwrap(enthalpyDifferenceKjPerMol({ component, fromC: 0, toC: 500 })),
  };
}

const rows: readonly CheckRow[] = [
  janafRow('ENT-01', 'n2', 400, 2.971),
  janafRow('ENT-02', 'n2', 500, 5.911),
  janafRow('ENT-03', 'n2', 600, 8.894),
  janafRow('ENT-04', 'o2', 400, 3.025),
  janafRow('ENT-05', 'o2', 500, 6.084),
  janafRow('ENT-06', 'o2', 600, 9.244),
  janafRow('ENT-07', 'co2', 400, 4.003),
  janafRow('ENT-08', 'co2', 500, 8.305),
  janafRow('ENT-09', 'co2', 600, 12.907),
  janafRow('ENT-10', 'water', 400, 3.452),
  janafRow('ENT-11', 'water', 500, 6.925),
  janafRow('ENT-12', 'water', 600, 10.501),
  coldRow('ENT-13', 'n2', 29.11),
  coldRow('ENT-14', 'o2', 29.2),
  coldRow('ENT-15', 'water', 33.43),
  cpRow('ENT-16', 'n2', 29.3),
  cpRow('ENT-17', 'o2', 30.1),
  cpRow('ENT-18', 'co2', 41.3),
  cpRow('ENT-19', 'water', 34.3),
  integralRow('ENT-20', 'n2', 14.9314377),
  integralRow('ENT-21', 'o2', 15.6673718),
  integralRow('ENT-22', 'co2', 22.3482722),
  integralRow('ENT-23', 'water', 17.8062399),
];

describeCheckRows('flue-gas enthalpy (ENT)', rows, { published: 15, computed: 8 });
