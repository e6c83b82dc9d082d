/** The caller's appliance: anything made safe or under a notice first, then what is due and booked, then what they want. */
import { Button, Group, Stack } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { assertNever } from '../../domain/result.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { capital } from '../kit/capital.ts';
import { DateText, InstantText } from '../kit/DateText.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { JOB_KIND_WORDS } from '../kit/tradeWords.ts';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { type Asked, useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { OpenNoticeNote } from '../recalls/OpenNoticeNote.tsx';
import { latestWhyOf } from './latestWhy.ts';
import { OfferPanel } from './OfferPanel.tsx';

type Appliance = OutputOf<'appliances.get'>;
type Service = OutputOf<'coverage.get'>['cover']['service'];
type JobKind = Appliance['visits'][number]['kind'];

export function CallerAppliance({ applianceId }: { readonly applianceId: string }) {
  const appliance = useOperation('appliances.get', { applianceId });
  return <Answer of={appliance}>{(found) => <Details appliance={found} />}</Answer>;
}

function Details({ appliance }: { readonly appliance: Appliance }) {
  const { today } = useAppStatus();
  const { applianceId } = appliance;
  const coverage = useOperation('coverage.get', { applianceId });
  const cover = coverage.state === 'ready' ? coverage.value.cover : null;
  const service = cover?.service ?? null;
  const ahead = appliance.visits.filter(
    ({ state, plannedOn }) => (state === 'pencilled' || state === 'planned') && plannedOn >= today,
  );
  const openMakeSafes = appliance.makeSafes.filter(({ closedAt }) => closedAt === null);
  const waiting = useOperation('jobs.list', { applianceId });
  const last = appliance.visits
    .filter(({ state }) => state === 'finished' || state === 'signed')
    .toSorted((a, b) => (a.plannedOn < b.plannedOn ? 1 : -1))[0];
  return (
    <>
      {openMakeSafes.map((one) => (
        <Note
          key={one.makeSafeId}
          tone="ember"
          title={`Made safe and still open: ${one.what}`}
          action={
            <RouteLink to="appliance" params={{ applianceId }}>
              Open it
            </RouteLink>
          }
        >
          {one.isolatedHow ?? 'How it was isolated is not on file'}, <InstantText at={one.openedAt} />. It stays off
          until a licensed person closes it. Gas smell or a CO alarm: out first, touch no switch, call from outside.
        </Note>
      ))}
      {appliance.notices.map((notice) => (
        <OpenNoticeNote key={notice.recallId} notice={notice} />
      ))}
      <Panel title={`${appliance.appliance.maker} ${appliance.appliance.model}, ${appliance.appliance.serial}`}>
        <Facts
          facts={[
            [
              'Service due',
              service === null ? (
                'no date can be counted yet'
              ) : (
                <span key="due">
                  <DateText day={service.dueOn} />, at the latest <DateText day={service.latestOn} />
                  {service.latestOn < today ? <strong style={{ color: 'var(--lo-ember)' }}> (past)</strong> : null}
                </span>
              ),
            ],
            ['Registration', cover === null ? 'no date can be counted yet' : registrationWords(cover.registration)],
            ['Last visit', last === undefined ? 'none' : `${JOB_KIND_WORDS[last.kind]}, ${dayWords(last.plannedOn)}`],
            [
              'Booked',
              ahead.length === 0 ? (
                'nothing'
              ) : (
                <span key="ahead">
                  {ahead.map((visit) => (
                    <RouteLink
                      key={visit.visitId}
                      to="visit"
                      params={{ visitId: visit.visitId }}
                      className="lo-link-inline"
                    >
                      {JOB_KIND_WORDS[visit.kind]}, {dayWords(visit.plannedOn, { weekday: true })}{' '}
                    </RouteLink>
                  ))}
                </span>
              ),
            ],
            [
              'Waits for a day',
              <Answer key="waits" of={waiting}>
                {waitingWords}
              </Answer>,
            ],
          ]}
        />
      </Panel>
      <Wanted
        appliance={appliance}
        waiting={waiting}
        service={service}
        isServiceKnown={coverage.state !== 'loading'}
        // What was made safe, or must not fire, is read first.
        isLedTo={openMakeSafes.length === 0 && appliance.notices.length === 0}
      />
    </>
  );
}

function registrationWords({ kind, due }: OutputOf<'coverage.get'>['cover']['registration']): string {
  const day = due === null ? null : dayWords(due.on);
  switch (kind) {
    case 'confirmed':
      return 'confirmed by the maker';
    case 'submitted':
      return 'handed in';
    case 'submitted-late':
      return day === null ? 'handed in' : `handed in after its last day, ${day}`;
    case 'open':
      return day === null ? 'open' : `due by ${day}`;
    case 'missed':
      return day === null ? 'not handed in' : `not handed in; its last day was ${day}`;
    case 'no-date':
      return 'no date can be counted yet';
    default:
      return assertNever(kind);
  }
}

function waitingWords(jobs: OutputOf<'jobs.list'>): string {
  return jobs.length === 0 ? 'nothing' : jobs.map(({ kind }) => JOB_KIND_WORDS[kind]).join(', ');
}

const KINDS: readonly JobKind[] = ['service', 'repair', 'startup', 'follow-up'];

/** A job of that kind that waits already is taken; only else a new one is opened. */
function Wanted({
  appliance,
  waiting,
  service,
  isServiceKnown,
  isLedTo,
}: {
  readonly appliance: Appliance;
  readonly waiting: Asked<'jobs.list'>;
  readonly service: Service;
  readonly isServiceKnown: boolean;
  /** The keyboard comes here by itself. */
  readonly isLedTo: boolean;
}) {
  const { applianceId } = appliance;
  const mayBook = useHasRole('dispatcher', 'owner', 'technician');
  const open = useAct('jobs.open');
  const plan = useAct('jobs.setPlanning');
  const [job, setJob] = useState<{ readonly jobId: string; readonly kind: JobKind } | null>(null);
  const kinds = useRef<HTMLDivElement>(null);
  // Until it is known what waits, a choice would open the same job twice; until the service is, lose its latest day.
  const isKnown = waiting.state === 'ready' && isServiceKnown;
  useEffect(() => {
    if (isKnown && isLedTo) kinds.current?.querySelector('button')?.focus();
  }, [isKnown, isLedTo]);
  if (!mayBook) return null;
  const choose = async (kind: JobKind) => {
    if (waiting.state !== 'ready') return;
    const known = waiting.value.find((row) => row.kind === kind);
    if (known !== undefined) {
      setJob({ jobId: known.jobId, kind });
      return;
    }
    const reply = await open.act({ applianceId, kind, note: null });
    if (!reply.ok) return;
    const { jobId } = reply.value;
    if (kind === 'service' && service !== null)
      await plan.act({
        jobId,
        priority: 1,
        wantedFromOn: null,
        wantedToOn: null,
        latestOn: service.latestOn,
        latestWhy: latestWhyOf(service.demands),
        expectedMin: null,
        skills: [],
      });
    setJob({ jobId, kind });
  };
  return (
    <>
      <Panel title="What do they want?">
        <Stack gap="sm">
          <Group gap="sm" ref={kinds}>
            {KINDS.map((kind) => (
              <Button
                key={kind}
                variant={job?.kind === kind ? 'filled' : 'default'}
                aria-pressed={job?.kind === kind}
                disabled={!isKnown}
                loading={open.isBusy || plan.isBusy}
                onClick={() => void choose(kind)}
              >
                {capital(JOB_KIND_WORDS[kind])}
              </Button>
            ))}
          </Group>
          <ErrorText error={open.error} />
          <ErrorText error={plan.error} />
        </Stack>
      </Panel>
      {job === null ? null : <OfferPanel key={job.jobId} jobId={job.jobId} />}
    </>
  );
}
