import { describe, expect, it } from 'vitest';
import { nextToMeasure } from '../../../../renderer/run/field/nextToMeasure.ts';

const people = ['ana', 'bo', 'cy', 'di'].map((staffId) => ({ staffId }));
const crew = (...staffIds: string[]) => staffIds.map((staffId) => ({ staffId }));

describe('who measured, by the key', () => {
  it('goes round the crew and passes over those who are not there', () => {
    expect(nextToMeasure('bo', crew('bo', 'di'), people)).toBe('di');
    expect(nextToMeasure('di', crew('bo', 'di'), people)).toBe('bo');
  });

  it('begins with the crew when whoever is signed in is not of it', () => {
    expect(nextToMeasure('ana', crew('bo', 'di'), people)).toBe('bo');
  });

  it('goes round the firm where nobody else is on the visit', () => {
    expect(nextToMeasure('bo', crew('bo'), people)).toBe('cy');
    expect(nextToMeasure('di', crew('di'), people)).toBe('ana');
  });
});
