/**
 * V. Pillac, C. Guéret, A. L. Medaglia, "A parallel matheuristic for the technician routing and scheduling problem",
 * Optimization Letters 7(7), 2013: technicians with skills and homes of their own. Read here without tools, parts and depot.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { RoutingInstance } from './routingInstance.ts';

export const PILLAC_NAMES = ['C101', 'R101', 'RC101', 'C201', 'R201', 'RC201'] as const;
export type PillacName = (typeof PILLAC_NAMES)[number];

/**
 * Lengths in this reading, in thousandths: VROOM 1.14 (BSD, C++), exploration 5, measured apart on two cores. No proof of
 * anything, but an independent program's work.
 */
export const PILLAC_OTHER_THOUSANDTHS: Readonly<Record<PillacName, number>> = {
  C101: 962_673,
  R101: 1_311_896,
  RC101: 1_382_596,
  C201: 902_517,
  R201: 1_186_596,
  RC201: 1_088_872,
};

const TECHNICIANS = 25;
const REQUESTS = 100;

export function readPillac(folder: string, name: PillacName): RoutingInstance {
  const lines = readFileSync(join(folder, `${name}.100_25-5-5-5.txt`), 'utf8').split('\n');
  const rows = lines.flatMap((line) => {
    const found = LINE.exec(line)?.groups;
    if (found === undefined) return [];
    const { id, x, y, from, to, service, skills } = found;
    return [
      {
        id: Number(id),
        x: Number(x),
        y: Number(y),
        from: Number(from),
        to: Number(to),
        service: Number(service),
        skills: (skills ?? '').split(',').filter(Boolean).map(Number),
      },
    ];
  });
  const technicians = rows.filter(({ id }) => id >= 1 && id <= TECHNICIANS);
  const requests = rows.filter(({ id }) => id > TECHNICIANS);
  if (technicians.length !== TECHNICIANS || requests.length !== REQUESTS)
    throw new Error(`${name} has ${technicians.length} technicians and ${requests.length} requests`);
  return {
    visits: requests.map(({ x, y, from, to, service, skills }) => ({
      x,
      y,
      demand: 0,
      ready: from,
      due: to,
      service,
      skills,
    })),
    vehicles: technicians.map(({ x, y, from, to, skills }) => ({ x, y, start: from, end: to, skills })),
    capacity: 0,
    scale: 1000,
    toWhole: Math.round,
  };
}

const LINE =
  /^(?<id>\d+)\s+(?<x>[\d.]+)\s+(?<y>[\d.]+)\s+(?<from>[\d.]+)\s+(?<to>[\d.]+)\s+(?<service>[\d.]+)\s+\[(?<skills>[\d,]*)\]/u;
