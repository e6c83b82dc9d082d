import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findSymptoms } from '../../../domain/trend/findSymptoms.ts';
import { SYMPTOMS, type TrendChange } from '../../../domain/trend/symptoms.ts';

const keys = (seen: readonly TrendChange[]) => findSymptoms(seen).map((symptom) => symptom.key);

describe('SYMPTOMS', () => {
  it('holds the nineteen rows, each with a suspect and a next check', () => {
    expect(SYMPTOMS).toHaveLength(19);
    expect(new Set(SYMPTOMS.map((symptom) => symptom.key)).size).toBe(19);
    for (const symptom of SYMPTOMS) {
      expect(symptom.whenAnyOf.every((changes) => changes.length > 0)).toBe(true);
      expect(symptom.suspects.length).toBeGreaterThan(0);
      expect(symptom.nextChecks.length).toBeGreaterThan(0);
    }
  });
});

describe('findSymptoms', () => {
  it('finds every row by its own changes', () => {
    for (const symptom of SYMPTOMS) {
      for (const changes of symptom.whenAnyOf) expect(keys(changes)).toContain(symptom.key);
    }
  });

  it('finds nothing when nothing moved', () => {
    expect(findSymptoms([])).toEqual([]);
  });

  it('needs all changes of a set', () => {
    expect(keys([{ quantity: 'delta-t', moved: 'up' }])).toEqual([]);
    expect(
      keys([
        { quantity: 'delta-t', moved: 'up' },
        { quantity: 'flow', moved: 'down' },
        { quantity: 'output', moved: 'same' },
      ]),
    ).toEqual(['delta-t-up-flow-down']);
  });

  it('takes either of two sets', () => {
    expect(keys([{ quantity: 'o2', moved: 'up' }])).toEqual(['leaner']);
    expect(keys([{ quantity: 'co2', moved: 'down' }])).toEqual(['leaner']);
    expect(keys([{ quantity: 'relief-valve-wet', moved: 'up' }])).toEqual(['relief-lifting']);
  });

  it('puts what must stop work first', () => {
    const found = findSymptoms([
      { quantity: 'hardness', moved: 'up' },
      { quantity: 'ph', moved: 'down' },
      { quantity: 'co', moved: 'up' },
      { quantity: 'co2', moved: 'up' },
    ]);
    expect(found.map((symptom) => symptom.key)).toEqual(['too-rich', 'ph-down', 'hardness-up']);
    expect(found[0]?.mustStop).toBe(true);
  });

  it('only gains symptoms when more is seen', async () => {
    const changes = fc.subarray(SYMPTOMS.flatMap((symptom) => symptom.whenAnyOf.flat()));
    await fc.assert(
      fc.property(changes, changes, (fewer, others) => {
        const more = keys([...fewer, ...others]);
        for (const key of keys(fewer)) expect(more).toContain(key);
      }),
    );
  });
});
