import { parentPort } from 'node:worker_threads';
import type { EpisodeFile } from '#lib/episode/schema';
import { outputs, type KeptNumbers, type Outputs, type SheetClock } from '#lib/sheet/outputs';

/** Outputs to be made of an episode, in a thread of their own: its day alone may take seconds to plan. */
export interface OutputsTask {
  readonly file: EpisodeFile;
  readonly clock: SheetClock;
  /** The lock and the corrections that are kept of it. */
  readonly kept: KeptNumbers;
}

if (parentPort !== null) {
  const port = parentPort;
  const say = (made: Outputs): void => port.postMessage(made);
  port.on('message', ({ file, clock, kept }: OutputsTask) => say(outputs(file, clock, kept)));
}
