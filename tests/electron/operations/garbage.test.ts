/** Garbage to any operation is answered with a typed error and changes nothing. */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contract, type OperationName } from '../../../electron/contract/index.ts';
import { commonErrors } from '../../../electron/contract/operation.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin } from '../../support/wholeJob.ts';

const NAMES = Object.keys(contract) as OperationName[];
/** An empty object is what these take: there is no garbage that would not be refused for its shape alone. */
const TAKES_NO_INPUT = new Set<string>(
  NAMES.filter((name) => !isReadOnly(name) && contract[name].input.safeParse({}).success),
);

describe('garbage', () => {
  let test: TestCore;
  let office: Office;
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    await bookAndBegin(test, office);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
  });
  afterAll(() => test.remove());

  it('never throws, answers a declared code, and writes nothing: 6 000 random inputs to every kind of operation', async () => {
    const before = test.snapshot();
    const staleIds = fc.constantFrom(
      office.customerId,
      office.siteId,
      office.applianceId,
      '018f0000-0000-7000-8000-000000000000',
      'nobody',
      '',
    );
    const anything = fc.anything({
      withBigInt: true,
      withDate: true,
      withMap: true,
      withNullPrototype: true,
      withSet: true,
      withTypedArray: true,
      withSparseArray: true,
    });
    const objects = fc.dictionary(
      fc.constantFrom(
        'visitId',
        'runId',
        'stepKey',
        'itemKey',
        'customerId',
        'siteId',
        'applianceId',
        'text',
        'query',
        'party',
        '__proto__',
        'constructor',
      ),
      fc.oneof(staleIds, anything),
      { maxKeys: 6 },
    );
    const huge = fc.constantFrom(
      'x'.repeat(3_000_000),
      Array.from({ length: 50_000 }, () => 'y'),
      Number.MAX_VALUE,
      Number.NaN,
    );
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...NAMES.filter((name) => !TAKES_NO_INPUT.has(name))),
        fc.oneof({ weight: 4, arbitrary: objects }, { weight: 4, arbitrary: anything }, { weight: 1, arbitrary: huge }),
        async (name, input) => {
          const reply = await test.core.call(name, input, 'test-window');
          if (reply.ok) {
            expect(isReadOnly(name)).toBe(true);
            return;
          }
          expect([...Object.keys(commonErrors), ...Object.keys(contract[name].errors)]).toContain(reply.error.code);
          expect(reply.error.code).not.toBe('internal');
        },
      ),
      { numRuns: 6000 },
    );
    expect(test.snapshot()).toEqual(before);
  }, 120_000);

  it.each(['constructor', '__proto__', 'toString', 'visits.nothing', '', 'hasOwnProperty', 'app.status '])(
    'does not know the operation %j',
    async (name) => {
      expect(await test.core.call(name, {}, 'test-window')).toMatchObject({
        ok: false,
        error: { code: 'unknown-operation' },
      });
    },
  );

  it.each(NAMES.filter((name) => contract[name].access !== 'public'))('%s asks who is there', async (name) => {
    expect(await test.core.call(name, {}, 'somebody-else')).toMatchObject({
      ok: false,
      error: { code: 'not-signed-in' },
    });
  });

  it.each(NAMES.filter((name) => Array.isArray(contract[name].access)))(
    '%s refuses a role that may not',
    async (name) => {
      const access = contract[name].access as readonly string[];
      await test.core.call('session.signIn', { staffId: office.helperId, pin: PIN }, 'helper-window');
      const reply = await test.core.call(name, {}, 'helper-window');
      expect(reply).toMatchObject({
        ok: false,
        error: { code: access.includes('helper') ? 'bad-input' : 'not-allowed' },
      });
    },
  );
});

function isReadOnly(name: OperationName): boolean {
  return /\.(list|get|status|check|whoMay|verify|export|get[A-Z]\w*|list[A-Z]\w*)$/.test(name);
}
