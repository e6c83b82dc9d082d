/**
 * Solomon's instances with 25 customers (Operations Research 35(2), 1987), distances cut to one decimal: the lengths proven
 * shortest are reached by rounds alone, so that a slow computer tells nothing else.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { firstState } from '../../../domain/schedule/solver/firstState.ts';
import { createState } from '../../../domain/schedule/solver/routeState.ts';
import { search } from '../../../domain/schedule/solver/search.ts';
import { checkedLength, routesOf, routingModelOf } from '../../support/planner/routingInstance.ts';
import { readSolomon, SOLOMON_BEST_TENTHS, SOLOMON_NAMES, SOLOMON_SIZES } from '../../support/planner/solomon.ts';
import { APP_ROOT } from '../../support/testCore.ts';

type Reference = Readonly<Record<string, { readonly distance_1dec: number; readonly routes: readonly number[][] }>>;

describe('published routing instances', () => {
  it('are read as published: the checker accepts all 18 reference solutions at exactly their length', () => {
    const references: Reference = JSON.parse(
      readFileSync(join(APP_ROOT, 'tests/bench/data/solomon/referenceRoutes.json'), 'utf8'),
    );
    let counted = 0;
    for (const name of SOLOMON_NAMES) {
      for (const size of SOLOMON_SIZES) {
        const reference = references[`${name}.${size}`];
        const routes = (reference?.routes ?? []).map((route) => route.map((customer) => customer - 1));
        const length = checkedLength(readSolomon(name, size), routes);
        expect(length, `${name}.${size}`).toBe(SOLOMON_BEST_TENTHS[name][size]);
        expect(length).toBe(Math.round((reference?.distance_1dec ?? 0) * 10));
        counted += 1;
      }
    }
    expect(counted).toBe(18);
  });

  it.each(SOLOMON_NAMES)('finds the shortest routes of %s with 25 customers', (name) => {
    const instance = readSolomon(name, 25);
    const model = routingModelOf(instance);
    const start = firstState(model, createState(model), 1);
    const { best } = search(model, start, { seed: 1, maxRounds: 6000 });
    expect(checkedLength(instance, routesOf(model, best.next))).toBe(SOLOMON_BEST_TENTHS[name][25]);
  });
});
