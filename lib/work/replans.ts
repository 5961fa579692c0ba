import type { ReplanNews } from '#lib/shoot/replan-words';
import { AskedThread } from './ask-thread';
import type { ReplanTask } from './replan-thread';

/** A new order takes a fraction of a second. */
const PATIENCE_MS = 8_000;

// Parts of the server may be bundled apart; there is one thread all the same.
const holder = globalThis as typeof globalThis & {
  slateReplans?: AskedThread<ReplanTask, ReplanNews>;
};
const replans = (holder.slateReplans ??= new AskedThread('lib/work/replan-thread.ts', PATIENCE_MS));

/** The rest of a filming day from now on, in words; rejects where the thread fails. */
export function replannedDay(task: ReplanTask): Promise<ReplanNews> {
  return replans.ask(task);
}
