/** Gas pipe capacity. Sources by code in ../README.md. */
import {
  highPressurePipeCapacityM3PerH,
  lowPressurePipeCapacityM3PerH,
  PIPE_GASES,
  pipeGasCr,
  SCHEDULE_40_INSIDE_DIAMETER_IN,
} from '../../../domain/gas/pipeSizing.ts';
import {
  cubicMetresToCubicFeet,
  feetToMetres,
  inchesToMm,
  inWcToKpa,
  psiToKpa,
} from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import { type CheckRow, describeCheckRows } from '../checkRow.ts';

type Gas = keyof typeof PIPE_GASES;
type NominalSize = keyof typeof SCHEDULE_40_INSIDE_DIAMETER_IN;

function lowPressureCfh(gas: Gas, size: NominalSize, dropInWc: number, lengthFt: number): number {
  return cubicMetresToCubicFeet(
    unwrap(
      lowPressurePipeCapacityM3PerH({
        gas: PIPE_GASES[gas],
        insideDiameterMm: inchesToMm(SCHEDULE_40_INSIDE_DIAMETER_IN[size]),
        equivalentLengthM: feetToMetres(lengthFt),
        pressureDropKpa: inWcToKpa(dropInWc),
      }),
    ),
  );
}

/** 3 psi gauge at the inlet with 2 psi of drop, in an atmosphere of 14.7 psi. */
function highPressureCfh(size: NominalSize, lengthFt: number): number {
  return cubicMetresToCubicFeet(
    unwrap(
      highPressurePipeCapacityM3PerH({
        gas: PIPE_GASES['natural-gas'],
        insideDiameterMm: inchesToMm(SCHEDULE_40_INSIDE_DIAMETER_IN[size]),
        equivalentLengthM: feetToMetres(lengthFt),
        inletKpaAbs: psiToKpa(14.7 + 3),
        outletKpaAbs: psiToKpa(14.7 + 1),
      }),
    ),
  );
}

const PROPANE_KBTU_PER_FT3 = 2.5;

const rows: readonly CheckRow[] = [
  {
    id: 'PIP-01',
    inputs: 'NG 0.60 SG, sch 40 ½ in (ID 0.622), ΔH 3 in w.c., 10 ft',
    quantity: 'capacity, cfh',
    expected: 454,
    tolerance: 5.4,
    kind: 'P',
    source: 'S13 IFGC 2018 402.4(3) [A]',
    compute: () => lowPressureCfh('natural-gas', '1/2', 3, 10),
  },
  {
    id: 'PIP-02',
    inputs: 'NG 0.60 SG, sch 40 ¾ in (ID 0.824), ΔH 3 in w.c., 60 ft',
    quantity: 'capacity, cfh',
    expected: 360,
    tolerance: 4.3,
    kind: 'P',
    source: 'S13 IFGC 2018 402.4(3) [A]',
    compute: () => lowPressureCfh('natural-gas', '3/4', 3, 60),
  },
  {
    id: 'PIP-03',
    inputs: 'NG 0.60 SG, sch 40 1 in (ID 1.049), ΔH 3 in w.c., 60 ft',
    quantity: 'capacity, cfh',
    expected: 678,
    tolerance: 8.1,
    kind: 'P',
    source: 'S13 IFGC 2018 402.4(3) [A]',
    compute: () => lowPressureCfh('natural-gas', '1', 3, 60),
  },
  {
    id: 'PIP-04',
    inputs: 'NG 0.60 SG, sch 40 1¼ in (ID 1.38), ΔH 3 in w.c., 20 ft',
    quantity: 'capacity, cfh',
    expected: 2520,
    tolerance: 30.2,
    kind: 'P',
    source: 'S13 IFGC 2018 402.4(3) [A]',
    compute: () => lowPressureCfh('natural-gas', '1-1/4', 3, 20),
  },
  {
    id: 'PIP-05',
    inputs: 'NG 0.60 SG, sch 40 ½ in (ID 0.622), ΔH 6 in w.c., 10 ft',
    quantity: 'capacity, cfh',
    expected: 660,
    tolerance: 7.9,
    kind: 'P',
    source: 'S13 IFGC 2018 402.4(4) [A]',
    compute: () => lowPressureCfh('natural-gas', '1/2', 6, 10),
  },
  {
    id: 'PIP-06',
    inputs: 'NG 0.60 SG, sch 40 1 in (ID 1.049), ΔH 6 in w.c., 50 ft',
    quantity: 'capacity, cfh',
    expected: 1090,
    tolerance: 13.1,
    kind: 'P',
    source: 'S13 IFGC 2018 402.4(4) [A]',
    compute: () => lowPressureCfh('natural-gas', '1', 6, 50),
  },
  {
    id: 'PIP-07',
    inputs: 'NG, ½ in, ΔH 0.5 in w.c., 10 ft',
    quantity: 'capacity (new-style table), cfh',
    expected: 172,
    tolerance: 2,
    kind: 'P',
    source: 'S13: same cell as 3.0 in at 60 ft [A]',
    compute: () => lowPressureCfh('natural-gas', '1/2', 0.5, 10),
  },
  {
    id: 'PIP-08',
    inputs: 'NG, 1 in, ΔH 0.5 in w.c., 50 ft',
    quantity: 'capacity (old-style table), cfh',
    expected: 285,
    tolerance: 3,
    kind: 'P',
    source: 'S14 NFPA 54 older table [B]',
    compute: () => lowPressureCfh('natural-gas', '1', 0.5, 50),
  },
  {
    id: 'PIP-09',
    inputs: 'NG, ¾ in, 3 psig in, 2 psi drop, 10 ft (Eq 4-2)',
    quantity: 'capacity, cfh',
    expected: 4920,
    tolerance: 60,
    kind: 'P',
    source: 'S13 402.4(6) [A]',
    compute: () => highPressureCfh('3/4', 10),
  },
  {
    id: 'PIP-10',
    inputs: 'NG, 1 in, 3 psig in, 2 psi drop, 50 ft (Eq 4-2)',
    quantity: 'capacity, cfh',
    expected: 3880,
    tolerance: 45,
    kind: 'P',
    source: 'S13 402.4(6) [A]',
    compute: () => highPressureCfh('1', 50),
  },
  {
    id: 'PIP-11',
    inputs: 'propane, ½ in, ΔH 0.5 in w.c., 10 ft, 2500 Btu/ft3',
    quantity: 'capacity, kBtu/h',
    expected: 291,
    tolerance: 5,
    kind: 'P',
    source: 'S13 402.4(28) [A]',
    compute: () => PROPANE_KBTU_PER_FT3 * lowPressureCfh('propane', '1/2', 0.5, 10),
  },
  {
    id: 'PIP-12',
    inputs: 'propane, 1 in, ΔH 0.5 in w.c., 50 ft, 2500 Btu/ft3',
    quantity: 'capacity, kBtu/h',
    expected: 480,
    tolerance: 8,
    kind: 'P',
    source: 'S13 402.4(28) [A]',
    compute: () => PROPANE_KBTU_PER_FT3 * lowPressureCfh('propane', '1', 0.5, 50),
  },
  {
    id: 'PIP-13',
    inputs: 'S 0.60, T 520 °R, Z 0.012: 0.00354·S·T·(Z/S)^0.152',
    quantity: 'Cr natural gas',
    expected: 0.6094,
    tolerance: 0.0002,
    kind: 'P',
    source: 'S13 symbols [B], value',
    fromMemory: true,
    compute: () => unwrap(pipeGasCr({ specificGravity: 0.6, viscosityCp: 0.012 })),
  },
  {
    id: 'PIP-14',
    inputs: 'S 1.50, Z 0.008',
    quantity: 'Cr propane',
    expected: 1.2462,
    tolerance: 0.0003,
    kind: 'P',
    source: 'S13 symbols [B], value',
    fromMemory: true,
    compute: () => unwrap(pipeGasCr({ specificGravity: 1.5, viscosityCp: 0.008 })),
  },
];

describeCheckRows('gas pipe sizing (PIP)', rows, { published: 14, computed: 0 });
