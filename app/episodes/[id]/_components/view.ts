import type { FoodHit } from '../../../foods/search/hit';
import type { KeptTyping } from '../../../_forms/form-frame';
import type { EpisodeFile } from '#lib/episode/schema';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import type { PublishedNumbers } from '#lib/figures/published-numbers';
import type { AgainView } from '../again';

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
  /** What was begun from another dish, and what another can be begun from. */
  readonly again?: AgainView;
  /** The row whose form stands open, or null. */
  readonly editing: string | null;
  /** What was typed into that form on an earlier visit and not saved. */
  readonly kept?: KeptTyping | null;
}

/** Address of the page with a row's form open. */
export function editHref(episodeId: string, rowId: string): string {
  return `/episodes/${episodeId}?edit=${encodeURIComponent(rowId)}#row-${rowId}`;
}

/** Stands for the weighing of an ingredient where a form is said to be open. */
export function weighKey(lineId: string): string {
  return `weigh-${lineId}`;
}

/** Address of the page with an ingredient's scale open. */
export function weighHref(episodeId: string, lineId: string): string {
  return `/episodes/${episodeId}?edit=${encodeURIComponent(weighKey(lineId))}#row-${lineId}`;
}

/** Address of the page at a row, with no form open. */
export function rowHref(episodeId: string, rowId: string): string {
  return `/episodes/${episodeId}#row-${rowId}`;
}

/** Revision of a row; one that the page does not know is refused by the store as changed elsewhere. */
export function revOf(view: Pick<EpisodeView, 'revs'>, rowId: string): number {
  return view.revs[rowId] ?? 0;
}
