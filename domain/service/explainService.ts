/** The next service with how each day came about, ready to be said. */
import type { Derivation } from '../coverage/derivation.ts';
import type { NextService } from './nextService.ts';
import type { Sureness } from './serviceRule.ts';
import { dueDerivation, latestDerivation } from './serviceSchedule.ts';

export type ExplainedDemand = {
  readonly due: Derivation;
  readonly latest: Derivation;
  readonly sureness: Sureness;
  /** Of the agreement, where it has one. */
  readonly agreementNumber: string | null;
  /** false: shown, but an agreement stands instead of it. */
  readonly isOwed: boolean;
};

export type ExplainedService = Pick<NextService, 'dueOn' | 'latestOn'> & {
  readonly demands: readonly ExplainedDemand[];
};

export function explainService({ dueOn, latestOn, demands }: NextService): ExplainedService {
  return {
    dueOn,
    latestOn,
    demands: demands.map(({ period, anchor, sureness, agreement, isOwed }) => ({
      due: dueDerivation(period, anchor),
      latest: latestDerivation(period, anchor),
      sureness,
      agreementNumber: agreement?.number ?? null,
      isOwed,
    })),
  };
}
