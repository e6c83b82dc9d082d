import { describe, expect, it } from 'vitest';
import {
  asWords,
  computedText,
  limitText,
  spreadText,
  valueText,
  withUnit,
} from '../../../electron/documents/packet/quantityText.ts';

describe('valueText', () => {
  it('gives the number and its unit in either system', () => {
    expect(valueText('supplyC', '61.4', 'metric')).toEqual({ text: '61.4', unit: '°C' });
    // 61.4 °C × 1.8 + 32 = 142.52 °F
    expect(valueText('supplyC', '61.4', 'us')).toEqual({ text: '142.5', unit: '°F' });
  });

  it('prints a quantity that has left the catalogue as it was sealed', () => {
    expect(withUnit(valueText('smokeSpotNumber', '2', 'us'))).toBe('2');
  });
});

describe('limitText', () => {
  it.each([
    [{ quantity: 'o2DryVolPct', min: '3.9', max: '6' }, '3.9 to 6.0 %'],
    [{ quantity: 'coPpm', min: null, max: '100' }, 'at most 100 ppm'],
    [{ quantity: 'cleanStarts', min: '5', max: null }, 'at least 5'],
    [{ quantity: 'hotOutletC', min: null, max: '49' }, 'at most 49.0 °C'],
  ])('writes %j as %s', (limit, text) => {
    expect(limitText(limit, 'metric').replaceAll('\u00a0', ' ')).toBe(text);
  });

  it('shows a digit more where the usual ones would move the limit', () => {
    expect(limitText({ quantity: 'inletPressureMbarG', min: '9.96', max: null }, 'metric')).toContain('9.96');
  });
});

describe('computedText', () => {
  it('converts by the unit the value carries', () => {
    // 23.0186 kW ÷ (1055.05585262 J ÷ 3600 s) = 78 543 Btu/h; a tenth of a kW is about 341 Btu/h
    expect(computedText('23.0186', 'kW', 1, 'us')).toEqual({ text: '78\u202f500', unit: 'Btu/h' });
    expect(computedText('14.6', 'K', 1, 'us')).toEqual({ text: '26.3', unit: '°F' });
    expect(computedText('106.45', 'ppm', 0, 'us')).toBeNull();
  });

  it('scales the width of an interval without adding the 32', () => {
    expect(spreadText('1', '°C', 1, 'us')).toBe('1.8');
    expect(spreadText('0.4', 'kW', 1, 'metric')).toBe('0.4');
  });
});

describe('asWords', () => {
  it.each([
    ['clocked-input', 'Clocked input'],
    ['coCo2Ratio', 'Co co2 ratio'],
    ['', ''],
  ])('makes %s readable', (key, words) => {
    expect(asWords(key)).toBe(words);
  });
});
