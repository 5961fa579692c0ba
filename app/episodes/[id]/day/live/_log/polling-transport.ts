import type { DayEvent } from '#lib/shoot/day-log';
import { ShutOut, type DayTransport, type Listener, type News, type SendAnswer } from './transport';
import type { Destination } from './waiting-store';

/** Time for one answer, in milliseconds; a kitchen's network may be slow, a lost one never answers. */
const PATIENCE_MS = 10_000;

/** Between two questions while the page is seen, and after a question without an answer. */
const EVERY_MS = 3_000;

/** Sends by POST and asks again and again by GET, while the page is seen. */
export const pollingTransport: DayTransport = { send, follow };

async function send(to: Destination, events: readonly DayEvent[]): Promise<SendAnswer> {
  const response = await fetch(to.address, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ dayId: to.dayId, events }),
    signal: AbortSignal.timeout(PATIENCE_MS),
  });
  shutOut(response);
  return readAnswer(await response.json(), events);
}

/** An answer that is none of ours (a hotspot's page, a broken proxy) names nothing, so it throws. */
export function readAnswer(answer: unknown, events: readonly DayEvent[]): SendAnswer {
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

function follow(of: Destination, listener: Listener): Following {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asking = false;
  let stopped = false;
  const ask = async () => {
    if (asking || stopped) return;
    asking = true;
    clearTimeout(timer);
    try {
      const news = await askNews(of, listener.after());
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

type Following = ReturnType<DayTransport['follow']>;

const seen = () => document.visibilityState === 'visible';

async function askNews(of: Destination, after: number): Promise<News> {
  const query = new URLSearchParams({ day: of.dayId, after: String(after) });
  const response = await fetch(`${of.address}?${query.toString()}`, {
    signal: AbortSignal.timeout(PATIENCE_MS),
    cache: 'no-store',
  });
  shutOut(response);
  const news: unknown = await response.json();
  const { cursor, whole, events, gone } = recordOf(news);
  const known = Array.isArray(events) && Array.isArray(gone) && typeof cursor === 'number';
  if (!response.ok || !known) throw new Error('The answer tells no news.');
  return { cursor, whole: whole === true, events: events as DayEvent[], gone: gone as string[] };
}

function shutOut({ status }: Response): void {
  if (status === 401) throw new ShutOut('This device is not let in.');
}

function recordOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}
