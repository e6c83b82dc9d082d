/** Recomputes the fingerprints of a visit's sealed records and says in words whether the chain holds, and what was altered. */
import { Button } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { alterationWords, sealProblemWords } from './sealProblemWords.ts';

export function SealPanel({ visitId }: { readonly visitId: string }) {
  const [isAsked, setIsAsked] = useState(false);
  const verified = useOperation('records.verify', { visitId }, { isWanted: isAsked });
  return (
    <Panel
      title="Seal"
      action={
        <Button variant="default" onClick={() => (isAsked ? verified.askAgain() : setIsAsked(true))}>
          Check it
        </Button>
      }
    >
      {isAsked ? (
        <Answer of={verified}>{(value) => <Checked {...value} />}</Answer>
      ) : (
        <p className="lo-faint" style={{ margin: 0 }}>
          A sealed record carries a fingerprint of everything in it, chained to the one before.
        </p>
      )}
    </Panel>
  );
}

function Checked({ isIntact, entries, brokenDays }: OutputOf<'records.verify'>) {
  const bad = entries.filter(({ problems }) => problems.length > 0);
  return (
    <>
      {isIntact ? (
        <Note tone="fir" isSpoken>
          Unchanged since it was sealed.
        </Note>
      ) : (
        <Note tone="ember" title="Changed after it was sealed" isSpoken>
          <ul>
            {bad.flatMap(({ sequence, problems, alterations }) =>
              [...problems.map(sealProblemWords), ...alterations.map(alterationWords)].map((words) => (
                <li key={`${sequence} ${words}`}>
                  Entry {sequence}: {words}
                </li>
              )),
            )}
          </ul>
          Do not rely on it; look at a backup from before.
        </Note>
      )}
      {brokenDays.length === 0 ? null : (
        <Note tone="ember" title="Not everything that was sealed is as it was" isSpoken>
          Of {brokenDays.map((day) => dayWords(day)).join(', ')} a sealed record is gone, was changed, or came in later.
          Look at a backup from before.
        </Note>
      )}
      <PlainTable
        caption="Sealed entries"
        rows={entries}
        keyOf={({ sequence }) => String(sequence)}
        columns={[
          { label: 'No.', cell: ({ sequence }) => sequence },
          { label: 'What', cell: ({ kind }) => kind },
          { label: 'Fingerprint (SHA-256)', cell: ({ sha256 }) => <code className="lo-hash">{sha256}</code> },
          { label: 'Fits', cell: ({ problems }) => (problems.length === 0 ? 'yes' : 'no') },
        ]}
      />
    </>
  );
}
