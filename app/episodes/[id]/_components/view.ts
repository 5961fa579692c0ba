import type { FoodHit } from '../../../foods/search/hit';
import type { KeptTyping } from '../../../_forms/form-frame';
import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import type { PublishedNumbers } from '#lib/figures/published-numbers';
import type { AgainView } from '../again';
import type { DishesView } from '../dishes';
import type { StatesWays } from '../states-ways';

/** What every part of the episode page draws from. */
export interface EpisodeView {
  readonly file: EpisodeFile;
  readonly figures: EpisodeFigures;
  /** The printed forms that the description uses too. */
  readonly numbers: PublishedNumbers;
  /** Revision of each row by its id, for forms that change it. */
  readonly revs: Readonly<Record<string, number>>;
  /** Foods that an ingredient without a confirmed one may mean instead, by the ingredient's id. */
  readonly others: Readonly<Record<string, readonly FoodHit[]>>;
  /** The ways out where raw and cooked differ and no cooked weight is known, by the ingredient's id. */
  readonly states?: Readonly<Record<string, StatesWays>>;
  /** Words that the open form of an ingredient begins to look for a food by. */
  readonly look?: string | null;
  /** Words that stand in the form of a dish by which ingredients are pasted. */
  readonly paste?: { readonly segmentId: string; readonly words: string } | null;
  /** What was begun from another dish, and what another can be begun from. */
  readonly again?: AgainView;
  /** Dishes that others are made from: where they stand, and which can be taken. */
  readonly dishes?: DishesView;
  /** The row whose form stands open, or null. */
  readonly editing: string | null;
  /** What was typed into that form on an earlier visit and not saved. */
  readonly kept?: KeptTyping | null;
}

/** Address of the page with a row's form open. */
export function editHref(episodeId: string, rowId: string): string {
  return `/episodes/${episodeId}?edit=${encodeURIComponent(rowId)}#row-${rowId}`;
}

/** Address of the page with an ingredient's form open that looks for a food by these words already. */
export function lookHref(episodeId: string, lineId: string, words: string): string {
  const asked = `edit=${encodeURIComponent(lineId)}&look=${encodeURIComponent(words)}`;
  return `/episodes/${episodeId}?${asked}#row-${lineId}`;
}

/** What of an ingredient is on its scale: as its line says, cooked, or what is left of it. */
export const WEIGHED = ['raw', 'cooked', 'left'] as const;
export type Weighed = (typeof WEIGHED)[number];

/** Stands for the weighing of an ingredient where a form is said to be open. */
export function weighKey(lineId: string, of: Weighed = 'raw'): string {
  return of === 'raw' ? `weigh-${lineId}` : `weigh-${of}-${lineId}`;
}

/** What of an ingredient stands on its open scale; null where it is not open. */
export function weighedIn(editing: string | null, lineId: string): Weighed | null {
  return WEIGHED.find((of) => weighKey(lineId, of) === editing) ?? null;
}

/** Address of the page with an ingredient's scale open. */
export function weighHref(episodeId: string, lineId: string, of: Weighed = 'raw'): string {
  return `/episodes/${episodeId}?edit=${encodeURIComponent(weighKey(lineId, of))}#row-${lineId}`;
}

/** Stands for the form by which an ingredient is made from a dish, where a form is said to be open. */
export function dishKey(lineId: string): string {
  return `dish-${lineId}`;
}

/** Address of the page with that form open. */
export function dishHref(episodeId: string, lineId: string): string {
  return `/episodes/${episodeId}?edit=${encodeURIComponent(dishKey(lineId))}#row-${lineId}`;
}

/** Address of the page at a row, with no form open. */
export function rowHref(episodeId: string, rowId: string): string {
  return `/episodes/${episodeId}#row-${rowId}`;
}

/** Revision of a row; one that the page does not know is refused by the store as changed elsewhere. */
export function revOf(view: Pick<EpisodeView, 'revs'>, rowId: string): number {
  return view.revs[rowId] ?? 0;
}
