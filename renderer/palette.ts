/** The colours by what they are for, once for each look. The kit's colour tuples in theme.ts are drawn from the same hues. */

export type Palette = {
  readonly paper: string;
  /** Raised above the paper: panels, inputs. */
  readonly sheet: string;
  /** Behind a row under the pointer, a disabled control. */
  readonly shade: string;
  readonly ink: string;
  readonly faintInk: string;
  /** Between rows: decoration only. */
  readonly line: string;
  /** Around controls: must be seen. */
  readonly edge: string;
  readonly fir: string;
  readonly onFir: string;
  readonly firWash: string;
  readonly ember: string;
  readonly onEmber: string;
  readonly emberWash: string;
  readonly ochre: string;
  readonly ochreWash: string;
  readonly focus: string;
};

export const PAPER: Palette = {
  paper: '#faf6ee',
  sheet: '#fffdf8',
  shade: '#f0e9db',
  ink: '#211c15',
  faintInk: '#5a5145',
  line: '#d9d0c0',
  edge: '#857a69',
  fir: '#175637',
  onFir: '#ffffff',
  firWash: '#e4f0e7',
  ember: '#a63c15',
  onEmber: '#ffffff',
  emberWash: '#fde9df',
  ochre: '#624503',
  ochreWash: '#faefd3',
  focus: '#175637',
};

export const NIGHT: Palette = {
  paper: '#141210',
  sheet: '#1d1a17',
  shade: '#2a2520',
  ink: '#ede6da',
  faintInk: '#b7ada0',
  line: '#3b352e',
  edge: '#857a6b',
  fir: '#86bf9b',
  onFir: '#0d1a12',
  firWash: '#1b2a20',
  ember: '#ff9468',
  onEmber: '#1f0d05',
  emberWash: '#3a1d11',
  ochre: '#e3b75b',
  ochreWash: '#33280f',
  focus: '#e3b75b',
};

/** For glare, a torch in the eyes or weak sight: black, white and three strong hues. */
export const HIGH_CONTRAST: Palette = {
  paper: '#000000',
  sheet: '#000000',
  shade: '#1c1c1c',
  ink: '#ffffff',
  faintInk: '#e8e8e8',
  line: '#8c8c8c',
  edge: '#ffffff',
  fir: '#7dffb2',
  onFir: '#000000',
  firWash: '#002b14',
  ember: '#ff9f73',
  onEmber: '#000000',
  emberWash: '#3d1300',
  ochre: '#ffd75e',
  ochreWash: '#2b2000',
  focus: '#ffd75e',
};
