/** A new appliance at a site, with the dates that are known so far. */
import { TextInput } from '@mantine/core';
import { COVER_DATES, type CoverDate } from '../../domain/procedure/modelSheet.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { impreciseDayWords, readImpreciseDay } from '../form/impreciseDay.ts';
import { TextField } from '../form/TextField.tsx';
import { type DraftForm, useDraftForm } from '../form/useDraftForm.ts';
import { Answer } from '../kit/Answer.tsx';
import { capital } from '../kit/capital.ts';
import { COVER_DATE_HINTS, COVER_DATE_WORDS } from '../kit/coverDates.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { replaceWith } from '../route.ts';
import { ApplianceFieldset } from './ApplianceFieldset.tsx';
import { type ApplianceForm, applianceFromForm, emptyAppliance } from './applianceForm.ts';
import { type DateRow, type DateRows, datesFromForm, NO_DATES } from './dateRows.ts';
import { SerialTaken } from './SerialTaken.tsx';

type NewForm = ApplianceForm & { readonly position: string; readonly dates: DateRows };

export function NewApplianceScreen({ siteId }: { readonly siteId: string }) {
  const site = useOperation('sites.get', { siteId });
  return (
    <Screen
      title="New appliance"
      crumbs={
        <RouteLink to="site" params={{ siteId }}>
          Back to the site
        </RouteLink>
      }
    >
      <Answer of={site}>{(found) => <NewApplianceForm found={found} />}</Answer>
    </Screen>
  );
}

function NewApplianceForm({ found }: { readonly found: OutputOf<'sites.get'> }) {
  const unitSystem = useUnitSystem();
  const { siteId, site } = found;
  const form = useDraftForm<NewForm, 'appliances.create'>({
    draftKey: `new-appliance.${siteId}`,
    operation: 'appliances.create',
    inputRoot: 'appliance',
    initial: { ...emptyAppliance(unitSystem, site.jurisdiction), position: '', dates: NO_DATES },
    toInput: (values, reader) => ({
      siteId,
      appliance: applianceFromForm(values, reader),
      position: reader.optional(values.position),
      dates: datesFromForm(values.dates, reader),
    }),
    onDone: ({ applianceId }) => replaceWith('appliance', { applianceId }),
  });
  return (
    <DraftFormFrame
      form={form}
      submitLabel="Add appliance"
      failure={
        form.error?.code === 'serial-taken' ? <SerialTaken data={form.error.data} /> : <ErrorText error={form.error} />
      }
    >
      <ApplianceFieldset form={form} />
      <Panel title="Where it stands and its dates">
        <div className="lo-fields">
          <TextField
            form={form}
            name="position"
            label="Position"
            description="Plant group or place: “cascade 2 of 3”, “attic”."
          />
        </div>
        <DateFields form={form} />
      </Panel>
    </DraftFormFrame>
  );
}

/** Kept apart on purpose: registration windows count from different ones. */
function DateFields({ form }: { readonly form: DraftForm<NewForm> }) {
  const { dates } = form.values;
  const change = (kind: CoverDate, patch: Partial<DateRow>) =>
    form.set({ dates: { ...dates, [kind]: { ...dates[kind], ...patch } } });
  return (
    <fieldset className="lo-fieldset" style={{ marginBlockStart: '1rem' }}>
      <legend>Dates, as far as known</legend>
      <div className="lo-dates">
        {COVER_DATES.map((kind) => {
          const read = readImpreciseDay(dates[kind].text);
          return (
            <div key={kind} className="lo-date">
              <div>
                <strong>{capital(COVER_DATE_WORDS[kind])}</strong>
                <div className="lo-faint">{read.ok ? `= ${impreciseDayWords(read.date)}` : COVER_DATE_HINTS[kind]}</div>
              </div>
              <TextInput
                aria-label={`When ${COVER_DATE_WORDS[kind]}`}
                placeholder="4 Jul 2026, Jul 2026 or 2026"
                autoComplete="off"
                value={dates[kind].text}
                error={form.errors[`dates.${kind}`]}
                onChange={(event) => change(kind, { text: event.currentTarget.value })}
              />
              <TextInput
                // Nothing to know of a day that is not given.
                tabIndex={dates[kind].text === '' ? -1 : 0}
                aria-label={`How we know when ${COVER_DATE_WORDS[kind]}`}
                placeholder="how we know: plate, invoice, told by …"
                autoComplete="off"
                value={dates[kind].source}
                error={form.errors[`dates.${kind}.source`]}
                onChange={(event) => change(kind, { source: event.currentTarget.value })}
              />
            </div>
          );
        })}
      </div>
    </fieldset>
  );
}
