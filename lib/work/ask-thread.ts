import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Worker } from 'node:worker_threads';
import { startThread } from './typescript-thread';

/** A thread that answers one question after the other, in the order of asking. */
export class AskedThread<Task, Answer> {
  private worker: Worker | null = null;
  private last: Promise<unknown> = Promise.resolve();

  /**
   * @param file the thread's file, from the program's folder
   * @param patienceMs a thread that has not answered by then is ended
   */
  constructor(
    private readonly file: string,
    private readonly patienceMs: number,
  ) {}

  /** Rejects where the thread fails or does not answer in time. */
  ask(task: Task): Promise<Answer> {
    const mine = this.last.then(() => this.run(task));
    this.last = mine.catch(() => undefined);
    return mine;
  }

  private run(task: Task): Promise<Answer> {
    const worker = this.thread();
    return new Promise((resolve, reject) => {
      const fail = (error: Error): void => {
        worker.removeAllListeners();
        void worker.terminate();
        this.worker = null;
        reject(error);
      };
      const timer = setTimeout(() => fail(new Error('No answer within the time')), this.patienceMs);
      worker.removeAllListeners();
      worker.once('message', (answer: Answer) => {
        clearTimeout(timer);
        resolve(answer);
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
    const worker = startThread(pathToFileURL(path.join(process.cwd(), this.file)));
    worker.unref();
    this.worker = worker;
    return worker;
  }
}
