/** The supply temperature that matches an emitter to the weather. */
import { CONTROL_SETTINGS, DESIGN_SUPPLY } from '../../../domain/hydronics/emitters/supplyTemperatures.ts';
import { outdoorForReturn, resetCurve as resetPoint } from '../../../domain/hydronics/reset/resetCurve.ts';
import { twoPointReset } from '../../../domain/hydronics/reset/twoPointReset.ts';
import { ok } from '../../../domain/result.ts';
import { curveOver } from '../chart/chart.ts';
import { number, reading } from '../core/fields.ts';
import { numberLine, wordsLine } from '../core/line.ts';
import {
  PERCENT_FINE,
  PLAIN,
  TEMPERATURE,
  TEMPERATURE_DIFFERENCE,
  WHOLE_DIFFERENCE,
  WHOLE_TEMPERATURE,
} from '../core/measures.ts';
import { atMost, between } from '../core/usual.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';

export const resetCurve = defineWorksheet({
  key: 'reset-curve',
  title: 'Outdoor reset curve',
  answers: 'Supply and return at any outdoor temperature, and from where on the return condenses.',
  group: 'Water side',
  caution: 'Floors have a limit of their own: an independent high limit stays in place whatever the curve says.',
  fields: {
    designOutdoorC: reading('resetDesignOutdoorC', {
      label: 'Coldest outdoor',
      alsoCalled: ['resetDesignOutdoorC'],
    }),
    designSupplyC: reading('resetDesignSupplyC', { label: 'Supply at the coldest' }),
    designReturnC: number('Return at the coldest', TEMPERATURE, [15, 95]),
    designRoomC: number('Room', TEMPERATURE, [0, 40], { usual: { metric: '20', us: '70' } }),
    exponent: number('Exponent of the emitter', PLAIN, [0.5, 2], {
      usual: '1.3',
      help: 'Radiators 1.3, baseboard and convectors 1.3–1.4, floors 1.1.',
    }),
    internalGainK: number('People and sun are worth', TEMPERATURE_DIFFERENCE, [0, 30], {
      usual: '0',
      help: 'In degrees of outdoor temperature; 0 when unknown.',
    }),
    outdoorC: reading('outdoorC', { label: 'Outdoor now' }),
    returnBelowC: number('Return wanted below', TEMPERATURE, [0, 120], {
      usual: { metric: '54', us: '130' },
      help: 'Where natural gas begins to condense, by rule of thumb.',
    }),
  },
  workOut(given) {
    const { designSupplyC, designReturnC, designRoomC, designOutdoorC, exponent, internalGainK, outdoorC } = given;
    const design = work(
      { designSupplyC, designReturnC, designRoomC, designOutdoorC, exponent, internalGainK },
      (known) => ok(known),
    );
    const point = work({ design, outdoorC }, (known) => resetPoint({ ...known.design, outdoorC: known.outdoorC }));
    const condensing = work({ design, returnBelowC: given.returnBelowC }, (known) =>
      outdoorForReturn({ ...known.design, returnBelowC: known.returnBelowC }),
    );
    const above = condensing.ok && condensing.value.kind === 'above' ? condensing.value.outdoorC : null;
    return {
      lines: [
        numberLine(
          'Supply now',
          TEMPERATURE,
          work({ point }, (known) => ok(known.point.supplyC)),
          { main: true },
        ),
        numberLine(
          'Return now',
          TEMPERATURE,
          work({ point }, (known) => ok(known.point.returnC)),
          { main: true },
        ),
        numberLine(
          'Share of the design load',
          PERCENT_FINE,
          work({ point }, (known) => ok(100 * known.point.loadShare)),
        ),
        numberLine(
          'A straight line would give',
          TEMPERATURE,
          work({ design, outdoorC }, (known) =>
            twoPointReset({
              designOutdoorC: known.design.designOutdoorC,
              designSupplyC: known.design.designSupplyC,
              warmOutdoorC: known.design.designRoomC - known.design.internalGainK,
              warmSupplyC: known.design.designRoomC,
              outdoorC: known.outdoorC,
            }),
          ),
        ),
        above === null
          ? wordsLine(
              'Return below that',
              work({ condensing }, (known) =>
                ok(
                  known.condensing.kind === 'never' ? 'never: it is no warmer than the room' : 'down to the design day',
                ),
              ),
            )
          : numberLine('Return below that from outdoor', TEMPERATURE, ok(above), { main: true }),
      ],
      chart: design.ok
        ? {
            title: 'Supply and return against the weather',
            x: { label: 'Outdoor', measure: TEMPERATURE },
            y: { label: 'Water', measure: TEMPERATURE },
            curves: [
              {
                label: 'supply',
                points: curveOver(design.value.designOutdoorC, design.value.designRoomC, (outdoor) => {
                  const at = resetPoint({ ...design.value, outdoorC: outdoor });
                  return at.ok ? ok(at.value.supplyC) : at;
                }),
                weight: 'main',
              },
              {
                label: 'return',
                points: curveOver(design.value.designOutdoorC, design.value.designRoomC, (outdoor) => {
                  const at = resetPoint({ ...design.value, outdoorC: outdoor });
                  return at.ok ? ok(at.value.returnC) : at;
                }),
                weight: 'other',
              },
            ],
            marks: point.ok && outdoorC.ok ? [{ label: 'now', at: [outdoorC.value, point.value.supplyC] }] : [],
          }
        : null,
    };
  },
  formula: [
    'q = (room − outdoor − gain) / (room − design outdoor − gain), never below 0',
    'supply = room + (mean design water − room) · q^(1/n) + ½ · (design supply − return) · q; return = supply − q · (design supply − return)',
  ],
  valid: [
    'Steady weather, constant flow, one kind of emitter. Exponent 1–1.5; water up to 120 °C (248 °F).',
    'Warm-weather shutdown and a minimum supply are clamps of the control, not points of this curve.',
    'A straight line between the same ends is too cold in between, most at half load.',
  ],
  usual: [
    {
      title: 'What the controls are set to, by emitter: common practice, unless a note says otherwise',
      columns: ['Highest supply', 'Supply minus return'],
      rows: CONTROL_SETTINGS.map(({ label, highestSupplyC, deltaTK, notes }) => ({
        label,
        figures: [
          highestSupplyC === null ? null : between(WHOLE_TEMPERATURE, highestSupplyC),
          deltaTK === null ? null : between(WHOLE_DIFFERENCE, deltaTK),
        ],
        notes,
      })),
    },
    {
      title: 'What an emitter is designed for',
      columns: ['Supply'],
      rows: DESIGN_SUPPLY.map(({ label, leastC, mostC, source }) => ({
        label,
        figures: [leastC === null ? atMost(WHOLE_TEMPERATURE, mostC) : between(WHOLE_TEMPERATURE, [leastC, mostC])],
        notes: [source],
      })),
    },
  ],
  source: ['Supply and return set-point reset of an open Modelica buildings library; straight line: common practice.'],
});
