/** Parts that save a second trip, by kind of job. Common practice, no source; the maker's sheet wins. */
import type { BoardJob } from '../../contract/board.ts';

const PARTS: Readonly<Record<BoardJob['kind'], readonly string[]>> = {
  startup: [
    'conversion kit and orifices',
    'vent clamps and seals',
    'condensate trap',
    'gaskets',
    'electrodes',
    'inhibitor',
    'outdoor sensor',
    'relief valve',
    'vessel pump',
    'fuses',
  ],
  service: ['gaskets', 'electrodes', 'condensate trap seal', 'inhibitor', 'vessel pump', 'fuses'],
  repair: ['gaskets', 'electrodes', 'sensors', 'relief valve', 'fuses'],
  'follow-up': [],
};

export function vanParts(kind: BoardJob['kind']): readonly string[] {
  return PARTS[kind];
}
