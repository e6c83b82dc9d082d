/** Who of a list may be somebody on file, or stand in it twice. Nobody is joined unless a person says so. */
import { Button, Group } from '@mantine/core';
import { useState } from 'react';
import type { ImportDecision, ImportSuggestion } from '../../electron/contract/imports.ts';

const BECAUSE_WORDS = {
  'same-name': 'same name',
  'same-phone': 'same phone',
  'same-address': 'same address',
  'same-email': 'same e-mail',
} as const;

export function SuggestionList({
  suggestions,
  count,
  decisions,
  onDecide,
  onForget,
}: {
  readonly suggestions: readonly ImportSuggestion[];
  readonly count: number;
  readonly decisions: readonly ImportDecision[];
  readonly onDecide: (decision: ImportDecision) => void;
  readonly onForget: (row: number) => void;
}) {
  const [names, setNames] = useState<ReadonlyMap<number, string>>(new Map());
  if (count === 0 && decisions.length === 0) return null;
  const decide = (decision: ImportDecision, words: string) => {
    setNames((before) => new Map(before).set(decision.row, words));
    onDecide(decision);
  };
  return (
    <section aria-label="Perhaps the same">
      <h3>Perhaps the same</h3>
      <p className="lo-faint" style={{ marginBlockStart: 0 }}>
        Each is taken in as somebody new unless you say otherwise.
      </p>
      <ul className="lo-gaps">
        {decisions.map(({ row }) => (
          <li key={row}>
            <span>
              Row {row}: {names.get(row)}
            </span>
            <Button variant="subtle" onClick={() => onForget(row)}>
              Take it back
            </Button>
          </li>
        ))}
        {suggestions.map(({ row, name, others }) => (
          <li key={row}>
            <span>
              Row {row}: <strong>{name}</strong>
            </span>
            <Group gap="xs">
              {others.map((other) => (
                <Button
                  key={`${other.customerId} ${other.row}`}
                  variant="default"
                  onClick={() =>
                    decide(
                      { row, customerId: other.customerId, sameAsRow: other.row },
                      `${name} is ${other.name}${other.row === null ? ', on file' : `, row ${other.row}`}`,
                    )
                  }
                >
                  Is {other.name}
                  {other.where === null ? '' : `, ${other.where}`}
                  {other.row === null ? ' (on file)' : ` (row ${other.row})`}:{' '}
                  {other.because.map((why) => BECAUSE_WORDS[why]).join(', ')}
                </Button>
              ))}
              <Button variant="subtle" onClick={() => decide({ row }, `${name} is somebody new`)}>
                Somebody new
              </Button>
            </Group>
          </li>
        ))}
      </ul>
      {count > suggestions.length ? <p className="lo-faint">… and {count - suggestions.length} more.</p> : null}
    </section>
  );
}
