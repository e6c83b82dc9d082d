/** What radiators and floors give away from their rating point. */
import {
  FIN_TUBE_RULE_BTU_PER_H_FT,
  US_EMITTER_EXPONENTS,
  type UsEmitter,
  usEmitterFactor,
} from '../../../domain/hydronics/emitters/baseboardOutput.ts';
import { floorOutput, floorSurfaceOverRoom } from '../../../domain/hydronics/emitters/floorOutput.ts';
import {
  type FloorZone,
  floorSurfaceLimit,
  US_FLOOR_SURFACE_LIMIT_C,
} from '../../../domain/hydronics/emitters/floorSurfaceLimit.ts';
import {
  logarithmicMeanDifference,
  RADIATOR_EXPONENT,
  radiatorOutput,
} from '../../../domain/hydronics/emitters/radiatorOutput.ts';
import { METRES_PER_FOOT, W_PER_BTU_PER_H } from '../../../domain/quantity/conversions.ts';
import { ok } from '../../../domain/result.ts';
import { curveOver } from '../chart/chart.ts';
import { choice, number, reading } from '../core/fields.ts';
import { numberLine, wordsLine } from '../core/line.ts';
import {
  AREA_POWER,
  EMITTER_POWER,
  LINE_POWER,
  PERCENT_FINE,
  PLAIN,
  TEMPERATURE,
  TEMPERATURE_DIFFERENCE,
} from '../core/measures.ts';
import { atMost, between, exactly, type UsualTable } from '../core/usual.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';

const ZONES: Readonly<Record<FloorZone, string>> = {
  occupied: 'where people stay',
  edge: 'edge, up to 1 m',
  bathroom: 'bathroom',
};
const US_KINDS: Readonly<Record<UsEmitter, string>> = {
  baseboard: 'fin-tube baseboard',
  'cast-iron': 'cast iron',
  convector: 'convector',
};

const FROM_ASHRAE = 'ASHRAE, from memory';
const W_PER_M_PER_BTU_PER_H_FT = W_PER_BTU_PER_H / METRES_PER_FOOT;

const USUAL: readonly UsualTable[] = [
  {
    title: 'Exponents, where the maker gives none',
    columns: ['Exponent'],
    rows: [
      {
        label: 'Radiator, European rating',
        figures: [exactly(PLAIN, RADIATOR_EXPONENT)],
        notes: ['common practice'],
      },
      ...Object.entries(US_EMITTER_EXPONENTS).map(([kind, exponent]) => ({
        // The keys are those of the very table.
        label: `North American rating, ${US_KINDS[kind as UsEmitter]}`,
        figures: [exactly(PLAIN, exponent)],
        notes: [FROM_ASHRAE],
      })),
    ],
  },
  {
    title: 'Output and surface',
    columns: ['Output by length', 'Surface'],
    rows: [
      {
        label: 'Fin-tube baseboard, average water 82 °C (180 °F)',
        figures: [
          between(LINE_POWER, [
            FIN_TUBE_RULE_BTU_PER_H_FT[0] * W_PER_M_PER_BTU_PER_H_FT,
            FIN_TUBE_RULE_BTU_PER_H_FT[1] * W_PER_M_PER_BTU_PER_H_FT,
          ]),
          null,
        ],
        notes: ['common practice, no source', 'catalogues add 15 % as a heating effect: bare output is rated / 1.15'],
      },
      {
        label: 'Floor, North American practice',
        figures: [null, atMost(TEMPERATURE, US_FLOOR_SURFACE_LIMIT_C)],
        notes: ['85 °F'],
      },
    ],
  },
];

export const emitterOutput = defineWorksheet({
  key: 'emitter-output',
  title: 'Emitter output',
  answers: 'Output of a radiator, baseboard or floor at other temperatures than it is rated for.',
  group: 'Water side',
  fields: {
    ratedOutputW: number('Rated output', EMITTER_POWER, [0, 1_000_000], { help: 'At 75/65/20 °C (167/149/68 °F).' }),
    supplyC: reading('supplyC'),
    returnC: reading('returnC'),
    roomC: number('Room', TEMPERATURE, [-10, 50], { usual: { metric: '20', us: '70' }, alsoCalled: ['airC'] }),
    exponent: number('Exponent', PLAIN, [0.5, 2], { usual: '1.3', help: 'The maker’s own wins.' }),
    usKind: choice('North American kind', US_KINDS, 'baseboard', { help: 'Rated at 180 °F average water, 65 °F air.' }),
    floorSurfaceC: reading('floorSurfaceC'),
    zone: choice('Floor zone', ZONES, 'occupied'),
    floorLoadWPerM2: number('Heat wanted from the floor', AREA_POWER, [0, 1000], { alsoCalled: ['outputWPerM2'] }),
  },
  workOut({ ratedOutputW, supplyC, returnC, roomC, exponent, usKind, floorSurfaceC, zone, floorLoadWPerM2 }) {
    const water = work({ supplyC, returnC, roomC }, ok);
    const output = work({ ratedOutputW, water, exponent }, (known) =>
      radiatorOutput({ ratedOutputW: known.ratedOutputW, exponent: known.exponent, ...known.water }),
    );
    const limit = work({ roomC }, (known) => floorSurfaceLimit({ zone, roomC: known.roomC }));
    const over = work({ floorSurfaceC, roomC }, (known) => ok(known.floorSurfaceC - known.roomC));
    const wantedC = work({ floorLoadWPerM2, roomC }, (known) => {
      const overRoomK = floorSurfaceOverRoom({ outputWPerM2: known.floorLoadWPerM2 });
      return overRoomK.ok ? ok(known.roomC + overRoomK.value) : overRoomK;
    });
    const spread = supplyC.ok && returnC.ok ? Math.max(0, supplyC.value - returnC.value) : null;
    return {
      lines: [
        numberLine('Radiator gives', EMITTER_POWER, output, { main: true }),
        numberLine(
          'Share of its rating',
          PERCENT_FINE,
          work({ water, exponent }, (known) => {
            const share = radiatorOutput({ ratedOutputW: 100, exponent: known.exponent, ...known.water });
            return share;
          }),
        ),
        numberLine(
          'Water over room, logarithmic mean',
          TEMPERATURE_DIFFERENCE,
          work({ water }, (known) => logarithmicMeanDifference(known.water)),
        ),
        numberLine(
          'Share of a North American rating',
          PERCENT_FINE,
          work({ water }, ({ water: { supplyC: supply, returnC: back, roomC: room } }) => {
            const factor = usEmitterFactor({ kind: usKind, averageWaterC: (supply + back) / 2, airC: room });
            return factor.ok ? ok(100 * factor.value) : factor;
          }),
        ),
        numberLine(
          'Floor gives',
          AREA_POWER,
          work({ over }, (known) => floorOutput({ surfaceOverRoomK: known.over })),
          { extra: true, main: true },
        ),
        numberLine('Floor may be at most', TEMPERATURE, limit),
        numberLine('For the heat wanted it must be at', TEMPERATURE, wantedC, { extra: true, main: true }),
        wordsLine(
          'So the floor alone',
          work({ wantedC, limit }, (known) =>
            ok(
              known.wantedC > known.limit
                ? ({ words: 'can’t give that within its limit', tone: 'bad' } as const)
                : ({ words: 'can give that within its limit', tone: 'good' } as const),
            ),
          ),
          { extra: true },
        ),
        wordsLine(
          'This floor is',
          work({ floorSurfaceC, limit }, (known) =>
            ok(
              known.floorSurfaceC > known.limit
                ? ({ words: 'too warm', tone: 'bad' } as const)
                : ({ words: 'not above its limit', tone: 'good' } as const),
            ),
          ),
          { extra: true },
        ),
      ],
      chart:
        spread !== null && roomC.ok && exponent.ok
          ? {
              title: 'Share of the rating against supply, same spread',
              x: { label: 'Supply', measure: TEMPERATURE },
              y: { label: 'Share of the rating', measure: PERCENT_FINE },
              curves: [
                {
                  label: 'radiator',
                  points: curveOver(
                    roomC.value + spread + 1,
                    90,
                    (supply) =>
                      radiatorOutput({
                        ratedOutputW: 100,
                        supplyC: supply,
                        returnC: supply - spread,
                        roomC: roomC.value,
                        exponent: exponent.value,
                        mean: 'logarithmic',
                      }),
                    40,
                  ),
                  weight: 'main',
                },
              ],
              marks: [],
            }
          : null,
    };
  },
  formula: [
    'output = rated · (ΔT / 50 K)^n; with a wide spread (return − room below 0.7 of supply − room) the logarithmic mean over 49.83 K',
    'North America: ((average water − air) / 115 °F)^n; floor: 8.92 · (surface − room)^1.1 W/m²',
  ],
  valid: [
    'Supply above return above room; exponent 1–1.5. Heated floors only, up to 20 K over the room. The curve uses the logarithmic mean throughout.',
    'Floor limits: room + 9 K or + 15 K at the edge, capped at 29, 33 and 35 °C; North American practice 85 °F. Screed and timber makers set lower ones.',
  ],
  usual: USUAL,
  source: ['EN 442 (switch at 0.7 from memory); ASHRAE exponents, from memory; EN 1264 as printed in trade journals.'],
});
