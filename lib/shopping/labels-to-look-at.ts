import type { EpisodeFile } from '#lib/episode/schema';
import { foldList } from '#lib/shopping/fold-list';
import type { ListEvent } from '#lib/shopping/list-events';

/** A food that was bought, whose composition is read from a label. */
export interface ReadLabel {
  readonly foodId: string;
  readonly name: string;
  /** Local date of the last reading; null where nobody said. */
  readonly dateRead: string | null;
}

/**
 * The foods of a list that were bought, are read from a label, and were not read today: their makers may have changed
 * what is in them.
 */
export function labelsToLookAt(
  events: readonly ListEvent[],
  files: readonly EpisodeFile[],
  today: string,
): readonly ReadLabel[] {
  const { basket } = foldList(events);
  const bought = new Set(
    Object.values(basket).flatMap((event) => {
      if (event.kind === 'ticked') return [event.foodId];
      return event.kind === 'instead' ? (event.payload.takenFoodId ?? []) : [];
    }),
  );
  const foods = new Map(files.flatMap((file) => file.foods.map((food) => [food.id, food])));
  return [...foods.values()].flatMap(({ id, name, kind, version }) =>
    kind === 'label' && bought.has(id) && version.dateRead !== today
      ? [{ foodId: id, name, dateRead: version.dateRead }]
      : [],
  );
}
