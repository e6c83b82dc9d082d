/**
 * The look: ink on warm paper by day, near-black by night. Green (`fir`) is what you may do, `ember` is kept for what burns
 * or must stop, `ochre` for what is close to a limit or doubtful. Contrast of every pair used here is checked in
 * tests/renderer/palette.test.ts.
 */
import {
  Badge,
  Button,
  Checkbox,
  createTheme,
  defaultVariantColorsResolver,
  Input,
  InputWrapper,
  type MantineColorsTuple,
  Modal,
  Pill,
  SegmentedControl,
  Table,
  type VariantColorsResolver,
} from '@mantine/core';
import { PAPER } from './palette.ts';

const fir: MantineColorsTuple = [
  '#eef6f0',
  '#d7eadd',
  '#b0d5bd',
  '#86bf9b',
  '#62ab7f',
  '#489a69',
  '#338556',
  '#236e45',
  '#175637',
  '#0f4029',
];
const ember: MantineColorsTuple = [
  '#fff1ea',
  '#ffdccb',
  '#ffb99a',
  '#ff9468',
  '#f5743f',
  '#de5a22',
  '#c2481a',
  '#a63c15',
  '#8a3112',
  '#6a250e',
];
const ochre: MantineColorsTuple = [
  '#fdf6e3',
  '#f8e7bb',
  '#efd084',
  '#e3b75b',
  '#cf9e38',
  '#b38422',
  '#926a12',
  '#775408',
  '#624503',
  '#493300',
];
const stone: MantineColorsTuple = [
  '#faf6ee',
  '#f3ede1',
  '#e7dfd0',
  '#d9d0c0',
  '#857a69',
  '#8a7f6e',
  '#6d6355',
  '#5a5145',
  '#3b342b',
  '#211c15',
];
const night: MantineColorsTuple = [
  '#ede6da',
  '#d5ccbe',
  '#b7ada0',
  '#857a6b',
  '#857a6b',
  '#332e28',
  '#1d1a17',
  '#141210',
  '#0e0c0b',
  '#080706',
];

/** The kit picks a label's black or white once for both looks; ours goes with the look. */
const variantColors: VariantColorsResolver = (input) => {
  const kit = defaultVariantColorsResolver(input);
  const name = input.color ?? 'fir';
  if (input.variant !== 'filled' || (name !== 'fir' && name !== 'ember')) return kit;
  return {
    ...kit,
    background: `var(--lo-${name})`,
    hover: `color-mix(in srgb, var(--lo-${name}) 85%, var(--lo-ink))`,
    color: `var(--lo-on-${name})`,
  };
};

export const theme = createTheme({
  fontFamily: '"Source Sans", sans-serif',
  fontFamilyMonospace: 'ui-monospace, "DejaVu Sans Mono", monospace',
  headings: {
    fontFamily: '"Source Sans", sans-serif',
    fontWeight: '600',
    sizes: {
      h1: { fontSize: '1.75rem', lineHeight: '1.2' },
      h2: { fontSize: '1.3rem', lineHeight: '1.3' },
      h3: { fontSize: '1.1rem', lineHeight: '1.35' },
    },
  },
  fontSizes: { xs: '1rem', sm: '1rem', md: '1rem', lg: '1.15rem', xl: '1.35rem' },
  lineHeights: { xs: '1.4', sm: '1.4', md: '1.45', lg: '1.45', xl: '1.4' },
  spacing: { xs: '0.5rem', sm: '0.75rem', md: '1rem', lg: '1.5rem', xl: '2rem' },
  defaultRadius: 'sm',
  radius: { sm: '3px', md: '6px' },
  black: PAPER.ink,
  white: '#ffffff',
  colors: { fir, ember, ochre, gray: stone, dark: night },
  primaryColor: 'fir',
  primaryShade: { light: 8, dark: 3 },
  autoContrast: true,
  variantColorResolver: variantColors,
  cursorType: 'pointer',
  respectReducedMotion: true,
  components: {
    // Fingers and gloves: nothing one presses is lower than 44 px.
    Button: Button.extend({
      defaultProps: { size: 'md' },
      vars: () => ({ root: { '--button-height': '2.75rem', '--button-padding-x': '1.1rem', '--button-fz': '1rem' } }),
    }),
    Input: Input.extend({
      defaultProps: { size: 'md' },
      vars: () => ({ wrapper: { '--input-height': '2.75rem', '--input-fz': '1rem' } }),
    }),
    InputWrapper: InputWrapper.extend({
      defaultProps: { size: 'md', inputWrapperOrder: ['label', 'description', 'error', 'input'] },
      styles: { label: { fontSize: '1rem' }, description: { fontSize: '1rem' }, error: { fontSize: '1rem' } },
    }),
    Checkbox: Checkbox.extend({ defaultProps: { iconColor: 'var(--lo-on-fir)' } }),
    Badge: Badge.extend({ defaultProps: { tt: 'none', fw: 600, size: 'lg' } }),
    Pill: Pill.extend({ defaultProps: { size: 'md' } }),
    SegmentedControl: SegmentedControl.extend({ defaultProps: { size: 'md' } }),
    Table: Table.extend({
      defaultProps: { verticalSpacing: 'xs', horizontalSpacing: 'sm', borderColor: 'var(--lo-line)' },
    }),
    Modal: Modal.extend({
      defaultProps: { centered: true, closeButtonProps: { 'aria-label': 'Close', size: 44 } },
    }),
  },
});
