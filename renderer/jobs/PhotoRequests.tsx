/** The three photos that catch most wasted trips: which were asked for, of whom, and which have come. */
import { Button, Group, Stack, TextInput } from '@mantine/core';
import { useRef, useState } from 'react';
import { PHOTO_VIEWS } from '../../domain/vocabulary/work.ts';
import { Answer } from '../kit/Answer.tsx';
import { InstantText } from '../kit/DateText.tsx';
import { DownloadButton } from '../kit/DownloadButton.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { PHOTO_VIEW_WORDS } from '../kit/tradeWords.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { putPhoto } from '../run/items/takePhotos.ts';

type View = (typeof PHOTO_VIEWS)[number];

export function PhotoRequests({ jobId }: { readonly jobId: string }) {
  const photos = useOperation('jobs.getPhotos', { jobId });
  const ask = useAct('jobs.askPhotos');
  const mayAsk = useHasRole('dispatcher', 'owner', 'technician');
  const [whom, setWhom] = useState('');
  return (
    <Answer of={photos}>
      {(given) => (
        <Stack gap="xs">
          <ul className="lo-gaps" aria-label="Photos">
            {PHOTO_VIEWS.map((view) => (
              <PhotoLine key={view} jobId={jobId} view={view} given={given.find((one) => one.view === view)} />
            ))}
          </ul>
          {mayAsk ? (
            <Group gap="sm" align="end">
              <TextInput
                label="Photos asked of"
                placeholder="builder, fitter, owner"
                autoComplete="off"
                value={whom}
                onChange={(event) => setWhom(event.currentTarget.value)}
              />
              <Button
                variant="default"
                loading={ask.isBusy}
                onClick={() =>
                  void ask.act({
                    jobId,
                    views: PHOTO_VIEWS.filter(
                      (view) => !given.some((one) => one.view === view && one.receivedAt !== null),
                    ),
                    askedWhom: whom.trim() === '' ? null : whom,
                  })
                }
                disabled={PHOTO_VIEWS.every((view) =>
                  given.some((one) => one.view === view && one.receivedAt !== null),
                )}
              >
                Asked for the photos
              </Button>
            </Group>
          ) : null}
          <ErrorText error={ask.error} />
        </Stack>
      )}
    </Answer>
  );
}

function PhotoLine({
  jobId,
  view,
  given,
}: {
  readonly jobId: string;
  readonly view: View;
  readonly given:
    | {
        readonly askedWhom: string | null;
        readonly askedByName: string;
        readonly askedAt: string;
        readonly receivedAt: string | null;
        readonly attachmentIds: readonly string[];
      }
    | undefined;
}) {
  const core = useCore();
  const receive = useAct('jobs.receivePhoto');
  const mayReceive = useHasRole('dispatcher', 'owner', 'technician');
  const picker = useRef<HTMLInputElement>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const words = PHOTO_VIEW_WORDS[view];
  const take = async (file: File) => {
    const outcome = await putPhoto(file, core.putFile);
    setProblem(outcome.ok ? null : outcome.why);
    if (outcome.ok) await receive.act({ jobId, view, attachmentId: outcome.attachmentId });
  };
  return (
    <li>
      <span>
        Photo: {words}
        {given === undefined ? (
          <span className="lo-faint"> not asked for yet</span>
        ) : (
          <span className="lo-faint">
            {given.receivedAt === null ? ' asked for' : ' came'}
            {given.askedWhom === null ? '' : `, of ${given.askedWhom}`}, {given.askedByName},{' '}
            <InstantText at={given.receivedAt ?? given.askedAt} />
          </span>
        )}
      </span>
      <Group gap="xs">
        {(given?.attachmentIds ?? []).map((attachmentId) => (
          <DownloadButton key={attachmentId} attachmentId={attachmentId} what={`photo: ${words}`} />
        ))}
        {mayReceive ? (
          <>
            <input
              ref={picker}
              type="file"
              accept="image/jpeg,image/png"
              hidden
              aria-label={`Picture file: ${words}`}
              onChange={(event) => {
                const file = event.currentTarget.files?.[0];
                event.currentTarget.value = '';
                if (file !== undefined) void take(file);
              }}
            />
            <Button
              variant="default"
              aria-label={`Add the photo: ${words}`}
              loading={receive.isBusy}
              onClick={() => picker.current?.click()}
            >
              Add it
            </Button>
          </>
        ) : null}
      </Group>
      {problem === null ? null : (
        <span role="alert" style={{ color: 'var(--lo-ember)' }}>
          {problem}
        </span>
      )}
      <ErrorText error={receive.error} />
    </li>
  );
}
