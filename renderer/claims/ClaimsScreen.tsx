/** Every claim of the firm: what is still open first. */
import { Switch } from '@mantine/core';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useKept } from '../kit/useKept.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { CLAIM_OUTCOME_WORDS } from './claimWords.ts';

export function ClaimsScreen() {
  const [shown, setShown] = useKept('claims.shown', 'open');
  const openOnly = shown === 'open';
  const found = useOperation('claims.list', { openOnly });
  return (
    <Screen
      title="Claims"
      action={
        <Switch
          size="md"
          label="Decided ones too"
          checked={!openOnly}
          onChange={(event) => setShown(event.currentTarget.checked ? 'all' : 'open')}
        />
      }
    >
      <Answer of={found}>
        {(rows) =>
          rows.length === 0 ? (
            <EmptyState title={openOnly ? 'No open claim' : 'No claim yet'}>
              A claim is opened from the history of its appliance.
            </EmptyState>
          ) : (
            <PlainTable
              caption="Claims"
              rows={rows}
              keyOf={({ claimId }) => claimId}
              columns={[
                {
                  label: 'Part',
                  cell: ({ applianceId, claim }) => (
                    <RouteLink to="appliance-history" params={{ applianceId }}>
                      {claim.partNumber}
                    </RouteLink>
                  ),
                },
                { label: 'Appliance', cell: ({ maker, model, serial }) => `${maker} ${model}, ${serial}` },
                { label: 'Opened', cell: ({ claim }) => <DateText day={claim.openedOn} /> },
                {
                  label: 'Sent',
                  cell: ({ claim }) => (claim.sentOn === null ? 'not yet' : <DateText day={claim.sentOn} />),
                },
                { label: 'Number', cell: ({ claim }) => claim.claimNumber ?? '' },
                { label: 'Outcome', cell: ({ outcome }) => CLAIM_OUTCOME_WORDS[outcome] },
              ]}
            />
          )
        }
      </Answer>
    </Screen>
  );
}
