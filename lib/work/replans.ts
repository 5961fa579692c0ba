import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Worker } from 'node:worker_threads';
import type { ReplanNews } from '#lib/shoot/replan-words';
import type { ReplanTask } from './replan-thread';
import { startThread } from './typescript-thread';

/** A thread that has not answered by then is ended; a new order takes a fraction of a second. */
const PATIENCE_MS = 8_000;

class Replans {
  private worker: Worker | null = null;
  /** One after the other: the thread answers in the order of asking. */
  private last: Promise<unknown> = Promise.resolve();

  async ask(task: ReplanTask): Promise<ReplanNews> {
    const mine = this.last.then(() => this.run(task));
    this.last = mine.catch(() => undefined);
    return mine;
  }

  private run(task: ReplanTask): Promise<ReplanNews> {
    const worker = this.thread();
    return new Promise((resolve, reject) => {
      const fail = (error: Error): void => {
        worker.removeAllListeners();
        void worker.terminate();
        this.worker = null;
        reject(error);
      };
      const timer = setTimeout(() => fail(new Error('No order within the time')), PATIENCE_MS);
      worker.removeAllListeners();
      worker.once('message', (news: ReplanNews) => {
        clearTimeout(timer);
        resolve(news);
      });
      worker.once('error', (error: Error) => {
        clearTimeout(timer);
        fail(error);
      });
      worker.postMessage(task);
    });
  }

  private thread(): Worker {
    if (this.worker !== null) return this.worker;
    // Not from this file's own address, which the build changes; the program is started in its own folder.
    const entry = pathToFileURL(path.join(process.cwd(), 'lib/work/replan-thread.ts'));
    const worker = startThread(entry);
    worker.unref();
    this.worker = worker;
    return worker;
  }
}

// Parts of the server may be bundled apart; there is one thread all the same.
const holder = globalThis as typeof globalThis & { slateReplans?: Replans };
const replans = (holder.slateReplans ??= new Replans());

/** The rest of a filming day from now on, in words; rejects where the thread fails. */
export function replannedDay(task: ReplanTask): Promise<ReplanNews> {
  return replans.ask(task);
}
