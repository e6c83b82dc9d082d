/** What radiators and floors give away from their rating point. */
import { type UsEmitter, usEmitterFactor } from '../../../domain/hydronics/emitters/baseboardOutput.ts';
import { floorOutput } from '../../../domain/hydronics/emitters/floorOutput.ts';
import { type FloorZone, floorSurfaceLimit } from '../../../domain/hydronics/emitters/floorSurfaceLimit.ts';
import { logarithmicMeanDifference, radiatorOutput } from '../../../domain/hydronics/emitters/radiatorOutput.ts';
import { ok } from '../../../domain/result.ts';
import { curveOver } from '../chart/chart.ts';
import { choice, number, reading } from '../core/fields.ts';
import { numberLine, wordsLine } from '../core/line.ts';
import {
  AREA_POWER,
  EMITTER_POWER,
  PERCENT_FINE,
  PLAIN,
  TEMPERATURE,
  TEMPERATURE_DIFFERENCE,
} from '../core/measures.ts';
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
  },
  workOut({ ratedOutputW, supplyC, returnC, roomC, exponent, usKind, floorSurfaceC, zone }) {
    const water = work({ supplyC, returnC, roomC }, ok);
    const output = work({ ratedOutputW, water, exponent }, (known) =>
      radiatorOutput({ ratedOutputW: known.ratedOutputW, exponent: known.exponent, ...known.water }),
    );
    const limit = work({ roomC }, (known) => floorSurfaceLimit({ zone, roomC: known.roomC }));
    const over = work({ floorSurfaceC, roomC }, (known) => ok(known.floorSurfaceC - known.roomC));
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
  source: ['EN 442 (switch at 0.7 from memory); ASHRAE exponents, from memory; EN 1264 as printed in trade journals.'],
});
