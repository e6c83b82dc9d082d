/** One model sheet as a person reads it: limits with their source, the procedure, waits, emitters, cover. */
import { Button, Group, NativeSelect } from '@mantine/core';
import type { Basis, FuelKey, ModelSheet, SheetStep, StepItem } from '../../domain/procedure/modelSheet.ts';
import { quantitySpec } from '../../domain/quantity/quantities.ts';
import { AmountText } from '../kit/AmountText.tsx';
import { Answer } from '../kit/Answer.tsx';
import { COVER_DATE_WORDS } from '../kit/coverDates.ts';
import { DateText } from '../kit/DateText.tsx';
import { saveText } from '../kit/downloadFile.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { Screen } from '../kit/Screen.tsx';
import { EMITTER_WORDS, FUEL_WORDS } from '../kit/tradeWords.ts';
import { useHasRole, useUnitSystem } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { limitText } from './limitText.ts';
import { StartDraftPanel } from './StartDraftPanel.tsx';

export function SheetScreen({ sheetId, revision }: { readonly sheetId: string; readonly revision: string | null }) {
  const found = useOperation('sheets.get', { sheetId, revision });
  const list = useOperation('sheets.list', {});
  const give = useAct('sheets.export');
  const mayWrite = useHasRole('owner', 'dispatcher', 'technician');
  const sheet = found.state === 'ready' ? found.value : null;
  const revisions = list.state === 'ready' ? (list.value.find((row) => row.sheetId === sheetId)?.revisions ?? []) : [];
  return (
    <Screen
      title={sheet?.title ?? 'Model sheet'}
      crumbs={
        <RouteLink to="sheets" params={{}}>
          Model sheets
        </RouteLink>
      }
      action={
        sheet === null ? undefined : (
          <Group gap="sm" align="end">
            {revisions.length > 1 ? (
              <NativeSelect
                label="Revision"
                value={sheet.revision}
                data={[...revisions]}
                onChange={(event) => goTo('sheet', { sheetId, revision: event.currentTarget.value })}
              />
            ) : null}
            <Button
              variant="default"
              loading={give.isBusy}
              onClick={async () => {
                const reply = await give.act({ sheetId, revision: sheet.revision });
                if (reply.ok) saveText(reply.value.text, 'application/json', reply.value.fileName);
              }}
            >
              Save as a file
            </Button>
          </Group>
        )
      }
    >
      <ErrorText error={give.error} />
      <Answer of={found}>
        {(value) => (
          <>
            <Sheet sheet={value} />
            {mayWrite ? <StartDraftPanel sheet={value} /> : null}
          </>
        )}
      </Answer>
    </Screen>
  );
}

function Sheet({ sheet }: { readonly sheet: ModelSheet }) {
  const unitSystem = useUnitSystem();
  return (
    <>
      <Panel title="What it covers">
        <Facts
          facts={[
            ['Maker', sheet.maker ?? 'general practice: used where the maker’s own sheet is missing'],
            ['Models', sheet.models.length === 0 ? 'any' : sheet.models.join(', ')],
            ['Fuels', sheet.fuels.map(({ fuel }) => FUEL_WORDS[fuel]).join(', ')],
            [
              'Revision',
              <span key="revision">
                {sheet.revision}, issued <DateText day={sheet.issuedOn} />
              </span>,
            ],
            [
              'Rated input',
              sheet.appliance.ratedInputMaxKw === null ? (
                'any'
              ) : (
                <span key="rated">
                  <AmountText dimension="power" own={sheet.appliance.ratedInputMaxKw} decimals={1} />{' '}
                  {sheet.appliance.ratedInputBasis}
                </span>
              ),
            ],
            ['Clocked input may differ by', `${sheet.inputTolerancePct} %`],
            ...startupByFacts(sheet),
          ]}
        />
      </Panel>
      <Panel title="Limits">
        <PlainTable
          caption="Limits"
          rows={sheet.limits}
          keyOf={(limit) => JSON.stringify(limit)}
          columns={[
            { label: 'Quantity', cell: ({ quantity }) => quantitySpec(quantity).label },
            { label: 'Where', cell: ({ point, fuel }) => whereWords(point, fuel, sheet) },
            { label: 'Limit', cell: (limit) => limitText(limit, unitSystem) },
            { label: 'Beyond it', cell: ({ severity, blocks }) => beyondWords(severity, blocks) },
            { label: 'Source', cell: ({ basis }) => basisWords(basis) },
          ]}
        />
      </Panel>
      <StepsPanel title="Startup" steps={sheet.startup} />
      {sheet.service.length === 0 ? null : <StepsPanel title="Annual service" steps={sheet.service} />}
      {sheet.supplyByEmitter.length === 0 ? null : (
        <Panel title="Supply by emitter">
          <PlainTable
            caption="Supply temperature by emitter"
            rows={sheet.supplyByEmitter}
            keyOf={({ emitter }) => emitter}
            columns={[
              { label: 'Emitter', cell: ({ emitter }) => EMITTER_WORDS[emitter] },
              {
                label: 'Supply',
                cell: ({ minSupplyC, maxSupplyC }) =>
                  limitText({ quantity: 'supplyC', min: minSupplyC, max: maxSupplyC }, unitSystem),
              },
              {
                label: 'Supply minus return',
                cell: ({ deltaTMinK, deltaTMaxK }) =>
                  limitText({ quantity: 'deltaTK', min: deltaTMinK, max: deltaTMaxK }, unitSystem),
              },
              { label: 'Source', cell: ({ basis }) => basisWords(basis) },
            ]}
          />
        </Panel>
      )}
      <CoverPanel cover={sheet.cover} />
    </>
  );
}

function StepsPanel({ title, steps }: { readonly title: string; readonly steps: readonly SheetStep[] }) {
  return (
    <Panel title={title}>
      <ol style={{ margin: 0, paddingInlineStart: '1.75rem' }}>
        {steps.map((step) => (
          <li key={step.key} style={{ marginBlockEnd: '0.5rem' }}>
            <strong>{step.title}</strong>
            {step.who === 'licensed' ? ' (licensed person)' : ''}
            {step.needsClear === null ? '' : `, only when nothing blocks ${step.needsClear}`}
            <details>
              <summary>{step.items.length} items</summary>
              <ul style={{ margin: 0 }}>
                {step.items.map((item) => (
                  <li key={item.key}>{itemWords(item)}</li>
                ))}
              </ul>
            </details>
          </li>
        ))}
      </ol>
    </Panel>
  );
}

/** What the maker demands of whoever lights it first; nothing where nothing is said. */
function startupByFacts({ startupBy }: ModelSheet): readonly (readonly [string, string])[] {
  if (startupBy === undefined) return [];
  const { training, instruments } = startupBy;
  const demands = [
    ...(training === undefined ? [] : [`a course on this line, in date (${basisWords(training)})`]),
    ...(instruments === undefined ? [] : [`instruments in calibration (${basisWords(instruments)})`]),
  ];
  return demands.length === 0 ? [] : [['Startup only with', demands.join('; ')]];
}

function CoverPanel({ cover }: { readonly cover: ModelSheet['cover'] }) {
  if (cover === null) {
    return (
      <Panel title="Cover and registration">
        <EmptyState title="Not on this sheet">
          Without it the shortest window seen in the trade, 30 days from the earliest known date, is assumed and said
          so.
        </EmptyState>
      </Panel>
    );
  }
  const { window, countedFrom } = cover.registration;
  const length = 'days' in window ? `${window.days} days` : `${window.months} months`;
  const from = countedFrom === 'earliest' ? 'the earliest known date' : `“${COVER_DATE_WORDS[countedFrom]}”`;
  return (
    <Panel title="Cover and registration">
      <p style={{ marginBlockStart: 0 }}>
        Register within {length} of {from}. Service every {cover.conditions.serviceEveryMonths} months,{' '}
        {cover.conditions.graceMonths} months’ grace, counted from the{' '}
        {cover.conditions.serviceCountedFrom === 'anniversary' ? 'startup’s anniversary' : 'last service'}. These are
        the maker’s stated conditions; law may grant more.
      </p>
      <PlainTable
        caption="Cover"
        rows={cover.terms}
        keyOf={({ part, countedFrom: anchor }) => `${part} ${anchor}`}
        columns={[
          { label: 'Part', cell: ({ part }) => part },
          { label: 'Registered', cell: ({ registeredMonths }) => `${registeredMonths} months`, isNumber: true },
          { label: 'Not registered', cell: ({ unregisteredMonths }) => `${unregisteredMonths} months`, isNumber: true },
          { label: 'Counted from', cell: ({ countedFrom: anchor }) => COVER_DATE_WORDS[anchor] },
        ]}
      />
    </Panel>
  );
}

function itemWords(item: StepItem): string {
  return item.kind === 'hold' ? `${item.label} (${Math.round(item.seconds / 60)} min)` : item.label;
}

function whereWords(point: string | null, fuel: FuelKey | null, sheet: ModelSheet): string {
  const place = point === null ? 'anywhere' : pointLabel(point, sheet);
  return fuel === null ? place : `${place}, ${FUEL_WORDS[fuel]}`;
}

function pointLabel(point: string, sheet: ModelSheet): string {
  return sheet.firingPoints.find(({ key }) => key === point)?.label ?? point.replaceAll('-', ' ');
}

function beyondWords(severity: 'outside' | 'stop', blocks: readonly string[]): string {
  if (severity === 'stop') return 'stop: make safe';
  return blocks.length === 0 ? 'outside' : `outside, blocks ${blocks.join(' and ')}`;
}

function basisWords({ kind, source }: Basis): string {
  const words = { maker: 'maker', standard: 'standard', 'common-practice': 'common practice' } as const;
  return `${words[kind]}: ${source}`;
}
