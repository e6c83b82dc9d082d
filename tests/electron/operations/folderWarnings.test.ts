import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type FolderPlace, folderWarnings, judgeFolderPlace } from '../../../electron/operations/folderWarnings.ts';

const ext4 = 0xef53;
const linux: FolderPlace = {
  platform: 'linux',
  path: '/home/office/lightoff',
  fileSystem: ext4,
  mounts: '',
  namesUpwards: [['lightoff.db'], ['Documents', '.cache', '.config'], []],
  iniTexts: [],
};
const mac: FolderPlace = {
  ...linux,
  platform: 'darwin',
  path: '/Users/office/Library/Application Support/lightoff',
  fileSystem: null,
  mounts: `/dev/disk3s1s1 on / (apfs, sealed, local, read-only, journaled)
devfs on /dev (devfs, local, nobrowse)
/dev/disk3s5 on /System/Volumes/Data (apfs, local, journaled, nobrowse)
//office@server.local/All our files on /Volumes/All our files (smbfs, nodev, nosuid, mounted by office)
/dev/disk4s1 on /Volumes/Stick (msdos, local, nodev)`,
};
const windows: FolderPlace = {
  ...linux,
  platform: 'win32',
  path: 'C:\\Users\\office\\AppData\\Roaming\\lightoff',
  fileSystem: null,
};

// What systems print and where they keep things: from memory; the numbers are those of linux/magic.h.
const CASES: readonly (readonly [string, FolderPlace, readonly string[]])[] = [
  ['a disk of its own, Linux', linux, []],
  ['a disk of its own, macOS', mac, []],
  ['a disk of its own, Windows', windows, []],
  ['NFS', { ...linux, fileSystem: 0x6969 }, ['network-folder']],
  ['SMB2', { ...linux, fileSystem: 0xfe534d42 }, ['network-folder']],
  ['a share that is mounted, macOS', { ...mac, path: '/Volumes/All our files/lightoff' }, ['network-folder']],
  ['a stick whose name begins like a share', { ...mac, path: '/Volumes/Stick/lightoff' }, []],
  ['a share, Windows', { ...windows, path: '\\\\server\\files\\lightoff' }, ['network-folder']],
  [
    'a cloud folder, macOS',
    { ...mac, path: '/Users/office/Library/CloudStorage/Provider/lightoff' },
    ['synchronised-folder'],
  ],
  [
    'a cloud folder, Windows',
    { ...windows, iniTexts: ['', '[.ShellClassInfo]\r\nIconResource=C:\\Program Files\\SomeCloud.exe,0'] },
    ['synchronised-folder'],
  ],
  ['a marker above', { ...linux, namesUpwards: [['lightoff.db'], ['.stfolder']] }, ['synchronised-folder']],
  ['a database of what is synchronised', { ...linux, namesUpwards: [['._sync_0a1b2c.db']] }, ['synchronised-folder']],
  ['the caches of a home folder', { ...linux, namesUpwards: [['.cache', 'sync', 'my.cache']] }, []],
];

describe('where the data lies', () => {
  it.each(CASES)('%s', (_name, place, expected) => {
    expect(judgeFolderPlace(place)).toEqual(expected);
  });

  it('is looked at on this computer', () => {
    const folder = mkdtempSync(join(tmpdir(), 'lightoff-place-'));
    mkdirSync(join(folder, 'synced', '.stfolder'), { recursive: true });
    mkdirSync(join(folder, 'synced', 'data'));
    expect(folderWarnings(join(folder, 'synced', 'data'))).toContain('synchronised-folder');
    rmSync(folder, { recursive: true });
  });
});
