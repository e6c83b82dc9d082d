import { describe, expect, it } from 'vitest';
import { parseModelSheet } from '../../../domain/procedure/parseModelSheet.ts';
import { A_BASIS, anItem, aStep, tinySheetFile } from '../../support/tinySheet.ts';

function problemsOf(startup: Parameters<typeof tinySheetFile>[0], overrides = {}) {
  const parsed = parseModelSheet(tinySheetFile(startup, overrides));
  return parsed.ok ? [] : parsed.error;
}

const options = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
];

describe('crossCheckSheet', () => {
  it('has nothing against a sound sheet', () => {
    expect(problemsOf([aStep('a', [anItem('confirm', 'b')])])).toEqual([]);
  });

  it.each([
    ['a step key twice', [aStep('a', [anItem('confirm', 'b')]), aStep('a', [anItem('confirm', 'c')])], 'startup.1.key'],
    ['an item key twice', [aStep('a', [anItem('confirm', 'b'), anItem('confirm', 'b')])], 'startup.0.items.1.key'],
    ['a later step first', [aStep('a', [anItem('confirm', 'b')], { after: ['z'] })], 'startup.0.after'],
    [
      'a firing point the sheet has not got',
      [aStep('a', [anItem('series', 'b', { firingPoint: 'mid', quantities: ['coPpm'] })])],
      'startup.0.items.0.firingPoint',
    ],
    [
      'firing blocked from behind the hold point',
      [aStep('a', [anItem('confirm', 'b', { blocks: ['firing'] })], { needsClear: 'firing' })],
      'startup.0.items.0.blocks',
    ],
    [
      'a signature that may be left out',
      [aStep('a', [anItem('sign-off', 'b', { by: 'licensed' })])],
      'startup.0.items.0.mayBeNotPossible',
    ],
    [
      'a condition on an item that comes later',
      [
        aStep('a', [
          anItem('confirm', 'b', { onlyFor: { answer: { item: 'c', is: ['yes'] } } }),
          anItem('choose', 'c', { options }),
        ]),
      ],
      'startup.0.items.0.onlyFor.answer',
    ],
    [
      'a condition on an answer that cannot be given',
      [
        aStep('a', [
          anItem('choose', 'c', { options }),
          anItem('confirm', 'b', { onlyFor: { answer: { item: 'c', is: ['maybe'] } } }),
        ]),
      ],
      'startup.0.items.1.onlyFor.answer',
    ],
  ])('names %s', (_words, startup, path) => {
    expect(problemsOf(startup).map((problem) => problem.path)).toContain(path);
  });

  it('names a limit on a fuel of another sheet and a serial pattern that is none', () => {
    const step = aStep('a', [anItem('confirm', 'b')]);
    const limits = [{ quantity: 'coPpm', fuel: 'butane', max: 100, basis: A_BASIS }];
    expect(problemsOf([step], { limits }).map((problem) => problem.path)).toEqual(['limits.0.fuel']);
    const appliance = { ...(tinySheetFile([step])['appliance'] as object), serialPattern: '(' };
    expect(problemsOf([step], { appliance }).map((problem) => problem.path)).toEqual(['appliance.serialPattern']);
  });

  it('names the field of a malformed sheet, and reads nothing of it', () => {
    const wrong = tinySheetFile([aStep('a', [anItem('read', 'b', { quantity: 'co2' })])]);
    const parsed = parseModelSheet(wrong);
    expect(parsed.ok ? [] : parsed.error.map((problem) => problem.path)).toEqual(['startup.0.items.0.quantity']);
  });
});

describe('a hold point that waits for itself', () => {
  const stuck = (startup: Parameters<typeof tinySheetFile>[0]) =>
    problemsOf(startup).map((problem) => /step "(.+)" could never open/.exec(problem.message)?.[1]);

  it('is found when what blocks firing comes after firing', () => {
    const startup = [
      aStep('fire', [anItem('confirm', 'lit')], { needsClear: 'firing' }),
      aStep('late', [anItem('confirm', 'tight', { blocks: ['firing'] })], { after: ['fire'] }),
    ];
    expect(stuck(startup)).toEqual(['fire', 'late']);
  });

  it('is found when what blocks leaving comes after signing', () => {
    const startup = [
      aStep('sign', [anItem('confirm', 'signed', { blocks: ['leaving'] })], { needsClear: 'leaving' }),
      aStep('late', [anItem('confirm', 'hot', { blocks: ['leaving'] })], { after: ['sign'] }),
    ];
    expect(stuck(startup)).toEqual(['sign', 'late']);
  });

  it('is found through a condition and through a wait in between', () => {
    const startup = [
      aStep('fire', [anItem('choose', 'kind', { options })], { needsClear: 'firing' }),
      aStep('before', [
        anItem('confirm', 'only-then', { onlyFor: { answer: { item: 'kind', is: ['yes'] } } }),
        anItem('hold', 'wait', { seconds: 60, basis: A_BASIS }),
        anItem('confirm', 'bled', { blocks: ['firing'] }),
      ]),
    ];
    expect(stuck(startup)).toEqual(['fire', 'before']);
  });

  it('is not seen where a signature stands behind the hold point it blocks', () => {
    const startup = [
      aStep('fire', [anItem('confirm', 'lit', { blocks: ['leaving'] })], { needsClear: 'firing' }),
      aStep('sign', [anItem('confirm', 'signed', { blocks: ['leaving'] })], { needsClear: 'leaving' }),
    ];
    expect(problemsOf(startup)).toEqual([]);
  });
});
