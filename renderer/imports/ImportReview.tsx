/** What would be taken in: what each column is, what the file leaves open, every fault by row and cell, who may be on file. */
import { Button, Group, NativeSelect, Stack, Switch } from '@mantine/core';
import { useEffect, useState } from 'react';
import { IMPORT_FIELD_KEYS, type ImportFieldKey, importField } from '../../domain/imports/importFields.ts';
import type { ImportCheck, ImportDecision, ImportMapping } from '../../electron/contract/imports.ts';
import { Answer } from '../kit/Answer.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { countryOptions } from '../kit/places.ts';
import { BUILDING_WORDS, keyOf, optionsOf } from '../kit/tradeWords.ts';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { countWords } from './countWords.ts';
import { importIssueWords } from './issueWords.ts';
import { followList, useListDrive } from './listWorkDriver.ts';
import { SuggestionList } from './SuggestionList.tsx';

export function ImportReview({ attachmentId }: { readonly attachmentId: string }) {
  const core = useCore();
  const start = useAct('imports.start');
  const isGoing = useListDrive().work !== null;
  const [sheetName, setSheetName] = useState<string | null>(null);
  const [mapping, setMapping] = useState<ImportMapping | null>(null);
  const [decisions, setDecisions] = useState<readonly ImportDecision[]>([]);
  // All of the file is read for it: not again because it is just being taken in.
  const found = useOperation(
    'imports.check',
    { attachmentId, sheetName, mapping, decisions: [...decisions] },
    { isWanted: !isGoing && !start.isBusy },
  );
  const [shown, setShown] = useState<ImportCheck | null>(null);
  const value = found.state === 'ready' ? found.value : null;
  useEffect(() => {
    if (value !== null) setShown(value);
  }, [value]);
  // What was last worked out stays on screen while a changed choice is worked out anew.
  if (shown === null || found.state === 'failed') return <Answer of={found}>{() => null}</Answer>;
  const isStale = value === null;
  const take = async (isKnownAgain: boolean) => {
    const reply = await start.act({
      attachmentId,
      sheetName,
      mapping: shown.mapping,
      decisions: [...decisions],
      isKnownAgain,
    });
    if (reply.ok) await followList(core, { ...reply.value, kind: 'take-in', fileName: shown.fileName });
  };
  const change = (patch: Partial<ImportMapping>) => setMapping({ ...shown.mapping, ...patch });
  const isReady = shown.issueCount === 0 && !isStale;
  return (
    <Stack gap="md" aria-busy={isStale}>
      <SourceFacts
        check={shown}
        onSheet={(name) => {
          setSheetName(name);
          setMapping(null);
          setDecisions([]);
        }}
      />
      <ColumnTable check={shown} onChange={change} />
      <OpenQuestions check={shown} onChange={change} />
      <Issues check={shown} />
      <SuggestionList
        suggestions={shown.suggestions}
        count={shown.suggestionCount}
        decisions={decisions}
        onDecide={(decision) =>
          setDecisions((before) => [...before.filter(({ row }) => row !== decision.row), decision])
        }
        onForget={(row) => setDecisions((before) => before.filter((one) => one.row !== row))}
      />
      {shown.importedBefore === null ? null : (
        <Note tone="caution">
          This very file was taken in on {dayWords(shown.importedBefore.importedAt.slice(0, 10))} already.
        </Note>
      )}
      <ErrorText error={start.error} />
      <Group gap="sm">
        <Button
          disabled={!isReady || isGoing}
          loading={start.isBusy}
          onClick={() => void take(shown.importedBefore !== null)}
        >
          {shown.importedBefore === null ? 'Take all of it in' : 'Take it in once more'}
        </Button>
        <span role="status">
          {shown.issueCount === 0
            ? `New: ${countWords(shown.counts)}.`
            : 'Nothing can be taken in until every cell can be read.'}
        </span>
      </Group>
    </Stack>
  );
}

const DELIMITER_WORDS: Readonly<Record<string, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'bars',
};

function SourceFacts({
  check: { encoding, delimiter, rowCount, sheets, sheetName, issueCount },
  onSheet,
}: {
  readonly check: ImportCheck;
  readonly onSheet: (name: string) => void;
}) {
  return (
    <Group gap="lg" align="end">
      <span>
        {rowCount} rows, read as {encoding}
        {delimiter === null ? '' : `, columns by ${DELIMITER_WORDS[delimiter] ?? delimiter}`}.
        {issueCount === 0
          ? ''
          : ` ${issueCount === 1 ? 'One thing keeps' : `${issueCount} things keep`} it out, listed below the columns.`}
        {encoding === 'Windows-1252' ? ' Look at the letters with accents below: are they right?' : ''}
      </span>
      {sheets.length > 1 ? (
        <NativeSelect
          label="Sheet"
          value={sheetName ?? ''}
          data={[...sheets]}
          onChange={(event) => onSheet(event.currentTarget.value)}
        />
      ) : null}
    </Group>
  );
}

const SUBJECT_WORDS = { customer: 'Customer', site: 'Site', appliance: 'Appliance', service: 'Past service' } as const;

function ColumnTable({
  check: { headings, sample, mapping },
  onChange,
}: {
  readonly check: ImportCheck;
  readonly onChange: (patch: Partial<ImportMapping>) => void;
}) {
  const groups = (Object.keys(SUBJECT_WORDS) as (keyof typeof SUBJECT_WORDS)[]).map((subject) => ({
    group: SUBJECT_WORDS[subject],
    items: IMPORT_FIELD_KEYS.filter((key) => importField(key).subject === subject).map((key) => ({
      value: key,
      label: importField(key).label,
    })),
  }));
  const set = (index: number, text: string) => {
    const key = IMPORT_FIELD_KEYS.find((one) => one === text) ?? null;
    onChange({ columns: headings.map((_, at) => (at === index ? key : otherColumn(mapping, at, key))) });
  };
  return (
    <PlainTable
      caption="Columns of the list"
      rows={headings.map((heading, index) => ({ heading, index }))}
      keyOf={({ index }) => String(index)}
      columns={[
        { label: 'Column', cell: ({ heading, index }) => heading || `column ${index + 1}` },
        {
          label: 'First values',
          cell: ({ index }) => (
            <span className="lo-faint">
              {sample
                .map((cells) => cells[index] ?? '')
                .filter((text) => text !== '')
                .slice(0, 3)
                .join(' · ')}
            </span>
          ),
        },
        {
          label: 'Is',
          cell: ({ heading, index }) => (
            <NativeSelect
              aria-label={`${heading || `Column ${index + 1}`} is`}
              value={mapping.columns[index] ?? ''}
              data={[{ value: '', label: '– left out –' }, ...groups]}
              onChange={(event) => set(index, event.currentTarget.value)}
            />
          ),
        },
      ]}
    />
  );
}

/** A field moves to the column it was last given to. */
function otherColumn(mapping: ImportMapping, index: number, taken: ImportFieldKey | null): ImportFieldKey | null {
  const key = mapping.columns[index] ?? null;
  return key === taken ? null : key;
}

const DAY_ORDER_WORDS = { 'day-first': 'day / month / year', 'month-first': 'month / day / year' } as const;
const KIND_WORDS = { person: 'persons', firm: 'firms' } as const;

function OpenQuestions({
  check: { mapping, ambiguousDays },
  onChange,
}: {
  readonly check: ImportCheck;
  readonly onChange: (patch: Partial<ImportMapping>) => void;
}) {
  const has = (key: ImportFieldKey) => mapping.columns.includes(key);
  const asksOrder = ambiguousDays > 0 || mapping.dayOrder !== null;
  return (
    <div className="lo-fields">
      {asksOrder ? (
        <NativeSelect
          label="Dates in this list are"
          description={ambiguousDays > 0 ? `Dates that can be meant both ways: ${ambiguousDays}.` : undefined}
          error={mapping.dayOrder === null ? 'Which of the two?' : undefined}
          value={mapping.dayOrder ?? ''}
          data={[{ value: '', label: '– not said –' }, ...optionsOf(DAY_ORDER_WORDS)]}
          onChange={(event) => onChange({ dayOrder: keyOf(DAY_ORDER_WORDS, event.currentTarget.value) })}
        />
      ) : null}
      {has('ratedInput') ? (
        <NativeSelect
          label="Rated input without a unit is in"
          value={mapping.powerUnit}
          data={['kW', 'Btu/h']}
          onChange={(event) => onChange({ powerUnit: event.currentTarget.value === 'kW' ? 'kW' : 'Btu/h' })}
        />
      ) : null}
      {has('altitude') ? (
        <NativeSelect
          label="Altitude without a unit is in"
          value={mapping.lengthUnit}
          data={['m', 'ft']}
          onChange={(event) => onChange({ lengthUnit: event.currentTarget.value === 'm' ? 'm' : 'ft' })}
        />
      ) : null}
      {has('customerName') && !has('customerKind') ? (
        <NativeSelect
          label="The customers are"
          value={mapping.customerKind}
          data={[...optionsOf(KIND_WORDS)]}
          onChange={(event) => onChange({ customerKind: keyOf(KIND_WORDS, event.currentTarget.value) ?? 'person' })}
        />
      ) : null}
      {has('customerName') && !has('buildingKind') ? (
        <NativeSelect
          label="The buildings are"
          description="Terms of cover differ by it; change it at the site where it is another."
          value={mapping.buildingKind}
          data={[...optionsOf(BUILDING_WORDS)]}
          onChange={(event) => onChange({ buildingKind: keyOf(BUILDING_WORDS, event.currentTarget.value) ?? 'home' })}
        />
      ) : null}
      {has('customerName') && !has('country') ? (
        <NativeSelect
          label="The country is"
          value={mapping.country}
          data={[...countryOptions()]}
          onChange={(event) => onChange({ country: event.currentTarget.value })}
        />
      ) : null}
      {has('customerName') ? (
        <Switch
          size="md"
          label="Without a site of its own: the site is at the customer’s address"
          checked={mapping.siteAtCustomer}
          onChange={(event) => onChange({ siteAtCustomer: event.currentTarget.checked })}
        />
      ) : null}
    </div>
  );
}

function Issues({ check: { issues, issueCount, headings } }: { readonly check: ImportCheck }) {
  if (issueCount === 0) return <Note tone="fir">Every cell can be read.</Note>;
  return (
    <div>
      <h3>
        {issueCount === 1 ? 'One cell or row' : `${issueCount} cells or rows`} cannot be taken as{' '}
        {issueCount === 1 ? 'it is' : 'they are'}
      </h3>
      <PlainTable
        caption="Faults of the list"
        rows={issues}
        keyOf={({ row, column, code, detail }) => `${row} ${column} ${code} ${detail}`}
        columns={[
          { label: 'Row', cell: ({ row }) => row },
          { label: 'Column', cell: ({ column }) => (column === null ? '' : headings[column]) },
          { label: 'What', cell: ({ code, detail }) => importIssueWords(code, detail) },
        ]}
      />
      {issueCount > issues.length ? <p className="lo-faint">… and {issueCount - issues.length} more.</p> : null}
    </div>
  );
}
