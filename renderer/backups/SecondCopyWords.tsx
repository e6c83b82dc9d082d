/** Beside the question whether a second copy is stored: what this computer knows of it, and a way to make one. */
import { Button } from '@mantine/core';
import { ErrorText } from '../kit/ErrorText.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { secondPlaceWords, troubleWords } from './secondPlaceWords.ts';

export function SecondCopyWords() {
  const found = useOperation('backups.secondCopy', {});
  const carry = useAct('backups.carryOver');
  if (found.state !== 'ready') return null;
  const { secondPlace } = found.value;
  if (secondPlace === null) {
    return (
      <p className="run-card-hint">
        This computer copies to no second place; the office can choose one under Backups. Until then everything of this
        visit lies on this disk alone.
      </p>
    );
  }
  return (
    <>
      <p className="run-card-hint">
        {secondPlaceWords(secondPlace)}
        {secondPlace.trouble === null ? '' : ` ${troubleWords(secondPlace.trouble)}`}
        {secondPlace.isOnSameDisk ? ' It is on the same disk.' : ''}{' '}
        <Button variant="default" size="xs" loading={carry.isBusy} onClick={() => void carry.act({})}>
          Copy now
        </Button>
      </p>
      <ErrorText error={carry.error} />
    </>
  );
}
