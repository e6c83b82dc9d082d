/** Who registers: we, with the owner's consent, unless the owner insists; then the office follows up on a day. */
import { SegmentedControl, Stack } from '@mantine/core';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { KeyTo } from '../shortcuts/KeyTo.tsx';
import { addDays } from '../visits/week.ts';

/** Common practice, no source: a week is long enough for a letter and short enough for most windows. */
const FOLLOW_UP_AFTER_DAYS = 7;

export function DecidePanel({
  applianceId,
  by,
  ownerConsentOn,
  consentOnFileOn,
  followUpOn,
}: {
  readonly applianceId: string;
  readonly by: 'office' | 'owner';
  readonly ownerConsentOn: string | null;
  /** Offered to be kept, where nobody has kept one yet. */
  readonly consentOnFileOn: string | null;
  readonly followUpOn: string | null;
}) {
  const { today } = useAppStatus();
  const offeredOn = ownerConsentOn ?? consentOnFileOn;
  const form = useDraftForm({
    draftKey: `decide.${applianceId}`,
    operation: 'registrations.decide',
    initial: {
      by: by as string,
      ownerConsentOn: offeredOn === null ? '' : dayWords(offeredOn),
      followUpOn: followUpOn === null ? '' : dayWords(followUpOn),
    },
    toInput: (values, reader) => {
      const byOffice = values.by === 'office';
      return {
        applianceId,
        by: byOffice ? 'office' : 'owner',
        ownerConsentOn: byOffice
          ? reader.neededDay('ownerConsentOn', values.ownerConsentOn)
          : reader.day('ownerConsentOn', values.ownerConsentOn),
        followUpOn: byOffice
          ? reader.day('followUpOn', values.followUpOn)
          : reader.neededDay('followUpOn', values.followUpOn),
      };
    },
    onDone: () => undefined,
  });
  const byOffice = form.values.by === 'office';
  return (
    <Panel title="Who registers">
      <KeyTo keys="o" label="To who registers">
        <DraftFormFrame form={form} submitLabel="Keep it so" failure={<ErrorText error={form.error} />}>
          <Stack gap="sm">
            <SegmentedControl
              aria-label="Who registers"
              value={form.values.by}
              data={[
                { value: 'office', label: 'We do, for the owner' },
                { value: 'owner', label: 'The owner does' },
              ]}
              onChange={(choice) =>
                form.set({
                  by: choice,
                  ...(choice === 'owner' && form.values.followUpOn === ''
                    ? { followUpOn: dayWords(addDays(today, FOLLOW_UP_AFTER_DAYS)) }
                    : {}),
                })
              }
            />
            {byOffice ? (
              <DayField
                form={form}
                name="ownerConsentOn"
                label="Owner agreed on"
                description={
                  ownerConsentOn === null && consentOnFileOn !== null
                    ? 'As among the customer’s consents; not kept here yet.'
                    : 'To being registered by us, with their name and address.'
                }
                isNeeded
              />
            ) : (
              <>
                <Note tone="caution">
                  Cards left with owners tend to stay on a pile. Give them the packet’s PDF: model and serial number are
                  filled in. On the day below it comes back to Today.
                </Note>
                <DayField form={form} name="followUpOn" label="Follow up on" isNeeded />
              </>
            )}
          </Stack>
        </DraftFormFrame>
      </KeyTo>
    </Panel>
  );
}
