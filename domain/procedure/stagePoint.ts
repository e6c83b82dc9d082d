/** The point under which a reading of a tuning stage is filed: its own, so that it never passes for one of a firing point of that name. */
export function stagePoint(stageKey: string): string {
  return `tuning-${stageKey}`;
}
