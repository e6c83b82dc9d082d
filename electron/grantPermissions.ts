/** The page may look through the camera, for photos at the appliance. Nothing else of the system is granted, asked for or merely looked up. */
import type { Session } from 'electron';
import { isOwnPage } from './navigationPolicy.ts';

export function grantPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer, details) =>
    answer(isCameraForUs(permission, details.requestingUrl, 'mediaTypes' in details ? details.mediaTypes : undefined)),
  );
  session.setPermissionCheckHandler((_contents, permission, requestingOrigin, details) =>
    isCameraForUs(permission, requestingOrigin, [details.mediaType ?? 'unknown']),
  );
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, answer) => answer(null));
}

/** Pictures only: with sound it is refused as a whole, and so is whatever did not say what it wants. */
function isCameraForUs(permission: string, address: string | undefined, kinds: readonly string[] = []): boolean {
  const isOurs = address !== undefined && isOwnPage(address);
  return permission === 'media' && isOurs && kinds.length > 0 && kinds.every((kind) => kind === 'video');
}
