/** A new claim begins with today and the currency of the firm's country (ISO 4217); where several are usual, with none. */
import { expect, it } from 'vitest';
import { emptyClaim } from '../../../renderer/claims/claimForm.ts';

it.each([
  ['CA', 'CAD'],
  ['US', 'USD'],
  ['GB', 'GBP'],
  ['FR', 'EUR'],
  ['MX', ''],
  ['', ''],
])('in %s it is “%s”', (country, currency) => {
  expect(emptyClaim('2026-03-02', country)).toMatchObject({ currency, openedOn: '2 Mar 2026', parts: '' });
});
