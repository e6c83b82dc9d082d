/** Model sheets on this computer: what each maker demands, as data. */
import { Button, FileButton } from '@mantine/core';
import { useState } from 'react';
import { Answer } from '../kit/Answer.tsx';
import { InstantText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { FUEL_WORDS, keyOf } from '../kit/tradeWords.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';

export function SheetsScreen() {
  const sheets = useOperation('sheets.list', {});
  const take = useAct('sheets.import');
  const mayImport = useHasRole('owner', 'dispatcher', 'technician');
  const [taken, setTaken] = useState<string | null>(null);
  const importFile = async (file: File | null) => {
    setTaken(null);
    if (file === null) return;
    const reply = await take.act({ fileName: file.name, text: await file.text() });
    if (reply.ok) {
      const { sheetId, revision, isNew } = reply.value;
      setTaken(
        isNew
          ? `${sheetId}, revision ${revision}, was taken in.`
          : `${sheetId}, revision ${revision}, is already here.`,
      );
    }
  };
  const importButton = mayImport ? (
    <FileButton accept="application/json,.json" onChange={(file) => void importFile(file)}>
      {(props) => (
        <Button {...props} loading={take.isBusy}>
          Take in a sheet
        </Button>
      )}
    </FileButton>
  ) : undefined;
  return (
    <Screen title="Model sheets" action={importButton}>
      {taken === null ? null : (
        <Note tone="fir" isSpoken>
          {taken}
        </Note>
      )}
      {take.error?.code === 'bad-sheet' ? (
        <Note tone="ember" title="The sheet was not taken in; nothing changed." isSpoken>
          <ul>
            {take.error.data.problems.map(({ path, message }) => (
              <li key={`${path} ${message}`}>
                <code>{path}</code>: {problemWords(message)}
              </li>
            ))}
          </ul>
        </Note>
      ) : (
        <ErrorText error={take.error} />
      )}
      <DraftsPanel />
      <DiscardedDrafts />
      <Answer of={sheets}>
        {(rows) =>
          rows.length === 0 ? (
            <EmptyState title="No sheets here" action={importButton}>
              A model sheet holds a maker’s limits, procedure, waits and cover for a line of models. It comes as a JSON
              file.
            </EmptyState>
          ) : (
            <PlainTable
              caption="Model sheets"
              rows={rows}
              keyOf={({ sheetId }) => sheetId}
              columns={[
                {
                  label: 'Sheet',
                  cell: ({ sheetId, title }) => (
                    <RouteLink to="sheet" params={{ sheetId }}>
                      {title}
                    </RouteLink>
                  ),
                },
                { label: 'Maker', cell: ({ maker }) => maker ?? 'general practice' },
                { label: 'Models', cell: ({ models }) => models.join(', ') },
                {
                  label: 'Fuels',
                  cell: ({ fuels }) =>
                    fuels
                      .map((fuel) => {
                        const known = keyOf(FUEL_WORDS, fuel);
                        return known === null ? fuel : FUEL_WORDS[known];
                      })
                      .join(', '),
                },
                {
                  label: 'Revision',
                  cell: ({ revision, revisions }) =>
                    revisions.length > 1 ? `${revision} (and ${revisions.length - 1} older)` : revision,
                },
              ]}
            />
          )
        }
      </Answer>
    </Screen>
  );
}

/** Sheets being written, by anybody here. */
function DraftsPanel() {
  const drafts = useOperation('sheetDrafts.list', {});
  if (drafts.state !== 'ready' || drafts.value.length === 0) return null;
  return (
    <Panel title="In the making">
      <PlainTable
        caption="Sheets in the making"
        rows={drafts.value}
        keyOf={({ draftId }) => draftId}
        columns={[
          {
            label: 'Draft',
            cell: ({ draftId, title }) => (
              <RouteLink to="sheet-draft" params={{ draftId }}>
                {title}
              </RouteLink>
            ),
          },
          { label: 'Begun from', cell: ({ fromSheetId, fromRevision }) => `${fromSheetId} ${fromRevision}` },
          { label: 'By', cell: ({ startedByName }) => startedByName },
        ]}
      />
    </Panel>
  );
}

/** Thrown away by mistake, or wanted after all. */
function DiscardedDrafts() {
  const drafts = useOperation('sheetDrafts.listDiscarded', {});
  const takeUp = useAct('sheetDrafts.takeUp');
  const mayWrite = useHasRole('owner', 'dispatcher', 'technician');
  if (drafts.state !== 'ready' || drafts.value.length === 0 || !mayWrite) return null;
  return (
    <details>
      <summary>Drafts thrown away ({drafts.value.length})</summary>
      <ErrorText error={takeUp.error} />
      <PlainTable
        caption="Drafts thrown away"
        rows={drafts.value}
        keyOf={({ draftId }) => draftId}
        columns={[
          { label: 'Draft', cell: ({ title }) => title },
          { label: 'Begun from', cell: ({ fromSheetId, fromRevision }) => `${fromSheetId} ${fromRevision}` },
          { label: 'By', cell: ({ startedByName }) => startedByName },
          { label: 'Thrown away', cell: ({ discardedAt }) => <InstantText at={discardedAt} /> },
          {
            label: 'Take up',
            cell: ({ draftId, title }) => (
              <Button
                variant="default"
                onClick={async () => {
                  const reply = await takeUp.act({ draftId });
                  if (reply.ok) goTo('sheet-draft', { draftId });
                }}
              >
                Take up again<span className="lo-hidden"> {title}</span>
              </Button>
            ),
          },
        ]}
      />
    </details>
  );
}

/** The schema's own message says a missing field in a programmer's way. */
function problemWords(message: string): string {
  if (/received undefined$/.test(message)) return 'missing';
  return message
    .replace(/^Too small: expected string to have >=1 characters$/, 'empty')
    .replace(/^Invalid input: /, '');
}
