/** Water in a system: estimated from the output, or counted from its pipes. */
import type { VolumeEmitter } from '../../../domain/hydronics/volume/emitterVolumes.ts';
import { britishDomesticVolume, systemVolumeEstimate } from '../../../domain/hydronics/volume/systemVolumeEstimate.ts';
import { findTube, TUBES } from '../../../domain/hydronics/volume/tubes.ts';
import { tubeVolume } from '../../../domain/hydronics/volume/tubeVolume.ts';
import { ok } from '../../../domain/result.ts';
import { choice, number } from '../core/fields.ts';
import { numberLine, rangeLine } from '../core/line.ts';
import { LENGTH, POWER, VOLUME } from '../core/measures.ts';
import { said, work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';

const EMITTERS: Readonly<Record<VolumeEmitter, string>> = {
  'steel-panels': 'steel panel radiators',
  'perimeter-or-convectors': 'baseboard or convectors',
  'fan-coils-or-air-handlers': 'fan coils or air handlers',
  'cast-iron': 'cast-iron radiators',
  floor: 'floor heating',
  'distant-or-large': 'distant or large systems',
  'small-domestic-or-microbore': 'small home, microbore',
};

const TUBE_CHOICES: Readonly<Record<string, string>> = Object.fromEntries(TUBES.map(({ key, label }) => [key, label]));

export const systemVolume = defineWorksheet({
  key: 'system-volume',
  title: 'System volume',
  answers: 'Litres in a system, from the output and the emitters or from the length of its pipes.',
  group: 'Water side',
  fields: {
    outputKw: number('Output of the boiler', POWER, [0, 10_000]),
    emitter: choice('Emitters', EMITTERS, 'steel-panels'),
    exchangerL: number('Water in the boiler', VOLUME, [0, 500], { help: 'Off its sheet; for the British rule.' }),
    lengthM: number('Length of pipe', LENGTH, [0, 100_000], { help: 'Both ways, supply and return.' }),
    tube: choice('Pipe', TUBE_CHOICES, { metric: 'pex-16x2', us: 'pex-1/2' }),
  },
  workOut({ outputKw, emitter, exchangerL, lengthM, tube }) {
    const estimate = work({ outputKw }, (known) => systemVolumeEstimate({ outputKw: known.outputKw, emitter }));
    return {
      lines: [
        numberLine(
          'Estimated from the output',
          VOLUME,
          work({ estimate }, (known) => ok(known.estimate.litres)),
          { main: true },
        ),
        rangeLine(
          'It may be',
          VOLUME,
          work({ estimate }, (known) => ok([known.estimate.leastL, known.estimate.mostL] as const)),
        ),
        numberLine('By the British rule for homes', VOLUME, work({ outputKw, exchangerL }, britishDomesticVolume), {
          extra: true,
        }),
        numberLine(
          'In that length of pipe',
          VOLUME,
          work({ lengthM }, (known) => {
            const found = findTube(tube);
            if (found === undefined) return said('this pipe is not in the list');
            return tubeVolume({ innerDiameterMm: found.innerDiameterMm, lengthM: known.lengthM });
          }),
          { main: true },
        ),
      ],
    };
  },
  formula: [
    'estimate = output · litres per kW of the emitter, ±40 %; British rule: 8 + 1 L/kW and the boiler',
    'pipe = π/4 · inner diameter² · length',
  ],
  valid: ['A metered fill or a dilution test beats the estimate.'],
  source: [
    'Water-treatment trade sheet on estimating system volume; older British installation manuals.',
    'Pipes: copper tube handbook table (type M from memory, ASTM B88), ASTM F876 mean inner diameters, EN 1057 sizes.',
  ],
});
