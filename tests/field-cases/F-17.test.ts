/**
 * Field case F-17, "parts paid, labour refused": three years on another firm repairs a boiler; parts are refunded,
 * labour is refused, and no startup record surfaces. By the serial it is found in seconds. Here finding the appliance
 * again, however the serial is written.
 */
import { describe, expect, it } from 'vitest';
import { applianceCover } from '../../domain/coverage/applianceCover.ts';
import { serialElsewhere } from '../../domain/judgement/mistakes/serialElsewhere.ts';
import type { SheetCover } from '../../domain/procedure/modelSheet.ts';
import { serviceRuleOf } from '../../domain/service/serviceRule.ts';
import { serialKeyOf } from '../../domain/text/serialKey.ts';
import { reasonWords } from '../../renderer/cover/coverWords.ts';

const known = [
  { applianceId: 'a', siteId: 's1', maker: 'Invented Works', serial: 'AB-5100 233' },
  { applianceId: 'b', siteId: 's2', maker: 'Invented Works', serial: 'AB5100234' },
];

describe('F-17: parts paid, labour refused', () => {
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

  it('says which stated conditions are evidenced, part by part, and never whether anything is granted', () => {
    const term = (part: 'parts' | 'labour') => ({
      part,
      registeredMonths: 60,
      unregisteredMonths: 12,
      countedFrom: 'started' as const,
    });
    const cover: SheetCover = {
      terms: [term('parts'), term('labour')],
      registration: {
        window: { days: 30 },
        countedFrom: 'started',
        basis: { kind: 'maker', source: 'an invented sheet' },
      },
      conditions: {
        serviceEveryMonths: 12,
        graceMonths: 1,
        serviceCountedFrom: 'anniversary',
        waterQualityRecorded: true,
        licensedInstaller: true,
        originalOwner: false,
        use: 'home',
        transferWindowDays: null,
      },
    };
    // Three years on; two of three services on record, and no startup record surfaced: neither water nor licence.
    const { terms } = applianceCover({
      today: '2026-11-20',
      cover,
      serviceRule: serviceRuleOf({ maker: 'Invented Works', cover }),
      dates: [{ kind: 'started', on: '2023-11-14', precision: 'day' }],
      registration: { submittedOn: '2023-11-20', confirmedOn: '2023-12-01', number: 'R-1' },
      servicesOn: ['2024-11-10', '2026-11-02'],
      agreements: [],
      evidence: { isWaterQualityRecorded: false, isInstallerLicensed: false, use: 'home' },
      ownerChanges: [],
      place: { country: 'CA', region: null },
    });
    for (const one of terms) {
      expect(one).toMatchObject({ state: 'not-evidenced', endsOn: '2028-11-14', length: 'registered' });
      expect(one.missing).toEqual([
        { code: 'service-missed', nth: 2, latestOn: '2025-12-14' },
        { code: 'water-quality-missing' },
        { code: 'installer-licence-missing' },
      ]);
      expect(one.reasons.map(reasonWords).join(' ')).not.toMatch(/\b(void|covered|granted|refused)\b/i);
    }
  });
});
