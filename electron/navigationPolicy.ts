/**
 * Where the window may go and what may be opened outside it. Addresses are judged by their parsed parts, never by how
 * they begin: `app://lightoff.example` begins like ours and is not.
 */

export const appScheme = 'app';
export const appHost = 'lightoff';
export const appPage = `${appScheme}://${appHost}/index.html`;

/** `URL.origin` of a scheme of our own is the text "null" in Node: scheme and host are compared instead. */
export function isOwnPage(address: string): boolean {
  const url = parse(address);
  return (
    url !== null &&
    url.protocol === `${appScheme}:` &&
    url.host === appHost &&
    url.username === '' &&
    url.password === ''
  );
}

/** The address to hand to the system, or null: a web page by https, a letter or a call, and nothing that runs or mounts. */
export function parseExternalAddress(address: string): string | null {
  // RFC 3986's characters less the quote: a parser silently drops or repairs others, a command line may not.
  if (address.length > 2_000 || !/^[A-Za-z0-9\-._~:/?#[\]@!$&()*+,;=%]+$/.test(address)) return null;
  const url = parse(address);
  if (url === null) return null;
  if (url.protocol === 'https:') {
    const isPlain = url.username === '' && url.password === '' && url.host !== '';
    return isPlain && /^https:\/\/[^/]/i.test(address) ? url.href : null;
  }
  if (url.protocol === 'mailto:') return /^[^@?/]+@[^@?/]+(\?|$)/.test(url.pathname + url.search) ? url.href : null;
  if (url.protocol === 'tel:') return /^\+?[0-9().-]{2,30}$/.test(url.pathname) && url.search === '' ? url.href : null;
  return null;
}

function parse(address: string): URL | null {
  try {
    return new URL(address);
  } catch {
    return null;
  }
}
