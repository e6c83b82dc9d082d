/** How a licence or training stops counting: ended early, from a day on, or withdrawn as one that never was. */
import { Group } from '@mantine/core';
import { AskReason } from '../kit/AskReason.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';

export function EndOrWithdraw({
  ending,
  isBusy,
  onEnd,
  onWithdraw,
}: {
  /** What follows when it ends. */
  readonly ending: string;
  readonly isBusy: boolean;
  readonly onEnd: (why: string, lastDay: string) => Promise<boolean>;
  readonly onWithdraw: (why: string) => Promise<boolean>;
}) {
  const { today } = useAppStatus();
  return (
    <Group gap="sm" align="start">
      <AskReason
        label="End it early"
        confirmLabel="End it"
        dayLabel="Last day it counts"
        day={today}
        isBusy={isBusy}
        onConfirm={onEnd}
      >
        {ending} Sealed records keep what they said. An end set too early is put right by correcting the last day.
      </AskReason>
      <AskReason label="Withdraw it" confirmLabel="Withdraw it" isBusy={isBusy} onConfirm={onWithdraw}>
        For one that never was: of another person, or typed twice. It counts for no day, and can be put back.
      </AskReason>
    </Group>
  );
}
