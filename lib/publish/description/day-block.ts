import type { BlockContext } from '#lib/publish/description/block';
import { capitalised, ENERGY_WORD, numbersLine } from '#lib/publish/description/numbers-line';
import { markOf } from '#lib/publish/number-mark';
import { lines, type Section } from '#lib/publish/document/document';

/** Whether there is a sum to tell: of several dishes, or of one that is the whole day. */
export function hasDay({ publish, dishes }: Pick<BlockContext, 'publish' | 'dishes'>): boolean {
  return dishes.length > 1 || (dishes.length === 1 && publish.figures.dayIsWhole);
}

/** What all dishes come to. */
export function daySections(context: BlockContext): readonly Section[] {
  const { publish, dishes } = context;
  const { file, figures, numbers } = publish;
  if (!hasDay(context)) return [];
  const { anythingElse, region } = file.episode;
  const title = figures.dayIsWhole ? 'THE WHOLE DAY' : 'THE DISHES SHOWN';
  const parts = dishes.map((dish) => {
    const energy = numbers('energyKcal', { kind: 'eaten', segmentId: dish.id });
    return `${dish.title} ${energy.number === null ? 'open' : energy.text + markOf(energy)}`;
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
