import type { Readable } from 'node:stream';
import type { CardFile } from '#lib/publish/cards/card-files';
import { bundleStream, type BundleEntry } from './bundle/write-bundle';
import { drawn } from './drawings';
import type { DrawingTask } from './drawing-thread';

/** All that goes into a zip of cards. */
export interface CardZip {
  readonly files: readonly CardFile[];
  /** Lists beside the pictures: name and text. */
  readonly lists: ReadonlyMap<string, string>;
  /** The time that all files bear. */
  readonly at: Date;
}

/** Pictures that are drawn before their turn comes, so that several threads have work and memory stays bounded. */
const AHEAD = 3;

/**
 * Cards as one zip, PNG and SVG of each in running order and the lists behind them, written as it is read.
 * @param signal ends what is not drawn yet
 * @param onDrawn is told after each picture how many there are
 */
export function cardZip(
  { files, lists, at }: CardZip,
  signal: AbortSignal,
  onDrawn: (count: number) => void = () => undefined,
): Readable {
  const tasks = files.flatMap(({ name, svg }) => [
    { name: `${name}.png`, task: { svg, as: 'png' } as const },
    { name: `${name}.svg`, task: { svg, as: 'svg' } as const },
  ]);
  const bytesOf = inOrder(
    tasks.map(({ task }) => task),
    signal,
  );
  const pictures = tasks.map(({ name, task }, index): BundleEntry => ({
    name,
    compress: task.as === 'svg',
    bytes: async () => {
      const bytes = await bytesOf(index);
      if (task.as === 'svg') onDrawn((index + 1) / 2);
      return bytes;
    },
  }));
  const texts = [...lists].map(([name, text]): BundleEntry => ({
    name,
    bytes: () => Promise.resolve(text),
  }));
  return bundleStream([...pictures, ...texts], at);
}

/** Files of drawings that are asked for one after the other; the next few are begun with each. */
function inOrder(
  tasks: readonly DrawingTask[],
  signal: AbortSignal,
): (index: number) => Promise<Uint8Array> {
  const begun = new Map<number, Promise<Uint8Array>>();
  const begin = (index: number): Promise<Uint8Array> => {
    const known = begun.get(index);
    if (known) return known;
    const task = tasks[index];
    const made = task ? drawn(task, signal) : Promise.resolve(new Uint8Array());
    // One that nobody has come to yet may fail before it is waited for.
    made.catch(() => undefined);
    begun.set(index, made);
    return made;
  };
  return async (index) => {
    for (let ahead = index; ahead <= index + AHEAD && ahead < tasks.length; ahead += 1) {
      void begin(ahead).catch(() => undefined);
    }
    const bytes = await begin(index);
    begun.delete(index);
    return bytes;
  };
}
