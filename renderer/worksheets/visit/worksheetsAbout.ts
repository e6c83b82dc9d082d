/** The worksheets in which computed findings of a run can be followed and tried with other numbers. */
import type { Finding } from '../../../domain/judgement/finding.ts';
import type { Worksheet } from '../core/worksheet.ts';
import { findWorksheet } from '../worksheets.ts';

export function worksheetsAbout(findings: readonly Pick<Finding, 'subject'>[]): readonly Worksheet[] {
  const keys = findings.flatMap(({ subject }) => BY_NAME[/^(?:[a-z-]+:)?([^@]+)/.exec(subject)?.[1] ?? ''] ?? []);
  return [...new Set(keys)].flatMap((key) => findWorksheet(key) ?? []);
}

/** By the name the judgement gives what it worked out. */
const BY_NAME: Readonly<Record<string, string>> = {
  'excess-air': 'combustion',
  'efficiency-net': 'combustion',
  'efficiency-gross': 'combustion',
  'flue-loss': 'combustion',
  'dew-point': 'condensing',
  'clocked-input': 'gas-rate',
  'heat-output': 'heat-output',
  'cold-fill': 'cold-fill',
};
