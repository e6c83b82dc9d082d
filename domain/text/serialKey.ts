/** A serial number as it is compared: no spaces or hyphens, and characters that are read for one another made equal. */

/** O/Q/D are read for 0, I/L for 1, S for 5, B for 8, Z for 2, G for 6. Common practice, no source. */
const LOOK_ALIKES: Readonly<Record<string, string>> = {
  O: '0',
  Q: '0',
  D: '0',
  I: '1',
  L: '1',
  S: '5',
  B: '8',
  Z: '2',
  G: '6',
};

export function serialKeyOf(serial: string): string {
  return serial
    .toUpperCase()
    .replaceAll(/[^A-Z0-9]/g, '')
    .replaceAll(/[OQDILSBZG]/g, (letter) => LOOK_ALIKES[letter] ?? letter);
}
