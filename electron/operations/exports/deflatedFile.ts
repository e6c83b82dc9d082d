/** The files of a ZIP that is written a piece at a time: compressed beside the program's own work, or put in as they are. */
import { once } from 'node:events';
import { crc32, createDeflateRaw } from 'node:zlib';
import type { Zip, ZipInputFile } from 'fflate';

/** Compression method 8 of the ZIP format (APPNOTE 4.4.5). */
const DEFLATE = 8;
const STORED = 0;

/** A file that is compressed in itself, as photos and PDFs are: put in as it is. */
export function addStored(zip: Zip, name: string, bytes: Uint8Array, mtime: Date): void {
  const file: ZipInputFile = { filename: name, size: 0, crc: crc32(bytes), compression: STORED, mtime };
  zip.add(file);
  file.size = bytes.length;
  file.ondata?.(null, new Uint8Array(bytes.buffer as ArrayBuffer, bytes.byteOffset, bytes.length), true);
}

export class DeflatedFile {
  readonly name: string;
  readonly #deflate = createDeflateRaw({ level: 6 });
  readonly #compressed: Uint8Array<ArrayBuffer>[] = [];
  #crc = 0;
  #size = 0;

  constructor(name: string) {
    this.name = name;
    this.#deflate.on('data', (bytes: Uint8Array<ArrayBuffer>) => this.#compressed.push(bytes));
  }

  /** Waits where compressing falls behind. */
  async write(text: string): Promise<void> {
    const bytes = Buffer.from(text);
    this.#crc = crc32(bytes, this.#crc);
    this.#size += bytes.length;
    if (!this.#deflate.write(bytes)) await once(this.#deflate, 'drain');
  }

  async end(): Promise<void> {
    this.#deflate.end();
    await once(this.#deflate, 'end');
  }

  /** Only what has ended can be put in. */
  addTo(zip: Zip, mtime: Date): void {
    const file: ZipInputFile = { filename: this.name, size: 0, crc: this.#crc, compression: DEFLATE, mtime };
    zip.add(file);
    file.size = this.#size;
    for (const bytes of this.#compressed) file.ondata?.(null, bytes, false);
    file.ondata?.(null, new Uint8Array(), true);
  }
}
