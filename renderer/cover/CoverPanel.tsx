/** What the maker's sheet states of this appliance's cover, and what the record shows of the conditions. */
import { Button } from '@mantine/core';
import type { ApplianceCover, CoverTerm } from '../../domain/coverage/applianceCover.ts';
import { weightOf } from '../../domain/coverage/coverReasons.ts';
import { derivationSentence } from '../../domain/coverage/derivation.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { COVER_DATE_WORDS } from '../kit/coverDates.ts';
import { DateText } from '../kit/DateText.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { WhyDue } from '../service/WhyDue.tsx';
import {
  COVER_STATE_TONES,
  COVER_STATE_WORDS,
  LATEST_WORDS,
  LENGTH_WORDS,
  PART_WORDS,
  reasonWords,
  termsWords,
} from './coverWords.ts';

export function CoverPanel({ applianceId }: { readonly applianceId: string }) {
  const found = useOperation('coverage.get', { applianceId });
  return (
    <Panel title="Cover, as the maker states it">
      <Answer of={found}>{(value) => <Cover applianceId={applianceId} found={value} />}</Answer>
    </Panel>
  );
}

function Cover({ applianceId, found }: { readonly applianceId: string; readonly found: OutputOf<'coverage.get'> }) {
  const { cover } = found;
  return (
    <>
      {cover.terms.length === 0 ? (
        <EmptyState title="No terms on file">
          Terms come from the maker’s model sheet. Choose one on the appliance; until then the general rules count.
        </EmptyState>
      ) : (
        <TermTable terms={cover.terms} />
      )}
      <Facts
        facts={[
          ...(found.sheet === null ? [] : [['Terms of', termsWords(found.sheet)] as const]),
          ['Registration', cover.registration.due === null ? null : derivationSentence(cover.registration.due)],
          ['Next service', cover.service === null ? null : <WhyDue key="service" demands={cover.service.demands} />],
        ]}
      />
      <Transfers applianceId={applianceId} cover={cover} today={found.today} />
      {cover.laws.length === 0 ? null : (
        <section aria-label="Law">
          <p style={{ margin: 0, fontWeight: 600 }}>The law here may say otherwise. Not legal advice.</p>
          <ul style={{ margin: 0 }}>
            {cover.laws.map(({ law, until }) => (
              <li key={law.key}>
                {law.title} {until === null ? null : `${derivationSentence(until)} `}
                <span className="lo-faint">
                  {law.source}
                  {law.checked === 'summary' ? '; taken from a summary, look it up before relying on it' : ''}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function TermTable({ terms }: { readonly terms: readonly CoverTerm[] }) {
  return (
    <PlainTable
      caption="Terms by part"
      rows={terms}
      keyOf={({ part }) => part}
      columns={[
        { label: 'Part', cell: ({ part }) => PART_WORDS[part] },
        {
          label: 'State',
          cell: ({ state }) => (
            <span className="lo-verdict" data-tone={COVER_STATE_TONES[state]}>
              {COVER_STATE_WORDS[state]}
            </span>
          ),
        },
        { label: 'Until', cell: (term) => <Until term={term} /> },
        {
          label: 'Missing or open',
          cell: (term) => <Reasons reasons={term.reasons.filter((one) => weightOf(one) !== 'fine')} none="nothing" />,
        },
        {
          label: 'On record',
          cell: (term) => (
            <Reasons reasons={term.reasons.filter((one) => weightOf(one) === 'fine')} none="nothing yet" />
          ),
        },
      ]}
    />
  );
}

function Until({ term }: { readonly term: CoverTerm }) {
  if (term.missingDate !== null) return <>not known: “{COVER_DATE_WORDS[term.missingDate]}” is missing</>;
  if (term.endsOn === null || term.ends === null) return <>no term without registration</>;
  return (
    <>
      <DateText day={term.endsOn} weekday />
      <div className="lo-faint">
        {derivationSentence(term.ends)} This is {LENGTH_WORDS[term.length]}
        {term.otherwiseEndsOn === null ? '.' : `; otherwise ${dayWords(term.otherwiseEndsOn)}.`}
      </div>
      {term.latestDay === null ? null : (
        <div>
          {LATEST_WORDS[term.latestDay.what]} by <DateText day={term.latestDay.on} weekday />
        </div>
      )}
    </>
  );
}

function Reasons({ reasons, none }: { readonly reasons: CoverTerm['reasons']; readonly none: string }) {
  if (reasons.length === 0) return <span className="lo-faint">{none}</span>;
  return (
    <ul style={{ margin: 0, paddingInlineStart: '1.1em' }}>
      {reasons.map((reason) => (
        <li key={JSON.stringify(reason)}>{reasonWords(reason)}</li>
      ))}
    </ul>
  );
}

function Transfers({
  applianceId,
  cover,
  today,
}: {
  readonly applianceId: string;
  readonly cover: ApplianceCover;
  readonly today: string;
}) {
  const record = useAct('coverage.recordTransfer');
  const mayRecord = useHasRole('dispatcher', 'owner');
  const untold = cover.transfers.filter(({ toldMakerOn }) => toldMakerOn === null);
  return (
    <>
      <ErrorText error={record.error} />
      {untold.map(({ on, latest }) => (
        <p key={on} style={{ margin: 0 }}>
          New owner since <DateText day={on} />. {derivationSentence(latest)}{' '}
          {mayRecord ? (
            <Button
              variant="default"
              loading={record.isBusy}
              onClick={() => void record.act({ applianceId, changedOn: on, toldOn: today, number: null })}
            >
              The maker was told today
            </Button>
          ) : null}
        </p>
      ))}
    </>
  );
}
