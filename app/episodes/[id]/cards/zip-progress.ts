import 'server-only';

/** How far the drawing of a zip is. */
export interface ZipProgress {
  readonly drawn: number;
  readonly of: number;
  readonly over: boolean;
}

interface Job {
  progress: ZipProgress;
  readonly listeners: Set<(progress: ZipProgress) => void>;
}

// Parts of the server may be bundled apart; there is one list of jobs all the same.
const holder = globalThis as typeof globalThis & { slateCardZips?: Map<string, Job> };
const jobs = (holder.slateCardZips ??= new Map());

/** Jobs that are remembered: one that nobody follows is soon forgotten. */
const KEPT = 50;
const NAME = /^[a-z0-9-]{8,64}$/;

function jobOf(name: string): Job {
  const known = jobs.get(name);
  if (known) return known;
  const fresh: Job = { progress: { drawn: 0, of: 0, over: false }, listeners: new Set() };
  jobs.set(name, fresh);
  for (const oldest of jobs.keys()) {
    if (jobs.size <= KEPT) break;
    jobs.delete(oldest);
  }
  return fresh;
}

function tell(job: Job, change: Partial<ZipProgress>): void {
  job.progress = { ...job.progress, ...change };
  for (const listener of job.listeners) listener(job.progress);
}

/**
 * A zip that is being made, under the name that its page gave it; without one nobody follows.
 * @param of how many pictures there are
 */
export function zipJob(
  name: string | null,
  of: number,
): { readonly drawn: (count: number) => void; readonly over: () => void } {
  if (name === null || !NAME.test(name)) return { drawn: () => undefined, over: () => undefined };
  const job = jobOf(name);
  tell(job, { of });
  return {
    drawn: (drawn) => tell(job, { drawn }),
    over: () => tell(job, { over: true }),
  };
}

/** Follows a zip by its name, beginning with how far it is; returns how to leave. Null for what is no such name. */
export function followZip(
  name: string | null,
  listener: (progress: ZipProgress) => void,
): (() => void) | null {
  if (name === null || !NAME.test(name)) return null;
  const job = jobOf(name);
  listener(job.progress);
  job.listeners.add(listener);
  return () => job.listeners.delete(listener);
}
