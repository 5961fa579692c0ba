import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Worker } from 'node:worker_threads';
import type { EpisodeFile } from '#lib/episode/schema';
import { dayFacts, type DayFacts } from '#lib/shoot/day-facts';
import { ovenSteps } from '#lib/shoot/oven-choice';
import type { ShootPlan } from '#lib/shoot/plan';
import { dayPlan } from '#lib/shoot/plan-day';
import { firstDay, type DayProgress, type SolvedDay } from '#lib/shoot/solve-day';
import { toProblem } from '#lib/shoot/to-problem';
import type { DayMessage, DayTask } from './day-thread';
import { startThread } from './typescript-thread';

/** The seed of every plan that is shown or downloaded: page, calendar and text tell the same order. */
export const SEED = 1;
/** Days whose answers are kept; each takes some tens of kB. */
const KEPT = 40;
/** A thread that does not end when it is told to is ended from outside. */
const GRACE_MS = 250;

/** What a search tells while it goes on. */
export interface SearchNews {
  readonly progress: DayProgress | null;
  readonly seconds: number;
  readonly over: boolean;
}

interface Search {
  readonly key: string;
  readonly dayId: string;
  readonly facts: DayFacts;
  /** What there is from the beginning. */
  readonly first: SolvedDay;
  readonly done: Promise<SolvedDay>;
  readonly finish: (solved: SolvedDay) => void;
  readonly stop: SharedArrayBuffer;
  readonly begunMs: number;
  readonly listeners: Set<(news: SearchNews) => void>;
  progress: DayProgress | null;
  solved: SolvedDay | null;
}

/** A day's plan, the best known, and whether a better one is still looked for. */
export interface PlannedDay {
  readonly plan: ShootPlan;
  /** What the plan tells in words. */
  readonly solved: SolvedDay;
  readonly searching: boolean;
}

/**
 * The exact plans of filming days, searched one at a time in a thread beside the server and kept by what the
 * plan depends on, so that the same day is searched once. A day that was changed ends the search of what it
 * was before.
 */
class DaySearches {
  private readonly searches = new Map<string, Search>();
  private queue: Search[] = [];
  private running: Search | null = null;
  private worker: Worker | null = null;

  /** The search of the file's day, begun if there is none. */
  of(file: EpisodeFile): Search {
    const facts = dayFacts(file);
    const key = keyOf(facts);
    const known = this.searches.get(key);
    if (known !== undefined) {
      // The latest asked for stands last, and is forgotten last.
      this.searches.delete(key);
      this.searches.set(key, known);
      return known;
    }
    let finish: (solved: SolvedDay) => void = () => undefined;
    const done = new Promise<SolvedDay>((resolve) => (finish = resolve));
    const search: Search = {
      key,
      dayId: facts.day.id,
      facts,
      first: firstDay(facts, SEED),
      done,
      finish,
      stop: new SharedArrayBuffer(4),
      begunMs: performance.now(),
      listeners: new Set(),
      progress: null,
      solved: null,
    };
    this.giveUpOlder(search);
    this.searches.set(key, search);
    this.queue.push(search);
    this.next();
    for (const [oldest, { solved }] of this.searches) {
      if (this.searches.size <= KEPT) break;
      if (solved !== null) this.searches.delete(oldest);
    }
    return search;
  }

  /** Ends a search at once; what it has so far is its answer. */
  keep(search: Search): void {
    if (search.solved !== null) return;
    Atomics.store(new Int32Array(search.stop), 0, 1);
    this.answer(search, search.progress?.solved ?? search.first);
    if (this.running !== search) return;
    setTimeout(() => {
      if (this.running === search) this.endThread();
    }, GRACE_MS).unref();
  }

  private giveUpOlder({ dayId }: Search): void {
    for (const older of [this.running, ...this.queue]) {
      if (older === null || older.dayId !== dayId) continue;
      this.keep(older);
      this.searches.delete(older.key);
    }
    this.queue = this.queue.filter(({ solved }) => solved === null);
  }

  private next(): void {
    if (this.running !== null) return;
    const search = this.queue.find(({ solved }) => solved === null);
    this.queue = this.queue.filter((each) => each !== search);
    if (search === undefined) return;
    this.running = search;
    const { facts, stop } = search;
    const task: DayTask = { facts, seed: SEED, stop };
    this.thread().postMessage(task);
  }

  private thread(): Worker {
    if (this.worker !== null) return this.worker;
    // Not from this file's own address, which the build changes; the program is started in its own folder.
    const worker = startThread(pathToFileURL(path.join(process.cwd(), 'lib/work/day-thread.ts')));
    worker.unref();
    worker.on('message', (message: DayMessage) => this.hear(message));
    worker.on('error', (error) => {
      console.error('The search for the best day failed:', error);
      if (this.worker === worker) this.endThread();
    });
    this.worker = worker;
    return worker;
  }

  private hear(message: DayMessage): void {
    const search = this.running;
    if (search === null) return;
    if (message.kind === 'solved') {
      this.running = null;
      this.answer(search, message.solved);
      this.next();
    } else if (search.solved === null) {
      search.progress = message.progress;
      tell(search);
    }
  }

  private answer(search: Search, solved: SolvedDay): void {
    if (search.solved !== null) return;
    search.solved = solved;
    search.finish(solved);
    tell(search);
    search.listeners.clear();
  }

  /** Ends the thread itself; the next search gets a new one. */
  private endThread(): void {
    const search = this.running;
    void this.worker?.terminate();
    this.worker = null;
    this.running = null;
    if (search !== null) this.answer(search, search.progress?.solved ?? search.first);
    this.next();
  }
}

function newsOf({ progress, solved, begunMs }: Search): SearchNews {
  const seconds = (performance.now() - begunMs) / 1000;
  return { progress, seconds, over: solved !== null };
}

function tell(search: Search): void {
  const news = newsOf(search);
  for (const listener of search.listeners) listener(news);
}

/** All that a plan depends on: the problem with its times, and the ovens it may choose among. */
function keyOf(facts: DayFacts): string {
  const { fixed, open } = ovenSteps(facts);
  return JSON.stringify([facts.day.id, toProblem(facts, fixed, open), [...fixed]]);
}

// Parts of the server may be bundled apart; there is one set of searches all the same.
const holder = globalThis as typeof globalThis & { slateDaySearches?: DaySearches };
const searches = (holder.slateDaySearches ??= new DaySearches());

/** How long is waited for the end of a search: by a page that follows it, and by what is written once. */
const PATIENCE_MS = { 'first look': 700, whole: 20_000 } as const;

/**
 * The plan of the file's filming day: the best of its kind if the search ends in the time that is waited,
 * else the best so far. Throws if the file has no filming day.
 */
export async function plannedDay(
  file: EpisodeFile,
  patience: keyof typeof PATIENCE_MS,
): Promise<PlannedDay> {
  const search = searches.of(file);
  let timer: NodeJS.Timeout | undefined;
  const enough = new Promise<null>((resolve) => {
    timer = setTimeout(() => resolve(null), PATIENCE_MS[patience]);
  });
  await Promise.race([search.done, enough]);
  clearTimeout(timer);
  const solved = search.solved ?? search.progress?.solved ?? search.first;
  return { plan: dayPlan(file, solved), solved, searching: search.solved === null };
}

/** Ends the search of the file's day at once and keeps the best order so far. */
export function keepOrderSoFar(file: EpisodeFile): void {
  searches.keep(searches.of(file));
}

/**
 * Tells what the search of the file's day finds, beginning with what it has; the last news is that it is over.
 * @returns a function that ends the telling, not the search
 */
export function followSearch(file: EpisodeFile, listener: (news: SearchNews) => void): () => void {
  const search = searches.of(file);
  listener(newsOf(search));
  if (search.solved !== null) return () => undefined;
  search.listeners.add(listener);
  return () => search.listeners.delete(listener);
}
