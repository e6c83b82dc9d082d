/** Friction and velocity in a heating pipe. */
import { flowAtVelocity } from '../../../domain/hydronics/pipes/flowVelocity.ts';
import { pressureLoss, ROUGHNESS_UM } from '../../../domain/hydronics/pipes/pressureLoss.ts';
import {
  AIR_CARRYING_M_PER_S,
  britishVelocityLimit,
  copperErosionLimit,
  FLOOR_LOOP,
  QUIET_PIPEWORK,
} from '../../../domain/hydronics/pipes/velocityLimits.ts';
import { TUBES } from '../../../domain/hydronics/volume/tubes.ts';
import { ok } from '../../../domain/result.ts';
import { choice, number, reading } from '../core/fields.ts';
import { type LineTone, numberLine, wordsLine } from '../core/line.ts';
import { DIAMETER, FLOW, FRICTION, HEAD_LOSS, LENGTH, PLAIN, TEMPERATURE, VELOCITY } from '../core/measures.ts';
import { atLeast, atMost, between } from '../core/usual.ts';
import { work } from '../core/worked.ts';
import { defineWorksheet } from '../core/worksheet.ts';
import { fluidFields, fluidOf } from './fluidFields.ts';

const OTHER = 'other';
const TUBE_CHOICES: Readonly<Record<string, string>> = {
  ...Object.fromEntries(TUBES.map(({ key, label }) => [key, label])),
  [OTHER]: 'another, by its inside',
};
const WALLS: Readonly<Record<keyof typeof ROUGHNESS_UM, string>> = { copper: 'copper', pex: 'plastic', steel: 'steel' };

const FINE_VELOCITY = { ...VELOCITY, decimals: 2 };

export const pipeLoss = defineWorksheet({
  key: 'pipe-loss',
  title: 'Pressure drop of a pipe',
  answers: 'Friction and velocity of hot water or glycol in a straight pipe.',
  group: 'Water side',
  fields: {
    systemFlowLPerMin: reading('systemFlowLPerMin', { alsoCalled: ['flowLPerMin'] }),
    tube: choice('Pipe', TUBE_CHOICES, { metric: 'copper-22x1', us: 'copper-l-3/4' }),
    innerDiameterMm: number('Inside diameter', DIAMETER, [0.5, 1500], { onlyFor: { field: 'tube', is: [OTHER] } }),
    wall: choice('Wall', WALLS, 'steel', { onlyFor: { field: 'tube', is: [OTHER] } }),
    lengthM: number('Length', LENGTH, [0, 100_000]),
    waterC: number('Water', TEMPERATURE, [-30, 130], {
      usual: { metric: '60', us: '140' },
      alsoCalled: ['temperatureC'],
    }),
    ...fluidFields,
  },
  workOut(given) {
    const { systemFlowLPerMin, lengthM, waterC } = given;
    const fluid = fluidOf(given.fluid, given.glycolPct);
    const tube = TUBES.find(({ key }) => key === given.tube);
    const innerDiameterMm = tube === undefined ? given.innerDiameterMm : ok(tube.innerDiameterMm);
    const loss = work({ systemFlowLPerMin, innerDiameterMm, waterC, fluid }, (known) =>
      pressureLoss({
        flowLPerMin: known.systemFlowLPerMin,
        innerDiameterMm: known.innerDiameterMm,
        roughnessUm: ROUGHNESS_UM[tube?.material ?? given.wall],
        fluid: known.fluid,
        temperatureC: known.waterC,
      }),
    );
    const velocity = work({ loss }, (known) => ok(known.loss.velocityMPerS));
    return {
      lines: [
        numberLine(
          'Friction',
          FRICTION,
          work({ loss }, (known) => ok(known.loss.lossPaPerM)),
          { main: true },
        ),
        numberLine(
          'Over that length',
          HEAD_LOSS,
          work({ loss, lengthM }, (known) => ok((known.loss.lossPaPerM * known.lengthM) / 1000)),
          { main: true },
        ),
        numberLine('Velocity', VELOCITY, velocity, { main: true }),
        wordsLine(
          'That velocity is',
          work({ velocity, waterC }, (known) =>
            ok(velocityWords(known.velocity, known.waterC, tube?.material ?? given.wall)),
          ),
        ),
        numberLine(
          'Quiet up to a flow of',
          FLOW,
          work({ innerDiameterMm }, (known) =>
            flowAtVelocity({ velocityMPerS: QUIET_PIPEWORK.velocityMPerS, innerDiameterMm: known.innerDiameterMm }),
          ),
        ),
        numberLine(
          'Highest velocity by the British table',
          VELOCITY,
          work({ waterC }, (known) => britishVelocityLimit({ waterC: known.waterC })),
        ),
        numberLine(
          'Reynolds number',
          { ...PLAIN, decimals: 0 },
          work({ loss }, (known) => ok(known.loss.reynolds)),
        ),
      ],
    };
  },
  formula: ['Δp/L = f · ρ · v² / (2 · D); f = 64/Re laminar, Colebrook–White turbulent'],
  valid: [
    'Straight, full pipe. Re 2300–4000 is neither laminar nor turbulent: no figure. Fittings are extra.',
    'Copper: 2.4 m/s cold, 1.5 m/s up to 60 °C, 0.6 m/s hotter. Quiet up to 1.2 m/s; air is carried from 0.6 m/s.',
  ],
  usual: [
    {
      title: 'Velocity, friction and length',
      columns: ['Figure'],
      rows: [
        {
          label: 'Quiet heating pipework up to 2 in, velocity',
          figures: [atMost(FINE_VELOCITY, QUIET_PIPEWORK.velocityMPerS)],
          notes: ['ASHRAE, from memory'],
        },
        {
          label: 'The same, friction',
          figures: [between(FRICTION, QUIET_PIPEWORK.lossPaPerM)],
          notes: ['ASHRAE, from memory'],
        },
        {
          label: 'To carry air to its separator, velocity',
          figures: [atLeast(FINE_VELOCITY, AIR_CARRYING_M_PER_S)],
          notes: ['common practice, from memory'],
        },
        {
          label: 'Floor loop, velocity',
          figures: [atLeast(FINE_VELOCITY, FLOOR_LOOP.leastVelocityMPerS)],
          notes: ['floor-heating guide'],
        },
        {
          label: 'Floor loop, pressure drop',
          figures: [atMost(HEAD_LOSS, FLOOR_LOOP.mostLossKpa)],
          notes: ['floor-heating guide'],
        },
        {
          label: 'Floor loop of 16×2 mm, length',
          figures: [atMost(LENGTH, FLOOR_LOOP.mostLengthM)],
          notes: ['floor-heating guide'],
        },
      ],
    },
  ],
  source: [
    'Darcy–Weisbach; IAPWS and IIR 2010 properties. Plastic roughness from memory.',
    'Velocities: copper handbook; BS 6700 limits as quoted on a public page; ASHRAE and common practice, from memory.',
  ],
});

function velocityWords(
  velocityMPerS: number,
  waterC: number,
  wall: keyof typeof ROUGHNESS_UM,
): { readonly words: string; readonly tone: LineTone } {
  const erosion = copperErosionLimit({ waterC });
  if (wall === 'copper' && erosion.ok && velocityMPerS > erosion.value) {
    return { words: `above what copper stands at this temperature (${erosion.value} m/s)`, tone: 'bad' };
  }
  if (velocityMPerS > QUIET_PIPEWORK.velocityMPerS) return { words: 'likely to be heard', tone: 'doubt' };
  return velocityMPerS < AIR_CARRYING_M_PER_S
    ? { words: 'quiet; too slow to carry air to its separator', tone: 'plain' }
    : { words: 'quiet, and carries air along', tone: 'good' };
}
