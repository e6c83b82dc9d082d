import { describe, expect, it } from 'vitest';
import { FormReader } from '../../../renderer/form/FormReader.ts';
import { emptyVisit, visitFromForm, visitToForm } from '../../../renderer/visits/visitForm.ts';

const filled = { ...emptyVisit(180), plannedOn: '6 Mar 2026', crew: { someone: 'licensed' } };
const pencilled = (isPencilled: string, isReady: boolean): boolean =>
  visitFromForm({ ...filled, isPencilled }, new FormReader(), isReady).isPencilled;

describe('how firm a visit is booked', () => {
  it('follows readiness while nobody has chosen', () => {
    expect(pencilled(filled.isPencilled, false)).toBe(true);
    expect(pencilled(filled.isPencilled, true)).toBe(false);
  });

  it('stays as chosen by hand, whatever is answered afterwards', () => {
    for (const isReady of [false, true]) {
      expect(pencilled('yes', isReady)).toBe(true);
      expect(pencilled('no', isReady)).toBe(false);
    }
  });

  it('stays as it is on file when a visit is only moved', () => {
    const visit = { plannedOn: '2026-03-06', plannedFrom: null, plannedTo: null, durationMin: 60, crew: [] };
    expect(visitToForm({ ...visit, state: 'pencilled' }).isPencilled).toBe('yes');
    expect(visitToForm({ ...visit, state: 'planned' }).isPencilled).toBe('no');
  });
});
