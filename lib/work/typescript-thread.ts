import { Worker } from 'node:worker_threads';

/**
 * A thread that runs a TypeScript file. Threads do not inherit the loader of TypeScript, so it registers its own.
 *
 * @param entry the file's address, as `file:///…/search-thread.ts`
 * @param workerData what the thread reads as its own `workerData`
 */
export function startThread(entry: URL, workerData?: unknown): Worker {
  return new Worker(
    `import('tsx/esm/api').then(({ register }) => { register(); return import(${JSON.stringify(entry.href)}); });`,
    { eval: true, workerData },
  );
}
