/** What handlers need besides the store: clocks, the folders, sign-in, the kept copies and the demo. */
import type { AttachmentFiles } from '../../db/attachmentFiles.ts';
import type { BackupFolder } from '../../db/backups.ts';
import type { ClientId } from '../core.ts';
import type { DailyCopies } from '../dailyCopies.ts';
import type { SecondPlaceKeeper } from '../secondPlaceKeeper.ts';
import type { WeeklyRehearsal } from '../weeklyRehearsal.ts';
import type { ExportRuns } from './exports/exportRuns.ts';
import type { ListWorks } from './imports/listWorks.ts';
import type { ProposalBasis } from './planningHandlers.ts';
import type { PlanRuns } from './planRuns.ts';
import type { DoneMove } from './takeBackMove.ts';

export type CoreServices = {
  readonly appRoot: string;
  readonly dataFolder: string;
  readonly isDemo: () => boolean;
  readonly attachments: AttachmentFiles;
  readonly backups: BackupFolder;
  readonly dailyCopies: DailyCopies;
  readonly rehearsal: WeeklyRehearsal;
  readonly secondPlace: SecondPlaceKeeper;
  /** A clock that cannot be set: to notice when the other one was. Restarts with the machine, named by `bootId`. */
  readonly steadyClockMs: () => number;
  readonly bootId: string;
  readonly signIn: (clientId: ClientId, staffId: string | null) => void;
  readonly pinGuard: PinGuard;
  readonly switchStore: (to: 'real' | 'demo') => void;
  readonly restoreFrom: (copyPath: string) => string | null;
  /** The planner's threads and what they found. */
  readonly plans: PlanRuns<ProposalBasis, readonly DoneMove[]>;
  /** What is being given out. */
  readonly exports: ExportRuns;
  /** The list being taken in or out. */
  readonly listWorks: ListWorks;
  readonly changed: (topics: readonly string[]) => void;
  /** For a bug that must not stop the rest of a long work. */
  readonly logFault: (error: unknown) => void;
};

/** Slows down guessing: each wrong PIN of a person makes the next try wait longer. */
export type PinGuard = {
  readonly waitS: (staffId: string) => number;
  readonly wrong: (staffId: string) => void;
  readonly right: (staffId: string) => void;
};
