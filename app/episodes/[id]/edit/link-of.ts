import type { HeldAgainst } from '#lib/claims/judged';
import { breakdownHref } from '../breakdown/href';
import type { Row } from './_components/view';

/** Where what a statement was held against stands. */
export function linkOf(episodeId: string, against: HeldAgainst | null): Row['link'] {
  if (against === null) return null;
  const page = `/episodes/${encodeURIComponent(episodeId)}`;
  const row = (id: string | null) => (id === null ? page : `${page}#row-${id}`);
  switch (against.kind) {
    case 'figure':
      return {
        href: breakdownHref(episodeId, against.scope, against.nutrient),
        words: 'To its breakdown',
      };
    case 'line':
      return { href: row(against.lineId), words: 'To the ingredient' };
    case 'step':
      return { href: `${page}/day#row-${against.stepId}`, words: 'To the step' };
    case 'portions':
      return { href: row(against.segmentId), words: 'To the portions' };
    case 'price':
      return { href: `${page}/shopping`, words: 'To the prices' };
    case 'log':
      return { href: `${page}/day/after`, words: 'To the day’s log' };
    case 'rule':
      return { href: row(against.segmentId), words: 'To the dish' };
  }
}
