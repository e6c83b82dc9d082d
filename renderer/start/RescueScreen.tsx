/** The store cannot be opened: which backups there are, and going back to one of them. Nobody can sign in before. */
import { Stack } from '@mantine/core';
import { formatNumber } from '../../domain/quantity/formatQuantity.ts';
import { COPY_PROBLEM_WORDS } from '../../domain/text/copyProblemWords.ts';
import type { RescueCopy } from '../../electron/contract/rescue.ts';
import { KEPT_WORDS } from '../backups/keptWords.ts';
import { Answer } from '../kit/Answer.tsx';
import { ConfirmUndo } from '../kit/ConfirmUndo.tsx';
import { InstantText } from '../kit/DateText.tsx';
import { instantWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { leaveSignInNotice } from './signInNotice.ts';

export function RescueScreen() {
  const looked = useOperation('rescue.look', {});
  const restore = useAct('rescue.restore');
  return (
    <Stack gap="lg">
      <Answer of={looked}>
        {({ trouble, dataFolder, folder, copies }) => (
          <>
            <h1>{trouble === 'missing' ? 'The data file is missing' : 'The data file is damaged'}</h1>
            <Note tone="ember">
              {trouble === 'missing'
                ? 'Its backups are there, the file itself is not: it was moved or deleted, or a return to a backup was cut off. Nothing was made in its place.'
                : 'It cannot be opened as it is, and nothing was written to it. It is kept when you go back to a backup.'}
            </Note>
            <p style={{ margin: 0 }}>
              Data: <code>{dataFolder}</code>. Backups: <code>{folder}</code>. What was recorded after a backup was made
              is not in it.
            </p>
            <ErrorText error={restore.error} />
            {copies.length === 0 ? (
              <Note tone="caution">
                There is no backup here. If you keep them elsewhere too, copy one into the folder of the backups and
                open the program again.
              </Note>
            ) : (
              <PlainTable
                caption="Backups, newest first"
                rows={copies}
                keyOf={({ name }) => name}
                columns={[
                  { label: 'Made', cell: ({ madeAt }) => <InstantText at={madeAt} /> },
                  { label: 'Kept as', cell: ({ kept }) => KEPT_WORDS[kept] },
                  {
                    label: 'Size',
                    cell: ({ byteLength }) => (
                      <>
                        {formatNumber(byteLength / 1_000_000, 1)}
                        <span className="lo-unit">MB</span>
                      </>
                    ),
                    isNumber: true,
                  },
                  { label: 'Checked', cell: ({ found }) => <Found found={found} /> },
                  {
                    label: 'Go back to it',
                    cell: ({ name, madeAt, found }) =>
                      found === 'whole' || found === 'not-checked' ? (
                        <ConfirmUndo
                          label="Go back to this …"
                          confirmLabel={`Go back to ${instantWords(madeAt)}`}
                          isBusy={restore.isBusy}
                          onConfirm={async () => {
                            const reply = await restore.act({ name });
                            if (reply.ok) leaveSignInNotice(restoredWords(madeAt, reply.value.replacedKeptAs));
                          }}
                        >
                          The backup is checked once more and put in the place of the data file. What was there is kept
                          beside it.
                        </ConfirmUndo>
                      ) : null,
                  },
                ]}
              />
            )}
          </>
        )}
      </Answer>
    </Stack>
  );
}

function Found({ found }: { readonly found: RescueCopy['found'] }) {
  if (found === 'whole')
    return (
      <span className="lo-verdict" data-tone="good">
        opened and whole
      </span>
    );
  return (
    <span className="lo-verdict" data-tone="doubt">
      {found === 'not-checked' ? 'not checked yet' : COPY_PROBLEM_WORDS[found]}
    </span>
  );
}

function restoredWords(madeAt: string, keptAs: string | null): string {
  return `The data is as it was at ${instantWords(madeAt)}.${keptAs === null ? '' : ` The damaged file is kept as ${keptAs}.`}`;
}
