/** Programs of the system that some tests hold our files against, each with the Debian package it comes in. */
import { spawnSync } from 'node:child_process';

export const SYSTEM_TOOLS = {
  qpdf: 'qpdf',
  pdftotext: 'poppler-utils',
  pdffonts: 'poppler-utils',
  pdfdetach: 'poppler-utils',
  pdftoppm: 'poppler-utils',
  sha256sum: 'coreutils',
  // The spreadsheet alone, without windows: 88 MB, some 40 s to install.
  soffice: 'libreoffice-calc-nogui',
} as const;
export type SystemTool = keyof typeof SYSTEM_TOOLS;

export function hasTool(name: SystemTool): boolean {
  return spawnSync(name, ['--version']).error === undefined;
}

export function missingTools(): readonly SystemTool[] {
  return (Object.keys(SYSTEM_TOOLS) as SystemTool[]).filter((name) => !hasTool(name));
}
