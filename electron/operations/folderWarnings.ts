/** A store on a network share or in a synchronised folder can be damaged by two machines writing it: said at every start. */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, realpathSync, statfsSync } from 'node:fs';
import { dirname, join } from 'node:path';

export type FolderWarning = 'network-folder' | 'synchronised-folder';

/** What the system tells of where a folder lies. */
export type FolderPlace = {
  readonly platform: NodeJS.Platform;
  /** As the system itself names it: a drive letter that stands for a share comes out as the share. */
  readonly path: string;
  /** Linux: the number of its file system; null elsewhere. */
  readonly fileSystem: number | null;
  /** macOS: what `mount` prints; empty elsewhere. */
  readonly mounts: string;
  /** What lies in the folder and in those above it. */
  readonly namesUpwards: readonly (readonly string[])[];
  /** Windows: the settings by which it shows the folder and those above it. */
  readonly iniTexts: readonly string[];
};

const known = new Map<string, readonly FolderWarning[]>();

/** Looked at once: a folder in use does not move. */
export function folderWarnings(folder: string): readonly FolderWarning[] {
  const found = known.get(folder) ?? judgeFolderPlace(readFolderPlace(folder));
  known.set(folder, found);
  return found;
}

export function judgeFolderPlace(place: FolderPlace): readonly FolderWarning[] {
  const warnings: FolderWarning[] = [];
  if (isOnNetwork(place)) warnings.push('network-folder');
  if (isSynchronised(place)) warnings.push('synchronised-folder');
  return warnings;
}

/** Numbers of statfs(2), linux/magic.h: NFS, SMB, SMB2, CIFS, AFS, FUSE, 9p, Ceph. */
const NETWORK_FILE_SYSTEMS = new Set([
  0x6969, 0x517b, 0xfe534d42, 0xff534d42, 0x5346414f, 0x65735546, 0x01021997, 0x00c36400,
]);
/** mount(8) of macOS, from memory. */
const NETWORK_MOUNTS = new Set(['smbfs', 'nfs', 'afpfs', 'webdav', 'ftp', 'cifs']);

function isOnNetwork({ platform, path, fileSystem, mounts }: FolderPlace): boolean {
  if (/^[\\/]{2}[^\\/]/.test(path)) return true;
  if (platform === 'darwin') return NETWORK_MOUNTS.has(mountKindOf(path, mounts) ?? '');
  return fileSystem !== null && NETWORK_FILE_SYSTEMS.has(fileSystem);
}

/** Of the mount that lies deepest on the way to the path: `//user@host/share on /Volumes/share (smbfs, nodev)`. */
function mountKindOf(path: string, mounts: string): string | null {
  let deepest = { at: '', kind: null as string | null };
  for (const [, at = '', kind = ''] of mounts.matchAll(/^.+ on (\/.*) \((\w+)[,)]/gm)) {
    const isOnTheWay = at === '/' || path === at || path.startsWith(`${at}/`);
    if (isOnTheWay && at.length > deepest.at.length) deepest = { at, kind };
  }
  return deepest.kind;
}

/** Where macOS itself keeps what is synchronised. */
const MAC_CLOUD = /\/Library\/(CloudStorage|Mobile Documents)\//;
/** What synchronising programs leave at the top of what they synchronise: a marker, their database, a hidden store of their own. */
const SYNC_MARKER = /^(\.stfolder|\.sync|\._?sync_\w+\.db|\.[a-z]+\.cache)$/;

function isSynchronised({ platform, path, namesUpwards, iniTexts }: FolderPlace): boolean {
  if (platform === 'darwin' && MAC_CLOUD.test(`${path}/`)) return true;
  // Windows marks a cloud folder's icon by a word or the class of its provider.
  if (platform === 'win32' && iniTexts.some((text) => /cloud/i.test(text))) return true;
  return namesUpwards.some((names) => names.some((name) => SYNC_MARKER.test(name)));
}

function readFolderPlace(folder: string): FolderPlace {
  const { platform } = process;
  const upwards = foldersUpwards(folder);
  return {
    platform,
    path: existsSync(folder) ? realpathSync.native(folder) : folder,
    fileSystem: platform === 'linux' && existsSync(folder) ? statfsSync(folder).type : null,
    mounts: platform === 'darwin' ? attempt(() => execFileSync('/sbin/mount', { encoding: 'utf8' }), '') : '',
    namesUpwards: upwards.map((one) => attempt(() => readdirSync(one), [])),
    iniTexts:
      platform === 'win32'
        ? upwards.map((one) => attempt(() => readFileSync(join(one, 'desktop.ini'), 'latin1'), ''))
        : [],
  };
}

function foldersUpwards(folder: string): readonly string[] {
  const above = dirname(folder);
  return above === folder ? [folder] : [folder, ...foldersUpwards(above)];
}

/** What may not be read tells nothing, and is no reason not to start. */
function attempt<T>(read: () => T, otherwise: T): T {
  try {
    return read();
  } catch {
    return otherwise;
  }
}
