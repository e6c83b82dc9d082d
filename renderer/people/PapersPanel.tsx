/** One person's papers of a kind, licences or trainings: added, changed, ended, withdrawn and put back in one way. */
import { Button, Stack } from '@mantine/core';
import { type ReactNode, useState } from 'react';
import { EmptyState } from '../kit/EmptyState.tsx';
import { Panel } from '../kit/Panel.tsx';
import { type Column, PlainTable } from '../kit/PlainTable.tsx';
import { WithdrawnList } from '../kit/WithdrawnList.tsx';
import { Shortcut } from '../shortcuts/Shortcut.tsx';
import { InDate } from './InDate.tsx';

export type Paper = { readonly validFrom: string; readonly validTo: string | null; readonly endReason: string | null };

export function PapersPanel<P extends Paper>({
  title,
  word,
  addKey,
  papers,
  withdrawn,
  idOf,
  nameOf,
  columns,
  empty,
  mayEdit,
  onPutBack,
  failure,
  newForm,
  changeForm,
}: {
  readonly title: string;
  /** What one of them is called. */
  readonly word: string;
  readonly addKey?: string;
  readonly papers: readonly P[];
  readonly withdrawn: readonly P[];
  readonly idOf: (paper: P) => string;
  readonly nameOf: (paper: P) => string;
  readonly columns: readonly [Column<P>, ...Column<P>[]];
  /** What it means to have none. */
  readonly empty: string;
  readonly mayEdit: boolean;
  readonly onPutBack: (id: string) => void;
  /** What kept one from being put back. */
  readonly failure: ReactNode;
  readonly newForm: (onDone: () => void) => ReactNode;
  readonly changeForm: (paper: P, onDone: () => void) => ReactNode;
}) {
  const [open, setOpen] = useState<{ readonly id: string } | 'new' | null>(null);
  const chosen = open === null || open === 'new' ? undefined : papers.find((paper) => idOf(paper) === open.id);
  const close = () => setOpen(null);
  const addLabel = `Add a ${word}`;
  const dates: Column<P> = {
    label: 'Dates',
    cell: ({ validFrom, validTo, endReason }) => (
      <>
        <InDate from={validFrom} to={validTo} />
        {endReason === null ? null : <div className="lo-faint">ended: {endReason}</div>}
      </>
    ),
  };
  const change: Column<P> = {
    label: 'Change',
    cell: (paper) => (
      <Button variant="default" onClick={() => setOpen({ id: idOf(paper) })}>
        Change
        <span className="lo-hidden">
          {' '}
          {word} {nameOf(paper)}
        </span>
      </Button>
    ),
  };
  return (
    <Panel
      title={title}
      action={
        mayEdit && open !== 'new' ? (
          <Button variant="default" onClick={() => setOpen('new')}>
            {addLabel}
          </Button>
        ) : undefined
      }
    >
      {mayEdit && addKey !== undefined ? (
        <Shortcut keys={addKey} label={addLabel} onPress={() => setOpen('new')} />
      ) : null}
      <Stack>
        {open === 'new' ? newForm(close) : null}
        {chosen === undefined ? null : changeForm(chosen, close)}
        {papers.length === 0 ? (
          <EmptyState title={`No ${word} on file`}>{empty}</EmptyState>
        ) : (
          <PlainTable
            caption={title}
            rows={papers}
            keyOf={idOf}
            columns={[...columns, dates, ...(mayEdit ? [change] : [])]}
          />
        )}
        <WithdrawnList
          rows={withdrawn.map((paper) => ({ id: idOf(paper), name: nameOf(paper), why: paper.endReason }))}
          {...(mayEdit ? { onPutBack } : {})}
        />
        {failure}
      </Stack>
    </Panel>
  );
}
