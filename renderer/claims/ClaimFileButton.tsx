/** Makes the one PDF that goes with a claim, and hands it over at once. */
import { Button } from '@mantine/core';
import { useState } from 'react';
import { type DownloadProblem, downloadAttachment } from '../kit/downloadFile.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';

export function ClaimFileButton({
  applianceId,
  claimId,
  partNumber,
}: {
  readonly applianceId: string;
  readonly claimId: string;
  readonly partNumber: string;
}) {
  const core = useCore();
  const build = useAct('claims.buildFile');
  const [problem, setProblem] = useState<DownloadProblem | null>(null);
  return (
    <>
      <Button
        variant="default"
        loading={build.isBusy}
        aria-label={`Claim file for ${partNumber}`}
        onClick={async () => {
          const reply = await build.act({ applianceId, claimId });
          if (reply.ok) setProblem(await downloadAttachment(core, reply.value.attachmentId));
        }}
      >
        Claim file
      </Button>
      <ErrorText error={build.error} />
      {problem === null ? null : <span role="alert">The file could not be saved.</span>}
    </>
  );
}
