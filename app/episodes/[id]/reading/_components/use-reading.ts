import { useCallback, useEffect, useReducer } from 'react';
import {
  goneOnSince,
  moved,
  READING_START,
  type ReadingItem,
  type ReadingMove,
  type ReadingPace,
  type ReadingPlace,
} from '#lib/cut/reading-pace';

type Act =
  | { readonly kind: 'move'; readonly move: ReadingMove }
  | { readonly kind: 'time'; readonly thenMs: number; readonly nowMs: number };

/** Keys of the reading. A pedal sends page up and page down. */
const MOVES: Readonly<Record<string, ReadingMove>> = {
  ' ': 'toggle',
  ArrowDown: 'next',
  ArrowRight: 'next',
  PageDown: 'next',
  ArrowUp: 'before',
  ArrowLeft: 'before',
  PageUp: 'before',
  Home: 'first',
  End: 'last',
  Escape: 'stop',
};

/** Where the reading is, moved by time, by keys and by whoever calls `move`. */
export function useReading(
  items: readonly ReadingItem[],
  pace: ReadingPace,
): [ReadingPlace, (move: ReadingMove) => void] {
  const [place, act] = useReducer((now: ReadingPlace, did: Act): ReadingPlace => {
    if (did.kind === 'move') return moved(now, items, did.move);
    return goneOnSince(now, items, pace, did);
  }, READING_START);
  const move = useCallback((by: ReadingMove) => act({ kind: 'move', move: by }), []);
  const { going } = place;

  useEffect(() => {
    if (!going) return;
    let thenMs: number | null = null;
    let frame = requestAnimationFrame(function tick(nowMs) {
      if (thenMs !== null) act({ kind: 'time', thenMs, nowMs });
      thenMs = nowMs;
      frame = requestAnimationFrame(tick);
    });
    return () => cancelAnimationFrame(frame);
  }, [going]);

  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return;
      const by = MOVES[event.key];
      if (by === undefined || isTaken(event)) return;
      event.preventDefault();
      move(by);
    };
    document.addEventListener('keydown', listen);
    return () => document.removeEventListener('keydown', listen);
  }, [move]);

  return [place, move];
}

/** Whether what has the focus makes something of the key itself: a field of all, a tick, button or link of the space bar. */
function isTaken({ target, key }: KeyboardEvent): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target.closest('input:not([type=checkbox]), textarea, select, dialog[open]')) return true;
  return key === ' ' && target.closest('button, a, summary, input') !== null;
}
