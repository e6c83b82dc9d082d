/** The thread in which a backup is tried out: a big one takes a while, and nobody shall wait for it. */
import { parentPort, workerData } from 'node:worker_threads';
import { openBackupFolder } from '../db/backups.ts';
import { rehearseRestore } from '../db/rehearseRestore.ts';
import { hasIntactChains } from './operations/sealChains.ts';
import type { RehearsalOrder } from './weeklyRehearsal.ts';

const order = workerData as RehearsalOrder;
const backups = openBackupFolder(order.copiesFolder, order.migrationsFolder, hasIntactChains);
parentPort?.postMessage(rehearseRestore(backups, order.copyName, order));
