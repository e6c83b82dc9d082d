/** Who asks for the next service and how the day came about: the one that binds, and the others beside it. */
import { derivationSentence } from '../../domain/coverage/derivation.ts';
import type { ExplainedDemand } from '../../domain/service/explainService.ts';
import { SURENESS_WORDS } from '../deadlines/stageWords.ts';

export function WhyDue({ demands }: { readonly demands: readonly ExplainedDemand[] }) {
  const [binding, ...others] = demands;
  if (binding === undefined) return null;
  return (
    <>
      {sentences(binding)} <span className="lo-faint">Due {sourceWords(binding)}.</span>
      {others.map((demand) => (
        <div key={`${demand.sureness} ${demand.latest.fromOn}`} className="lo-faint">
          {demand.isOwed
            ? `Also ${sourceWords(demand)}`
            : 'The agreement stands instead of the general rule, once a year'}
          : {sentences(demand)}
        </div>
      ))}
    </>
  );
}

function sentences({ due, latest }: ExplainedDemand): string {
  const first = derivationSentence(due);
  return latest.on === due.on ? first : `${first} Latest: ${derivationSentence(latest)}`;
}

function sourceWords({ sureness, agreementNumber }: ExplainedDemand): string {
  return agreementNumber === null ? SURENESS_WORDS[sureness] : `${SURENESS_WORDS[sureness]} ${agreementNumber}`;
}
