/** Another disk for the backups and the photos: which, what is there, copy now. Without one, a disk that fails takes all. */
import { Button, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import type { SecondPlaceStatus } from '../../electron/contract/backups.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useAct } from '../operations/useAct.ts';
import { secondPlaceWords, troubleWords } from './secondPlaceWords.ts';

export function SecondPlacePanel({ place }: { readonly place: SecondPlaceStatus | null }) {
  const [isChoosing, setChoosing] = useState(false);
  const carry = useAct('backups.carryOver');
  const forget = useAct('backups.chooseSecondPlace');
  return (
    <Panel title="Second place">
      <Stack gap="sm">
        {place === null ? (
          <Note tone="caution">
            The backups lie on this computer’s own disk, and the photos and files have no copy at all. Choose a folder
            on another disk, a stick or a share: backups and photos are then copied there by themselves.
          </Note>
        ) : (
          <>
            <p style={{ margin: 0 }}>
              <code>{place.folder}</code>. {secondPlaceWords(place)}
            </p>
            {place.trouble === null ? null : <Note tone="ember">{troubleWords(place.trouble)}</Note>}
            {place.isOnSameDisk ? (
              <Note tone="caution">
                This folder is on the same disk as the data: a disk that fails takes both. Choose one on another disk.
              </Note>
            ) : null}
            {place.damagedFiles > 0 ? (
              <Note tone="ember">
                {place.damagedFiles === 1 ? 'One photo or file' : `${place.damagedFiles} photos or files`} on this
                computer changed since it was taken in, and is not copied: a good copy there is kept as it is.
              </Note>
            ) : null}
          </>
        )}
        <ErrorText error={carry.error} />
        <ErrorText error={forget.error} />
        {isChoosing || place === null ? (
          <FolderForm
            folder={place?.folder ?? ''}
            {...(place === null ? {} : { onLeave: () => setChoosing(false) })}
            onDone={() => setChoosing(false)}
          />
        ) : (
          <Group gap="sm">
            <Button variant="default" loading={carry.isBusy} onClick={() => void carry.act({})}>
              Copy everything there now
            </Button>
            <Button variant="default" onClick={() => setChoosing(true)}>
              Choose another folder
            </Button>
            <Button variant="default" loading={forget.isBusy} onClick={() => void forget.act({ folder: null })}>
              Copy there no more
            </Button>
          </Group>
        )}
      </Stack>
    </Panel>
  );
}

function FolderForm({
  folder,
  onDone,
  onLeave,
}: {
  readonly folder: string;
  readonly onDone: () => void;
  readonly onLeave?: () => void;
}) {
  const form = useDraftForm({
    draftKey: 'second-place',
    operation: 'backups.chooseSecondPlace',
    initial: { folder },
    toInput: (values) => ({ folder: values.folder.trim() }),
    onDone,
  });
  return (
    <DraftFormFrame
      form={form}
      submitLabel="Copy there from now on"
      failure={<ErrorText error={form.error} />}
      {...(onLeave === undefined ? {} : { onLeave })}
    >
      <TextField
        form={form}
        name="folder"
        label="Folder on another disk"
        description="The whole path as this computer shows it, for example E:\Backup or /media/stick/backup. A folder of Lightoff’s own is made in it."
        isNeeded
      />
    </DraftFormFrame>
  );
}
