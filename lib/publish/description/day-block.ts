import type { BlockContext } from '#lib/publish/description/block';
import { capitalised, ENERGY_WORD, numbersLine } from '#lib/publish/description/numbers-line';
import { isSaidAgainst } from '#lib/publish/number-mark';
import { lines, type Section } from '#lib/publish/document/document';

/** What all dishes come to, where there are several, or one that is the whole day. */
export function daySections({ publish, dishes }: BlockContext): readonly Section[] {
  const { file, figures, numbers } = publish;
  if (dishes.length === 0 || (dishes.length === 1 && !figures.dayIsWhole)) return [];
  const { anythingElse, region } = file.episode;
  const title = figures.dayIsWhole ? 'THE WHOLE DAY' : 'THE DISHES SHOWN';
  const parts = dishes.map((dish) => {
    const energy = numbers('energyKcal', { kind: 'eaten', segmentId: dish.id });
    const mark = isSaidAgainst(energy) ? '†' : '';
    return `${dish.title} ${energy.number === null ? 'open' : energy.text + mark}`;
  });
  const notCounted = anythingElse?.kind === 'notCounted' ? anythingElse.what : '';
  return [
    lines(
      [{ strong: title }, `: ${numbersLine(numbers, { kind: 'day' }, region)}`],
      `${capitalised(ENERGY_WORD[region])} eaten, kcal: ${parts.join(' + ')}`,
      notCounted === '' ? '' : `Not counted: ${notCounted}`,
    ),
  ];
}
