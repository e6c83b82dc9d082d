/** What a gas pipe carries, and how wide it must be, by the two equations of the fuel-gas code. */
import {
  highPressurePipeCapacityM3PerH,
  highPressurePipeDiameterMm,
  lowPressurePipeCapacityM3PerH,
  lowPressurePipeDiameterMm,
  PIPE_GASES,
  SCHEDULE_40_INSIDE_DIAMETER_IN,
} from '../../../domain/gas/pipeSizing.ts';
import { inchesToMm, STANDARD_ATMOSPHERE_KPA } from '../../../domain/quantity/conversions.ts';
import { type OutOfRange, ok, type Result } from '../../../domain/result.ts';
import { choice, number, reading } from '../core/fields.ts';
import { numberLine, wordsLine } from '../core/line.ts';
import { DIAMETER, GAS_PRESSURE, GAS_RATE, LENGTH, PIPE_DROP, POWER } from '../core/measures.ts';
import { firstTyped, isTyped, said, work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';

const SIZES = [
  '1/2',
  '3/4',
  '1',
  '1-1/4',
  '1-1/2',
  '2',
] as const satisfies readonly (keyof typeof SCHEDULE_40_INSIDE_DIAMETER_IN)[];

export const gasPipe = defineWorksheet({
  key: 'gas-pipe',
  title: 'Gas pipe size',
  answers: 'The capacity of a pipe at an allowed drop, and the smallest steel pipe for a load.',
  group: 'Gas',
  caution:
    'Where a code table governs, the table decides, not this equation. Gas pipe is laid, tested and put in service by licensed people.',
  fields: {
    gas: choice('Gas', { 'natural-gas': 'natural gas, 0.60', propane: 'propane, 1.50' }, 'natural-gas'),
    equation: choice('Gas pressure', { low: 'below 1.5 psi (100 mbar)', high: '1.5 psi (100 mbar) and above' }, 'low'),
    equivalentLengthM: number('Length with fittings', LENGTH, [0, 5000], {
      help: 'To the farthest appliance, fittings as pipe.',
    }),
    pressureDropKpa: number('Drop allowed', PIPE_DROP, [0, 1000], {
      help: 'The drop over the pipe, not the supply pressure.',
    }),
    inletMbarG: number('Pressure at the start', GAS_PRESSURE, [0, 10_000], {
      onlyFor: { field: 'equation', is: ['high'] },
    }),
    connectedLoadKw: reading('connectedLoadKw', { label: 'Gross load to carry' }),
    heatingValueMjPerM3: reading('heatingValueMjPerM3', {
      usual: { metric: '38', us: '1000' },
      help: 'Of the gas as metered.',
    }),
    flowM3PerH: number('or: flow to carry', GAS_RATE, [0, 20_000]),
    insideDiameterMm: number('Inside diameter to check', DIAMETER, [1, 1000], { help: 'If there is a pipe already.' }),
  },
  workOut(given) {
    const gas = PIPE_GASES[given.gas];
    const { equivalentLengthM, pressureDropKpa, insideDiameterMm, connectedLoadKw, heatingValueMjPerM3 } = given;
    const isHigh = given.equation === 'high';
    const inlet = isHigh ? given.inletMbarG : ok(0);
    const run = work({ equivalentLengthM, pressureDropKpa, inlet }, (known) => {
      const inletKpaAbs = STANDARD_ATMOSPHERE_KPA + known.inlet / 10;
      return ok({ ...known, gas, inletKpaAbs, outletKpaAbs: inletKpaAbs - known.pressureDropKpa });
    });
    const byLoad = work({ connectedLoadKw, heatingValueMjPerM3 }, (known) =>
      known.heatingValueMjPerM3 < LEAST_HEATING_VALUE_MJ_PER_M3
        ? said('the heating value is too small for a fuel gas')
        : ok((3.6 * known.connectedLoadKw) / known.heatingValueMjPerM3),
    );
    const flow = firstTyped('a load or a flow', given.flowM3PerH, byLoad);
    const capacityOf = (run_: Run, diameterMm: number) =>
      isHigh
        ? highPressurePipeCapacityM3PerH({ ...run_, insideDiameterMm: diameterMm })
        : lowPressurePipeCapacityM3PerH({ ...run_, insideDiameterMm: diameterMm });
    const capacity = work({ run, insideDiameterMm }, (known) => capacityOf(known.run, known.insideDiameterMm));
    return {
      lines: [
        ...(isTyped(given.flowM3PerH) ? [] : [numberLine('Flow of that load', GAS_RATE, byLoad)]),
        numberLine(
          'Inside diameter needed',
          DIAMETER,
          work({ run, flow }, (known) =>
            isHigh
              ? highPressurePipeDiameterMm({ ...known.run, flowM3PerH: known.flow })
              : lowPressurePipeDiameterMm({ ...known.run, flowM3PerH: known.flow }),
          ),
          { main: true },
        ),
        wordsLine(
          'Smallest schedule 40 steel',
          work({ run, flow }, (known) => smallestSteel(known.flow, (diameterMm) => capacityOf(known.run, diameterMm))),
          { main: true },
        ),
        numberLine('The pipe to check carries', GAS_RATE, capacity, { extra: true, main: true }),
        numberLine(
          'That is a load of',
          POWER,
          work({ capacity, heatingValueMjPerM3 }, (known) => ok((known.capacity * known.heatingValueMjPerM3) / 3.6)),
          { extra: true },
        ),
      ],
    };
  },
  formula: [
    'below 1.5 psi: D = Q^0.381 / (19.17 · (ΔH / (Cr · L))^0.206)',
    '1.5 psi and above: D = Q^0.381 / (18.93 · ((P1² − P2²) · Y / (Cr · L))^0.206)',
    'D in, Q ft³/h, ΔH in w.c., L ft, P psia',
  ],
  valid: [
    'D 5–300 mm, L 0.3–2000 m. Comes out 0.5–0.8 % above the printed tables; the 2 and 5 psi tables of the 2018 code differ by up to 5 %.',
    'The start pressure is turned absolute with the air pressure at sea level.',
  ],
  source: [
    'International Fuel Gas Code 2018 App. A.4 / NFPA 54 (constants from memory, confirmed by printed table cells).',
  ],
});

type Run = {
  readonly gas: (typeof PIPE_GASES)[keyof typeof PIPE_GASES];
  readonly equivalentLengthM: number;
  readonly pressureDropKpa: number;
  readonly inletKpaAbs: number;
  readonly outletKpaAbs: number;
};

const LEAST_HEATING_VALUE_MJ_PER_M3 = 1;
/** What lies above the largest size here takes the code's own tables. */
function smallestSteel(flowM3PerH: number, capacityOf: (diameterMm: number) => Result<number, OutOfRange>) {
  for (const size of SIZES) {
    const capacity = capacityOf(inchesToMm(SCHEDULE_40_INSIDE_DIAMETER_IN[size]));
    if (!capacity.ok) return capacity;
    if (capacity.value >= flowM3PerH) return ok(`${size} in`);
  }
  return said('more than 2 in: see the code’s tables');
}
