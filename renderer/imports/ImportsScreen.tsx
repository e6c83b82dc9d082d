/** Lists in and out: what a company already has comes in as a whole or not at all, and everything can be given out again. */
import { FileInput, Stack } from '@mantine/core';
import { useEffect, useState } from 'react';
import { Answer } from '../kit/Answer.tsx';
import { ConfirmUndo } from '../kit/ConfirmUndo.tsx';
import { InstantText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { CutOffLists } from './CutOffLists.tsx';
import { countWords } from './countWords.ts';
import { GiveOut } from './GiveOut.tsx';
import { ImportReview } from './ImportReview.tsx';
import { ListProgress } from './ListProgress.tsx';
import { followList, forgetEndedList, useListDrive } from './listWorkDriver.ts';
import { LARGEST_LIST_BYTES, putListWords } from './putListWords.ts';
import { WaitingLists } from './WaitingLists.tsx';

export function ImportsScreen() {
  useFollowed();
  return (
    <Screen title="Import and export">
      <TakeIn />
      <TakenIn />
      <GiveOut />
    </Screen>
  );
}

/** One that another window began, or this one before it was loaded again. */
function useFollowed(): void {
  const core = useCore();
  const found = useOperation('imports.listWorks', {});
  const going = found.state === 'ready' ? found.value.find(({ isGoing }) => isGoing) : undefined;
  useEffect(() => {
    if (going !== undefined) void followList(core, going);
  }, [core, going]);
}

function TakeIn() {
  const core = useCore();
  const [file, setFile] = useState<{ readonly attachmentId: string } | null>(null);
  const [chosen, setChosen] = useState<File | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const { ended, failed } = useListDrive();
  const isIn = ended?.work.kind === 'take-in';
  useEffect(() => {
    if (!isIn) return;
    setFile(null);
    setChosen(null);
  }, [isIn]);
  const choose = async (given: File | null) => {
    setChosen(given);
    setFile(null);
    setProblem(null);
    forgetEndedList();
    if (given === null) return;
    // Looked at before it is read: a file of any size must not hang the window.
    if (given.size > LARGEST_LIST_BYTES) return setProblem(putListWords('too-large'));
    const reply = await core.putFile({
      bytes: new Uint8Array(await given.arrayBuffer()),
      mediaType: given.type,
      fileName: given.name,
      takenAt: null,
    });
    if (reply.ok) setFile({ attachmentId: reply.attachmentId });
    else setProblem(putListWords(reply.code));
  };
  const lookAgain = (attachmentId: string) => {
    setChosen(null);
    setProblem(null);
    forgetEndedList();
    setFile({ attachmentId });
  };
  return (
    <Panel title="Take in a list">
      <Stack gap="md">
        <p style={{ margin: 0 }}>
          Customers with their sites, appliances and past services, as CSV or as a workbook. First it is only looked at:
          you choose what each column is, and see what would be written. Then all of it is taken in, or nothing.
        </p>
        <FileInput
          label="The list"
          description="CSV or .xlsx, headings in the first row, up to 32 MB and 20 000 rows."
          accept=".csv,.tsv,.txt,.xlsx"
          placeholder="Choose a file"
          maw="32rem"
          clearable
          clearButtonProps={{ 'aria-label': 'Take another file' }}
          value={chosen}
          onChange={(given) => void choose(given)}
        />
        {problem === null ? null : (
          <Note tone="ember" isSpoken>
            {problem}
          </Note>
        )}
        {isIn ? (
          <Note tone="fir" isSpoken>
            Taken in: {countWords(ended.counts)}. It can be taken out again below, as long as no later work hangs on it.
          </Note>
        ) : null}
        <CutOffLists />
        {file === null ? <WaitingLists onLook={lookAgain} /> : null}
        {file === null ? null : <ImportReview key={file.attachmentId} attachmentId={file.attachmentId} />}
        <ErrorText error={failed?.work.kind === 'take-in' ? failed.error : null} />
        <ListProgress kind="take-in" />
      </Stack>
    </Panel>
  );
}

function TakenIn() {
  const found = useOperation('imports.list', {});
  const core = useCore();
  const undo = useAct('imports.startUndo');
  const { work, ended, failed } = useListDrive();
  return (
    <Panel title="Taken in so far">
      <ErrorText error={undo.error ?? (failed?.work.kind === 'take-out' ? failed.error : null)} />
      {ended?.work.kind === 'take-out' ? (
        <Note tone="fir" isSpoken>
          Taken out: {countWords(ended.counts)}.
        </Note>
      ) : null}
      <ListProgress kind="take-out" />
      <Answer of={found}>
        {(rows) =>
          rows.length === 0 ? (
            <EmptyState title="Nothing yet">Each list taken in stands here and can be taken out as a whole.</EmptyState>
          ) : (
            <PlainTable
              caption="Lists taken in"
              rows={rows}
              keyOf={({ importId }) => importId}
              columns={[
                { label: 'List', cell: ({ fileName }) => fileName },
                { label: 'What', cell: ({ counts }) => countWords(counts) },
                { label: 'When', cell: ({ importedAt }) => <InstantText at={importedAt} /> },
                { label: 'By', cell: ({ importedByName }) => importedByName },
                {
                  label: 'Take out',
                  cell: ({ importId, fileName, counts, undoneAt, undoneByName }) =>
                    undoneAt === null ? (
                      <ConfirmUndo
                        label={`Take out ${fileName} …`}
                        confirmLabel="Take all of it out"
                        isBusy={undo.isBusy}
                        isDisabled={work !== null}
                        onConfirm={async () => {
                          const reply = await undo.act({ importId });
                          if (reply.ok) void followList(core, { ...reply.value, kind: 'take-out', fileName });
                        }}
                      >
                        {countWords(counts)} leave the store, nothing else. The list can be taken in again.
                      </ConfirmUndo>
                    ) : (
                      <span className="lo-faint">
                        taken out by {undoneByName}, <InstantText at={undoneAt} />
                      </span>
                    ),
                },
              ]}
            />
          )
        }
      </Answer>
    </Panel>
  );
}
