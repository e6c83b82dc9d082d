/** What the fill and system water may be, by the German guideline and its kin. */
import { ok, unwrap } from '../../../domain/result.ts';
import { demineralisedShare } from '../../../domain/water/demineralisedShare.ts';
import { austrianFillWaterLimitDh, fillWaterLimit, hasTooMuchTopUp } from '../../../domain/water/fillWaterLimit.ts';
import type { FillWaterEdition } from '../../../domain/water/fillWaterTable.ts';
import { convertHardness } from '../../../domain/water/hardness.ts';
import { scalePotential } from '../../../domain/water/scalePotential.ts';
import {
  BRITISH_DOMESTIC_TREATMENT,
  conductivityClass,
  MAKERS_CHLORIDE_MG_PER_L,
  systemWaterPh,
} from '../../../domain/water/systemWater.ts';
import { choice, number, reading } from '../core/fields.ts';
import { numberLine, rangeLine, wordsLine } from '../core/line.ts';
import { GRAMS, HARDNESS, HARDNESS_DH, LITRES_PER_KW, MONTHS, PH, POWER, VOLUME, WEEKS } from '../core/measures.ts';
import { atLeast, exactly, type UsualTable } from '../core/usual.ts';
import { said, work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';

const EDITIONS: Readonly<Record<FillWaterEdition, string>> = {
  '2005': 'VDI 2035 Part 1:2005',
  '2021': 'VDI 2035 Part 1:2021 (cells from memory)',
};

const BRITISH = 'BS 7593:2019, product page and trade summaries';

const USUAL: readonly UsualTable[] = [
  {
    title: 'Treatment in British homes',
    columns: ['Every', 'Hardness'],
    rows: [
      {
        label: 'Check the inhibitor',
        figures: [exactly(MONTHS, BRITISH_DOMESTIC_TREATMENT.inhibitorCheckMonths), null],
        notes: [BRITISH],
      },
      {
        label: 'Renew it, or have the water tested in a laboratory',
        figures: [exactly(MONTHS, BRITISH_DOMESTIC_TREATMENT.inhibitorRenewOrLabTestMonths), null],
        notes: [BRITISH],
      },
      {
        label: 'Scale reducer for the hot water',
        figures: [
          null,
          atLeast(
            HARDNESS,
            unwrap(
              convertHardness({
                value: BRITISH_DOMESTIC_TREATMENT.scaleReducerAboveMgPerLCaCo3,
                from: 'mg/L CaCO3',
                to: 'mmol/L',
              }),
            ),
          ),
        ],
        notes: [BRITISH],
      },
    ],
  },
];

export const waterQuality = defineWorksheet({
  key: 'water-quality',
  title: 'Fill and system water',
  answers: 'The hardness the fill may have, how much demineralised water it takes, and what pH and conductivity mean.',
  group: 'Hot water and water quality',
  fields: {
    hardnessMmolPerL: reading('hardnessMmolPerL', { label: 'Hardness of the fill water', points: ['before'] }),
    deminMmolPerL: number('Hardness of demineralised water', HARDNESS, [0, 10], {
      usual: '0',
      alsoCalled: ['demineralised'],
    }),
    systemVolumeL: reading('systemVolumeL'),
    totalOutputKw: number('Output of all boilers', POWER, [0, 100_000]),
    smallestGeneratorKw: number('Output of the smallest one', POWER, [0, 100_000], {
      help: 'The same again, with one boiler.',
    }),
    generatorContentLPerKw: number('Water in that boiler', LITRES_PER_KW, [0, 1000], {
      usual: '0.1',
      help: 'Circulating heaters and combis hold less than 0.3 L/kW.',
    }),
    edition: choice('By', EDITIONS, '2005'),
    totalFilledL: number('Filled and topped up so far', VOLUME, [0, 1e9], {
      help: 'Over the boiler’s life, the first fill too.',
    }),
    waterPh: reading('waterPh', { label: 'pH of the system water', points: ['after'], alsoCalled: ['ph'] }),
    metal: choice('Aluminium in the system', { no: 'no', yes: 'yes' }, 'no'),
    weeksSinceFill: number('Filled', WEEKS, [0, 10_000], { help: 'Weeks ago; water settles in 6–8 weeks.' }),
    conductivityUsPerCm: reading('conductivityUsPerCm', {
      label: 'Conductivity of the system water',
      points: ['after'],
    }),
    chlorideMgPerL: reading('chlorideMgPerL', { label: 'Chloride in the system water', points: ['after'] }),
  },
  workOut(given) {
    const {
      hardnessMmolPerL,
      deminMmolPerL,
      systemVolumeL,
      totalOutputKw,
      smallestGeneratorKw,
      generatorContentLPerKw,
    } = given;
    const limit = work({ systemVolumeL, totalOutputKw, smallestGeneratorKw, generatorContentLPerKw }, (known) =>
      fillWaterLimit({ edition: given.edition, ...known }),
    );
    const limitMmolPerL = work({ limit }, (known) =>
      known.limit.limitMolPerM3 === null ? said('no limit in this cell of the table') : ok(known.limit.limitMolPerM3),
    );
    const hasAluminium = given.metal === 'yes';
    const { waterPh, weeksSinceFill, conductivityUsPerCm, chlorideMgPerL } = given;
    const ph = work({ waterPh }, (known) =>
      systemWaterPh({
        ph: known.waterPh,
        hasAluminium,
        weeksSinceFill: weeksSinceFill.ok ? weeksSinceFill.value : null,
      }),
    );
    return {
      lines: [
        numberLine('Hardness the fill may have', HARDNESS, limitMmolPerL, { main: true }),
        numberLine(
          'System water per kW',
          LITRES_PER_KW,
          work({ limit }, (known) => ok(known.limit.specificVolumeLPerKw)),
        ),
        wordsLine(
          'This fill water is',
          work({ hardnessMmolPerL, limit }, ({ hardnessMmolPerL: hardness, limit: { limitMolPerM3 } }) =>
            ok(
              limitMolPerM3 === null
                ? ({ words: 'not limited by this table', tone: 'plain' } as const)
                : hardness <= limitMolPerM3
                  ? ({ words: 'not above the limit', tone: 'good' } as const)
                  : ({ words: 'above the limit: soften or demineralise', tone: 'bad' } as const),
            ),
          ),
        ),
        numberLine(
          'Hardness by the Austrian rule',
          HARDNESS_DH,
          work({ limit, totalOutputKw, generatorContentLPerKw }, (known) =>
            known.totalOutputKw > 50 || known.generatorContentLPerKw >= 0.3
              ? said('the rule is for heaters up to 50 kW with less than 0.3 L/kW')
              : austrianFillWaterLimitDh({ specificVolumeLPerKw: known.limit.specificVolumeLPerKw }),
          ),
        ),
        wordsLine(
          'So much water so far is',
          work({ systemVolumeL, totalFilledL: given.totalFilledL }, (known) => {
            const tooMuch = hasTooMuchTopUp(known);
            if (!tooMuch.ok) return tooMuch;
            return ok(
              tooMuch.value
                ? ({ words: 'more than three fills: find the leak, and treat the water', tone: 'bad' } as const)
                : ({ words: 'not more than three fills', tone: 'good' } as const),
            );
          }),
          { extra: true },
        ),
        numberLine(
          'Demineralised water to blend in',
          VOLUME,
          work({ hardnessMmolPerL, deminMmolPerL, limitMmolPerL, systemVolumeL }, (known) => {
            const blend = demineralisedShare({
              raw: known.hardnessMmolPerL,
              demineralised: known.deminMmolPerL,
              target: known.limitMmolPerL,
              volumeL: known.systemVolumeL,
            });
            return blend.ok ? ok(blend.value.demineralisedL) : blend;
          }),
        ),
        numberLine(
          'Scale this fill can lay down, at most',
          GRAMS,
          work({ hardnessMmolPerL, systemVolumeL }, (known) => {
            const dh = convertHardness({ value: known.hardnessMmolPerL, from: 'mmol/L', to: '°dH' });
            return dh.ok ? scalePotential({ volumeL: known.systemVolumeL, hardnessDh: dh.value }) : dh;
          }),
        ),
        rangeLine(
          'pH recommended',
          PH,
          work({ ph }, (known) => ok(known.ph.recommended)),
          { extra: true },
        ),
        wordsLine(
          'This pH is',
          work({ ph }, ({ ph: { position, shouldAskMaker, isSettled } }) => {
            const settled = isSettled === false ? '; not settled yet, read again after 6–8 weeks' : '';
            const maker = shouldAskMaker ? '; with aluminium ask the boiler’s maker' : '';
            return ok({
              words: `${position === 'within' ? 'as recommended' : `${position} what is recommended`}${maker}${settled}`,
              tone: position === 'within' && !shouldAskMaker ? ('good' as const) : ('doubt' as const),
            });
          }),
          { extra: true },
        ),
        wordsLine(
          'This conductivity means',
          work({ conductivityUsPerCm }, (known) => {
            const kind = conductivityClass(known);
            return kind.ok ? ok(CONDUCTIVITY_WORDS[kind.value]) : kind;
          }),
          { extra: true },
        ),
        wordsLine(
          'This chloride is',
          work({ chlorideMgPerL }, (known) => {
            const [least, most] = MAKERS_CHLORIDE_MG_PER_L;
            return ok(
              known.chlorideMgPerL > most
                ? ({ words: `above what any maker allows (${least}–${most} mg/L)`, tone: 'bad' } as const)
                : known.chlorideMgPerL > least
                  ? ({ words: `allowed by some makers only (${least}–${most} mg/L)`, tone: 'doubt' } as const)
                  : ({ words: `below what makers allow (${least}–${most} mg/L)`, tone: 'good' } as const),
            );
          }),
          { extra: true },
        ),
      ],
    };
  },
  formula: [
    'limit: table row by the output of all boilers and the water in the smallest, column by system water per kW of the smallest',
    'demineralised share = (raw − limit) / (raw − demineralised); scale = volume · hardness as CaCO₃',
    'pH 8.2–10.0, with aluminium 8.2–9.0; conductivity below 100 µS/cm low-salt, to 1500 saline',
  ],
  valid: [
    'Closed systems below 100 °C. The boiler maker’s own table overrides all of this.',
    'pH is of system water: fill water, hot and aerated samples read wrong.',
  ],
  usual: USUAL,
  source: [
    'Austria: ÖNORM H 5195-1 as quoted in a third-party manual, for less than 0.3 L/kW in the boiler.',
    'VDI 2035 Part 1:2005 as quoted in third-party manuals; 2021 edition from memory: no pass or fail should rest on it.',
    'Chloride: single makers’ figures, third-party manual and common practice.',
  ],
});

const CONDUCTIVITY_WORDS = {
  'low-salt': { words: 'low-salt water', tone: 'good' },
  saline: { words: 'saline water', tone: 'plain' },
  'above-recommendation': { words: 'more than any recommendation (inhibitors raise it)', tone: 'doubt' },
} as const;
