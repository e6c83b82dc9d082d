/** The menu bar: what the system provides for editing, size and windows. The work itself is in the page. */
import { Menu } from 'electron';

export function setAppMenu(platform: NodeJS.Platform): void {
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([
      ...(platform === 'darwin' ? [{ role: 'appMenu' as const }] : []),
      { role: 'editMenu' },
      {
        label: 'View',
        submenu: [
          { role: 'resetZoom' },
          { role: 'zoomIn' },
          { role: 'zoomOut' },
          { type: 'separator' },
          { role: 'togglefullscreen' },
        ],
      },
      { role: 'windowMenu' },
    ]),
  );
}
