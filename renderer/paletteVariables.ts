/** The palette as CSS variables, the kit's own names and ours (`--lo-…`). */
import type { CSSVariablesResolver } from '@mantine/core';
import { HIGH_CONTRAST, NIGHT, PAPER, type Palette } from './palette.ts';

export const paletteVariables: CSSVariablesResolver = () => ({
  variables: {},
  light: variablesOf(PAPER),
  dark: variablesOf(NIGHT),
});

/** High contrast is one look, whatever the computer prefers. */
export const highContrastVariables: CSSVariablesResolver = () => ({
  variables: {},
  light: variablesOf(HIGH_CONTRAST),
  dark: variablesOf(HIGH_CONTRAST),
});

function variablesOf(palette: Palette): Record<string, string> {
  return {
    '--mantine-color-body': palette.paper,
    '--mantine-color-text': palette.ink,
    '--mantine-color-bright': palette.ink,
    '--mantine-color-dimmed': palette.faintInk,
    '--mantine-color-placeholder': palette.faintInk,
    '--mantine-color-error': palette.ember,
    '--mantine-color-anchor': palette.fir,
    '--mantine-color-default': palette.sheet,
    '--mantine-color-default-hover': palette.shade,
    '--mantine-color-default-color': palette.ink,
    '--mantine-color-default-border': palette.edge,
    '--mantine-color-disabled': palette.shade,
    '--mantine-color-disabled-color': palette.faintInk,
    '--mantine-color-disabled-border': palette.line,
    '--mantine-primary-color-filled': palette.fir,
    '--mantine-primary-color-contrast': palette.onFir,
    '--mantine-color-fir-filled': palette.fir,
    '--mantine-color-fir-light': palette.firWash,
    '--mantine-color-fir-light-color': palette.fir,
    '--mantine-color-fir-outline': palette.fir,
    '--mantine-color-ember-filled': palette.ember,
    '--mantine-color-ember-light': palette.emberWash,
    '--mantine-color-ember-light-color': palette.ember,
    '--mantine-color-ember-outline': palette.ember,
    '--mantine-color-ochre-light': palette.ochreWash,
    '--mantine-color-ochre-light-color': palette.ochre,
    '--mantine-color-ochre-outline': palette.ochre,
    '--lo-paper': palette.paper,
    '--lo-sheet': palette.sheet,
    '--lo-shade': palette.shade,
    '--lo-ink': palette.ink,
    '--lo-faint-ink': palette.faintInk,
    '--lo-line': palette.line,
    '--lo-edge': palette.edge,
    '--lo-fir': palette.fir,
    '--lo-on-fir': palette.onFir,
    '--lo-fir-wash': palette.firWash,
    '--lo-ember': palette.ember,
    '--lo-on-ember': palette.onEmber,
    '--lo-ember-wash': palette.emberWash,
    '--lo-ochre': palette.ochre,
    '--lo-ochre-wash': palette.ochreWash,
    '--lo-focus': palette.focus,
    '--chart-text-color': palette.ink,
    '--chart-grid-color': palette.line,
  };
}
