/** Constants of the pipe equations and inside diameters, as printed. Sources by code in ../README.md. */
import { PIPE_GASES, SCHEDULE_40_INSIDE_DIAMETER_IN } from '../../../domain/gas/pipeSizing.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

const CODE = 'S13 App. A.4 symbols [B]';
const STEEL = 'S13 schedule 40 steel pipe dimensions [A]';

function constantRow(id: string, inputs: string, quantity: string, expected: number, compute: () => number): CheckRow {
  return { id, inputs, quantity, expected, tolerance: 0, kind: 'P', source: CODE, fromMemory: true, compute };
}

function diameterRow(id: string, size: keyof typeof SCHEDULE_40_INSIDE_DIAMETER_IN, expected: number): CheckRow {
  return {
    id,
    inputs: `schedule 40, nominal ${size} in`,
    quantity: 'inside diameter, in',
    expected,
    tolerance: 0,
    kind: 'P',
    source: STEEL,
    compute: () => SCHEDULE_40_INSIDE_DIAMETER_IN[size],
  };
}

const rows: readonly CheckRow[] = [
  constantRow('PIC-01', 'natural gas, SG 0.60', 'Cr', 0.6094, () => PIPE_GASES['natural-gas'].cr),
  constantRow('PIC-02', 'natural gas, SG 0.60', 'Y', 0.9992, () => PIPE_GASES['natural-gas'].y),
  constantRow('PIC-03', 'propane, SG 1.50', 'Cr', 1.2462, () => PIPE_GASES.propane.cr),
  constantRow('PIC-04', 'propane, SG 1.50', 'Y', 0.991, () => PIPE_GASES.propane.y),
  diameterRow('PIC-05', '1/2', 0.622),
  diameterRow('PIC-06', '3/4', 0.824),
  diameterRow('PIC-07', '1', 1.049),
  diameterRow('PIC-08', '1-1/4', 1.38),
  diameterRow('PIC-09', '1-1/2', 1.61),
  diameterRow('PIC-10', '2', 2.067),
];

describeCheckRows('pipe constants (PIC)', rows, { published: 10, computed: 0 });
