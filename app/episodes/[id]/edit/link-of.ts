import { breakdownHref } from '../breakdown/href';
import type { Row } from './_components/view';

/** Where what a statement was held against stands; of a price that has none, where prices are entered. */
export function linkOf(
  episodeId: string,
  { against, lacksPrice }: Pick<Row, 'against' | 'lacksPrice'>,
): Row['link'] {
  const page = `/episodes/${encodeURIComponent(episodeId)}`;
  if (lacksPrice) return { href: `${page}/shopping#no-price`, words: 'Enter the prices' };
  if (against === null) return null;
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
