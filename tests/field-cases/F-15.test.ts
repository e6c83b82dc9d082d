/**
 * Field case F-15, "whose fault is the cracked floor?": oak boards over a heated slab cracked after the heat was run
 * for an hour, a day, a weekend; supply, surface and humidity were never measured and nobody wrote down who set what.
 * Here the supply at the manifold against what the sheet allows under wood.
 */
import { describe, expect, it } from 'vitest';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import { fahrenheitToCelsius } from '../../domain/quantity/conversions.ts';
import { findingOn } from '../support/findings.ts';
import { judgementSheet } from '../support/judgementSheet.ts';
import { cleanRecord, reading, withReadings } from '../support/recordBuilder.ts';

const sheet = judgementSheet({
  supplyByEmitter: [
    {
      emitter: 'floor-under-wood',
      minSupplyC: 25,
      maxSupplyC: 40,
      deltaTMinK: 4,
      deltaTMaxK: 8,
      basis: { kind: 'common-practice', source: 'as low as works under wood' },
    },
  ],
  limits: [
    {
      quantity: 'floorSurfaceC',
      max: 27,
      edge: 2,
      basis: { kind: 'common-practice', source: 'surface 80–85 °F under wood' },
    },
  ],
});
const site: RunRecord = { ...cleanRecord(), site: { ...cleanRecord().site, emitters: ['floor-under-wood'] } };
const at120 = fahrenheitToCelsius(120);

describe('F-15: whose fault is the cracked floor?', () => {
  it('finds 120 °F at the manifold outside on the first day, and names the emitter', () => {
    const manifold = reading({
      quantity: 'manifoldSupplyC',
      value: at120,
      itemKey: 'manifold',
      stepKey: 'leaving',
      minutes: 77,
    });
    expect(
      findingOn(judgeRun({ record: withReadings(site, manifold), sheet }), 'emitter:manifoldSupplyC'),
    ).toMatchObject({
      verdict: 'outside',
      blocks: ['leaving'],
      basis: { inputs: { emitter: 'floor-under-wood' }, source: { kind: 'common-practice' } },
    });
  });

  it('finds a floor surface of 88 °F outside', () => {
    const surface = reading({
      quantity: 'floorSurfaceC',
      value: fahrenheitToCelsius(88),
      itemKey: 'surface',
      stepKey: 'leaving',
      minutes: 78,
    });
    expect(findingOn(judgeRun({ record: withReadings(site, surface), sheet }), 'limit:floorSurfaceC').verdict).toBe(
      'outside',
    );
  });

  it('keeps who set what and when with the finding', () => {
    const manifold = reading({
      quantity: 'manifoldSupplyC',
      value: at120,
      itemKey: 'manifold',
      stepKey: 'leaving',
      minutes: 77,
    });
    const finding = findingOn(judgeRun({ record: withReadings(site, manifold), sheet }), 'emitter:manifoldSupplyC');
    expect(finding.readingId).toBe(manifold.readingId);
  });
});
