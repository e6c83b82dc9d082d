/** Everything given out as one file: how far the writing is, and the file when it is made. */
import { Button, Checkbox, Group, Progress, Stack } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { DownloadButton } from '../kit/DownloadButton.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { driveExport, stopExport, useExportDrive } from './exportDriver.ts';
import { exportStepPct, exportStepWords } from './exportStepWords.ts';

export function GiveOut() {
  const core = useCore();
  const start = useAct('exports.start');
  const { exportId, step, made, error } = useExportDrive();
  const [withFiles, setWithFiles] = useState(false);
  const [withLog, setWithLog] = useState(false);
  const isGoing = exportId !== null;
  const bar = useRef<HTMLDivElement>(null);
  // The panel stands low on the screen: whoever starts it sees it move.
  useEffect(() => {
    if (isGoing) bar.current?.scrollIntoView({ block: 'nearest' });
  }, [isGoing]);
  return (
    <Panel
      title="Give everything out"
      action={
        isGoing ? (
          <Button variant="default" onClick={() => void stopExport(core)}>
            Stop
          </Button>
        ) : (
          <Button
            variant="default"
            loading={start.isBusy}
            onClick={async () => {
              const reply = await start.act({ withFiles, withLog });
              if (reply.ok) void driveExport(core, reply.value.exportId);
            }}
          >
            Make the files
          </Button>
        )
      }
    >
      <Stack gap="sm">
        <p style={{ margin: 0 }}>
          One ZIP with every table as CSV, all of it as JSON, and one list of customers and appliances. It holds
          personal data: keep it where it belongs.
        </p>
        <Group gap="xl">
          <Checkbox
            label="Photos and documents too"
            description="Much larger: in ZIPs of their own, with the list of what each belongs to."
            disabled={isGoing}
            checked={withFiles}
            onChange={(event) => setWithFiles(event.currentTarget.checked)}
          />
          <Checkbox
            label="The change log too"
            description="Who changed what and when, since the beginning."
            disabled={isGoing}
            checked={withLog}
            onChange={(event) => setWithLog(event.currentTarget.checked)}
          />
        </Group>
        {isGoing ? (
          <div ref={bar}>
            <Progress.Root size="lg" style={{ maxInlineSize: '44rem' }}>
              <Progress.Section value={exportStepPct(step)} aria-label="Rows written" />
            </Progress.Root>
            <p role="status" style={{ margin: 0 }}>
              {exportStepWords(step)}
            </p>
          </div>
        ) : null}
        <ErrorText error={start.error ?? error} />
        {made === null ? null : (
          <Note tone="fir" isSpoken action={<DownloadButton attachmentId={made.attachmentId} what={made.fileName} />}>
            {made.fileName}: {made.files.length} tables, {made.files.reduce((sum, { rowCount }) => sum + rowCount, 0)}{' '}
            rows{made.fileZips.length === 0 ? '' : `, and ${made.fileCount} photos and documents in the ZIPs below`}.
            {made.missingCount === 0
              ? ''
              : ` ${made.missingCount} on file could not be read and are not in it: see Backups for the second place.`}
          </Note>
        )}
        {made?.fileZips.map(({ attachmentId, fileName, byteLength }) => (
          <Group key={attachmentId} gap="sm">
            <span>
              {fileName}, {Math.max(1, Math.round(byteLength / 1_000_000))} MB
            </span>
            <DownloadButton attachmentId={attachmentId} what={fileName} />
          </Group>
        ))}
      </Stack>
    </Panel>
  );
}
