/** Shows what the core answered, or that it is still being asked, or why there is no answer with a way to ask again. */
import { Button } from '@mantine/core';
import type { ReactNode } from 'react';
import type { OperationName, OutputOf } from '../../electron/contract/index.ts';
import type { Asked } from '../operations/useOperation.ts';
import { type ErrorCode, type ErrorWith, errorWords } from './errorWords.ts';
import { Note } from './Note.tsx';

export function Answer<N extends OperationName>({
  of: asked,
  children,
}: {
  readonly of: Asked<N>;
  readonly children: (value: OutputOf<N>) => ReactNode;
}) {
  switch (asked.state) {
    case 'loading':
      return (
        <p className="lo-faint" aria-busy="true">
          Loading …
        </p>
      );
    case 'failed':
      return (
        <Note
          tone="ember"
          isSpoken
          action={
            <Button variant="default" onClick={asked.askAgain}>
              Try again
            </Button>
          }
        >
          {errorWords(asked.error as ErrorWith<ErrorCode>)}
        </Note>
      );
    case 'ready':
      return children(asked.value);
  }
}
