import { isNutrient, type Nutrient } from '#lib/foods/nutrients';
import type { SumScope } from '#lib/swap/dish-sum';
import { readNumber } from '#lib/units/read-typed';

/** What stands open on the page of replies, and what was put right of the reading. */
export interface ReplyPlace {
  readonly replyId: string;
  /** As it was typed. */
  readonly number?: string | null;
  readonly nutrient?: Nutrient | null;
  /** A dish, and its part: see `ofText`. */
  readonly of?: string | null;
  readonly slip?: string | null;
}

/** Address of a kept comment with what was put right of it. */
export function replyHref(episodeId: string, place: ReplyPlace): string {
  const asked = new URLSearchParams({ reply: place.replyId });
  for (const key of ['number', 'nutrient', 'of', 'slip'] as const) {
    const value = place[key];
    if (value) asked.set(key, value);
  }
  return `${repliesHref(episodeId)}?${asked.toString()}#comment`;
}

/** Address of all replies of an episode. */
export function repliesHref(episodeId: string): string {
  return `/episodes/${episodeId}/publish/replies`;
}

/** A dish and its part as one choice: the dish alone is all of it. */
export function ofText(segmentId: string, scope: SumScope): string {
  if (scope.kind === 'whole') return segmentId;
  return `${segmentId} ${scope.kind === 'day' ? DAY : scope.portionId}`;
}

const DAY = 'day';

/** What `ofText` writes, read again; null where it says nothing. */
export function ofFrom(
  text: string | null,
): { readonly segmentId: string; readonly scope: SumScope } | null {
  const [segmentId, part] = (text ?? '').split(' ');
  if (!segmentId) return null;
  if (!part) return { segmentId, scope: { kind: 'whole' } };
  return {
    segmentId,
    scope: part === DAY ? { kind: 'day' } : { kind: 'portion', portionId: part },
  };
}

/** A number and what it counts as an address says them; null where they say none. */
export function numberFrom(number: string | null, nutrient: string | null) {
  const amount = number === null ? null : readNumber(number);
  if (amount === null || nutrient === null || !isNutrient(nutrient)) return null;
  const decimals = /[.,](\d+)$/.exec(number?.trim() ?? '')?.[1]?.length ?? 0;
  return { nutrient, amount, decimals, about: false };
}
