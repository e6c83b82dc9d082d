/** What was done about a notice at one appliance, by whom and what was found; or that somebody was told. */
import { Button, Group, NativeSelect, TextInput } from '@mantine/core';
import type { RecallOutcome } from '../../domain/recalls/openNotices.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { keyOf, optionsOf } from '../kit/tradeWords.ts';
import { useKept } from '../kit/useKept.ts';
import { useAppStatus, useSignedIn } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { OUTCOME_WORDS } from './recallWords.ts';

type Act = RecallOutcome | 'told-by-phone';

const ACT_WORDS: Readonly<Record<Act, string>> = { 'told-by-phone': 'told by phone', ...OUTCOME_WORDS };

export function SettleNotice({
  recallId,
  applianceId,
  serial,
}: {
  readonly recallId: string;
  readonly applianceId: string;
  readonly serial: string;
}) {
  const { today, people } = useAppStatus();
  const self = useSignedIn();
  const settle = useAct('recalls.settle');
  const tell = useAct('recalls.noteTold');
  const kept = `settle.${recallId}.${applianceId}`;
  const [chosenText, choose] = useKept(`${kept}.act`, 'told-by-phone');
  const [note, setNote] = useKept(`${kept}.note`, '');
  const [byId, setById] = useKept(`${kept}.by`, self.staffId);
  const chosen = keyOf(ACT_WORDS, chosenText) ?? 'told-by-phone';
  const needsNote = chosen === 'done' || chosen === 'not-affected';
  const send = async () => {
    const words = note.trim() || null;
    const reply =
      chosen === 'told-by-phone'
        ? await tell.act({ recallId, applianceId, channel: 'phone', on: today, note: words })
        : await settle.act({ recallId, applianceId, outcome: chosen, on: today, note: words, byId });
    if (reply.ok) setNote('');
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <Group gap="xs" align="end">
        <NativeSelect
          aria-label={`What was done, ${serial}`}
          value={chosen}
          data={[...optionsOf(ACT_WORDS)]}
          onChange={(event) => choose(event.currentTarget.value)}
        />
        {needsNote ? (
          <NativeSelect
            aria-label={`By whom, ${serial}`}
            value={byId}
            data={people.map(({ staffId, name }) => ({ value: staffId, label: name }))}
            onChange={(event) => setById(event.currentTarget.value)}
          />
        ) : null}
        <TextInput
          aria-label={`What was found, ${serial}`}
          placeholder={needsNote ? 'what was found and done' : 'note'}
          required={needsNote}
          autoComplete="off"
          maxLength={4000}
          value={note}
          onChange={(event) => setNote(event.currentTarget.value)}
        />
        <Button
          type="submit"
          variant="default"
          style={{ flexShrink: 0 }}
          loading={settle.isBusy || tell.isBusy}
          aria-label={`Note today, ${serial}`}
        >
          Note today
        </Button>
      </Group>
      <ErrorText error={settle.error ?? tell.error} />
    </form>
  );
}
