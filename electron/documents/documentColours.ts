/** Ink on paper, one green for structure, one ember kept for what must stop. Every document reads in black and white too. */
export const COLOURS = {
  ink: '#1d1b17',
  muted: '#5d574d',
  hairline: '#cfc9bd',
  wash: '#f3f0e9',
  band: '#e3ebe5',
  green: '#1f5d3f',
  ember: '#b0421c',
  paper: '#ffffff',
} as const;
export type Colour = (typeof COLOURS)[keyof typeof COLOURS];
