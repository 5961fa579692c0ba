import { useEffect, useRef, useState } from 'react';
import type { DishesOnDay } from '#lib/overview/dishes-on-day';
import type { DayEvent } from '#lib/shoot/day-log';

const PATIENCE_MS = 10_000;

/** Entries that change what is weighed or said. */
const CHANGING: ReadonlySet<DayEvent['kind']> = new Set(['weighed', 'struckOut', 'said', 'unsaid']);

/**
 * What was weighed and what can be said, asked again whenever anything has changed here or in the program. Without
 * the program the last answer stays.
 * @param cursor the place in the journal that this device has heard of
 */
export function useDishes(
  { address, dayId, first }: { address: string; dayId: string; first: DishesOnDay },
  cursor: number,
  connected: boolean,
  waiting: readonly DayEvent[],
): DishesOnDay {
  const [dishes, setDishes] = useState(first);
  const changing = waiting.filter(({ kind }) => CHANGING.has(kind));
  const key = [cursor, ...changing.map(({ id }) => id)].join(' ');
  const told = useRef(String(cursor));
  const events = useRef(changing);
  useEffect(() => {
    events.current = changing;
  });
  useEffect(() => {
    if (key === told.current || !connected) return;
    let overtaken = false;
    const ask = async () => {
      const body = { dayId, at: new Date().toISOString(), events: events.current };
      const response = await fetch(address, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
        signal: AbortSignal.timeout(PATIENCE_MS),
      });
      const answer = (await response.json()) as DishesOnDay;
      if (overtaken || !response.ok || !Array.isArray(answer.dishes)) return;
      told.current = key;
      setDishes(answer);
    };
    ask().catch(() => undefined);
    return () => {
      overtaken = true;
    };
  }, [address, dayId, key, connected]);
  return dishes;
}
