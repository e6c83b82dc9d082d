/** When an appliance is next due, and why then. */
import { DateText } from '../kit/DateText.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { WhyDue } from './WhyDue.tsx';

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
  const { lastOn } = found.value;
  const due = of === 'next' ? found.value.next : found.value.ifDoneToday;
  if (due === null) return <>No date on file to count a service from.</>;
  return (
    <>
      {of === 'next' ? 'Next service' : 'Done today, the next one is'} due <DateText day={due.dueOn} weekday />
      {due.latestOn === due.dueOn ? null : (
        <>
          , at the latest <DateText day={due.latestOn} weekday />
        </>
      )}
      . <WhyDue demands={due.demands} />{' '}
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
