/** Copies of the store: when the last was made, make one now, go back to one. */
import { Button } from '@mantine/core';
import { formatNumber } from '../../domain/quantity/formatQuantity.ts';
import type { BackupCopy } from '../../electron/contract/backups.ts';
import { Answer } from '../kit/Answer.tsx';
import { ConfirmUndo } from '../kit/ConfirmUndo.tsx';
import { InstantText } from '../kit/DateText.tsx';
import { instantWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { leaveSignInNotice } from '../start/signInNotice.ts';
import { KEPT_WORDS } from './keptWords.ts';
import { SecondPlacePanel } from './SecondPlacePanel.tsx';
import { TriedOut } from './TriedOut.tsx';

const WHERE_WORDS = { here: 'here', second: 'second place', both: 'here and second place' } as const;

export function BackupsScreen() {
  const found = useOperation('backups.list', {});
  const make = useAct('backups.make');
  const restore = useAct('backups.restore');
  const mayRestore = useHasRole('owner');
  const { isDemo } = useAppStatus();
  const makeButton = (
    <Button loading={make.isBusy} onClick={() => void make.act({})}>
      Make a backup now
    </Button>
  );
  return (
    <Screen title="Backups" action={makeButton}>
      <ErrorText error={make.error} />
      <ErrorText error={restore.error} />
      <Answer of={found}>
        {({ folder, copies, lastTriedOut, secondPlace }) => (
          <>
            <p style={{ margin: 0 }}>
              Kept in <code>{folder}</code>: all that is recorded, without the photos and files, which lie beside it.
            </p>
            {lastTriedOut === null ? null : <TriedOut {...lastTriedOut} />}
            {isDemo ? null : <SecondPlacePanel place={secondPlace} />}
            {copies.length === 0 ? (
              <EmptyState title="No backup yet">
                {isDemo
                  ? 'The demo makes none by itself: it can be made anew. Make one to see how it is kept and gone back to.'
                  : 'One is made every day by itself while the program runs, and checked by opening it again; make the first now.'}
              </EmptyState>
            ) : (
              <PlainTable
                caption="Backups"
                rows={copies}
                keyOf={({ name }) => name}
                columns={[
                  { label: 'Made', cell: ({ madeAt }) => <InstantText at={madeAt} /> },
                  { label: 'Kept as', cell: ({ kept: kind }) => KEPT_WORDS[kind] },
                  { label: 'Where', cell: ({ where }) => WHERE_WORDS[where] },
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
                  {
                    label: 'Checked',
                    cell: ({ isVerified }) =>
                      isVerified ? (
                        <span className="lo-verdict" data-tone="good">
                          opened and whole
                        </span>
                      ) : (
                        <span className="lo-verdict" data-tone="doubt">
                          not checked
                        </span>
                      ),
                  },
                  ...(mayRestore
                    ? [
                        {
                          label: 'Go back to it',
                          cell: ({ name, madeAt }: BackupCopy) => (
                            <ConfirmUndo
                              label="Go back to this …"
                              confirmLabel={`Go back to ${instantWords(madeAt)}`}
                              isBusy={restore.isBusy}
                              onConfirm={async () => {
                                const reply = await restore.act({ name });
                                if (reply.ok)
                                  leaveSignInNotice(
                                    `The store is as it was at ${instantWords(madeAt)}.${reply.value.replacedKeptAs === null ? '' : ` What was replaced is kept as ${reply.value.replacedKeptAs}.`}`,
                                  );
                              }}
                            >
                              Everything recorded after {instantWords(madeAt)} leaves the store in use. It is not thrown
                              away: the replaced store is kept as a copy of its own, and you can go back to it the same
                              way. Everybody is signed out.
                            </ConfirmUndo>
                          ),
                        },
                      ]
                    : []),
                ]}
              />
            )}
          </>
        )}
      </Answer>
    </Screen>
  );
}
