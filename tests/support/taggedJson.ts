/** JSON that also carries bytes, for crossing between a test and a page. */

export function toTagged(value: unknown): string {
  return JSON.stringify(value, (_key, item: unknown) =>
    item instanceof Uint8Array ? { $bytes: toBase64(item) } : item,
  );
}

export function fromTagged(text: string): unknown {
  return JSON.parse(text, (_key, item: unknown) =>
    typeof item === 'object' && item !== null && '$bytes' in item && typeof item.$bytes === 'string'
      ? Uint8Array.from(atob(item.$bytes), (letter) => letter.charCodeAt(0))
      : item,
  );
}

function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}
