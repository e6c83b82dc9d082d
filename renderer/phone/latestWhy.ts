/** Why a service is wanted by its latest day, as it is kept with the job and read on the board: who really asks for it. */
import { assertNever } from '../../domain/result.ts';
import type { ExplainedDemand } from '../../domain/service/explainService.ts';

/** Of the demand that binds, the first one; null: nobody asks. */
export function latestWhyOf([binding]: readonly Pick<ExplainedDemand, 'sureness' | 'agreementNumber'>[]):
  | string
  | null {
  if (binding === undefined) return null;
  const { sureness, agreementNumber } = binding;
  switch (sureness) {
    case 'agreement':
      return agreementNumber === null ? 'by the service agreement' : `by the service agreement ${agreementNumber}`;
    case 'maker-sheet':
      return 'by the maker’s terms';
    case 'date-assumed':
      return 'by the maker’s terms, counted from another or a rough date';
    case 'general-rule':
      return 'once a year as a general rule';
    default:
      return assertNever(sureness);
  }
}
