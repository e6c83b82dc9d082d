/** Keeps a page where it is: no other page in the window, no second window, no webview. A link to outside goes to the system. */
import type { WebContents } from 'electron';
import { isOwnPage, parseExternalAddress } from './navigationPolicy.ts';

export function guardContents(contents: WebContents, openOutside: (address: string) => void): void {
  const offerOutside = (address: string): void => {
    const external = parseExternalAddress(address);
    if (external !== null) openOutside(external);
  };
  contents.on('will-navigate', (event) => {
    if (isOwnPage(event.url)) return;
    event.preventDefault();
    offerOutside(event.url);
  });
  contents.on('will-redirect', (event) => {
    if (!isOwnPage(event.url)) event.preventDefault();
  });
  contents.on('will-frame-navigate', (event) => {
    // The main frame is judged above; stopped here, it would never get there.
    if (!event.isMainFrame && !isOwnPage(event.url)) event.preventDefault();
  });
  contents.setWindowOpenHandler(({ url }) => {
    offerOutside(url);
    return { action: 'deny' };
  });
  contents.on('will-attach-webview', (event) => event.preventDefault());
}
