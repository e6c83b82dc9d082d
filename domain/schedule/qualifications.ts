/**
 * Licences, skills, courses and instruments as the planner counts them: a code for each thing a job asks of whoever goes, and
 * the days on which somebody has it. Written from the rules of the board (`obstacles.ts`), so that nobody is proposed whom the
 * board would forbid, and nobody kept out whom it would let go.
 */
import { findLicenceProblem, keepsFromWork } from './gasLicence.ts';
import { spansInDate } from './heldInstruments.ts';
import { coversModel } from './makerTraining.ts';
import type { Work, Worker } from './obstacles.ts';
import type { Skill } from './planningProblem.ts';

export type Qualification =
  /** One licence answers for one fuel and size: each combination that occurs is a code of its own. */
  | ({ readonly kind: 'licence' } & Pick<Work, 'fuel' | 'ratedInputKw'>)
  | { readonly kind: 'skill'; readonly skill: string }
  | ({ readonly kind: 'training' } & Pick<Work, 'maker' | 'model'>)
  | { readonly kind: 'instrument'; readonly instrument: Work['instruments'][number] };

export function codeOf(asked: Qualification): string {
  switch (asked.kind) {
    case 'licence':
      return `licence ${asked.fuel ?? 'any'} ${asked.ratedInputKw ?? 'any'}`;
    case 'skill':
      return `skill ${asked.skill}`;
    case 'training':
      return `training ${asked.maker} ${asked.model}`;
    case 'instrument':
      return `instrument ${asked.instrument}`;
  }
}

/** Without it nobody goes. */
export function mustsOf(works: readonly Work[]): readonly Qualification[] {
  return works.flatMap((work): readonly Qualification[] => [
    { kind: 'licence', fuel: work.fuel, ratedInputKw: work.ratedInputKw },
    ...work.skills.map((skill) => ({ kind: 'skill', skill }) as const),
    ...(work.insistsOnTraining ? trainingOf(work) : []),
    ...(work.insistsOnInstruments ? instrumentsOf(work) : []),
  ]);
}

/** Who has it is preferred. */
export function wishesOf(works: readonly Work[]): readonly Qualification[] {
  const musts = new Set(mustsOf(works).map(codeOf));
  return works
    .flatMap((work) => [...trainingOf(work), ...instrumentsOf(work)])
    .filter((asked) => !musts.has(codeOf(asked)));
}

function trainingOf({ kind, maker, model }: Work): readonly Qualification[] {
  // Common practice: a maker's course is asked of whoever lights its boiler for the first time.
  return kind === 'startup' ? [{ kind: 'training', maker, model }] : [];
}

function instrumentsOf({ instruments }: Work): readonly Qualification[] {
  return instruments.map((instrument) => ({ kind: 'instrument', instrument }));
}

/** The days on which somebody has what is asked for; `null`: no end on that side. */
export function spansOf(worker: Worker, asked: Qualification): readonly Skill[] {
  const code = codeOf(asked);
  switch (asked.kind) {
    case 'licence':
      return worker.licences
        .filter((licence) => !keepsFromWork(findLicenceProblem([licence], { ...asked, on: licence.validFrom })))
        .map(({ validFrom, validTo }) => ({ code, validFrom, validTo }));
    case 'skill':
      return worker.skills.includes(asked.skill) ? [{ code, validFrom: null, validTo: null }] : [];
    case 'training':
      return worker.trainings
        .filter((one) => coversModel(one, asked))
        .map(({ validFrom, validTo }) => ({ code, validFrom, validTo }));
    case 'instrument':
      return worker.instruments
        .filter(({ kinds }) => kinds.includes(asked.instrument))
        .flatMap(spansInDate)
        .map((span) => ({ code, ...span }));
  }
}
