/** What the main process and the core's process say to each other. */

export type CoreLocation = { readonly appRoot: string; readonly dataFolder: string; readonly startInDemo: boolean };

export type CoreCommand =
  | ({ readonly kind: 'open' } & CoreLocation)
  /** Comes with the port to serve. */
  | { readonly kind: 'connect'; readonly clientId: string }
  | { readonly kind: 'close' };

export type CoreNotice = { readonly kind: 'cannot-open'; readonly why: string };
