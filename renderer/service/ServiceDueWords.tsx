/** When an appliance is next due, and why then. */
import { derivationSentence } from '../../domain/coverage/derivation.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { SURENESS_WORDS } from '../deadlines/stageWords.ts';
import { DateText } from '../kit/DateText.tsx';
import { useOperation } from '../operations/useOperation.ts';

type Due = OutputOf<'service.getDue'>;

/** `next`: what stands now. `if-done-today`: what stands once this visit is finished. */
export function ServiceDueWords({
  applianceId,
  of,
}: {
  readonly applianceId: string;
  readonly of: 'next' | 'if-done-today';
}) {
  const found = useOperation('service.getDue', { applianceId });
  if (found.state !== 'ready') return null;
  const { lastOn, sureness } = found.value;
  const due = of === 'next' ? found.value.next : found.value.ifDoneToday;
  if (due === null) return <>No date on file to count a service from.</>;
  return (
    <>
      {of === 'next' ? 'Next service' : 'Done today, the next one is'} due <DateText day={due.due.on} weekday />
      {due.latest.on === due.due.on ? null : (
        <>
          , at the latest <DateText day={due.latest.on} weekday />
        </>
      )}
      . <Why due={due} /> {sureness === null ? null : <span className="lo-faint">Due {SURENESS_WORDS[sureness]}.</span>}{' '}
      {lastOn === null ? (
        <>No service is on record yet.</>
      ) : (
        <>
          The last one was on <DateText day={lastOn} />.
        </>
      )}
    </>
  );
}

function Why({ due }: { readonly due: NonNullable<Due['next']> }) {
  return <span className="lo-faint">{derivationSentence(due.latest.on === due.due.on ? due.due : due.latest)}</span>;
}
