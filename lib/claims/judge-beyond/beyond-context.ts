import type { DishFacts, EditFacts } from '#lib/claims/edit-facts';
import type { InAll } from '#lib/claims/judge-beyond/minutes-run';
import type { Dish } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';

/** A dish with what the log and the shops say of it. */
export interface BeyondDish {
  readonly dish: Dish;
  readonly facts: DishFacts | null;
}

/** What statements beyond nutrition are held against. */
export interface BeyondContext {
  readonly file: Pick<EpisodeFile, 'foods' | 'packs' | 'kitchen' | 'episode' | 'recipes'>;
  readonly facts: EditFacts;
  /** In viewing order. */
  readonly dishes: readonly BeyondDish[];
}

/** Where a statement stands, as far as its meaning hangs on it. */
export interface BeyondPlace {
  /** The dish that is talked about; null where nobody knows, or where it is the day. */
  readonly dish: BeyondDish | null;
  /** Without a dish those that it may be about; any of the episode where that is left out. */
  readonly among?: readonly BeyondDish[];
  /** Whether the words are spoken: numbers are said more coarsely than they are written. */
  readonly spoken: boolean;
  /** What a time comes to with those that it goes on from. */
  readonly inAll?: InAll | undefined;
  /** The text in which the statement has its place. */
  readonly text: string;
}
