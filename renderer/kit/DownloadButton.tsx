/** Fetches a stored file and hands it over, or says why it cannot. */
import { Button } from '@mantine/core';
import { useState } from 'react';
import { useCore } from '../operations/CoreAccess.tsx';
import { type DownloadProblem, downloadAttachment } from './downloadFile.ts';

export function DownloadButton({
  attachmentId,
  what,
}: {
  readonly attachmentId: string;
  /** `packet (PDF)`: heard, not seen, since the row says it. */
  readonly what: string;
}) {
  const core = useCore();
  const [isBusy, setIsBusy] = useState(false);
  const [problem, setProblem] = useState<DownloadProblem | null>(null);
  return (
    <span>
      <Button
        variant="default"
        loading={isBusy}
        aria-label={`Save ${what}`}
        onClick={async () => {
          setIsBusy(true);
          setProblem(await downloadAttachment(core, attachmentId));
          setIsBusy(false);
        }}
      >
        Save
      </Button>
      {problem === null ? null : (
        <span role="alert" style={{ color: 'var(--lo-ember)', marginInlineStart: '0.5rem' }}>
          {PROBLEM_WORDS[problem]}
        </span>
      )}
    </span>
  );
}

const PROBLEM_WORDS: Readonly<Record<DownloadProblem, string>> = {
  'not-found': 'the file is not in the store',
  internal: 'the file could not be read',
  offline: 'the core does not answer',
};
