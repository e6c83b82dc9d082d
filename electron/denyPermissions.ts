/** The page needs no permission of the system: none is granted, asked for or merely looked up. Photos come as files. */
import type { Session } from 'electron';

/** Stays empty until a feature needs one and says why. */
export const allowedPermissions: readonly string[] = [];

export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer) =>
    answer(allowedPermissions.includes(permission)),
  );
  session.setPermissionCheckHandler((_contents, permission) => allowedPermissions.includes(permission));
  session.setDevicePermissionHandler(() => false);
  session.setDisplayMediaRequestHandler((_request, answer) => answer(null));
}
