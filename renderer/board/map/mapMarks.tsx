/** How each person's stops and ways are drawn: a shape, a dash and a colour, so that none of them has to be told by colour alone. */
import type { Point } from './mapFrame.ts';

const SHAPES = ['circle', 'square', 'diamond', 'triangle'] as const;
const DASHES = ['', '10 5', '2 5', '12 4 2 4'] as const;
/** Ember is kept for what burns or must stop. */
const TONES = ['var(--lo-fir)', 'var(--lo-ochre)', 'var(--lo-ink)', 'var(--lo-faint-ink)'] as const;

export function dashOf(style: number): string {
  return DASHES[style % DASHES.length] ?? '';
}

export function toneOf(style: number): string {
  return TONES[style % TONES.length] ?? 'var(--lo-ink)';
}

/** `style` null: nobody goes yet. */
export function StopMark({ at, style }: { readonly at: Point; readonly style: number | null }) {
  const { x, y } = at;
  if (style === null)
    return <circle cx={x} cy={y} r={6} fill="var(--lo-sheet)" stroke="var(--lo-ink)" strokeDasharray="2 2" />;
  const tone = { fill: toneOf(style), stroke: 'var(--lo-sheet)' };
  switch (SHAPES[style % SHAPES.length]) {
    case 'square':
      return <rect x={x - 6} y={y - 6} width={12} height={12} {...tone} />;
    case 'diamond':
      return <path d={`M${x} ${y - 8}l8 8l-8 8l-8-8z`} {...tone} />;
    case 'triangle':
      return <path d={`M${x} ${y - 8}l8 14h-16z`} {...tone} />;
    default:
      return <circle cx={x} cy={y} r={7} {...tone} />;
  }
}

export function BaseMark({ at: { x, y } }: { readonly at: Point }) {
  return (
    <path
      d={`M${x - 8} ${y}l8-8l8 8h-3v7h-10v-7z`}
      fill="var(--lo-sheet)"
      stroke="var(--lo-ink)"
      strokeWidth={1.5}
      strokeLinejoin="round"
    />
  );
}

/** The mark and the line of somebody, small, before their name. */
export function PersonSwatch({ style }: { readonly style: number | null }) {
  return (
    <svg width={44} height={18} aria-hidden="true" focusable="false">
      {style === null ? null : (
        <line x1={0} x2={44} y1={9} y2={9} stroke={toneOf(style)} strokeWidth={2} strokeDasharray={dashOf(style)} />
      )}
      <StopMark at={{ x: 22, y: 9 }} style={style} />
    </svg>
  );
}
