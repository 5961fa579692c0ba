import type { Result } from '#lib/result';
import type { FitAnswer } from '#lib/swap/recipe-fit';
import { AskedThread } from './ask-thread';
import type { FitTask } from './fit-thread';

/** Longer than the searches of a fit take with all their clashes. */
const PATIENCE_MS = 20_000;

// Parts of the server may be bundled apart; there is one thread all the same.
const holder = globalThis as typeof globalThis & {
  slateFits?: AskedThread<FitTask, Result<FitAnswer>>;
};
const fits = (holder.slateFits ??= new AskedThread('lib/work/fit-thread.ts', PATIENCE_MS));

/** Amounts that meet targets, found beside the server's own thread; `stopped` where it takes too long or fails. */
export async function fitBeside(task: FitTask): Promise<Result<FitAnswer>> {
  try {
    return await fits.ask(task);
  } catch (error) {
    console.error('The fit of a recipe failed:', error);
    return { ok: true, value: { status: 'stopped', atLeast: null } };
  }
}
