import { availableParallelism } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Worker } from 'node:worker_threads';
import type { DrawingAnswer, DrawingTask } from './drawing-thread';
import { startThread } from './typescript-thread';

/** Threads that draw, one processor left for the server: each holds one picture, 33 MB at 3840 × 2160. */
const THREADS = Math.max(1, Math.min(3, availableParallelism() - 1));
/** A thread that has not answered by then is ended; the largest card takes less than a second. */
const PATIENCE_MS = 30_000;

interface Job {
  readonly task: DrawingTask;
  readonly signal: AbortSignal;
  readonly resolve: (bytes: Uint8Array<ArrayBuffer>) => void;
  readonly reject: (error: Error) => void;
}

/** Threads that make files of drawings; what nobody waits for any more is not drawn. */
class Drawings {
  private readonly queue: Job[] = [];
  private readonly idle: Worker[] = [];
  private busy = 0;

  ask(task: DrawingTask, signal: AbortSignal): Promise<Uint8Array<ArrayBuffer>> {
    return new Promise((resolve, reject) => {
      this.queue.push({ task, signal, resolve, reject });
      this.next();
    });
  }

  private next(): void {
    while (this.busy < THREADS) {
      const job = this.queue.shift();
      if (!job) return;
      if (job.signal.aborted) job.reject(new Error('Nobody waits for the drawing any more'));
      else this.run(job);
    }
  }

  private run(job: Job): void {
    const worker = this.idle.pop() ?? this.thread();
    this.busy += 1;
    const over = (keep: boolean): void => {
      clearTimeout(timer);
      // By name: all listeners would be those by which the thread's messages reach this side, too.
      worker.off('message', hear);
      worker.off('error', fail);
      if (keep) this.idle.push(worker);
      else void worker.terminate();
      this.busy -= 1;
      this.next();
    };
    const fail = (error: Error): void => {
      job.reject(error);
      over(false);
    };
    const hear = (answer: DrawingAnswer): void => {
      if (answer.ok) job.resolve(answer.bytes);
      else job.reject(new Error(answer.why));
      over(true);
    };
    const timer = setTimeout(() => fail(new Error('No drawing within the time')), PATIENCE_MS);
    worker.on('message', hear);
    worker.on('error', fail);
    worker.postMessage(job.task);
  }

  private thread(): Worker {
    // Not from this file's own address, which the build changes; the program is started in its own folder.
    const entry = pathToFileURL(path.join(process.cwd(), 'lib/work/drawing-thread.ts'));
    const worker = startThread(entry);
    worker.unref();
    return worker;
  }
}

// Parts of the server may be bundled apart; there is one set of threads all the same.
const holder = globalThis as typeof globalThis & { slateDrawings?: Drawings };
const drawings = (holder.slateDrawings ??= new Drawings());

/**
 * A drawing as a file, made in a thread beside the server.
 * @param signal where it is aborted before the drawing began, the drawing is not made and the promise rejects
 */
export function drawn(task: DrawingTask, signal: AbortSignal): Promise<Uint8Array<ArrayBuffer>> {
  return drawings.ask(task, signal);
}
