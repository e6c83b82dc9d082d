/** The last change of hands of a house, and the way back where it was a mistake. */
import { Stack } from '@mantine/core';
import { AskReason } from '../kit/AskReason.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { transferConsequenceWords } from '../kit/transferWords.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';

export function PutBackTransfer({ siteId }: { readonly siteId: string }) {
  const mayPutBack = useHasRole('owner', 'dispatcher');
  const found = useOperation('sites.lastTransfer', { siteId });
  const putBack = useAct('sites.takeBackTransfer');
  if (found.state !== 'ready' || found.value === null || !mayPutBack) return null;
  const { transferId, changedOn, fromName, toName, byName, restsOnIt } = found.value;
  return (
    <Stack gap="xs" align="start">
      <span>
        Handed over from {fromName} to {toName} on {dayWords(changedOn)}, written by {byName}.
      </span>
      {restsOnIt.length > 0 ? (
        <span className="lo-faint">
          It cannot be put back any more, other things rest on it: {transferConsequenceWords(restsOnIt)}. If it was a
          mistake, hand the house over once more.
        </span>
      ) : (
        <AskReason
          label={`Put back to ${fromName} …`}
          confirmLabel="Put it back"
          reasonLabel="What was the mistake"
          isBusy={putBack.isBusy}
          onConfirm={async (why) => (await putBack.act({ siteId, transferId, why })).ok}
        >
          {fromName} has the house again, with every part they had in it. {toName} stays on file as a customer. The
          history keeps both.
        </AskReason>
      )}
      <ErrorText error={putBack.error} />
    </Stack>
  );
}
