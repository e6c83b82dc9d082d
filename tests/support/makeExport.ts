/** Everything given out, asked for as the screen does: again and again until the file is made. */
import type { InputOf, OutputOf } from '../../electron/contract/index.ts';
import type { TestCore } from './testCore.ts';

type Progress = OutputOf<'exports.goOn'>;

export async function makeExport(
  test: TestCore,
  choice: InputOf<'exports.start'> = {},
): Promise<Extract<Progress, { isDone: true }>> {
  const { exportId } = await test.must('exports.start', choice);
  for (;;) {
    const progress = await test.must('exports.goOn', { exportId });
    if (progress.isDone) return progress;
  }
}
