import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { DEMO_PIN as pinOfDemoStore } from '../../electron/demo/demoStore.ts';
import { issueWords } from '../../renderer/form/issueWords.ts';
import { changedFieldWords, changeKindWords } from '../../renderer/kit/changeWords.ts';
import { errorWords } from '../../renderer/kit/errorWords.ts';
import { limitText } from '../../renderer/sheets/limitText.ts';
import { DEMO_PIN } from '../../renderer/start/demoPin.ts';
import { initialsOf } from '../../renderer/start/initialsOf.ts';

describe('errorWords', () => {
  it('should say what was refused, to whom and why', () => {
    const data = { staffId: 'x', name: 'Ines Calloway', why: 'no-licence', on: '2026-07-04' } as const;
    expect(errorWords({ code: 'needs-licence', data })).toBe(
      'Ines Calloway may not do gas work here on 4 Jul 2026: no licence on file.',
    );
  });

  it('should name the roles that may', () => {
    expect(errorWords({ code: 'not-allowed', data: { needs: ['owner', 'dispatcher'] } })).toBe(
      'Only owner / manager or dispatcher may do this.',
    );
  });

  it('should say that nothing typed is lost when the disk is full', () => {
    expect(errorWords({ code: 'not-saved', data: { why: 'disk-full' } })).toMatch(/disk is full.*still here/);
  });

  it('should name open readiness items', () => {
    const items = [{ jobId: 'j', itemKey: 'power' }];
    expect(errorWords({ code: 'readiness-open', data: { items } })).toContain('Permanent power at the boiler');
  });
});

describe('issueWords', () => {
  const schema = z.strictObject({
    name: z.string().trim().min(1),
    email: z.email(),
    on: z.iso.date(),
    count: z.number().positive(),
    pin: z.string().regex(/^\d{4}$/, 'four digits'),
    roles: z.array(z.string()).min(1),
  });

  it.each([
    ['name', 'Needed.'],
    ['email', 'Not an e-mail address.'],
    ['on', 'Not a day. Example: 4 Jul 2026.'],
    ['count', 'More than 0.'],
    ['pin', 'Four digits.'],
    ['roles', 'At least one.'],
  ])('should say of %s: %s', (field, words) => {
    const parsed = schema.safeParse({ name: ' ', email: 'x', on: '2026-02-31', count: 0, pin: '12', roles: [] });
    const issue = parsed.error?.issues.find(({ path }) => path[0] === field);
    if (issue === undefined) throw new Error(`${field} was taken`);
    expect(issueWords(issue)).toBe(words);
  });
});

describe('changes in words', () => {
  it('should leave out ids and put days into words', () => {
    expect(changedFieldWords({ siteId: 'x', plannedOn: '2026-11-25', durationMin: 150, note: null })).toBe(
      'planned on: 25 Nov 2026; duration min: 150; note: none',
    );
    expect(changeKindWords('insert')).toBe('added');
  });
});

describe('limitText', () => {
  it('should show a limit in the reader’s units', () => {
    const limit = { quantity: 'supplyC', min: 30, max: 45 } as const;
    expect(limitText(limit, 'metric')).toBe('30.0 to 45.0 °C');
    // 30 °C is 86 °F, 45 °C is 113 °F.
    expect(limitText(limit, 'us')).toBe('86.0 to 113.0 °F');
    expect(limitText({ quantity: 'coPpm', max: 100 }, 'metric')).toBe('at most 100 ppm');
  });
});

describe('small words', () => {
  it('should take initials as people sign', () => {
    expect(initialsOf('Dana Ruiz Ortega')).toBe('DRO');
    expect(initialsOf('  Anne-Marie  Østby ')).toBe('AMØ');
    expect(initialsOf('')).toBe('');
  });

  it('should show the PIN that the demo’s store has', () => {
    expect(DEMO_PIN).toBe(pinOfDemoStore);
  });
});
