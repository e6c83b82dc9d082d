/** A list in a draft: each entry one line until it is opened; added, moved and removed by buttons that keep the keyboard. */
import { Button, Group } from '@mantine/core';
import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { Json, SheetPath } from '../../../domain/procedure/sheetEdit.ts';
import { useUnitSystem } from '../../operations/AppStatus.tsx';
import { blankValue } from './blankValue.ts';
import { useAtPath, useDraft } from './DraftContext.ts';
import { entryWords } from './entryWords.ts';
import type { FormNode } from './formNode.ts';
import { asList } from './optionsAt.ts';
import { withFreeKey } from './withFreeKey.ts';

export function DraftList({
  path,
  of,
  name,
  renderEntry,
}: {
  readonly path: SheetPath;
  readonly of: FormNode;
  readonly name: string;
  readonly renderEntry: (path: SheetPath, entry: Json) => ReactNode;
}) {
  const { draft, key, value } = useAtPath(path, false);
  const entries = asList(value);
  const [openAt, setOpenAt] = useState<ReadonlySet<number>>(new Set());
  const list = useRef<HTMLOListElement>(null);
  const [focusAt, setFocusAt] = useState<{ readonly position: number; readonly button: string } | null>(null);
  useEffect(() => {
    if (focusAt === null) return;
    const entry = list.current?.children[focusAt.position];
    const wanted = entry?.querySelector<HTMLElement>(
      `:scope > .sheet-entry-head [data-button="${focusAt.button}"]:not(:disabled)`,
    );
    (wanted ?? entry?.querySelector<HTMLElement>('[data-button="open"]'))?.focus();
  }, [focusAt]);

  const { wanted } = draft;
  useEffect(() => {
    const inside = wanted?.startsWith(`${key}.`) ? Number(wanted.slice(key.length + 1).split('.')[0]) : Number.NaN;
    if (!Number.isNaN(inside)) setOpenAt((open) => new Set([...open, inside]));
  }, [wanted, key]);

  const add = (at: number, entry: Json | undefined) => {
    draft.leave();
    draft.edit({ kind: 'insert', path, at, value: withFreeKey(entry ?? blankValue(of) ?? {}, draft.body) });
    setOpenAt(new Set([...shifted(openAt, at, 1), at]));
    setFocusAt({ position: at, button: 'open' });
  };
  const remove = (at: number) => {
    draft.leave();
    draft.edit({ kind: 'remove', path, at });
    setOpenAt(shifted(new Set([...openAt].filter((one) => one !== at)), at, -1));
    setFocusAt({ position: Math.min(at, entries.length - 2), button: 'open' });
  };
  const move = (at: number, to: number, button: string) => {
    draft.leave();
    draft.edit({ kind: 'move', path, at, to });
    setOpenAt(new Set([...openAt].map((one) => (one === at ? to : one === to ? at : one))));
    setFocusAt({ position: to, button });
  };

  return (
    <div className="sheet-list">
      <ol ref={list}>
        {entries.map((entry, index) => (
          <Entry
            key={keyAt(index)}
            path={[...path, index]}
            renderEntry={renderEntry}
            entry={entry}
            count={entries.length}
            isOpen={openAt.has(index)}
            onToggle={() => setOpenAt(toggled(openAt, index))}
            onMove={(to, button) => move(index, to, button)}
            onRemove={() => remove(index)}
            onCopy={() => add(index + 1, entry)}
          />
        ))}
      </ol>
      <Button variant="default" onClick={() => add(entries.length, undefined)}>
        Add<span className="lo-hidden"> to {name}</span>
      </Button>
    </div>
  );
}

function Entry({
  path,
  renderEntry,
  entry,
  count,
  isOpen,
  onToggle,
  onMove,
  onRemove,
  onCopy,
}: {
  readonly path: SheetPath;
  readonly renderEntry: (path: SheetPath, entry: Json) => ReactNode;
  readonly entry: Json;
  readonly count: number;
  readonly isOpen: boolean;
  readonly onToggle: () => void;
  readonly onMove: (to: number, button: string) => void;
  readonly onRemove: () => void;
  readonly onCopy: () => void;
}) {
  const unitSystem = useUnitSystem();
  const draft = useDraft();
  const key = path.join('.');
  const index = Number(path.at(-1));
  const words = entryWords(entry, index + 1, unitSystem);
  const problems = draft.problems.filter((one) => one.path === key || one.path.startsWith(`${key}.`));
  const own = problems.find((one) => one.path === key);
  return (
    <li data-path={key}>
      <div className="sheet-entry-head">
        <button type="button" className="sheet-entry-open" data-button="open" aria-expanded={isOpen} onClick={onToggle}>
          <span aria-hidden="true">{isOpen ? '▾' : '▸'}</span> {words}
          {problems.length === 0 ? null : (
            <span className="sheet-problem">
              {' '}
              {problems.length === 1 ? 'one thing to put right' : `${problems.length} things to put right`}
            </span>
          )}
        </button>
        <Group gap={4} wrap="nowrap">
          <SmallButton name="up" label="Up" words={words} isOff={index === 0} onPress={() => onMove(index - 1, 'up')} />
          <SmallButton
            name="down"
            label="Down"
            words={words}
            isOff={index === count - 1}
            onPress={() => onMove(index + 1, 'down')}
          />
          <SmallButton name="copy" label="Copy" words={words} onPress={onCopy} />
          <SmallButton name="remove" label="Remove" words={words} onPress={onRemove} />
        </Group>
      </div>
      {own === undefined ? null : <p className="sheet-problem">{own.words}</p>}
      {isOpen ? <div className="sheet-entry-body">{renderEntry(path, entry)}</div> : null}
    </li>
  );
}

function SmallButton({
  name,
  label,
  words,
  isOff = false,
  onPress,
}: {
  readonly name: string;
  readonly label: string;
  readonly words: string;
  readonly isOff?: boolean;
  readonly onPress: () => void;
}) {
  return (
    <Button variant="default" px="sm" data-button={name} disabled={isOff} onClick={onPress}>
      {label}
      <span className="lo-hidden"> {words}</span>
    </Button>
  );
}

/** Entries have no identity of their own; what is open moves along with them. */
function keyAt(index: number): string {
  return `entry-${index}`;
}

function toggled(open: ReadonlySet<number>, index: number): ReadonlySet<number> {
  return open.has(index) ? new Set([...open].filter((one) => one !== index)) : new Set([...open, index]);
}

function shifted(open: ReadonlySet<number>, from: number, by: number): ReadonlySet<number> {
  return new Set([...open].map((one) => (one >= from ? one + by : one)));
}
