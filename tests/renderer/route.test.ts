import { describe, expect, it } from 'vitest';
import { hashFor, ROUTES, readHash, type ScreenName } from '../../renderer/route.ts';

describe('routes', () => {
  it('should find the way back from every hash it makes', () => {
    for (const screen of Object.keys(ROUTES) as ScreenName[]) {
      const params = Object.fromEntries(
        [...ROUTES[screen].matchAll(/:(\w+)/g)].map(([, name = '']) => [name, `a b/${name}`]),
      );
      const hash = hashFor(screen, params as never);
      expect(readHash(hash)).toEqual({ screen, params });
    }
  });

  it('should leave out an optional part that is not given', () => {
    expect(hashFor('run', { visitId: 'v', runId: 'r' })).toBe('#/run/v/r');
    expect(readHash('#/run/v/r')).toEqual({ screen: 'run', params: { visitId: 'v', runId: 'r' } });
    expect(readHash('#/run/v/r/combustion-high')).toEqual({
      screen: 'run',
      params: { visitId: 'v', runId: 'r', stepKey: 'combustion-high' },
    });
  });

  it('should prefer a fixed word to a parameter', () => {
    expect(readHash('#/customers/new').screen).toBe('new-customer');
    expect(readHash('#/customers/0190').screen).toBe('customer');
  });

  it.each(['', '#', '#/'])('should take %j for Today', (hash) => {
    expect(readHash(hash).screen).toBe('today');
  });

  it.each(['#/nowhere', '#/run/v', '#/customers/%E0%A4%A', '#/customers/a/b/c'])('should call %s unknown', (hash) => {
    expect(readHash(hash).screen).toBe('unknown');
  });
});
