/** Saturation line of water against the verification tables of the release, printed to nine figures. */
import { saturationPressureMpaAbs, saturationTemperatureK } from '../../../domain/hydronics/waterSaturation.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

const HALF_UNIT_IN_NINTH_FIGURE = { relative: 5e-9 };
const TABLE_35 = 'S12 IAPWS R7-97(2012) Table 35 [B]';
const TABLE_36 = 'S12 IAPWS R7-97(2012) Table 36 [B]';

function pressureRow(id: string, temperatureK: number, expected: number): CheckRow {
  return {
    id,
    inputs: `${temperatureK} K`,
    quantity: 'saturation pressure, MPa',
    expected,
    tolerance: HALF_UNIT_IN_NINTH_FIGURE,
    kind: 'P',
    source: TABLE_35,
    compute: () => unwrap(saturationPressureMpaAbs(temperatureK)),
  };
}

function temperatureRow(id: string, pressureMpaAbs: number, expected: number): CheckRow {
  return {
    id,
    inputs: `${pressureMpaAbs} MPa`,
    quantity: 'saturation temperature, K',
    expected,
    tolerance: HALF_UNIT_IN_NINTH_FIGURE,
    kind: 'P',
    source: TABLE_36,
    compute: () => unwrap(saturationTemperatureK(pressureMpaAbs)),
  };
}

const rows: readonly CheckRow[] = [
  pressureRow('SAT-01', 300, 0.353658941e-2),
  pressureRow('SAT-02', 500, 0.263889776e1),
  pressureRow('SAT-03', 600, 0.123443146e2),
  temperatureRow('SAT-04', 0.1, 0.372755919e3),
  temperatureRow('SAT-05', 1, 0.453035632e3),
  temperatureRow('SAT-06', 10, 0.584149488e3),
];

describeCheckRows('water saturation (SAT)', rows, { published: 6, computed: 0 });
