/** For the owner: giving one person their data, and erasing a person. Says first what is there and what speaks against it. */
import { Button, Checkbox, Group, Stack, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { DownloadButton } from '../kit/DownloadButton.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { LedTo } from '../kit/LedTo.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { heldWords, holdWords } from './personWords.ts';

type Look = OutputOf<'persons.look'>;

export function PersonDataPanel({ partyId, level = 2 }: { readonly partyId: string; readonly level?: 2 | 3 }) {
  const isOwner = useHasRole('owner');
  const [isOpen, setIsOpen] = useState(false);
  if (!isOwner) return null;
  return (
    <Panel
      title="Their data"
      level={level}
      action={
        <Button variant="default" aria-expanded={isOpen} onClick={() => setIsOpen((before) => !before)}>
          {isOpen ? 'Hide' : 'Give out or erase'}
        </Button>
      }
    >
      {isOpen ? <PersonData partyId={partyId} /> : null}
    </Panel>
  );
}

function PersonData({ partyId }: { readonly partyId: string }) {
  const found = useOperation('persons.look', { partyId });
  const give = useAct('persons.export');
  const [file, setFile] = useState<OutputOf<'persons.export'> | null>(null);
  const [isErasing, setIsErasing] = useState(false);
  return (
    <Answer of={found}>
      {(look) => (
        <Stack gap="md">
          <p style={{ margin: 0 }}>On file: {heldWords(look)}.</p>
          <Group gap="sm">
            <Button
              variant="default"
              loading={give.isBusy}
              onClick={async () => {
                const reply = await give.act({ partyId });
                if (reply.ok) setFile(reply.value);
              }}
            >
              Make a file of their data
            </Button>
            {file === null ? null : (
              <span role="status">
                {file.fileName} <DownloadButton attachmentId={file.attachmentId} what={file.fileName} />
              </span>
            )}
          </Group>
          <ErrorText error={give.error} />
          {look.isErased ? (
            <Note tone="plain">This person was erased. Days, readings and sealed hashes stay.</Note>
          ) : isErasing ? (
            <LedTo>
              <EraseForm partyId={partyId} look={look} onLeave={() => setIsErasing(false)} />
            </LedTo>
          ) : (
            <div>
              <Button variant="default" onClick={() => setIsErasing(true)}>
                Erase this person …
              </Button>
            </div>
          )}
        </Stack>
      )}
    </Answer>
  );
}

function EraseForm({
  partyId,
  look,
  onLeave,
}: {
  readonly partyId: string;
  readonly look: Look;
  readonly onLeave: () => void;
}) {
  const erase = useAct('persons.erase');
  const [typedName, setTypedName] = useState('');
  const [alsoCopies, setAlsoCopies] = useState(false);
  return (
    <form
      aria-label="Erase this person"
      onSubmit={(event) => {
        event.preventDefault();
        void erase.act({ partyId, typedName, alsoCopies });
      }}
    >
      <Stack gap="sm" maw="48rem">
        {look.holds.length === 0 ? null : (
          <Note tone="ember" title="Think first">
            <ul style={{ margin: 0 }}>
              {look.holds.map(({ what, count }) => (
                <li key={what}>{holdWords(what, count)}</li>
              ))}
            </ul>
            The law may ask you to keep some of it for a time of its own.
          </Note>
        )}
        <div>
          Goes for good: name, address, phone, e-mail, notes, letters to them, the notes of their visits and jobs,{' '}
          {look.fileCount === 1 ? '1 file' : `${look.fileCount} files`} (photos, signatures, packets, printed lists),
          and their name wherever else it was written in full. Also from the change log and the search. A nickname or a
          part of the name in somebody else’s note is not found.
        </div>
        <div>
          Stays: days, readings, what was fitted, and sealed records. These hold a person only as a number nobody can
          turn back, so they still verify; a packet cannot be printed with the name any more.
          {look.sharedSiteCount === 0
            ? ''
            : ` The address of ${look.sharedSiteCount === 1 ? 'one site' : `${look.sharedSiteCount} sites`} stays, because somebody else has a part there.`}
        </div>
        <Checkbox
          label="Throw the backups away too and make a new one"
          description={`Otherwise the ${look.copyCount} backups here keep the person until they age out, the last after about twelve months; going back to one brings the person back, and they must be erased again. Backups you copied elsewhere are yours to delete.`}
          checked={alsoCopies}
          onChange={(event) => setAlsoCopies(event.currentTarget.checked)}
        />
        <TextInput
          label={`Type the name to erase it: ${look.name}`}
          description="This cannot be taken back. It may take a minute on a large store."
          required
          autoComplete="off"
          value={typedName}
          onChange={(event) => setTypedName(event.currentTarget.value)}
        />
        <ErrorText error={erase.error} />
        <Group gap="sm">
          <Button type="submit" color="ember" loading={erase.isBusy} disabled={typedName.trim() === ''}>
            Erase for good
          </Button>
          <Button variant="default" onClick={onLeave}>
            Leave it
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
