/** One appliance: open make-safes and notices first, then what can be booked, its dates, its history. */
import { Button, Group } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { AgreementsPanel } from '../agreements/AgreementsPanel.tsx';
import { CoverPanel } from '../cover/CoverPanel.tsx';
import { readyWords } from '../jobs/readyWords.ts';
import { AmountText } from '../kit/AmountText.tsx';
import { Answer } from '../kit/Answer.tsx';
import { capital } from '../kit/capital.ts';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { HistoryPanel } from '../kit/HistoryPanel.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { FUEL_WORDS, JOB_KIND_WORDS, keyOf, OUTCOME_WORDS, VISIT_STATE_WORDS } from '../kit/tradeWords.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { OpenNoticeNote } from '../recalls/OpenNoticeNote.tsx';
import { SettleNotice } from '../recalls/SettleNotice.tsx';
import { goTo } from '../route.ts';
import { KeyTo } from '../shortcuts/KeyTo.tsx';
import { DatesPanel } from './DatesPanel.tsx';
import { FuelPanel } from './FuelPanel.tsx';
import { MakeSafeFacts, MakeSafePhotos, OpenMakeSafe, OpenMakeSafePanel } from './MakeSafePanel.tsx';
import { PlacePanel } from './PlacePanel.tsx';

export function ApplianceScreen({ applianceId }: { readonly applianceId: string }) {
  const found = useOperation('appliances.get', { applianceId });
  const mayEdit = useHasRole('dispatcher', 'owner', 'technician');
  const value = found.state === 'ready' ? found.value : null;
  return (
    <Screen
      title={value === null ? 'Appliance' : `${value.appliance.maker} ${value.appliance.model}`}
      crumbs={
        value === null ? undefined : (
          <>
            {value.customerId === null ? null : (
              <RouteLink to="customer" params={{ customerId: value.customerId }}>
                Customer
              </RouteLink>
            )}
            {value.siteId === null ? null : (
              <RouteLink to="site" params={{ siteId: value.siteId }}>
                Site
              </RouteLink>
            )}
          </>
        )
      }
      action={
        mayEdit ? (
          <Button variant="default" onClick={() => goTo('edit-appliance', { applianceId })}>
            Edit
          </Button>
        ) : undefined
      }
    >
      <Answer of={found}>{(appliance) => <Appliance found={appliance} mayEdit={mayEdit} />}</Answer>
    </Screen>
  );
}

function Appliance({ found, mayEdit }: { readonly found: OutputOf<'appliances.get'>; readonly mayEdit: boolean }) {
  const { applianceId, appliance, makeSafes } = found;
  const [isUnsafe, setIsUnsafe] = useState(false);
  const maySettle = useHasRole('owner', 'dispatcher', 'technician');
  const closed = makeSafes.filter(({ closedAt }) => closedAt !== null);
  return (
    <>
      {makeSafes
        .filter(({ closedAt }) => closedAt === null)
        .map((makeSafe) => (
          <OpenMakeSafe key={makeSafe.makeSafeId} makeSafe={makeSafe} />
        ))}
      {found.notices.map((notice) => (
        <OpenNoticeNote key={notice.recallId} notice={notice}>
          {maySettle ? (
            <SettleNotice recallId={notice.recallId} applianceId={applianceId} serial={appliance.serial} />
          ) : null}
        </OpenNoticeNote>
      ))}
      {isUnsafe ? <OpenMakeSafePanel applianceId={applianceId} onDone={() => setIsUnsafe(false)} /> : null}
      <WorkPanel found={found} mayEdit={mayEdit} onUnsafe={() => setIsUnsafe(true)} />
      <div className="lo-columns">
        <Panel title="The appliance">
          <Facts
            facts={[
              ['Serial number', appliance.serial],
              ['Fuel on the plate', appliance.plateFuel === null ? null : FUEL_WORDS[appliance.plateFuel]],
              ...(appliance.tagFuel === null ? [] : ([['Fuel on the tag', FUEL_WORDS[appliance.tagFuel]]] as const)),
              [
                'Rated input',
                appliance.ratedInputKw === null ? null : (
                  <span key="rated">
                    <AmountText dimension="power" own={appliance.ratedInputKw} decimals={1} />{' '}
                    {appliance.ratedInputBasis}
                  </span>
                ),
              ],
              ['Model sheet', <SheetLink key="sheet" sheetId={appliance.sheetId} />],
              ['Vent', appliance.ventKind],
              ['Vent length', <AmountText key="vent" dimension="length" own={appliance.ventLengthM} decimals={1} />],
              ['Elbows', appliance.ventElbows],
              ['Hidden vent', appliance.isVentConcealed === null ? null : appliance.isVentConcealed ? 'yes' : 'no'],
              ...(appliance.note === null ? [] : ([['Note', appliance.note]] as const)),
            ]}
          />
        </Panel>
        <DatesPanel applianceId={applianceId} sheetId={appliance.sheetId} siteId={found.siteId} dates={found.dates} />
        <FuelPanel appliance={found} />
        <PlacePanel applianceId={applianceId} mayEdit={mayEdit} />
        {closed.length > 0 ? (
          <Panel title="Earlier make-safes">
            {closed.map((makeSafe) => (
              <section key={makeSafe.makeSafeId} aria-label={makeSafe.what}>
                <strong>{makeSafe.what}</strong>
                <MakeSafeFacts makeSafe={makeSafe} />
                <MakeSafePhotos makeSafe={makeSafe} />
              </section>
            ))}
          </Panel>
        ) : null}
      </div>
      <CoverPanel applianceId={applianceId} />
      <AgreementsPanel applianceId={applianceId} />
      <HistoryPanel entity="appliances" entityId={applianceId} />
    </>
  );
}

function SheetLink({ sheetId }: { readonly sheetId: string | null }) {
  if (sheetId === null) return <>general practice</>;
  return (
    <RouteLink to="sheet" params={{ sheetId }} className="lo-link-inline">
      {sheetId}
    </RouteLink>
  );
}

function WorkPanel({
  found,
  mayEdit,
  onUnsafe,
}: {
  readonly found: OutputOf<'appliances.get'>;
  readonly mayEdit: boolean;
  readonly onUnsafe: () => void;
}) {
  const { applianceId, visits } = found;
  const open = useAct('jobs.open');
  const openJobs = useOperation('jobs.list', { unplannedOnly: true, applianceId });
  const unplanned = openJobs.state === 'ready' ? openJobs.value : [];
  const hadStartup = visits.some(({ kind, isSealed }) => kind === 'startup' && isSealed);
  const start = async (kind: 'startup' | 'service' | 'repair') => {
    const reply = await open.act({ applianceId, kind, note: null });
    if (reply.ok) goTo('job', { jobId: reply.value.jobId });
  };
  return (
    <Panel
      title="Work on it"
      action={
        <Group gap="sm">
          {mayEdit ? (
            <KeyTo keys="n" label="To new work on it">
              <Group gap="sm">
                <Button
                  variant={hadStartup ? 'default' : 'filled'}
                  loading={open.isBusy}
                  onClick={() => void start('startup')}
                >
                  New startup
                </Button>
                <Button variant="default" loading={open.isBusy} onClick={() => void start('service')}>
                  New service
                </Button>
                <Button variant="default" loading={open.isBusy} onClick={() => void start('repair')}>
                  New repair
                </Button>
              </Group>
            </KeyTo>
          ) : null}
          <Button variant="default" onClick={onUnsafe}>
            Make safe …
          </Button>
          <RouteLink to="registration" params={{ applianceId }}>
            Registration
          </RouteLink>
          <RouteLink to="appliance-history" params={{ applianceId }}>
            History and claims
          </RouteLink>
        </Group>
      }
    >
      <ErrorText error={open.error} />
      {unplanned.map(({ jobId, kind, ...readiness }) => (
        <p key={jobId} style={{ margin: 0 }}>
          <RouteLink to="job" params={{ jobId }}>
            {capital(JOB_KIND_WORDS[kind])}, not booked yet
          </RouteLink>{' '}
          <span className="lo-faint">{readyWords(readiness)}</span>
        </p>
      ))}
      {visits.length === 0 && unplanned.length === 0 ? (
        <EmptyState title="No work yet">Open a startup: first the readiness call, then the visit is booked.</EmptyState>
      ) : null}
      {visits.length > 0 ? (
        <PlainTable
          caption="Visits to this appliance"
          rows={visits}
          keyOf={(visit) => `${visit.visitId} ${visit.runId} ${visit.kind}`}
          columns={[
            {
              label: 'When',
              cell: ({ visitId, plannedOn }) => (
                <RouteLink to="visit" params={{ visitId }}>
                  <DateText day={plannedOn} />
                </RouteLink>
              ),
            },
            { label: 'What', cell: ({ kind }) => capital(JOB_KIND_WORDS[kind]) },
            { label: 'State', cell: ({ state, outcome }) => visitStateWords(state, outcome) },
            {
              label: 'Record',
              cell: ({ visitId, runId, isSealed }) =>
                runId === null ? (
                  ''
                ) : (
                  <RouteLink to="run" params={{ visitId, runId }}>
                    {isSealed ? 'sealed record' : 'open the run'}
                  </RouteLink>
                ),
            },
          ]}
        />
      ) : null}
    </Panel>
  );
}

function visitStateWords(state: string, outcome: string | null): string {
  const stateKey = keyOf(VISIT_STATE_WORDS, state);
  const outcomeKey = outcome === null ? null : keyOf(OUTCOME_WORDS, outcome);
  const words = stateKey === null ? state : VISIT_STATE_WORDS[stateKey];
  return outcomeKey === null || outcomeKey === 'finished' ? words : `${words}: ${OUTCOME_WORDS[outcomeKey]}`;
}
