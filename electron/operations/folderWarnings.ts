/** A store on a network share or in a synchronised folder can be damaged by two machines writing it: said at every start. */
import { existsSync, readFileSync, statfsSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Numbers of Linux's statfs(2) for file systems that live on another machine: NFS, SMB, SMB2, CIFS, AFS, FUSE, 9p, Ceph. */
const NETWORK_FILE_SYSTEMS = new Set([
  0x6969, 0x517b, 0xfe534d42, 0xff534d42, 0x5346414f, 0x65735546, 0x01021997, 0x00c36400,
]);

/** Marker files and folders that synchronising programs of any kind leave at the top of what they synchronise. */
const SYNC_MARKERS = ['.sync', '.stfolder', '.sync_folder', '.synchronised', '.nextsync.db', 'desktop.ini.sync'];

export function folderWarnings(folder: string): readonly ('network-folder' | 'synchronised-folder')[] {
  const warnings: ('network-folder' | 'synchronised-folder')[] = [];
  if (isOnNetwork(folder)) warnings.push('network-folder');
  if (isSynchronised(folder)) warnings.push('synchronised-folder');
  return warnings;
}

function isOnNetwork(folder: string): boolean {
  if (/^[\\/]{2}[^\\/]/.test(folder)) return true;
  if (process.platform !== 'linux' || !existsSync(folder)) return false;
  return NETWORK_FILE_SYSTEMS.has(statfsSync(folder).type);
}

function isSynchronised(folder: string): boolean {
  for (let current = folder; ; current = dirname(current)) {
    if (SYNC_MARKERS.some((marker) => existsSync(join(current, marker)))) return true;
    if (isWindowsCloudFolder(current)) return true;
    if (dirname(current) === current) return false;
  }
}

/** Windows marks a cloud folder's icon in its desktop.ini by a CLSID or the word cloud. */
function isWindowsCloudFolder(folder: string): boolean {
  const ini = join(folder, 'desktop.ini');
  if (process.platform !== 'win32' || !existsSync(ini)) return false;
  return /cloud/i.test(readFileSync(ini, 'latin1'));
}
