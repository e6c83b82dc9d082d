/** Services by round and by line, the first year's calls and look-ins, and the reminders that stand today. */
import { NativeSelect } from '@mantine/core';
import { DUE_KINDS } from '../../electron/contract/dues.ts';
import { Answer } from '../kit/Answer.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { PageTurner } from '../kit/PageTurner.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { keyOf, optionsOf } from '../kit/tradeWords.ts';
import { useKept } from '../kit/useKept.ts';
import { useOperation } from '../operations/useOperation.ts';
import { usePages } from '../operations/usePages.ts';
import { RouteLink } from '../RouteLink.tsx';
import { DUE_KIND_WORDS, monthWords } from './dueWords.ts';
import { RemindersPanel } from './RemindersPanel.tsx';
import { RoundsPanel } from './RoundsPanel.tsx';
import { ServiceDueTable } from './ServiceDueTable.tsx';

export function ServiceDueScreen() {
  const [kept, setKind] = useKept('service-due.kind', 'service');
  const [round, setRound] = useKept('service-due.round', '');
  const kind = keyOf(DUE_KIND_WORDS, kept) ?? DUE_KINDS[0];
  // Kept as `2026-10 B4T`; an area may be unknown, and then nothing follows the month.
  const [month = '', area = ''] = round.split(' ');
  const overview = useOperation('serviceDue.get', {});
  return (
    <Screen
      title="Service due"
      action={
        <RouteLink to="messages" params={{}}>
          Letters and e-mails
        </RouteLink>
      }
    >
      <Answer of={overview}>
        {(found) => (
          <RoundsPanel
            rounds={found.rounds}
            chosen={kind === 'service' ? round : ''}
            onChoose={(next) => {
              setKind('service');
              setRound(next);
            }}
          />
        )}
      </Answer>
      <Panel
        title={listTitle(kind, round === '' ? null : month, area)}
        action={
          <NativeSelect
            aria-label="What falls due"
            value={kind}
            data={[...optionsOf(DUE_KIND_WORDS)]}
            onChange={(event) => setKind(event.currentTarget.value)}
          />
        }
      >
        <Lines
          kind={kind}
          month={kind === 'service' && round !== '' ? month : null}
          area={kind === 'service' && round !== '' ? area : null}
        />
      </Panel>
      <RemindersPanel />
    </Screen>
  );
}

function listTitle(kind: keyof typeof DUE_KIND_WORDS, month: string | null, area: string): string {
  if (kind !== 'service' || month === null) return DUE_KIND_WORDS[kind];
  return `Round of ${monthWords(month)}, ${area === '' ? 'area not known' : area}`;
}

function Lines({
  kind,
  month,
  area,
}: {
  readonly kind: keyof typeof DUE_KIND_WORDS;
  readonly month: string | null;
  readonly area: string | null;
}) {
  const pages = usePages(`${kind} ${month} ${area}`);
  const found = useOperation('serviceDue.list', { kind, month, area, after: pages.after });
  return (
    <Answer of={found}>
      {({ rows, next }) => (
        <>
          {rows.length === 0 ? (
            <EmptyState title="Nothing due here">
              Services come here from the startup day and the maker’s sheet, or once a year without one. Calls and
              look-ins come in a boiler’s first year.
            </EmptyState>
          ) : (
            <ServiceDueTable rows={rows} />
          )}
          <PageTurner pages={pages} next={next} />
        </>
      )}
    </Answer>
  );
}
