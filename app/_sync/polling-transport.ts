import type { MadeEntry } from './entry';
import { ShutOut, type Listener, type News, type SendAnswer, type Transport } from './transport';
import type { Destination } from './waiting-store';

/** Time for one answer, in milliseconds; a kitchen's network may be slow, a lost one never answers. */
const PATIENCE_MS = 10_000;

/** Between two questions while the page is seen, and after a question without an answer. */
const EVERY_MS = 3_000;

/** What an address calls the log that entries belong to: in what is sent, and in what is asked. */
export interface LogNames {
  readonly sent: string;
  readonly asked: string;
}

/** Sends by POST and asks again and again by GET, while the page is seen. */
export function pollingTransport<E extends MadeEntry>(names: LogNames): Transport<E> {
  return {
    send: (to, events) => send(to, events, names),
    follow: (of, listener) => follow(of, listener, names),
  };
}

async function send(
  to: Destination,
  events: readonly MadeEntry[],
  { sent }: LogNames,
): Promise<SendAnswer> {
  const response = await fetch(to.address, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ [sent]: to.logId, events }),
    signal: AbortSignal.timeout(PATIENCE_MS),
  });
  shutOut(response);
  return readAnswer(await response.json(), events);
}

/** An answer that is none of ours (a hotspot's page, a broken proxy) names nothing, so it throws. */
export function readAnswer(answer: unknown, events: readonly MadeEntry[]): SendAnswer {
  const { kept, already, refused, problems } = recordOf(answer);
  if (Array.isArray(kept) && Array.isArray(already) && Array.isArray(refused)) {
    return {
      arrived: [...kept, ...already].map(String),
      refused: refused.map(recordOf).map(({ id, problem }) => ({
        id: String(id),
        why: String(recordOf(problem).message),
      })),
    };
  }
  // Faults of single entries, by their place in what was sent.
  const faults = (Array.isArray(problems) ? problems : []).map(recordOf).flatMap((problem) => {
    const [, index] = /^events\[(\d+)\]/.exec(String(problem.path)) ?? [];
    const event = index === undefined ? undefined : events[Number(index)];
    return event ? [{ id: event.id, why: String(problem.message) }] : [];
  });
  if (faults.length === 0) throw new Error('The answer names no entry.');
  return { arrived: [], refused: faults };
}

function follow<E extends MadeEntry>(
  of: Destination,
  listener: Listener<E>,
  names: LogNames,
): Following {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asking = false;
  let stopped = false;
  const ask = async () => {
    if (asking || stopped) return;
    asking = true;
    clearTimeout(timer);
    try {
      const news = await askNews<E>(of, listener.after(), names);
      if (!stopped) listener.heard(news);
    } catch (error) {
      if (!stopped) listener.lost(error);
    }
    asking = false;
    if (!stopped) timer = setTimeout(() => void (seen() ? ask() : undefined), EVERY_MS);
  };
  void ask();
  return {
    ask: () => void ask(),
    stop() {
      stopped = true;
      clearTimeout(timer);
    },
  };
}

type Following = ReturnType<Transport<MadeEntry>['follow']>;

const seen = () => document.visibilityState === 'visible';

async function askNews<E extends MadeEntry>(
  of: Destination,
  after: number,
  { asked }: LogNames,
): Promise<News<E>> {
  const query = new URLSearchParams({ [asked]: of.logId, after: String(after) });
  const response = await fetch(`${of.address}?${query.toString()}`, {
    signal: AbortSignal.timeout(PATIENCE_MS),
    cache: 'no-store',
  });
  shutOut(response);
  const news: unknown = await response.json();
  const { cursor, whole, events, gone } = recordOf(news);
  const known = Array.isArray(events) && Array.isArray(gone) && typeof cursor === 'number';
  if (!response.ok || !known) throw new Error('The answer tells no news.');
  return { cursor, whole: whole === true, events: events as E[], gone: gone as string[] };
}

function shutOut({ status }: Response): void {
  if (status === 401) throw new ShutOut('This device is not let in.');
}

function recordOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}
