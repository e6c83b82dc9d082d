/**
 * What makes this tab known to the browser host: the token from the address, taken out of it at once, and an id of the
 * tab's own that sign-in belongs to. Both last as long as the tab.
 */
const tokenKey = 'lightoff.token';
const clientKey = 'lightoff.client';

export type TabIdentity = { readonly token: string | null; readonly clientId: string };

export function readTabIdentity(): TabIdentity {
  const given = tokenInAddress();
  if (given !== null) {
    // Out of the address bar, the history and every screenshot.
    window.history.replaceState(window.history.state, '', window.location.pathname + window.location.search);
    sessionStorage.setItem(tokenKey, given);
  }
  let clientId = sessionStorage.getItem(clientKey);
  if (clientId === null) {
    clientId = crypto.randomUUID();
    sessionStorage.setItem(clientKey, clientId);
  }
  return { token: sessionStorage.getItem(tokenKey), clientId };
}

/** The address of a later start, opened in this very tab, changes only its fragment: the page has to begin anew by itself. */
export function followNewToken(): void {
  window.addEventListener('hashchange', () => {
    if (tokenInAddress() !== null) window.location.reload();
  });
}

function tokenInAddress(): string | null {
  return new URLSearchParams(window.location.hash.slice(1)).get('token');
}
