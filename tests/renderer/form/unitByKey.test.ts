/** Alt and an arrow go through the units of a field, round its ends; every other key is left to the field. */
import { expect, it } from 'vitest';
import { unitByKey } from '../../../renderer/form/unitByKey.ts';

const UNITS = ['m', 'ft', 'in'];

it.each([
  ['ArrowDown', true, 'm', 'ft'],
  ['ArrowDown', true, 'in', 'm'],
  ['ArrowUp', true, 'm', 'in'],
  ['ArrowDown', false, 'm', null],
  ['Enter', true, 'm', null],
])('%s with Alt %s from %s gives %s', (key, altKey, unit, next) => {
  expect(unitByKey({ key, altKey }, UNITS, unit)).toBe(next);
});

it('has nowhere to go where there is one unit', () => {
  expect(unitByKey({ key: 'ArrowDown', altKey: true }, ['kPa'], 'kPa')).toBeNull();
});
