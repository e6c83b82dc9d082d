/** Lists that were just being taken in or out when the program ended: nothing of them was written, which is said until it was read. */
import { Button } from '@mantine/core';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';

export function CutOffLists() {
  const found = useOperation('imports.listWorks', {});
  const forget = useAct('imports.forgetCutOff');
  const cutOff = found.state === 'ready' ? found.value.filter(({ isGoing }) => !isGoing) : [];
  return (
    <>
      {cutOff.map(({ workId, kind, fileName, begunAt, begunByName }) => (
        <Note
          key={workId}
          tone="caution"
          action={
            <Button variant="default" loading={forget.isBusy} onClick={() => void forget.act({ workId })}>
              I have read it
            </Button>
          }
        >
          {kind === 'take-in' ? 'Taking in' : 'Taking out'} {fileName}, begun by {begunByName} on{' '}
          {dayWords(begunAt.slice(0, 10))}, was cut off when the program ended.{' '}
          {kind === 'take-in'
            ? 'Nothing of the list was taken in. Take it in again.'
            : 'All of the list is still here. Take it out again if it has to go.'}
        </Note>
      ))}
      <ErrorText error={forget.error} />
    </>
  );
}
