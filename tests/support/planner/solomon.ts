/**
 * M. M. Solomon, "Algorithms for the Vehicle Routing and Scheduling Problems with Time Window Constraints", Operations
 * Research 35(2), 1987: six of its instances, one per class, and the best lengths known. See tests/bench/data/README.md.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { APP_ROOT } from '../testCore.ts';
import type { RoutingInstance } from './routingInstance.ts';

export const SOLOMON_NAMES = ['C101', 'R101', 'RC101', 'C201', 'R201', 'RC201'] as const;
export type SolomonName = (typeof SOLOMON_NAMES)[number];
export const SOLOMON_SIZES = [25, 50, 100] as const;
export type SolomonSize = (typeof SOLOMON_SIZES)[number];

/** The convention of the exact-method papers: each distance cut to one decimal, at most 25 vehicles, shortest sum. */
export function readSolomon(name: SolomonName, customers: SolomonSize): RoutingInstance {
  const lines = readFileSync(join(APP_ROOT, 'tests/bench/data/solomon', `${name}.txt`), 'utf8').split('\n');
  const [vehicleCount = 0, capacity = 0] = numbers(lines[4] ?? '');
  const rows = lines
    .slice(9)
    .map(numbers)
    .filter((row) => row.length === 7);
  const [depot, ...all] = rows;
  if (depot === undefined || all.length !== 100) throw new Error(`${name} has ${all.length} customers`);
  const [, x = 0, y = 0, , start = 0, end = 0] = depot;
  return {
    visits: all.slice(0, customers).map(([, vx = 0, vy = 0, demand = 0, ready = 0, due = 0, service = 0]) => ({
      x: vx,
      y: vy,
      demand,
      ready,
      due,
      service,
      skills: [],
    })),
    vehicles: Array.from({ length: vehicleCount }, () => ({ x, y, start, end, skills: [] })),
    capacity,
    scale: 10,
    // Cut, not rounded; the small addition keeps exact tenths from falling below themselves.
    toWhole: (tenths) => Math.floor(tenths + 1e-9),
  };
}

/**
 * Best lengths known, in tenths. Published tables of the exact-method papers (100 customers: proven, Kohl 1999, Irnich 2006,
 * Kallehauge 2001, Cook 1999); three values for 50 customers (R101, RC101, R201) are smaller than the tables' because an
 * integer program proved 1044.0, 944.0 and 791.9 optimal.
 */
export const SOLOMON_BEST_TENTHS: Readonly<Record<SolomonName, Readonly<Record<SolomonSize, number>>>> = {
  C101: { 25: 1913, 50: 3624, 100: 8273 },
  R101: { 25: 6171, 50: 10440, 100: 16377 },
  RC101: { 25: 4611, 50: 9440, 100: 16198 },
  C201: { 25: 2147, 50: 3602, 100: 5891 },
  R201: { 25: 4633, 50: 7919, 100: 11432 },
  RC201: { 25: 3602, 50: 6848, 100: 12618 },
};

function numbers(line: string): number[] {
  return line
    .trim()
    .split(/\s+/)
    .filter((text) => text !== '')
    .map(Number);
}
