/** What readiness was told so long before a visit that it has to be asked again, and one key for "asked, as it was". */
import { Button } from '@mantine/core';
import { agedWords } from '../jobs/agedWords.ts';
import { capital } from '../kit/capital.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';

export function AgedReadinessNote({ jobIds }: { readonly jobIds: readonly string[] }) {
  const jobs = useOperation('jobs.list', { unplannedOnly: false, jobIds: [...jobIds] });
  const again = useAct('jobs.askedAgain');
  if (jobs.state !== 'ready') return null;
  const aged = jobs.value.filter(({ agedReadiness }) => agedReadiness.length > 0);
  const [first] = aged;
  if (first === undefined) return null;
  const answers = aged.flatMap(({ jobId, agedReadiness }) => agedReadiness.map(({ itemKey }) => ({ jobId, itemKey })));
  return (
    <Note
      tone="caution"
      title="Answered long ago: ask again before going"
      action={
        <>
          <Button loading={again.isBusy} onClick={() => void again.act({ answers })}>
            Asked again today, unchanged
          </Button>
          <RouteLink to="job" params={{ jobId: first.jobId }}>
            Something has changed
          </RouteLink>
        </>
      }
    >
      {capital(
        agedWords(
          aged.flatMap(({ agedReadiness }) => agedReadiness),
          Number.POSITIVE_INFINITY,
        ),
      )}
      .
      <ErrorText error={again.error} />
    </Note>
  );
}
