/** What a file really is, by its first bytes; what a browser says of it counts for nothing. null: not taken in. */

export type TakenMediaType =
  | 'image/jpeg'
  | 'image/png'
  | 'application/pdf'
  | 'text/csv'
  | 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

export function sniffMediaType(bytes: Uint8Array, fileName = ''): TakenMediaType | null {
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) return 'image/jpeg';
  if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'image/png';
  if (startsWith(bytes, [0x25, 0x50, 0x44, 0x46, 0x2d])) return 'application/pdf';
  if (startsWith(bytes, [0x50, 0x4b, 0x03, 0x04])) {
    return /\.xlsx$/iu.test(fileName) ? 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet' : null;
  }
  // Text has no first bytes to know it by: its name says what it is meant as, reading it says whether it is.
  return /\.(csv|tsv|txt)$/iu.test(fileName) ? 'text/csv' : null;
}

function startsWith(bytes: Uint8Array, magic: readonly number[]): boolean {
  return magic.every((byte, index) => bytes[index] === byte);
}
