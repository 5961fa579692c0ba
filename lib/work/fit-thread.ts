import { parentPort } from 'node:worker_threads';
import type { EpisodeFile } from '#lib/episode/schema';
import { fitSteps, type RecipeFitWish } from '#lib/swap/recipe-fit';

/** Amounts to be looked for in a thread of its own. */
export interface FitTask {
  readonly file: EpisodeFile;
  readonly wish: RecipeFitWish;
}

if (parentPort !== null) {
  const port = parentPort;
  const answer = async ({ file, wish }: FitTask) => port.postMessage(await fitSteps(file, wish));
  // What fails ends the thread, and whoever asked hears of it.
  port.on('message', (task: FitTask) => void answer(task));
}
