/** Why a backup was made and is kept. */
import type { RescueCopy } from '../../electron/contract/rescue.ts';

export const KEPT_WORDS: Readonly<Record<RescueCopy['kept'], string>> = {
  daily: 'daily',
  weekly: 'weekly',
  monthly: 'monthly',
  'before-update': 'before an update',
  'before-restore': 'before going back',
  replaced: 'the file that was replaced',
};
