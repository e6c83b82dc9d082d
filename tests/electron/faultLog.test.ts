import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { z } from 'zod';
import { createCore } from '../../electron/createCore.ts';
import { faultLogPath, openFaultLog } from '../../electron/faultLog.ts';
import { handlers } from '../../electron/operations/index.ts';
import { APP_ROOT } from '../support/testCore.ts';

/** What must never stand in a log, wherever in an error it may hide. */
const TYPED = ['Wilhelmina Oakley', '17 Harbour Lane', '902 555 0177', 'wil@oakley.example'];

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lightoff-log-'));
  vi.spyOn(process.stderr, 'write').mockReturnValue(true);
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});
const log = () => readFileSync(faultLogPath(folder), 'utf8');

describe('the log of faults', () => {
  it('holds the reference that the user was shown, and where in the program it happened', async () => {
    const core = createCore({ dataFolder: folder, appRoot: APP_ROOT });
    vi.spyOn(handlers, 'app.status').mockImplementation(() => {
      throw new Error(`no row for ${TYPED[0]}`);
    });
    const reply = await core.call('app.status', {}, 'a-window');
    core.close();
    if (reply.ok || reply.error.code !== 'internal') throw new Error('a fault was expected');
    const { ref } = reply.error.data as { ref: string };
    expect(log()).toContain(`fault ${ref}: Error\n`);
    expect(log()).toContain('tests/electron/faultLog.test.ts');
    expect(log()).not.toContain(APP_ROOT);
  });

  it('holds nothing that anybody typed, whatever the error says', () => {
    const logFault = openFaultLog(folder, APP_ROOT);
    const typed = TYPED.join(' ');
    const shape = z.strictObject({ name: z.string().max(3), phone: z.number() });
    const errors: unknown[] = [
      new Error(typed),
      new Error('outer', { cause: new Error(typed) }),
      Object.assign(new Error(`ENOENT: no such file, open '/home/${typed}'`), { code: 'ENOENT', path: typed }),
      shape.safeParse({ name: TYPED[0], phone: TYPED[2], [TYPED[3] ?? '']: 1 }).error,
      typed,
      { name: typed },
      Object.assign(new Error('x'), { name: typed }),
      Object.assign(new Error('x'), { code: typed }),
      new AggregateError([new Error(typed)], typed),
    ];
    for (const parse of [() => JSON.parse(typed), () => BigInt(typed), () => new Intl.NumberFormat(typed)]) {
      try {
        parse();
      } catch (error) {
        errors.push(error);
      }
    }
    expect(errors).toHaveLength(12);
    for (const error of errors) logFault(error);
    for (const words of TYPED) expect(log()).not.toContain(words);
    expect(log().match(/fault [0-9a-f]{8}: /g)).toHaveLength(12);
  });

  it('never grows beyond its size, and keeps the two files before', () => {
    const logFault = openFaultLog(folder, APP_ROOT);
    // How much one takes depends on how deep the program is called from.
    for (let count = 0; count < 30_000 && !existsSync(join(folder, 'log', 'faults.log.2')); count += 1)
      logFault(new Error('again'));
    for (let count = 0; count < 100; count += 1) logFault(new Error('and again'));
    for (const name of ['faults.log', 'faults.log.1', 'faults.log.2'])
      expect(statSync(join(folder, 'log', name)).size).toBeLessThanOrEqual(1_000_000);
    expect(existsSync(join(folder, 'log', 'faults.log.3'))).toBe(false);
  });

  it('that cannot be written does not hide the fault', () => {
    expect(openFaultLog(join(APP_ROOT, 'package.json'), APP_ROOT)(new Error('x'))).toMatch(/^[0-9a-f]{8}$/);
    expect(process.stderr.write).toHaveBeenCalled();
  });
});
