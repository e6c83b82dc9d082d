/** Field case F-17: parts paid, labour refused. Finding the appliance again by its serial, however it is written. */
import { describe, expect, it } from 'vitest';
import { serialElsewhere } from '../../domain/judgement/mistakes/serialElsewhere.ts';
import { serialKeyOf } from '../../domain/text/serialKey.ts';

const known = [
  { applianceId: 'a', siteId: 's1', maker: 'Invented Works', serial: 'AB-5100 233' },
  { applianceId: 'b', siteId: 's2', maker: 'Invented Works', serial: 'AB5100234' },
];

describe('F-17', () => {
  it('finds one appliance by a serial that another firm wrote down with look-alikes', () => {
    const key = serialKeyOf('abS1OO233');
    expect(known.filter((one) => serialKeyOf(one.serial) === key).map(({ applianceId }) => applianceId)).toEqual(['a']);
  });

  it('says so when the same serial turns up on another site', () => {
    const claimed = { applianceId: 'claim', siteId: 's9', maker: 'INVENTED WORKS', serial: 'AB5100233' };
    expect(serialElsewhere(claimed, known)).toEqual([
      { code: 'serial-elsewhere', otherApplianceId: 'a', otherSerial: 'AB-5100 233', isOnSameSite: false },
    ]);
  });
});
