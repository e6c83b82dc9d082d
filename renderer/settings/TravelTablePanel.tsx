/** The firm's own travel times from a file: what is loaded, which of its names nobody on file bears, and loading another. */
import { Button, FileInput, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import type { TravelTableFacts } from '../../electron/contract/travel.ts';
import { LARGEST_LIST_BYTES, putListWords } from '../imports/putListWords.ts';
import { Answer } from '../kit/Answer.tsx';
import { InstantText } from '../kit/DateText.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';

export function TravelTablePanel() {
  const found = useOperation('travel.getTable', {});
  return (
    <Panel title="Travel times from a file">
      <Stack gap="md">
        <p style={{ margin: 0 }}>
          Where the file has a pair of places, the board, the planner and the day sheets take its minutes; everywhere
          else the way is reckoned from the map as above. A name in it may be an address (street and town), a postcode,
          a town, or a person for where their day begins. A line does for the way back too, unless that has its own.
        </p>
        <LoadTable />
        <Answer of={found}>{({ table }) => (table === null ? null : <LoadedTable table={table} />)}</Answer>
      </Stack>
    </Panel>
  );
}

function LoadTable() {
  const core = useCore();
  const load = useAct('travel.loadTable');
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState<number | null>(null);
  const choose = async (file: File | null) => {
    setProblem(null);
    setDone(null);
    if (file === null) return;
    if (file.size > LARGEST_LIST_BYTES) return setProblem(putListWords('too-large'));
    const reply = await core.putFile({
      bytes: new Uint8Array(await file.arrayBuffer()),
      mediaType: file.type,
      fileName: file.name,
      takenAt: null,
    });
    if (!reply.ok) return setProblem(putListWords(reply.code));
    const loaded = await load.act({ attachmentId: reply.attachmentId });
    if (loaded.ok) setDone(loaded.value.pairCount);
  };
  return (
    <>
      <FileInput
        label="The file"
        description="CSV or .xlsx. First line: from, to, minutes; below it one way a line, in whole minutes."
        accept=".csv,.tsv,.txt,.xlsx"
        placeholder="Choose a file"
        maw="32rem"
        value={null}
        onChange={(file) => void choose(file)}
      />
      {problem === null ? null : (
        <Note tone="ember" isSpoken>
          {problem}
        </Note>
      )}
      <ErrorText error={load.error} />
      {done === null ? null : (
        <Note tone="fir" isSpoken>
          Loaded: {done} {done === 1 ? 'way' : 'ways'}. Board and planner use them from now on.
        </Note>
      )}
    </>
  );
}

function LoadedTable({ table }: { readonly table: TravelTableFacts }) {
  const drop = useAct('travel.dropTable');
  const { fileName, loadedAt, loadedByName, pairCount, unknownNames, unknownCount } = table;
  return (
    <Stack gap="sm">
      <Facts
        facts={[
          ['In use', fileName],
          [
            'Loaded',
            <span key="loaded">
              <InstantText at={loadedAt} /> by {loadedByName}
            </span>,
          ],
          ['Ways', String(pairCount)],
        ]}
      />
      {unknownCount === 0 ? null : (
        <Note tone="caution">
          {unknownCount === 1 ? '1 name in it is' : `${unknownCount} names in it are`} no address, postcode, town or
          person on file, so nothing goes there yet: {unknownNames.join('; ')}
          {unknownNames.length < unknownCount ? ' …' : '.'}
        </Note>
      )}
      <Group>
        <Button variant="default" onClick={() => void drop.act({})}>
          Use the map alone again
        </Button>
      </Group>
      <ErrorText error={drop.error} />
    </Stack>
  );
}
