/** Lays an asar archive out as plain files: its header is JSON after four 32-bit sizes, its files follow one another. */
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

type Entry = {
  readonly files?: Readonly<Record<string, Entry>>;
  readonly size?: number;
  readonly offset?: string;
  readonly unpacked?: boolean;
};

/** Answers the paths of all files in it. */
export function extractAsar(archive: string, target: string): readonly string[] {
  const bytes = readFileSync(archive);
  const header: Entry = JSON.parse(bytes.subarray(16, 16 + bytes.readUInt32LE(12)).toString());
  const start = 8 + bytes.readUInt32LE(4);
  const paths: string[] = [];
  const walk = (entry: Entry, path: string): void => {
    if (entry.files !== undefined) {
      for (const [name, inner] of Object.entries(entry.files)) walk(inner, path === '' ? name : `${path}/${name}`);
      return;
    }
    const to = join(target, path);
    mkdirSync(dirname(to), { recursive: true });
    paths.push(path);
    if (entry.unpacked === true) {
      copyFileSync(join(`${archive}.unpacked`, path), to);
      return;
    }
    const from = start + Number(entry.offset);
    writeFileSync(to, bytes.subarray(from, from + (entry.size ?? 0)));
  };
  walk(header, '');
  return paths;
}
