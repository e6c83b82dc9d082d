/** A verdict as word, shape and colour together: each alone tells it. The shapes are our own, drawn on a 20 × 20 grid. */
import type { ReactNode } from 'react';
import type { Proof, Verdict } from '../../domain/judgement/finding.ts';
import { proofWords } from '../run/words/proofWords.ts';
import { verdictWords } from '../run/words/verdictWords.ts';

type Tone = 'good' | 'doubt' | 'bad' | 'stop' | 'plain';
type Mark = { readonly tone: Tone; readonly shape: ReactNode };

const line = { fill: 'none', stroke: 'currentColor', strokeWidth: 2.2 } as const;

const MARKS: Record<Verdict, Mark> = {
  // A full drop between two rails.
  within: {
    tone: 'good',
    shape: (
      <>
        <path d="M1.5 2v16M18.5 2v16" {...line} />
        <circle cx="10" cy="10" r="5" fill="currentColor" />
      </>
    ),
  },
  // The same, touching a rail.
  'near-the-edge': {
    tone: 'doubt',
    shape: (
      <>
        <path d="M1.5 2v16M18.5 2v16" {...line} />
        <circle cx="13" cy="10" r="5" fill="currentColor" />
      </>
    ),
  },
  // Beyond the rail.
  outside: {
    tone: 'bad',
    shape: (
      <>
        <path d="M5.5 2v16" {...line} />
        <path d="M14 4.5 19 10l-5 5.5L9 10z" fill="currentColor" />
      </>
    ),
  },
  // A solid block with a bar across: nothing goes on.
  stop: {
    tone: 'stop',
    shape: (
      <>
        <path d="M2 2h16v16H2z" {...line} />
        <path d="M5 8.2h10v3.6H5z" fill="currentColor" />
      </>
    ),
  },
  // No rails at all.
  'no-limit-on-sheet': {
    tone: 'plain',
    shape: <circle cx="10" cy="10" r="5" fill="none" stroke="currentColor" strokeWidth="2.2" strokeDasharray="3 2.2" />,
  },
  // The drop lies across the rail.
  'cannot-tell-apart': {
    tone: 'doubt',
    shape: (
      <>
        <circle cx="10" cy="10" r="6" {...line} />
        <path d="M10 1v18" {...line} />
      </>
    ),
  },
  // Rails, and nothing to put between them.
  'cannot-judge': {
    tone: 'plain',
    shape: <path d="M1.5 2v16M18.5 2v16M6.5 10h1.6M11.9 10h1.6" {...line} />,
  },
};

export type MarkSize = 'md' | 'lg';

export function VerdictMark({ verdict, size = 'md' }: { readonly verdict: Verdict; readonly size?: MarkSize }) {
  const { tone, shape } = MARKS[verdict];
  return (
    <span className="lo-verdict" data-tone={tone} data-size={size}>
      <Shape size={size}>{shape}</Shape>
      {verdictWords(verdict)}
    </span>
  );
}

/** `proven`, or not, with every reason. */
export function ProofMark({ proof, size = 'md' }: { readonly proof: Proof; readonly size?: MarkSize }) {
  if (proof.proven) {
    return (
      <span className="lo-verdict" data-tone="good" data-size={size}>
        <Shape size={size}>
          <path d="M3 17h14M5.5 13.5V7L10 3l4.5 4v6.5z" {...line} />
        </Shape>
        proven
      </span>
    );
  }
  return (
    <span className="lo-verdict" data-tone="doubt" data-size={size} style={{ whiteSpace: 'normal' }}>
      <Shape size={size}>
        <path d="M3 17h14" {...line} strokeDasharray="3 2.5" />
        <path d="M5.5 13.5V7L10 3l4.5 4v6.5z" {...line} strokeDasharray="3 2.5" />
      </Shape>
      <span>not proven: {proof.because.map(proofWords).join('; ')}</span>
    </span>
  );
}

function Shape({ size, children }: { readonly size: MarkSize; readonly children: ReactNode }) {
  const side = size === 'lg' ? 28 : 20;
  return (
    <svg width={side} height={side} viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      {children}
    </svg>
  );
}
