/** The particulars of an appliance on file. */
import type { OutputOf } from '../../electron/contract/index.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { ApplianceFieldset } from './ApplianceFieldset.tsx';
import { applianceFromForm, applianceToForm } from './applianceForm.ts';
import { SerialTaken } from './SerialTaken.tsx';

export function EditApplianceScreen({ applianceId }: { readonly applianceId: string }) {
  const found = useOperation('appliances.get', { applianceId });
  return (
    <Screen
      title="Edit appliance"
      crumbs={
        <RouteLink to="appliance" params={{ applianceId }}>
          Back to the appliance
        </RouteLink>
      }
    >
      <Answer of={found}>{(appliance) => <EditForm found={appliance} />}</Answer>
    </Screen>
  );
}

function EditForm({ found }: { readonly found: OutputOf<'appliances.get'> }) {
  const unitSystem = useUnitSystem();
  const { applianceId } = found;
  const form = useDraftForm({
    draftKey: `appliance.${applianceId}`,
    operation: 'appliances.update',
    inputRoot: 'appliance',
    initial: applianceToForm(found.appliance, unitSystem),
    toInput: (values, reader) => ({ applianceId, appliance: applianceFromForm(values, reader) }),
    onDone: () => goTo('appliance', { applianceId }),
  });
  return (
    <DraftFormFrame
      form={form}
      submitLabel="Save"
      failure={
        form.error?.code === 'serial-taken' ? <SerialTaken data={form.error.data} /> : <ErrorText error={form.error} />
      }
    >
      <ApplianceFieldset form={form} />
    </DraftFormFrame>
  );
}
