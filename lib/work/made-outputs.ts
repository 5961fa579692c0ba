import type { Outputs } from '#lib/sheet/outputs';
import { AskedThread } from './ask-thread';
import type { OutputsTask } from './outputs-thread';

/** A large day is planned in seconds; on a slow machine it takes longer. */
const PATIENCE_MS = 120_000;

// Parts of the server may be bundled apart; there is one thread all the same.
const holder = globalThis as typeof globalThis & {
  slateOutputs?: AskedThread<OutputsTask, Outputs>;
};
const asked = (holder.slateOutputs ??= new AskedThread('lib/work/outputs-thread.ts', PATIENCE_MS));

/** All outputs of an episode, by file name; rejects where the thread fails. */
export function madeOutputs(task: OutputsTask): Promise<Outputs> {
  return asked.ask(task);
}
