import { contradiction, type Contradiction } from '#lib/claims/contradict/contradiction';
import { areApart, isTitle, type SaidValue } from '#lib/claims/contradict/said-values';

/**
 * A number in a title or a thumbnail that nothing in the captions comes to, of whatever part of the dish or the day it
 * may be. Where the captions say no such number there is nothing to hold it against.
 */
export function titleValues(values: readonly SaidValue[]): Contradiction[] {
  const spoken = values.filter(({ row }) => row.place.kind === 'captions');
  return values
    .filter(({ row }) => isTitle(row))
    .flatMap((title) => {
      const said = spoken.filter((each) => isOfSame(title, each));
      const [first] = said;
      if (!first || !said.every((each) => areApart(title.interval, each.interval))) return [];
      const middle = (title.low + title.high) / 2;
      const away = (each: SaidValue) => Math.abs((each.low + each.high) / 2 - middle);
      const nearest = said.reduce((best, each) => (away(each) < away(best) ? each : best), first);
      const where = title.row.place.kind === 'title' ? 'the title' : 'the thumbnail';
      return [
        contradiction({
          kind: 'title',
          nutrient: title.nutrient,
          segmentId: title.segmentId,
          words: `${where} says ${title.text}; what is said comes nearest to it with ${nearest.text}`,
          sides: [
            { value: title.text, said: [title.row] },
            { value: nearest.text, said: [nearest.row] },
          ],
        }),
      ];
    });
}

function isOfSame(title: SaidValue, said: SaidValue): boolean {
  if (title.nutrient !== said.nutrient) return false;
  if (title.scope === 'day') return said.scope === 'day';
  return title.segmentId === null || title.segmentId === said.segmentId;
}
