/** Hot water at the tap: flow, rise, mixing, and how fast it burns. */
import { hotShare } from '../../../domain/hydronics/hotWater/hotShare.ts';
import { hotWaterFlow, hotWaterRise } from '../../../domain/hydronics/hotWater/hotWaterFlow.ts';
import {
  SCALD_TIMES,
  STORED_WATER_C,
  shortestScaldTime,
  USUAL_BATHING_LIMIT_C,
  USUAL_OUTLET_C,
} from '../../../domain/hydronics/hotWater/scaldTimes.ts';
import { ok } from '../../../domain/result.ts';
import { number, reading } from '../core/fields.ts';
import { numberLine, wordsLine } from '../core/line.ts';
import { FLOW, PERCENT_FINE, POWER, TEMPERATURE, TEMPERATURE_DIFFERENCE, WHOLE_TEMPERATURE } from '../core/measures.ts';
import { atLeast, atMost, between, type UsualRow } from '../core/usual.ts';
import { said, work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';

const STORE_GUIDANCE = 'against legionella: HSE HSG274 Part 2';

const USUAL: readonly UsualRow[] = [
  {
    label: 'Outlet of a heater without a store',
    figures: [between(WHOLE_TEMPERATURE, USUAL_OUTLET_C)],
    notes: ['common practice, no source'],
  },
  {
    label: 'Bathing outlet, at most',
    figures: [atMost(WHOLE_TEMPERATURE, USUAL_BATHING_LIMIT_C)],
    notes: ['120 °F'],
  },
  {
    label: 'Stored',
    figures: [atLeast(WHOLE_TEMPERATURE, STORED_WATER_C.storeAtLeast)],
    notes: [STORE_GUIDANCE, 'mix down at the outlet'],
  },
  {
    label: 'Hot outlet of a store, within a minute',
    figures: [atLeast(WHOLE_TEMPERATURE, STORED_WATER_C.outletAtLeastWithinAMinute)],
    notes: [STORE_GUIDANCE, 'before any mixing valve'],
  },
  {
    label: 'The same in healthcare',
    figures: [atLeast(WHOLE_TEMPERATURE, STORED_WATER_C.healthcareOutletAtLeast)],
    notes: [STORE_GUIDANCE],
  },
  {
    label: 'Cold water, below',
    figures: [atMost(WHOLE_TEMPERATURE, STORED_WATER_C.coldBelow)],
    notes: [STORE_GUIDANCE],
  },
];

export const hotWater = defineWorksheet({
  key: 'hot-water',
  title: 'Hot water: flow, mixing, scalding',
  answers: 'What a heater delivers at a rise, the share of hot in a mix, and how fast water of a temperature burns.',
  group: 'Hot water and water quality',
  caution:
    'Hot water burns children and old people fastest. A store is kept hot against legionella and mixed down at the tap: a mixing valve is set by the maker’s manual and local code.',
  fields: {
    outputKw: number('Output of the heater', POWER, [0, 1000], { help: 'Output, not input.' }),
    coldInletC: reading('coldInletC', { alsoCalled: ['coldC'] }),
    hotOutletC: reading('hotOutletC', { alsoCalled: ['hotC'] }),
    hotWaterFlowLPerMin: reading('hotWaterFlowLPerMin', { points: [null], alsoCalled: ['flowLPerMin'] }),
    mixedOutletC: reading('mixedOutletC', { alsoCalled: ['mixedC', 'waterC'] }),
  },
  workOut({ outputKw, coldInletC, hotOutletC, hotWaterFlowLPerMin, mixedOutletC }) {
    const rise = work({ coldInletC, hotOutletC }, (known) => ok(known.hotOutletC - known.coldInletC));
    const riseAtFlow = work({ outputKw, coldInletC, hotWaterFlowLPerMin }, (known) =>
      hotWaterRise({
        outputKw: known.outputKw,
        coldC: known.coldInletC,
        flowLPerMin: known.hotWaterFlowLPerMin,
      }),
    );
    return {
      lines: [
        numberLine('Rise', TEMPERATURE_DIFFERENCE, rise),
        numberLine(
          'Flow the output makes at that rise',
          FLOW,
          work({ outputKw, coldInletC, rise }, (known) =>
            hotWaterFlow({ outputKw: known.outputKw, coldC: known.coldInletC, riseK: known.rise }),
          ),
          { main: true },
        ),
        numberLine('Rise the output makes at the flow', TEMPERATURE_DIFFERENCE, riseAtFlow, { extra: true }),
        numberLine(
          'So the water comes out at',
          TEMPERATURE,
          work({ coldInletC, riseAtFlow }, (known) => ok(known.coldInletC + known.riseAtFlow)),
          { extra: true },
        ),
        numberLine(
          'Share of hot in the mix',
          PERCENT_FINE,
          work({ coldInletC, hotOutletC, mixedOutletC }, (known) => {
            const share = hotShare({ hotC: known.hotOutletC, coldC: known.coldInletC, mixedC: known.mixedOutletC });
            return share.ok ? ok(100 * share.value) : share;
          }),
        ),
        wordsLine(
          'Mixed water burns within',
          work({ mixedOutletC }, (known) => {
            if (known.mixedOutletC < COOLEST_PUBLISHED_C) {
              return said('nothing is published for water below 45 °C (113 °F): that does not mean it can’t hurt');
            }
            const time = shortestScaldTime({ waterC: known.mixedOutletC });
            if (!time.ok) return time;
            const words = `${timeWords(time.value.seconds)} (${time.value.who}; ${time.value.source})`;
            return ok({
              words,
              tone: known.mixedOutletC > USUAL_BATHING_LIMIT_C ? ('bad' as const) : ('doubt' as const),
            });
          }),
          { main: true },
        ),
        wordsLine(
          'For bathing it is',
          work({ mixedOutletC }, (known) =>
            ok(
              known.mixedOutletC > USUAL_BATHING_LIMIT_C
                ? ({ words: 'above the usual highest, 49 °C (120 °F)', tone: 'bad' } as const)
                : ({ words: 'not above the usual highest, 49 °C (120 °F)', tone: 'good' } as const),
            ),
          ),
        ),
      ],
    };
  },
  formula: [
    'flow in L/min = 60 · kW / (density cold · heat capacity · rise)',
    'share of hot = (mixed − cold) / (hot − cold)',
    'burn time: the shortest published for the next temperature at or above the asked one, or for any cooler one',
  ],
  valid: [
    'Steady draw without a store; cold 0–40 °C, rise 1–90 K, up to 100 °C.',
    'Burn times from 45 °C (113 °F). They are for warnings: no time is ever longer than any source says.',
  ],
  usual: [{ title: 'Hot water temperatures', columns: ['Temperature'], rows: USUAL }],
  source: [
    'Energy balance on IAPWS R7-97(2012).',
    'Burns: CPSC tap-water scald notice, time and temperature table of burn research, industry leaflet (children).',
  ],
});

const COOLEST_PUBLISHED_C = Math.min(...SCALD_TIMES.map(({ waterC }) => waterC));

function timeWords(seconds: number): string {
  if (seconds < 60) return `${seconds} s`;
  return seconds < 3600 ? `${seconds / 60} min` : `${seconds / 3600} h`;
}
