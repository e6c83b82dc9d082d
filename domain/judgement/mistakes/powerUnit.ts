/** kW, Btu/h and thousands of Btu/h mixed up: the plate is a fixed factor away from the model's rating. */
import { KW_PER_MBH } from '../../quantity/conversions.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

/** Typed unit and meant unit give these factors between what is stored and what is true. */
const KW = 1;
const MBH = KW_PER_MBH;
const BTU_H = KW_PER_MBH / 1000;
const UNITS = [KW, MBH, BTU_H];
const FACTORS = UNITS.flatMap((typed) => UNITS.filter((meant) => meant !== typed).map((meant) => typed / meant));
/** Ratings of one model vary by kit and by net or gross; a unit's factor is 3.4 at least. */
const SAME_WITHIN = 0.3;

export const powerUnit: MistakeRule = {
  row: 14,
  find: (context) => {
    const modelKw = context.sheet.appliance.ratedInputMaxKw;
    if (modelKw === null) return [];
    const reading = context.latest('ratedInputKw');
    const plateKw = reading?.value ?? context.record.appliance.ratedInputKw;
    if (plateKw === null || plateKw <= 0) return [];
    const ratio = plateKw / modelKw;
    const factor = FACTORS.find((one) => Math.abs(Math.log(ratio / one)) < Math.log(1 + SAME_WITHIN));
    if (factor === undefined) return [];
    return [
      mistakeFinding(
        {
          code: 'power-unit',
          about: reading === undefined ? [] : [reading],
          from: 'practice',
          rule: 'the plate’s input is away from the model’s by the factor between two units of power',
          ask: 'the unit on the plate: kW, Btu/h or thousands of Btu/h (MBH)?',
          inputs: { plateKw, modelKw, factor },
          suggestions: [
            reading === undefined
              ? { code: 'power-unit', changes: [], needsNewReading: true }
              : change('power-unit', [reading, plateKw / factor]),
          ],
        },
        context,
      ),
    ];
  },
};
