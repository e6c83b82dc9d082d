/** A bug in one screen must not take the window with it: says so, keeps the drafts, offers to draw the screen again. */
import { Button } from '@mantine/core';
import { Component, type ErrorInfo, type ReactNode } from 'react';
import { Note } from './Note.tsx';

type Props = { readonly children: ReactNode };
type State = { readonly hasFailed: boolean };

export class ErrorBoundary extends Component<Props, State> {
  override state: State = { hasFailed: false };

  static getDerivedStateFromError(): State {
    return { hasFailed: true };
  }

  override componentDidCatch(error: Error, info: ErrorInfo): void {
    console.error('a screen failed to draw', error, info.componentStack);
  }

  override render(): ReactNode {
    if (!this.state.hasFailed) return this.props.children;
    return (
      <Note
        tone="ember"
        title="This screen could not be drawn"
        isSpoken
        action={
          <Button variant="default" onClick={() => this.setState({ hasFailed: false })}>
            Draw it again
          </Button>
        }
      >
        It is a mistake in the program. Nothing saved is touched by it, and what you were typing is kept.
      </Note>
    );
  }
}
