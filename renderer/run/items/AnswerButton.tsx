/** An answer one key gives: the key, the words, and whether it is the one on file. */
import type { ReactNode } from 'react';

export function AnswerButton({
  answerKey,
  isGiven,
  tone = 'plain',
  onGive,
  children,
}: {
  readonly answerKey: string;
  readonly isGiven: boolean;
  readonly tone?: 'plain' | 'good' | 'ember';
  readonly onGive: () => void;
  readonly children: ReactNode;
}) {
  return (
    <button
      type="button"
      className="run-answer"
      data-tone={tone}
      aria-pressed={isGiven}
      aria-keyshortcuts={answerKey}
      onClick={onGive}
    >
      <kbd className="lo-key">{answerKey}</kbd>
      <span>{children}</span>
      {isGiven ? <span className="run-answer-given">chosen</span> : null}
    </button>
  );
}
