/** Heat a circuit carries, from flow and temperatures, and how far off it can be. */
import { heatOutput as outputOf } from '../../../domain/hydronics/output/heatOutput.ts';
import { heatOutputSimple } from '../../../domain/hydronics/output/heatOutputSimple.ts';
import { heatOutputUncertainty } from '../../../domain/hydronics/output/heatOutputUncertainty.ts';
import { trueFlowFactor } from '../../../domain/hydronics/output/trueFlowFactor.ts';
import { USUAL_TEMPERATURE_DIFFERENCES } from '../../../domain/hydronics/output/usualTemperatureDifferences.ts';
import { ok } from '../../../domain/result.ts';
import { choice, number, reading } from '../core/fields.ts';
import { numberLine, wordsLine } from '../core/line.ts';
import { PERCENT_FINE, PLAIN, POWER, TEMPERATURE_DIFFERENCE, WHOLE_DIFFERENCE } from '../core/measures.ts';
import { between } from '../core/usual.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { fluidFields, fluidOf } from './fluidFields.ts';

export const heatOutput = defineWorksheet({
  key: 'heat-output',
  title: 'Heat output from flow and ΔT',
  answers: 'Output of a circuit with its uncertainty, and what the rules of thumb would say.',
  group: 'Water side',
  fields: {
    systemFlowLPerMin: reading('systemFlowLPerMin', { alsoCalled: ['flowLPerMin'] }),
    supplyC: reading('supplyC'),
    returnC: reading('returnC'),
    meterIn: choice('Flow measured in the', { return: 'return', supply: 'supply' }, 'return'),
    ...fluidFields,
    supplySensorK: number('Supply sensor, ±', TEMPERATURE_DIFFERENCE, [0, 20], { usual: { metric: '0.3', us: '0.5' } }),
    returnSensorK: number('Return sensor, ±', TEMPERATURE_DIFFERENCE, [0, 20], { usual: { metric: '0.3', us: '0.5' } }),
    flowPct: number('Flow meter, ±', PERCENT_FINE, [0, 100], { usual: '2' }),
  },
  workOut(given) {
    const { systemFlowLPerMin, supplyC, returnC, supplySensorK, returnSensorK, flowPct } = given;
    const fluid = fluidOf(given.fluid, given.glycolPct);
    const deltaTK = work({ supplyC, returnC }, (known) => ok(known.supplyC - known.returnC));
    const output = work({ systemFlowLPerMin, supplyC, returnC, fluid }, (known) =>
      outputOf({
        flowLPerMin: known.systemFlowLPerMin,
        meterC: given.meterIn === 'return' ? known.returnC : known.supplyC,
        supplyC: known.supplyC,
        returnC: known.returnC,
        fluid: known.fluid,
      }),
    );
    const uncertainty = work({ supplySensorK, returnSensorK, flowPct, deltaTK }, heatOutputUncertainty);
    return {
      lines: [
        numberLine('Heat output', POWER, output, {
          main: true,
          plusMinus: (kw) => (uncertainty.ok ? (kw * uncertainty.value.uncertaintyPct) / 100 : undefined),
        }),
        numberLine('Supply minus return', TEMPERATURE_DIFFERENCE, deltaTK),
        numberLine(
          'Uncertainty, ±',
          PERCENT_FINE,
          work({ uncertainty }, (known) => ok(known.uncertainty.uncertaintyPct)),
        ),
        wordsLine(
          'As a measurement it is',
          work({ uncertainty }, (known) =>
            ok(
              known.uncertainty.isDeltaTUseful
                ? ({ words: 'of use', tone: 'good' } as const)
                : ({ words: 'of no use: less than 5 K (9 °F) between supply and return', tone: 'doubt' } as const),
            ),
          ),
        ),
        numberLine(
          'Worked out on paper, 1 kg/L',
          POWER,
          work({ systemFlowLPerMin, deltaTK }, (known) =>
            heatOutputSimple({ flowLPerMin: known.systemFlowLPerMin, deltaTK: known.deltaTK }),
          ),
        ),
        numberLine(
          'True factor instead of “500”',
          { ...PLAIN, decimals: 1 },
          work({ fluid, supplyC, returnC }, (known) =>
            trueFlowFactor({ fluid: known.fluid, temperatureC: (known.supplyC + known.returnC) / 2 }),
          ),
        ),
      ],
    };
  },
  formula: [
    'output = flow · density at the meter · heat capacity at the mean · (supply − return)',
    '± = √(((u supply)² + (u return)²) / ΔT² + (u flow)²)',
  ],
  valid: [
    'Steady flow of liquid in a full pipe. Two sensors of ±0.3 K are off by 8.5 % at 5 K: a smaller difference gives no useful figure.',
    'The factor is in Btu/h per US gpm and °F, at the mean of supply and return.',
  ],
  usual: [
    {
      title: 'What a circuit is designed or rated for',
      columns: ['Supply minus return'],
      rows: USUAL_TEMPERATURE_DIFFERENCES.map(({ label, deltaTK, basis }) => ({
        label,
        figures: [between(WHOLE_DIFFERENCE, deltaTK)],
        notes: [basis],
      })),
    },
  ],
  source: ['Energy balance; IAPWS R7-97(2012), IIR 2010 (Melinder) for glycol; root-sum-square of independent errors.'],
});
